-- What people say of runs after the weld: the length of a bead, the mark of a reference weld. The views
-- show what was said last. Run after roles.sql, by the owner; then row-security.sql again, where row-level
-- security exists.

BEGIN;

CREATE TABLE boothlamp.bead (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  segment_id bigint NOT NULL,
  wall_ms bigint NOT NULL,
  entered_by text NOT NULL,
  length_mm double precision NOT NULL,
  note text NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

CREATE TABLE boothlamp.reference_weld (
  from_booth text NOT NULL,
  from_log text NOT NULL,
  id bigint NOT NULL,
  segment_id bigint NOT NULL,
  wall_ms bigint NOT NULL,
  entered_by text NOT NULL,
  -- 0 takes the mark back
  marked bigint NOT NULL,
  words text NOT NULL,
  PRIMARY KEY (from_booth, from_log, id)
);

CREATE INDEX bead_by_segment ON boothlamp.bead (from_booth, from_log, segment_id, id);
CREATE INDEX reference_weld_by_segment
  ON boothlamp.reference_weld (from_booth, from_log, segment_id, id);

CREATE VIEW boothlamp.current_bead AS
  SELECT b.* FROM boothlamp.bead b JOIN boothlamp.current_segment s
    ON s.from_booth = b.from_booth AND s.from_log = b.from_log AND s.id = b.segment_id
  WHERE NOT EXISTS (
    SELECT 1 FROM boothlamp.bead n
    WHERE n.from_booth = b.from_booth AND n.from_log = b.from_log
      AND n.segment_id = b.segment_id AND n.id > b.id);

CREATE VIEW boothlamp.current_reference_weld AS
  SELECT r.* FROM boothlamp.reference_weld r JOIN boothlamp.current_segment s
    ON s.from_booth = r.from_booth AND s.from_log = r.from_log AND s.id = r.segment_id
  WHERE r.marked = 1 AND NOT EXISTS (
    SELECT 1 FROM boothlamp.reference_weld n
    WHERE n.from_booth = r.from_booth AND n.from_log = r.from_log
      AND n.segment_id = r.segment_id AND n.id > r.id);

GRANT INSERT ON boothlamp.bead, boothlamp.reference_weld TO boothlamp_booth;
GRANT SELECT ON boothlamp.current_bead, boothlamp.current_reference_weld TO boothlamp_instructor;

INSERT INTO boothlamp.schema_step (version) VALUES (4);

COMMIT;
