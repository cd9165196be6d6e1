-- Replacement plans as they were made, each part packed (RFC 1952): what a customer was shown stays
-- what it was, whatever is learned of the units later.

create table replacement_plan (
  id     varchar(40)              not null primary key,
  made   timestamp with time zone not null,
  answer bytea                    not null,
  sheet  bytea                    not null,
  report bytea                    not null
);
create index replacement_plan_by_time on replacement_plan (made, id);
