-- Which log this is. Row numbers begin anew when a card or a disk is replaced: where several logs come
-- together, rows of the old log and of the new one must not be taken for each other.
CREATE TABLE log_identity (log TEXT NOT NULL) STRICT;
INSERT INTO log_identity VALUES (lower(hex(randomblob(8))));

-- Trainees whose rows were removed on request, and the last row of each kind that it concerned. Sent
-- on like every other row, so that a server and collected logs follow.
CREATE TABLE forgotten (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  wall_ms INTEGER NOT NULL,
  trainee TEXT NOT NULL,
  last_segment INTEGER NOT NULL,
  last_touch INTEGER NOT NULL,
  last_sign_in INTEGER NOT NULL,
  last_event INTEGER NOT NULL
) STRICT;
