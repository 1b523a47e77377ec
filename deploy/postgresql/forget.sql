-- Removes the rows of trainees who are to be forgotten for good. Run by the schema's owner, every night:
-- booths may only ask. The request stays, so that a booth that sends late changes nothing.

BEGIN;

DELETE FROM boothlamp.trace t USING boothlamp.segment s, boothlamp.forgotten f
  WHERE s.from_booth = t.from_booth AND s.from_log = t.from_log AND s.id = t.segment_id
    AND f.from_booth = s.from_booth AND f.from_log = s.from_log
    AND f.trainee = s.trainee AND s.id <= f.last_segment;
DELETE FROM boothlamp.excursion t USING boothlamp.segment s, boothlamp.forgotten f
  WHERE s.from_booth = t.from_booth AND s.from_log = t.from_log AND s.id = t.segment_id
    AND f.from_booth = s.from_booth AND f.from_log = s.from_log
    AND f.trainee = s.trainee AND s.id <= f.last_segment;
DELETE FROM boothlamp.segment_window t USING boothlamp.segment s, boothlamp.forgotten f
  WHERE s.from_booth = t.from_booth AND s.from_log = t.from_log AND s.id = t.segment_id
    AND f.from_booth = s.from_booth AND f.from_log = s.from_log
    AND f.trainee = s.trainee AND s.id <= f.last_segment;
DELETE FROM boothlamp.bead t USING boothlamp.segment s, boothlamp.forgotten f
  WHERE s.from_booth = t.from_booth AND s.from_log = t.from_log AND s.id = t.segment_id
    AND f.from_booth = s.from_booth AND f.from_log = s.from_log
    AND f.trainee = s.trainee AND s.id <= f.last_segment;
DELETE FROM boothlamp.reference_weld t USING boothlamp.segment s, boothlamp.forgotten f
  WHERE s.from_booth = t.from_booth AND s.from_log = t.from_log AND s.id = t.segment_id
    AND f.from_booth = s.from_booth AND f.from_log = s.from_log
    AND f.trainee = s.trainee AND s.id <= f.last_segment;
DELETE FROM boothlamp.segment s USING boothlamp.forgotten f
  WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
    AND f.trainee = s.trainee AND s.id <= f.last_segment;
DELETE FROM boothlamp.touch s USING boothlamp.forgotten f
  WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
    AND f.trainee = s.trainee AND s.id <= f.last_touch;
DELETE FROM boothlamp.sign_in s USING boothlamp.forgotten f
  WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
    AND f.trainee = s.trainee AND s.id <= f.last_sign_in;
DELETE FROM boothlamp.event s USING boothlamp.forgotten f
  WHERE f.from_booth = s.from_booth AND f.from_log = s.from_log
    AND s.word = 'sign-in refused' AND s.id <= f.last_event
    AND substr(s.detail, 1, length(f.trainee) + 1) = f.trainee || ':';

COMMIT;
