-- Calibrations, and which of them scaled a segment. What is written about a calibration is never changed
-- nor taken away: every table here refuses UPDATE, DELETE and a second row in the place of a first.
-- Amps or volts by the channel where a name has no unit; shares are parts of one.

-- What is known before the first point is taken. A row number is the calibration's number.
CREATE TABLE calibration (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  booth TEXT NOT NULL,
  channel TEXT NOT NULL,
  nominal_units_per_count REAL NOT NULL,
  nominal_zero_count REAL NOT NULL,
  full_scale REAL NOT NULL,
  -- Local day, ISO 8601.
  date TEXT NOT NULL,
  started_wall_ms INTEGER NOT NULL,
  technician TEXT NOT NULL,
  meter_make TEXT NOT NULL,
  meter_serial_number TEXT NOT NULL,
  meter_certificate_number TEXT NOT NULL,
  meter_certificate_date TEXT NOT NULL,
  meter_percent_of_reading REAL NOT NULL,
  meter_counts REAL NOT NULL,
  meter_resolution REAL NOT NULL,
  -- The scale until then; number 0: the nominal one.
  in_use_units_per_count REAL NOT NULL,
  in_use_zero_count REAL NOT NULL,
  in_use_number INTEGER NOT NULL,
  class_name TEXT NOT NULL,
  class_share_of_full_scale REAL NOT NULL,
  class_share_of_reading REAL NOT NULL,
  weighting TEXT NOT NULL,
  smallest_levels INTEGER NOT NULL,
  smallest_span_share REAL NOT NULL,
  largest_linearity_share REAL NOT NULL,
  largest_hysteresis_share REAL NOT NULL,
  smallest_reference_ratio REAL NOT NULL,
  temperature_zero_half_width REAL NOT NULL,
  temperature_gain_half_width REAL NOT NULL,
  certificate_months INTEGER NOT NULL,
  calibration_months INTEGER NOT NULL
) STRICT;

-- Points as they were taken, numbered from 0.
CREATE TABLE calibration_point (
  calibration_id INTEGER NOT NULL REFERENCES calibration (id),
  number INTEGER NOT NULL,
  level REAL,
  direction TEXT NOT NULL,
  mean_counts REAL,
  standard_deviation_counts REAL,
  readings INTEGER NOT NULL,
  drift_counts REAL,
  reference REAL,
  PRIMARY KEY (calibration_id, number)
) STRICT, WITHOUT ROWID;

-- Points that stay in the record and out of the fit.
CREATE TABLE calibration_discard (
  calibration_id INTEGER NOT NULL,
  number INTEGER NOT NULL,
  reason TEXT NOT NULL,
  PRIMARY KEY (calibration_id, number),
  FOREIGN KEY (calibration_id, number) REFERENCES calibration_point (calibration_id, number)
) STRICT, WITHOUT ROWID;

-- How a calibration ended; scale, U and due date only if it was accepted.
CREATE TABLE calibration_finish (
  calibration_id INTEGER PRIMARY KEY REFERENCES calibration (id),
  ending TEXT NOT NULL,
  wall_ms INTEGER NOT NULL,
  units_per_count REAL,
  zero_count REAL,
  -- U (k = 2): constant + proportional * |reading|
  u_constant REAL,
  u_proportional REAL,
  next_due TEXT,
  note TEXT NOT NULL
) STRICT;

-- Accepted calibrations that are not trusted any more from a time of day on.
CREATE TABLE calibration_withdrawal (
  calibration_id INTEGER PRIMARY KEY REFERENCES calibration_finish (calibration_id),
  from_wall_ms INTEGER NOT NULL,
  wall_ms INTEGER NOT NULL,
  technician TEXT NOT NULL,
  reason TEXT NOT NULL
) STRICT;

-- One-point checks between two calibrations; calibration_number 0: there was none.
CREATE TABLE calibration_check (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  channel TEXT NOT NULL,
  calibration_number INTEGER NOT NULL,
  wall_ms INTEGER NOT NULL,
  technician TEXT NOT NULL,
  meter TEXT NOT NULL,
  reference REAL NOT NULL,
  reading REAL NOT NULL,
  standard_deviation REAL,
  readings INTEGER NOT NULL,
  error_limit REAL NOT NULL
) STRICT;

-- NULL: the nominal scale. No foreign key: a run is kept whatever became of the number.
ALTER TABLE segment ADD COLUMN current_calibration INTEGER;
ALTER TABLE segment ADD COLUMN voltage_calibration INTEGER;

