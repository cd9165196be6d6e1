-- Accounts of several roles, with a life of their tokens; and what each role is shown by.

alter table account add column customer   varchar(120) default '' not null;
alter table account add column technician varchar(120) default '' not null;
alter table account add column expires    timestamp with time zone;
alter table account add column revoked    timestamp with time zone;
alter table account add column last_used  timestamp with time zone;
create index page_session_by_account on page_session (account_id);

-- the one customer whose units a plan holds; empty where it holds those of several
alter table replacement_plan add column customer varchar(120) default '' not null;
create index replacement_plan_by_customer on replacement_plan (customer, made);

-- where the rounds of a plan lead whom, and on which day for the last time
create table round_site (
  plan_id    varchar(40)  not null,
  technician varchar(120) not null,
  customer   varchar(120) not null,
  site       varchar(120) not null,
  last_day   date         not null,
  primary key (plan_id, technician, customer, site)
);
create index round_site_by_technician on round_site (technician, customer, site, last_day);
