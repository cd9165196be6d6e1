-- The score of each unit on each day on which it changed, as it was told then: never worked out anew.

create table score_history (
  unit_id      bigint           not null references unit (id),
  changed      date             not null,
  score        double precision not null,
  low          double precision not null,
  high         double precision not null,
  completeness double precision not null,
  factors      varchar(8000)    not null,
  primary key (unit_id, changed)
);
