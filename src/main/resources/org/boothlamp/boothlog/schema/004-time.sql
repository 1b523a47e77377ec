-- Time of day without a clock that runs while the power is off, and logs that were damaged.

-- Whether the time of day of a start's rows is known: all of them or none, for when the clock is set
-- the rows before are corrected. Until here nobody asked; a clock that lags years behind gives itself away
-- (1767225600000 is 2026-01-01T00:00Z).
ALTER TABLE boot ADD COLUMN clock_trusted INTEGER NOT NULL DEFAULT 1;
UPDATE boot SET clock_trusted = 0 WHERE started_wall_ms < 1767225600000;

-- By how much the wall times of a start's rows were moved; the sum of the offsets taken away gives
-- them as they were first written. An offset of 0 says that they are known to be right. Sent on like
-- every other row, so that rows which were sent before are put right elsewhere as well.
CREATE TABLE clock_correction (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  boot INTEGER NOT NULL,
  corrected_mono_ns INTEGER NOT NULL,
  from_wall_ms INTEGER NOT NULL,
  to_wall_ms INTEGER NOT NULL,
  offset_ms INTEGER NOT NULL,
  trusted INTEGER NOT NULL,
  UNIQUE (boot, corrected_mono_ns)
) STRICT;

-- A sign-in is written by a process of its own: these tell which start's clock it was written by.
ALTER TABLE sign_in ADD COLUMN mono_ns INTEGER;
ALTER TABLE sign_in ADD COLUMN machine_boot TEXT;

CREATE INDEX segment_by_boot ON segment (boot);
CREATE INDEX touch_by_boot ON touch (boot);
CREATE INDEX event_by_boot ON event (boot);

-- Damaged files whose rows have all been taken over; they lie beside the log.
CREATE TABLE salvage (
  file TEXT NOT NULL PRIMARY KEY,
  saved_rows INTEGER NOT NULL,
  lost_pages INTEGER NOT NULL,
  lost_rows INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
