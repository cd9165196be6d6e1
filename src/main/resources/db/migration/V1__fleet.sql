-- The fleet: whose equipment it is, where it stands, what was read, done and broken.
-- Measured values are kept as they were given, with their unit of measure, so that an export
-- returns what was read in. A visit is one document: it is written and read as a whole.

create sequence customer_seq start with 1 increment by 50;
create table customer (
  id    bigint        not null primary key,
  code  varchar(120)  not null unique,
  name  varchar(400)  not null,
  email varchar(400)  not null,
  note  varchar(4000) not null
);

create sequence site_seq start with 1 increment by 50;
create table site (
  id             bigint        not null primary key,
  customer_id    bigint        not null references customer (id),
  code           varchar(120)  not null,
  name           varchar(400)  not null,
  address        varchar(1000) not null,
  latitude       double precision,
  longitude      double precision,
  elevation      varchar(60)   not null,
  time_zone      varchar(80)   not null,
  jurisdiction   varchar(20)   not null,
  surroundings   varchar(40)   not null,
  visiting_hours varchar(1000) not null,
  design_ambient varchar(60)   not null,
  unique (customer_id, code)
);

create sequence unit_seq start with 1 increment by 50;
create table unit (
  id              bigint        not null primary key,
  site_id         bigint        not null references site (id),
  tag             varchar(120)  not null,
  kind            varchar(80)   not null,
  machine         varchar(120)  not null,
  maker           varchar(200)  not null,
  model           varchar(200)  not null,
  serial          varchar(200)  not null,
  installed       date,
  refrigerant     varchar(80)   not null,
  condenser_place varchar(40)   not null,
  retired         date,
  plate           varchar(8000) not null,
  unique (site_id, tag)
);

create table visit (
  unit_id    bigint         not null references unit (id),
  number     varchar(120)   not null,
  visited    date           not null,
  technician varchar(120)   not null,
  purpose    varchar(40)    not null,
  readings   varchar(60000) not null,
  findings   varchar(4000)  not null,
  work       varchar(4000)  not null,
  faults     varchar(4000)  not null,
  note       varchar(8000)  not null,
  primary key (unit_id, number)
);

create table fault (
  unit_id      bigint        not null references unit (id),
  happened     date          not null,
  failure_mode varchar(80)   not null,
  cause        varchar(1000) not null,
  repaired     date,
  downtime     varchar(60)   not null,
  stock_lost   varchar(60)   not null,
  note         varchar(8000) not null,
  primary key (unit_id, happened, failure_mode)
);

create table technician (
  code        varchar(120)  not null primary key,
  name        varchar(400)  not null,
  latitude    double precision,
  longitude   double precision,
  hours       varchar(1000) not null,
  competences varchar(4000) not null
);

create table travel_time (
  from_place varchar(250) not null,
  to_place   varchar(250) not null,
  minutes    double precision not null,
  distance   varchar(60)  not null,
  primary key (from_place, to_place)
);
