-- What a later file or call put in the place of what was known, and what became of files that are
-- answered later.

create sequence correction_seq start with 1 increment by 50;
create table correction (
  id          bigint                   not null primary key,
  changed     timestamp with time zone not null,
  -- id of the import, or how else it came: field, confirmation
  origin      varchar(40)              not null,
  kind        varchar(40)              not null,
  -- null for what is no unit's
  unit_id     bigint references unit (id),
  -- natural key of the row that was corrected, behind that of its unit
  item        varchar(400)             not null,
  column_name varchar(200)             not null,
  -- empty when it was emptied
  former      varchar(8000)            not null,
  later       varchar(8000)            not null
);
create index correction_by_unit on correction (unit_id, id);
create index correction_by_origin on correction (origin, id);

-- files whose sender did not wait for the receipt
create table import_run (
  id       varchar(40)              not null primary key,
  kind     varchar(40)              not null,
  received timestamp with time zone not null,
  preview  boolean                  not null,
  partial  boolean                  not null,
  -- open, refused or interrupted; one that has its receipt is not kept here
  state    varchar(20)              not null,
  problem  varchar(12000)           not null
);

-- groups of problems, first rows, units that are not on the list any more
alter table import_receipt add column details varchar(1000000) default '{}' not null;
