-- Planned days off of technicians: days and spans of days as "2026-11-27;2026-12-24/2027-01-02".

alter table technician add column days_off varchar(4000) default '' not null;
