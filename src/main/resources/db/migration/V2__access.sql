-- Who may use the service. Of a token only the hash is kept, and its beginning to know it by.

create table account (
  id           varchar(40)              not null primary key,
  name         varchar(200)             not null,
  role         varchar(20)              not null,
  token_hash   varchar(64)              not null unique,
  token_prefix varchar(12)              not null,
  created      timestamp with time zone not null
);

create table page_session (
  hash       varchar(64)              not null primary key,
  account_id varchar(40)              not null references account (id),
  expires    timestamp with time zone not null
);
