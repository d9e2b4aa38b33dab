-- The workroom's own record of minutes: it is asked for whenever the days ahead are reckoned, so it has an index of its own that
-- holds all that is asked for.
CREATE INDEX step_by_taken ON step (kind, done_by, minutes, took) WHERE took > 0 AND minutes > 0 AND done_on IS NOT NULL;

PRAGMA user_version = 5;
