-- Replies to calls that named an Idempotency-Key, to be given again when the call comes again.
create table replied (
  -- digest of who called what with which key
  id       varchar(60)              not null primary key,
  -- digest of what was sent
  content  varchar(60)              not null,
  status   int                      not null,
  location varchar(2000)            not null,
  tag      varchar(80)              not null,
  body     varchar(500000)          not null,
  replied  timestamp with time zone not null
);
create index replied_by_age on replied (replied);
