-- Lets each booth add rows of its own only: the role of booth B-07 must be named "booth-B-07". Leave
-- this out on a database that has no row-level security: then a booth could add rows in another's name,
-- but still neither read nor change any. To be run again after each new numbered step; again changes
-- nothing.

BEGIN;

ALTER TABLE boothlamp.boot ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.boot;
CREATE POLICY own_rows ON boothlamp.boot FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.sign_in ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.sign_in;
CREATE POLICY own_rows ON boothlamp.sign_in FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.touch ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.touch;
CREATE POLICY own_rows ON boothlamp.touch FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.event ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.event;
CREATE POLICY own_rows ON boothlamp.event FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.segment ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.segment;
CREATE POLICY own_rows ON boothlamp.segment FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.segment_window ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.segment_window;
CREATE POLICY own_rows ON boothlamp.segment_window FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.excursion ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.excursion;
CREATE POLICY own_rows ON boothlamp.excursion FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.trace ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.trace;
CREATE POLICY own_rows ON boothlamp.trace FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.clock_correction ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.clock_correction;
CREATE POLICY own_rows ON boothlamp.clock_correction FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.forgotten ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.forgotten;
CREATE POLICY own_rows ON boothlamp.forgotten FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.calibration ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.calibration;
CREATE POLICY own_rows ON boothlamp.calibration FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.calibration_point ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.calibration_point;
CREATE POLICY own_rows ON boothlamp.calibration_point FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.calibration_discard ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.calibration_discard;
CREATE POLICY own_rows ON boothlamp.calibration_discard FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.calibration_finish ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.calibration_finish;
CREATE POLICY own_rows ON boothlamp.calibration_finish FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.calibration_withdrawal ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.calibration_withdrawal;
CREATE POLICY own_rows ON boothlamp.calibration_withdrawal FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.calibration_check ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.calibration_check;
CREATE POLICY own_rows ON boothlamp.calibration_check FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.bead ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.bead;
CREATE POLICY own_rows ON boothlamp.bead FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.reference_weld ENABLE ROW LEVEL SECURITY;
DROP POLICY IF EXISTS own_rows ON boothlamp.reference_weld;
CREATE POLICY own_rows ON boothlamp.reference_weld FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);

COMMIT;
