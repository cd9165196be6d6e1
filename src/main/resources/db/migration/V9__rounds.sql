-- Plans of rounds. The answer is one document, packed (RFC 1952), in pieces: written whole, read whole.

create table round_plan (
  id        varchar(40)              not null primary key,
  state     varchar(20)              not null,
  requested timestamp with time zone not null,
  first_day date                     not null,
  last_day  date                     not null,
  -- what was asked, as JSON
  asked     varchar(20000)           not null,
  -- when the service that plans it was last known to be alive
  beat      timestamp with time zone not null,
  share     double precision         not null,
  found     int                      not null,
  revision  int                      not null,
  message   varchar(4000)            not null
);
create index round_plan_by_time on round_plan (requested, id);

create table round_piece (
  plan_id  varchar(40) not null references round_plan (id),
  position int         not null,
  piece    bytea       not null,
  primary key (plan_id, position)
);
