-- Changes that wait for their place are found in their order by one index: with an index of the position alone all that wait were
-- looked through for each two thousand of them, and after a list of 100,000 units the first reader waited for minutes.
-- The constraint is taken away with its column, for its name is another one in each database.
alter table feed_event add column place bigint;
update feed_event set place = position;
alter table feed_event drop column position;
alter table feed_event rename column place to position;
create unique index feed_event_order on feed_event (position, id);