-- Counts taken off the current because the clamp's zero was seen there; NULL: it was not seen.
ALTER TABLE segment ADD COLUMN current_offset_counts INTEGER;

CREATE TRIGGER calibration_kept BEFORE UPDATE ON calibration
BEGIN SELECT RAISE(ABORT, 'a calibration is never changed'); END;
CREATE TRIGGER calibration_stays BEFORE DELETE ON calibration
BEGIN SELECT RAISE(ABORT, 'a calibration is never deleted'); END;
CREATE TRIGGER calibration_new BEFORE INSERT ON calibration
WHEN NEW.id IN (SELECT id FROM calibration)
BEGIN SELECT RAISE(ABORT, 'a calibration is never replaced'); END;

CREATE TRIGGER calibration_point_kept BEFORE UPDATE ON calibration_point
BEGIN SELECT RAISE(ABORT, 'a point of a calibration is never changed'); END;
CREATE TRIGGER calibration_point_stays BEFORE DELETE ON calibration_point
BEGIN SELECT RAISE(ABORT, 'a point of a calibration is never deleted'); END;
CREATE TRIGGER calibration_point_new BEFORE INSERT ON calibration_point
WHEN EXISTS (SELECT 1 FROM calibration_finish WHERE calibration_id = NEW.calibration_id)
  OR EXISTS (SELECT 1 FROM calibration_point
    WHERE calibration_id = NEW.calibration_id AND number = NEW.number)
BEGIN SELECT RAISE(ABORT, 'a calibration that has ended takes no point, and no point is replaced'); END;

CREATE TRIGGER calibration_discard_kept BEFORE UPDATE ON calibration_discard
BEGIN SELECT RAISE(ABORT, 'a reason is never changed'); END;
CREATE TRIGGER calibration_discard_stays BEFORE DELETE ON calibration_discard
BEGIN SELECT RAISE(ABORT, 'a reason is never deleted'); END;
CREATE TRIGGER calibration_discard_new BEFORE INSERT ON calibration_discard
WHEN EXISTS (SELECT 1 FROM calibration_finish WHERE calibration_id = NEW.calibration_id)
  OR EXISTS (SELECT 1 FROM calibration_discard
    WHERE calibration_id = NEW.calibration_id AND number = NEW.number)
BEGIN SELECT RAISE(ABORT, 'a point is thrown away once, before its calibration ends'); END;

CREATE TRIGGER calibration_finish_kept BEFORE UPDATE ON calibration_finish
BEGIN SELECT RAISE(ABORT, 'the end of a calibration is never changed'); END;
CREATE TRIGGER calibration_finish_stays BEFORE DELETE ON calibration_finish
BEGIN SELECT RAISE(ABORT, 'the end of a calibration is never deleted'); END;
CREATE TRIGGER calibration_finish_new BEFORE INSERT ON calibration_finish
WHEN NEW.calibration_id IN (SELECT calibration_id FROM calibration_finish)
BEGIN SELECT RAISE(ABORT, 'a calibration ends once'); END;

CREATE TRIGGER calibration_withdrawal_kept BEFORE UPDATE ON calibration_withdrawal
BEGIN SELECT RAISE(ABORT, 'a withdrawal is never changed'); END;
CREATE TRIGGER calibration_withdrawal_stays BEFORE DELETE ON calibration_withdrawal
BEGIN SELECT RAISE(ABORT, 'a withdrawal is never deleted'); END;
CREATE TRIGGER calibration_withdrawal_new BEFORE INSERT ON calibration_withdrawal
WHEN NEW.calibration_id IN (SELECT calibration_id FROM calibration_withdrawal)
BEGIN SELECT RAISE(ABORT, 'a calibration is withdrawn once'); END;

CREATE TRIGGER calibration_check_kept BEFORE UPDATE ON calibration_check
BEGIN SELECT RAISE(ABORT, 'a check is never changed'); END;
CREATE TRIGGER calibration_check_stays BEFORE DELETE ON calibration_check
BEGIN SELECT RAISE(ABORT, 'a check is never deleted'); END;
CREATE TRIGGER calibration_check_new BEFORE INSERT ON calibration_check
WHEN NEW.id IN (SELECT id FROM calibration_check)
BEGIN SELECT RAISE(ABORT, 'a check is never replaced'); END;
