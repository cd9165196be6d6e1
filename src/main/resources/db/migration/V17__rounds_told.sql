-- Rounds that the feed has told of: one that a later plan does not have is called off.
create table round_told (
  plan_id    varchar(40)  not null,
  round_key  varchar(200) not null,
  technician varchar(120) not null,
  round_day  date         not null,
  primary key (plan_id, round_key)
);
