-- Time of day in booths without a clock that runs while the power is off: it becomes known later, and what
-- was sent before is put right by rows of its own. Rows stay as they were sent; the views apply the latest
-- correction of a start of the monitor, in the columns corrected_... and time_known.

BEGIN;

ALTER TABLE boothlamp.boot ADD COLUMN clock_trusted bigint NOT NULL DEFAULT 1;
ALTER TABLE boothlamp.sign_in ADD COLUMN mono_ns bigint;
ALTER TABLE boothlamp.sign_in ADD COLUMN machine_boot text;

CREATE TABLE boothlamp.clock_correction (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  boot bigint NOT NULL,
  corrected_mono_ns bigint NOT NULL,
  from_wall_ms bigint NOT NULL,
  to_wall_ms bigint NOT NULL,
  offset_ms bigint NOT NULL,
  trusted bigint NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

-- By the latest correction of each start: the time of day at which its monotonic clock stood at 0.
CREATE VIEW boothlamp.start_clock AS
  SELECT DISTINCT ON (from_booth, from_log, boot) from_booth, from_log, boot, trusted,
    to_wall_ms - corrected_mono_ns / 1000000 AS zero_wall_ms
  FROM boothlamp.clock_correction
  ORDER BY from_booth, from_log, boot, corrected_mono_ns DESC;

CREATE OR REPLACE VIEW boothlamp.current_boot AS
  SELECT
    s.from_booth, s.from_log, s.id, s.booth,
    coalesce(c.zero_wall_ms + s.started_mono_ns / 1000000, s.started_wall_ms) AS started_wall_ms,
    s.started_mono_ns, s.machine_boot, coalesce(c.trusted, s.clock_trusted) AS time_known
  FROM boothlamp.boot s LEFT JOIN boothlamp.start_clock c
    ON c.from_booth = s.from_booth AND c.from_log = s.from_log AND c.boot = s.id;

CREATE OR REPLACE VIEW boothlamp.current_segment AS
  SELECT
    s.from_booth, s.from_log, s.id, s.boot, s.trainee, s.procedure_id, s.procedure_revision, s.pass, s.process,
    s.calibrated, coalesce(c.zero_wall_ms + s.start_mono_ns / 1000000, s.start_wall_ms) AS start_wall_ms,
    s.start_mono_ns, s.start_s, s.length_s, s.mean_amps, s.mean_volts, s.rms_amps, s.rms_volts, s.energy_j,
    s.mean_w, s.polarity, s.short_circuits, s.arc_outs, s.green_s, s.amber_s, s.red_s, s.settling_s, s.fault_s,
    s.missing_s, s.amps_per_count, s.current_zero_count, s.volts_per_count, s.voltage_zero_count,
    s.pairs_per_second, s.current_calibration, s.voltage_calibration, s.current_offset_counts, s.end_word,
    coalesce(c.trusted, b.clock_trusted, 1) AS time_known
  FROM boothlamp.segment s
    LEFT JOIN boothlamp.boot b
      ON b.from_booth = s.from_booth AND b.from_log = s.from_log AND b.id = s.boot
    LEFT JOIN boothlamp.start_clock c
      ON c.from_booth = s.from_booth AND c.from_log = s.from_log AND c.boot = s.boot
  WHERE NOT EXISTS (
    SELECT 1 FROM boothlamp.forgotten f
    WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
      AND f.trainee = s.trainee AND s.id <= f.last_segment);

CREATE OR REPLACE VIEW boothlamp.current_touch AS
  SELECT
    s.from_booth, s.from_log, s.id, s.boot, s.trainee,
    coalesce(c.zero_wall_ms + s.start_mono_ns / 1000000, s.start_wall_ms) AS start_wall_ms, s.start_mono_ns,
    s.start_s, s.length_s, s.stuck, coalesce(c.trusted, b.clock_trusted, 1) AS time_known
  FROM boothlamp.touch s
    LEFT JOIN boothlamp.boot b
      ON b.from_booth = s.from_booth AND b.from_log = s.from_log AND b.id = s.boot
    LEFT JOIN boothlamp.start_clock c
      ON c.from_booth = s.from_booth AND c.from_log = s.from_log AND c.boot = s.boot
  WHERE NOT EXISTS (
    SELECT 1 FROM boothlamp.forgotten f
    WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
      AND f.trainee = s.trainee AND s.id <= f.last_touch);

CREATE OR REPLACE VIEW boothlamp.current_event AS
  SELECT
    s.from_booth, s.from_log, s.id, s.boot, s.word, s.fault,
    coalesce(c.zero_wall_ms + s.start_mono_ns / 1000000, s.start_wall_ms) AS start_wall_ms, s.start_mono_ns,
    s.start_s, s.length_s, s.count, s.detail, coalesce(c.trusted, b.clock_trusted, 1) AS time_known
  FROM boothlamp.event s
    LEFT JOIN boothlamp.boot b
      ON b.from_booth = s.from_booth AND b.from_log = s.from_log AND b.id = s.boot
    LEFT JOIN boothlamp.start_clock c
      ON c.from_booth = s.from_booth AND c.from_log = s.from_log AND c.boot = s.boot
  WHERE NOT EXISTS (
    SELECT 1 FROM boothlamp.forgotten f
    WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
      AND s.word = 'sign-in refused' AND s.id <= f.last_event
      AND substr(s.detail, 1, length(f.trainee) + 1) = f.trainee || ':');

-- A sign-in is known by the machine's own start, which several starts of the monitor can share.
CREATE OR REPLACE VIEW boothlamp.current_sign_in AS
  SELECT
    s.from_booth, s.from_log, s.id,
    coalesce((
      SELECT k.to_wall_ms - k.corrected_mono_ns / 1000000 + s.mono_ns / 1000000
      FROM boothlamp.clock_correction k JOIN boothlamp.boot b
        ON b.from_booth = k.from_booth AND b.from_log = k.from_log AND b.id = k.boot
      WHERE k.from_booth = s.from_booth AND k.from_log = s.from_log AND b.machine_boot = s.machine_boot
      ORDER BY k.corrected_mono_ns DESC LIMIT 1), s.wall_ms) AS wall_ms,
    s.trainee, s.procedure_id, s.pass, s.mono_ns, s.machine_boot
  FROM boothlamp.sign_in s
  WHERE NOT EXISTS (
    SELECT 1 FROM boothlamp.forgotten f
    WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
      AND f.trainee = s.trainee AND s.id <= f.last_sign_in);

GRANT INSERT ON boothlamp.clock_correction TO boothlamp_booth;

INSERT INTO boothlamp.schema_step (version) VALUES (3);

COMMIT;
