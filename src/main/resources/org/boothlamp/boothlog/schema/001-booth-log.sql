-- The booth log as first laid out. Units are at the end of a name: _s seconds, _ms and _ns milliseconds
-- and nanoseconds. Lengths of time come from monotonic values; a wall time (_wall_ms, since the epoch)
-- is a label. A REAL that is NULL was not a number. Row numbers are never used twice.

-- One row for every start of the monitor.
CREATE TABLE boot (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  booth TEXT NOT NULL,
  started_wall_ms INTEGER NOT NULL,
  started_mono_ns INTEGER NOT NULL,
  -- The kernel's own boot id: monotonic times are comparable between rows that share it.
  machine_boot TEXT
) STRICT;

-- Arc-on time. Without an end word it is still open: welding now, or cut off by a power loss.
CREATE TABLE segment (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  boot INTEGER NOT NULL REFERENCES boot (id),
  trainee TEXT NOT NULL,
  procedure_id TEXT NOT NULL,
  procedure_revision TEXT NOT NULL,
  pass TEXT NOT NULL,
  process TEXT NOT NULL,
  calibrated INTEGER NOT NULL,
  start_wall_ms INTEGER NOT NULL,
  start_mono_ns INTEGER NOT NULL,
  start_s REAL,
  length_s REAL,
  mean_amps REAL,
  mean_volts REAL,
  rms_amps REAL,
  rms_volts REAL,
  energy_j REAL,
  mean_w REAL,
  polarity TEXT NOT NULL,
  -- -1: the source was too slow to count them
  short_circuits INTEGER NOT NULL,
  arc_outs INTEGER NOT NULL,
  green_s REAL,
  amber_s REAL,
  red_s REAL,
  settling_s REAL,
  fault_s REAL,
  missing_s REAL,
  amps_per_count REAL NOT NULL,
  current_zero_count REAL NOT NULL,
  volts_per_count REAL NOT NULL,
  voltage_zero_count REAL NOT NULL,
  pairs_per_second INTEGER NOT NULL,
  end_word TEXT
) STRICT;

CREATE INDEX segment_by_start ON segment (start_wall_ms);
CREATE INDEX segment_open ON segment (id) WHERE end_word IS NULL;

-- The limits a segment was judged by, in the unit of their quantity.
CREATE TABLE segment_window (
  segment_id INTEGER NOT NULL REFERENCES segment (id) ON DELETE CASCADE,
  number INTEGER NOT NULL,
  quantity TEXT NOT NULL,
  low REAL NOT NULL,
  high REAL NOT NULL,
  PRIMARY KEY (segment_id, number)
) STRICT, WITHOUT ROWID;

-- Spells outside a window; start_s counts from the start of the segment.
CREATE TABLE excursion (
  segment_id INTEGER NOT NULL REFERENCES segment (id) ON DELETE CASCADE,
  number INTEGER NOT NULL,
  quantity TEXT NOT NULL,
  side TEXT NOT NULL,
  start_s REAL,
  length_s REAL,
  worst REAL,
  PRIMARY KEY (segment_id, number)
) STRICT, WITHOUT ROWID;

-- Counts at 20 Hz, so that a later calibration can compute the trace again; 17 bytes a point.
CREATE TABLE trace (
  segment_id INTEGER NOT NULL REFERENCES segment (id) ON DELETE CASCADE,
  first_point INTEGER NOT NULL,
  points BLOB NOT NULL,
  PRIMARY KEY (segment_id, first_point)
) STRICT, WITHOUT ROWID;

-- Contacts that did not become segments.
CREATE TABLE touch (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  boot INTEGER NOT NULL REFERENCES boot (id),
  trainee TEXT NOT NULL,
  start_wall_ms INTEGER NOT NULL,
  start_mono_ns INTEGER NOT NULL,
  start_s REAL,
  length_s REAL,
  stuck INTEGER NOT NULL
) STRICT;

CREATE INDEX touch_by_start ON touch (start_wall_ms);

-- Everything else. A length that is NULL: the end was not seen (yet).
CREATE TABLE event (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  boot INTEGER NOT NULL REFERENCES boot (id),
  word TEXT NOT NULL,
  fault INTEGER NOT NULL,
  start_wall_ms INTEGER NOT NULL,
  start_mono_ns INTEGER NOT NULL,
  start_s REAL,
  length_s REAL,
  count INTEGER NOT NULL,
  detail TEXT NOT NULL
) STRICT;

CREATE INDEX event_by_start ON event (start_wall_ms);

-- Written by short commands in processes of their own. An empty trainee code signs out.
CREATE TABLE sign_in (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  wall_ms INTEGER NOT NULL,
  trainee TEXT NOT NULL,
  procedure_id TEXT NOT NULL,
  pass TEXT NOT NULL
) STRICT;
