-- What the scheduling system answered, and how often what it was told of a task has changed.

-- the moment is the same in every zone, but the answer is given back as it came
alter table booking add column zone_offset varchar(10) default 'Z' not null;
create index booking_by_unit on booking (unit_id);
create index booking_by_technician on booking (technician);

-- calendars follow a task by a number that grows with each change they are told
alter table upkeep_task add column sequence int default 0 not null;
alter table upkeep_task add column changed timestamp with time zone default timestamp with time zone '2026-01-01 00:00:00+00:00' not null;

-- tasks that are no longer open: what became of them, for calendars and late answers
create table closed_task (
  id       varchar(160)             not null primary key,
  unit_id  bigint                   not null references unit (id),
  task     varchar(80)              not null,
  due      date                     not null,
  minutes  int                      not null,
  sequence int                      not null,
  changed  timestamp with time zone not null,
  -- withdrawn or completed
  outcome  varchar(20)              not null
);
create index closed_task_by_unit on closed_task (unit_id);
create index closed_task_by_age on closed_task (changed);
