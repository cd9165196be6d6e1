-- The fleet list is filtered by kind and refrigerant, and offers those that occur.
create index unit_by_kind on unit (kind);
create index unit_by_refrigerant on unit (refrigerant);

-- How many rows the demo fleet had when it was loaded: while the store holds exactly as many, it holds
-- nothing else and can be wiped from the page. At most one row.
create table demo_fleet (
  id          int       not null primary key,
  loaded      timestamp not null,
  customers   bigint    not null,
  sites       bigint    not null,
  units       bigint    not null,
  technicians bigint    not null
);
