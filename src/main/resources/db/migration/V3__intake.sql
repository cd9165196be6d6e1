-- What became of each file that was sent, and the rows that could not be taken.

create table import_receipt (
  id               varchar(40)              not null primary key,
  kind             varchar(40)              not null,
  received         timestamp with time zone not null,
  preview          boolean                  not null,
  partial          boolean                  not null,
  applied          boolean                  not null,
  created          bigint                   not null,
  changed          bigint                   not null,
  unchanged        bigint                   not null,
  rejected         bigint                   not null,
  charset          varchar(40)              not null,
  delimiter        varchar(20)              not null,
  profile          varchar(60)              not null,
  problem_count    bigint                   not null,
  problems_by_code varchar(4000)            not null
);
create index import_receipt_by_time on import_receipt (received, id);

-- the first problems of a file, in its order
create table import_problem (
  import_id   varchar(40)   not null references import_receipt (id),
  position    int           not null,
  line        bigint        not null,
  column_name varchar(200)  not null,
  cell        varchar(200)  not null,
  code        varchar(60)   not null,
  message     varchar(8000) not null,
  primary key (import_id, position)
);

-- the file of rejected rows, packed (RFC 1952), in pieces
create table import_rejected (
  import_id varchar(40) not null references import_receipt (id),
  position  int         not null,
  piece     bytea       not null,
  primary key (import_id, position)
);
