-- A move that held no more lent its day to the one after it, which then went forward in time: it could not be read, and
-- the service did not start. What is deleted is found anew.
delete from task_move where moved_to >= due;
