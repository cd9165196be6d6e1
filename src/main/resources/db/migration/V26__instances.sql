-- Several instances on one database: who does what, so that nothing is done twice and nothing is left undone.

-- what only one instance does at a time, while a transaction holds the row
create table turn (
  name varchar(40) not null primary key
);
insert into turn (name) values ('imports');
insert into turn (name) values ('everyday');

-- what is done now and then, by whoever comes first
create table shedlock (
  name       varchar(64)  not null primary key,
  lock_until timestamp    not null,
  locked_at  timestamp    not null,
  locked_by  varchar(255) not null
);

-- the instance that has the file, and when it was last known to be alive
alter table import_run add column holder varchar(40) default '' not null;
alter table import_run add column beat timestamp with time zone default timestamp with time zone '2026-01-01 00:00:00+00:00' not null;

-- somebody is content with the best plan so far; how often it was taken up again after its service ended
alter table round_plan add column stop_asked boolean default false not null;
alter table round_plan add column resumed int default 0 not null;
