-- Changes that are made together stand in one row, packed: seven of one visit, a million of a big list, each with the same
-- sentences in two kilobytes. A row of one change is as it was. The position of a row is that of its last change.
alter table feed_event add column changes int default 1 not null;
alter table feed_event add column packed bytea;
alter table feed_event alter column type drop not null;
alter table feed_event alter column subject drop not null;
alter table feed_event alter column data drop not null;

-- with how many they are, so that rows need not be read to give them places or to count them
drop index feed_event_order;
create index feed_event_order on feed_event (position, id, changes);

-- which change of its row could not be delivered, from 0
alter table dead_letter add column event_part int default 0 not null;
