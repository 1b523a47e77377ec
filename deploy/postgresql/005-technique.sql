-- What the amps and volts of a run say of its technique. Uncertainties (_u) are standard ones, k = 1. Run
-- after roles.sql, by the owner; then row-security.sql again, where row-level security exists.

BEGIN;

-- One row for each run that was welded to a procedure and was not too long to be read.
CREATE TABLE boothlamp.technique (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  segment_id bigint NOT NULL,
  -- How steady the hand was: volts or amps, in their unit.
  steady_quantity text NOT NULL,
  level double precision,
  spread double precision,
  drift_per_min double precision,
  steady_after_s double precision,
  restarts bigint NOT NULL,
  stick_out_mm double precision,
  stick_out_u_mm double precision,
  -- Short-circuit transfer; all NULL if the source was too slow to see it.
  shorts_per_s double precision,
  cycle_s double precision,
  cycle_deviation_s double precision,
  short_s double precision,
  shorted_share double precision,
  irregularity double precision,
  short_amps double precision,
  short_peak_amps double precision,
  transfer text NOT NULL,
  -- Pulses or alternating current, signed, electrode against work; all NULL if there were none.
  swing_hz double precision,
  upper_share double precision,
  upper_amps double precision,
  lower_amps double precision,
  -- Whipping or weaving.
  beat_s double precision,
  beat_strength double precision,
  PRIMARY KEY (from_booth, from_log, segment_id)
);

-- Why each excursion was one; the number is the excursion's.
CREATE TABLE boothlamp.excursion_cause (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  segment_id bigint NOT NULL,
  number bigint NOT NULL,
  cause text NOT NULL,
  doubt text NOT NULL,
  confidence double precision,
  -- What it was compared with, and how it differed.
  reference text NOT NULL,
  spell_amps double precision,
  spell_volts double precision,
  delta_amps double precision,
  delta_volts double precision,
  delta_amps_u double precision,
  delta_volts_u double precision,
  -- Of the source's curve: A/V on constant current, V/A on constant voltage.
  slope double precision,
  slope_u double precision,
  length_change_mm double precision,
  length_change_u_mm double precision,
  PRIMARY KEY (from_booth, from_log, segment_id, number)
);

CREATE VIEW boothlamp.current_technique AS
  SELECT t.* FROM boothlamp.technique t JOIN boothlamp.current_segment s
    ON s.from_booth = t.from_booth AND s.from_log = t.from_log AND s.id = t.segment_id;

CREATE VIEW boothlamp.current_excursion_cause AS
  SELECT c.* FROM boothlamp.excursion_cause c JOIN boothlamp.current_segment s
    ON s.from_booth = c.from_booth AND s.from_log = c.from_log AND s.id = c.segment_id;

GRANT INSERT ON boothlamp.technique, boothlamp.excursion_cause TO boothlamp_booth;
GRANT SELECT ON boothlamp.current_technique, boothlamp.current_excursion_cause
  TO boothlamp_instructor;

INSERT INTO boothlamp.schema_step (version) VALUES (5);

COMMIT;
