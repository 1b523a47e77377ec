-- What people say of a run after it was welded. Rows are only ever added: the latest of a segment
-- counts, and what was said before stays readable. They go with their segment when it is removed.

-- How long the bead is, as somebody measured it.
CREATE TABLE bead (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  segment_id INTEGER NOT NULL REFERENCES segment (id) ON DELETE CASCADE,
  wall_ms INTEGER NOT NULL,
  -- A role and never a person: trainee, instructor, or empty where nobody said.
  entered_by TEXT NOT NULL,
  length_mm REAL NOT NULL,
  note TEXT NOT NULL
) STRICT;

CREATE INDEX bead_by_segment ON bead (segment_id, id);

-- Runs that an instructor shows as an example. marked 0 takes the mark back.
CREATE TABLE reference_weld (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  segment_id INTEGER NOT NULL REFERENCES segment (id) ON DELETE CASCADE,
  wall_ms INTEGER NOT NULL,
  entered_by TEXT NOT NULL,
  marked INTEGER NOT NULL,
  words TEXT NOT NULL
) STRICT;

CREATE INDEX reference_weld_by_segment ON reference_weld (segment_id, id);

CREATE TRIGGER bead_kept BEFORE UPDATE ON bead
BEGIN SELECT RAISE(ABORT, 'a bead length is never changed: enter another'); END;
CREATE TRIGGER reference_weld_kept BEFORE UPDATE ON reference_weld
BEGIN SELECT RAISE(ABORT, 'a mark is never changed: take it back with another row'); END;
