-- A plan for many people with days off and places of their own is a longer question.
alter table round_plan alter column asked set data type varchar(1000000);

-- Drives that the outside source of travel times has told, by coordinates, so that each is asked once.
create table asked_drive (
  -- digest of the address template: another source, other drives
  source     varchar(64)              not null,
  from_place varchar(40)              not null,
  to_place   varchar(40)              not null,
  minutes    double precision         not null,
  km         double precision,
  asked      timestamp with time zone not null,
  primary key (source, from_place, to_place)
);
