-- Tasks that were brought forward out of a week with more work than the technicians can do. Kept, so that a task stays where
-- it was put: what is read of one unit later moves no task of another.

create table task_move (
  task_id  varchar(160) not null primary key,
  unit_id  bigint       not null references unit (id),
  -- the day that the rules asked for, and the one that the task was brought forward to
  due      date         not null,
  moved_to date         not null,
  week     date         not null,
  work     int          not null,
  capacity int          not null
);
create index task_move_by_unit on task_move (unit_id);
