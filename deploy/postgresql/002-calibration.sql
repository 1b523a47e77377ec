-- Calibrations of the booths' sensors, with the columns of the booth log. A calibration comes whole, once
-- it has ended; a withdrawal and the checks between two calibrations come as rows of their own. Numbers are
-- those of the booth's log, and so are those in segment.current_calibration and voltage_calibration.

BEGIN;

CREATE TABLE boothlamp.calibration (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  booth text NOT NULL,
  channel text NOT NULL,
  nominal_units_per_count double precision NOT NULL,
  nominal_zero_count double precision NOT NULL,
  full_scale double precision NOT NULL,
  date text NOT NULL,
  started_wall_ms bigint NOT NULL,
  technician text NOT NULL,
  meter_make text NOT NULL,
  meter_serial_number text NOT NULL,
  meter_certificate_number text NOT NULL,
  meter_certificate_date text NOT NULL,
  meter_percent_of_reading double precision NOT NULL,
  meter_counts double precision NOT NULL,
  meter_resolution double precision NOT NULL,
  in_use_units_per_count double precision NOT NULL,
  in_use_zero_count double precision NOT NULL,
  in_use_number bigint NOT NULL,
  class_name text NOT NULL,
  class_share_of_full_scale double precision NOT NULL,
  class_share_of_reading double precision NOT NULL,
  weighting text NOT NULL,
  smallest_levels bigint NOT NULL,
  smallest_span_share double precision NOT NULL,
  largest_linearity_share double precision NOT NULL,
  largest_hysteresis_share double precision NOT NULL,
  smallest_reference_ratio double precision NOT NULL,
  temperature_zero_half_width double precision NOT NULL,
  temperature_gain_half_width double precision NOT NULL,
  certificate_months bigint NOT NULL,
  calibration_months bigint NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

CREATE TABLE boothlamp.calibration_point (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  calibration_id bigint NOT NULL,
  number bigint NOT NULL,
  level double precision,
  direction text NOT NULL,
  mean_counts double precision,
  standard_deviation_counts double precision,
  readings bigint NOT NULL,
  drift_counts double precision,
  reference double precision,
  PRIMARY KEY (from_booth, from_log, calibration_id, number)
);

CREATE TABLE boothlamp.calibration_discard (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  calibration_id bigint NOT NULL,
  number bigint NOT NULL,
  reason text NOT NULL,
  PRIMARY KEY (from_booth, from_log, calibration_id, number)
);

CREATE TABLE boothlamp.calibration_finish (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  calibration_id bigint NOT NULL,
  ending text NOT NULL,
  wall_ms bigint NOT NULL,
  units_per_count double precision,
  zero_count double precision,
  u_constant double precision,
  u_proportional double precision,
  next_due text,
  note text NOT NULL,
  PRIMARY KEY (from_booth, from_log, calibration_id)
);

CREATE TABLE boothlamp.calibration_withdrawal (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  calibration_id bigint NOT NULL,
  from_wall_ms bigint NOT NULL,
  wall_ms bigint NOT NULL,
  technician text NOT NULL,
  reason text NOT NULL,
  PRIMARY KEY (from_booth, from_log, calibration_id)
);

CREATE TABLE boothlamp.calibration_check (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  channel text NOT NULL,
  calibration_number bigint NOT NULL,
  wall_ms bigint NOT NULL,
  technician text NOT NULL,
  meter text NOT NULL,
  reference double precision NOT NULL,
  reading double precision NOT NULL,
  standard_deviation double precision,
  readings bigint NOT NULL,
  error_limit double precision NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

-- Nobody's rows are hidden here: a technician is known by a code as well, but signs what others rely on.
CREATE VIEW boothlamp.current_calibration AS SELECT * FROM boothlamp.calibration;
CREATE VIEW boothlamp.current_calibration_point AS SELECT * FROM boothlamp.calibration_point;
CREATE VIEW boothlamp.current_calibration_discard AS SELECT * FROM boothlamp.calibration_discard;
CREATE VIEW boothlamp.current_calibration_finish AS SELECT * FROM boothlamp.calibration_finish;
CREATE VIEW boothlamp.current_calibration_withdrawal AS SELECT * FROM boothlamp.calibration_withdrawal;
CREATE VIEW boothlamp.current_calibration_check AS SELECT * FROM boothlamp.calibration_check;

GRANT INSERT ON
  boothlamp.calibration, boothlamp.calibration_point, boothlamp.calibration_discard,
  boothlamp.calibration_finish, boothlamp.calibration_withdrawal, boothlamp.calibration_check
  TO boothlamp_booth;

GRANT SELECT ON
  boothlamp.current_calibration, boothlamp.current_calibration_point,
  boothlamp.current_calibration_discard, boothlamp.current_calibration_finish,
  boothlamp.current_calibration_withdrawal, boothlamp.current_calibration_check
  TO boothlamp_instructor;

INSERT INTO boothlamp.schema_step (version) VALUES (2);

COMMIT;
