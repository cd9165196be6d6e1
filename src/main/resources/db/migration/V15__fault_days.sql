-- The days of the faults of each unit, and when it went out of use, so that the priors of a past day can be estimated from what
-- was on record then.

alter table fault_tally add column fault_days varchar(200000) default '' not null;
alter table fault_tally add column retired date;

-- the tallies of a fleet that is there already are made at the next start
delete from assessment_basis;
