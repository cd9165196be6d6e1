-- Priors of the fault rate are estimated from the whole fleet. Each unit in use adds two numbers, kept here, so that the
-- sums need no reading of histories; the sums that the priors in force were estimated from are kept beside them.

create table fault_tally (
  unit_id     bigint      not null primary key references unit (id),
  fault_class varchar(80) not null,
  first_seen  date        not null,
  faults      int         not null
);

create table fault_prior (
  fault_class    varchar(80) not null primary key,
  units          bigint      not null,
  faults         bigint      not null,
  days           bigint      not null,
  faults_squared bigint      not null,
  fault_days     bigint      not null,
  days_squared   bigint      not null
);

-- the tallies of a fleet that is there already are made at the next start
delete from assessment_basis;
