-- What the amps and volts of a run say of its technique, read when it ended. Rows go with their segment
-- when it is removed. Uncertainties (_u) are standard ones, k = 1.

-- One row for each run that was welded to a procedure and was not too long to be read.
CREATE TABLE technique (
  segment_id INTEGER PRIMARY KEY REFERENCES segment (id) ON DELETE CASCADE,
  -- How steady the hand was: volts or amps, in their unit.
  steady_quantity TEXT NOT NULL,
  level REAL,
  spread REAL,
  drift_per_min REAL,
  steady_after_s REAL,
  restarts INTEGER NOT NULL,
  stick_out_mm REAL,
  stick_out_u_mm REAL,
  -- Short-circuit transfer; all NULL if the source was too slow to see it.
  shorts_per_s REAL,
  cycle_s REAL,
  cycle_deviation_s REAL,
  short_s REAL,
  shorted_share REAL,
  irregularity REAL,
  short_amps REAL,
  short_peak_amps REAL,
  transfer TEXT NOT NULL,
  -- Pulses or alternating current, signed, electrode against work; all NULL if there were none.
  swing_hz REAL,
  upper_share REAL,
  upper_amps REAL,
  lower_amps REAL,
  -- Whipping or weaving.
  beat_s REAL,
  beat_strength REAL
) STRICT;

-- Why each excursion was one; the number is the excursion's.
CREATE TABLE excursion_cause (
  segment_id INTEGER NOT NULL REFERENCES segment (id) ON DELETE CASCADE,
  number INTEGER NOT NULL,
  cause TEXT NOT NULL,
  doubt TEXT NOT NULL,
  confidence REAL,
  -- What it was compared with, and how it differed.
  reference TEXT NOT NULL,
  spell_amps REAL,
  spell_volts REAL,
  delta_amps REAL,
  delta_volts REAL,
  delta_amps_u REAL,
  delta_volts_u REAL,
  -- Of the source's curve: A/V on constant current, V/A on constant voltage.
  slope REAL,
  slope_u REAL,
  length_change_mm REAL,
  length_change_u_mm REAL,
  PRIMARY KEY (segment_id, number)
) STRICT, WITHOUT ROWID;
