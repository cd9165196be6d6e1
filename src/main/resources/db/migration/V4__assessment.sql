-- What was last worked out for each unit in use, so that the fleet can be listed worst first.
-- It can be made again from the fleet and the rule tables at any time.

create table assessment (
  unit_id      bigint           not null primary key references unit (id),
  as_of        date             not null,
  score        double precision not null,
  low          double precision not null,
  high         double precision not null,
  completeness double precision not null,
  factors      varchar(4000)    not null,
  next_due     date,
  next_task    varchar(80)      not null
);
create index assessment_by_score on assessment (score, unit_id);
create index assessment_by_due on assessment (next_due, unit_id);

-- the rule tables that the assessments were made with
create table assessment_basis (
  id          int         not null primary key,
  fingerprint varchar(64) not null
);

create view fleet_line as
select a.unit_id, c.code as customer, c.name as customer_name, s.code as site, s.name as site_name,
       u.tag, u.kind, u.maker, u.model, u.refrigerant, u.installed,
       a.as_of, a.score, a.low, a.high, a.completeness, a.factors, a.next_due, a.next_task
from assessment a
join unit u on u.id = a.unit_id
join site s on s.id = u.site_id
join customer c on c.id = s.customer_id;

-- upkeep tasks in the order in which they fall due; their reasons are worked out when asked for
create table upkeep_task (
  id       varchar(160)     not null primary key,
  unit_id  bigint           not null references unit (id),
  task     varchar(80)      not null,
  due      date             not null,
  earliest date             not null,
  latest   date             not null,
  minutes  int              not null,
  priority double precision not null,
  state    varchar(20)      not null
);
create index upkeep_task_by_due on upkeep_task (due, id);
create index upkeep_task_by_unit on upkeep_task (unit_id);

create view unit_place as
select u.id as unit_id, c.code as customer, s.code as site, u.tag
from unit u
join site s on s.id = u.site_id
join customer c on c.id = s.customer_id;
