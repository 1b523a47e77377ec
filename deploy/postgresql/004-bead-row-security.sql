-- Lets each booth add beads and marks of its own only, as row-security.sql does for the other tables.

BEGIN;

ALTER TABLE boothlamp.bead ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_rows ON boothlamp.bead FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);
ALTER TABLE boothlamp.reference_weld ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_rows ON boothlamp.reference_weld FOR INSERT TO boothlamp_booth
  WITH CHECK (current_user = 'booth-' || from_booth);

COMMIT;
