-- What booths send, one table a kind, with the columns of the booth log (start psql in this folder:
-- see README.md). A row is known by the booth it came from, that booth's log, and its number there.
-- Rows are only ever added: whatever changes later is a row of its own, and the views apply it.
--
-- Nothing in here but tables, views and rights, so that distributed databases that speak PostgreSQL's
-- protocol take it too. No foreign keys: a row that was set aside must not keep out the others.

BEGIN;

CREATE SCHEMA boothlamp;

-- Steps of this folder that were taken.
CREATE TABLE boothlamp.schema_step (version bigint PRIMARY KEY, taken timestamptz NOT NULL DEFAULT now());

CREATE TABLE boothlamp.boot (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  booth text NOT NULL,
  started_wall_ms bigint NOT NULL,
  started_mono_ns bigint NOT NULL,
  machine_boot text,
  PRIMARY KEY (from_booth, from_log, id)
);

CREATE TABLE boothlamp.sign_in (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  wall_ms bigint NOT NULL,
  trainee text NOT NULL,
  procedure_id text NOT NULL,
  pass text NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

CREATE TABLE boothlamp.touch (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  boot bigint NOT NULL,
  trainee text NOT NULL,
  start_wall_ms bigint NOT NULL,
  start_mono_ns bigint NOT NULL,
  start_s double precision,
  length_s double precision,
  stuck bigint NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

CREATE TABLE boothlamp.event (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  boot bigint NOT NULL,
  word text NOT NULL,
  fault bigint NOT NULL,
  start_wall_ms bigint NOT NULL,
  start_mono_ns bigint NOT NULL,
  start_s double precision,
  length_s double precision,
  count bigint NOT NULL,
  detail text NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

CREATE TABLE boothlamp.segment (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  boot bigint NOT NULL,
  trainee text NOT NULL,
  procedure_id text NOT NULL,
  procedure_revision text NOT NULL,
  pass text NOT NULL,
  process text NOT NULL,
  calibrated bigint NOT NULL,
  start_wall_ms bigint NOT NULL,
  start_mono_ns bigint NOT NULL,
  start_s double precision,
  length_s double precision,
  mean_amps double precision,
  mean_volts double precision,
  rms_amps double precision,
  rms_volts double precision,
  energy_j double precision,
  mean_w double precision,
  polarity text NOT NULL,
  short_circuits bigint NOT NULL,
  arc_outs bigint NOT NULL,
  green_s double precision,
  amber_s double precision,
  red_s double precision,
  settling_s double precision,
  fault_s double precision,
  missing_s double precision,
  amps_per_count double precision NOT NULL,
  current_zero_count double precision NOT NULL,
  volts_per_count double precision NOT NULL,
  voltage_zero_count double precision NOT NULL,
  pairs_per_second bigint NOT NULL,
  current_calibration bigint,
  voltage_calibration bigint,
  current_offset_counts bigint,
  end_word text NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

CREATE TABLE boothlamp.segment_window (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  segment_id bigint NOT NULL,
  number bigint NOT NULL,
  quantity text NOT NULL,
  low double precision NOT NULL,
  high double precision NOT NULL,
  PRIMARY KEY (from_booth, from_log, segment_id, number)
);

CREATE TABLE boothlamp.excursion (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  segment_id bigint NOT NULL,
  number bigint NOT NULL,
  quantity text NOT NULL,
  side text NOT NULL,
  start_s double precision,
  length_s double precision,
  worst double precision,
  PRIMARY KEY (from_booth, from_log, segment_id, number)
);

-- Counts at 20 Hz, 17 bytes a point, little-endian: float32 mean, int16 lowest, int16 highest current
-- count; the same for voltage; one byte with the lamp's signal.
CREATE TABLE boothlamp.trace (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  segment_id bigint NOT NULL,
  first_point bigint NOT NULL,
  points bytea NOT NULL,
  PRIMARY KEY (from_booth, from_log, segment_id, first_point)
);

-- Trainees whose rows were removed in their booth, up to these numbers.
CREATE TABLE boothlamp.forgotten (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  wall_ms bigint NOT NULL,
  trainee text NOT NULL,
  last_segment bigint NOT NULL,
  last_touch bigint NOT NULL,
  last_sign_in bigint NOT NULL,
  last_event bigint NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

CREATE INDEX segment_by_start ON boothlamp.segment (start_wall_ms);
CREATE INDEX touch_by_start ON boothlamp.touch (start_wall_ms);
CREATE INDEX event_by_start ON boothlamp.event (start_wall_ms);

-- What is read: without the rows of trainees who are to be forgotten, from the moment the request
-- arrives. forget.sql removes those rows for good.

CREATE VIEW boothlamp.current_boot AS SELECT * FROM boothlamp.boot;

CREATE VIEW boothlamp.current_segment AS
  SELECT * FROM boothlamp.segment s WHERE NOT EXISTS (
    SELECT 1 FROM boothlamp.forgotten f
    WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
      AND f.trainee = s.trainee AND s.id <= f.last_segment);

CREATE VIEW boothlamp.current_segment_window AS
  SELECT w.* FROM boothlamp.segment_window w JOIN boothlamp.current_segment s
    ON s.from_booth = w.from_booth AND s.from_log = w.from_log AND s.id = w.segment_id;

CREATE VIEW boothlamp.current_excursion AS
  SELECT e.* FROM boothlamp.excursion e JOIN boothlamp.current_segment s
    ON s.from_booth = e.from_booth AND s.from_log = e.from_log AND s.id = e.segment_id;

CREATE VIEW boothlamp.current_trace AS
  SELECT t.* FROM boothlamp.trace t JOIN boothlamp.current_segment s
    ON s.from_booth = t.from_booth AND s.from_log = t.from_log AND s.id = t.segment_id;

CREATE VIEW boothlamp.current_touch AS
  SELECT * FROM boothlamp.touch s WHERE NOT EXISTS (
    SELECT 1 FROM boothlamp.forgotten f
    WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
      AND f.trainee = s.trainee AND s.id <= f.last_touch);

CREATE VIEW boothlamp.current_sign_in AS
  SELECT * FROM boothlamp.sign_in s WHERE NOT EXISTS (
    SELECT 1 FROM boothlamp.forgotten f
    WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
      AND f.trainee = s.trainee AND s.id <= f.last_sign_in);

CREATE VIEW boothlamp.current_event AS
  SELECT * FROM boothlamp.event s WHERE NOT EXISTS (
    SELECT 1 FROM boothlamp.forgotten f
    WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
      AND s.word = 'sign-in refused' AND s.id <= f.last_event
      AND substr(s.detail, 1, length(f.trainee) + 1) = f.trainee || ':');

INSERT INTO boothlamp.schema_step (version) VALUES (1);

COMMIT;
