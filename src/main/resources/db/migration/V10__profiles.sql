-- Profiles that were saved by a call; those of import/profiles stay files.

create table import_profile (
  name     varchar(60)              not null primary key,
  document varchar(200000)          not null,
  saved    timestamp with time zone not null
);
