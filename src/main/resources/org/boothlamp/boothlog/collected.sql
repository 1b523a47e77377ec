-- Only in a log that was collected from booths' folders: whose row each row was. Row numbers of booths
-- collide, so a row keeps its number only if it is free here.
CREATE TABLE IF NOT EXISTS collected_row (
  booth TEXT NOT NULL,
  log TEXT NOT NULL,
  table_name TEXT NOT NULL,
  original_id INTEGER NOT NULL,
  id INTEGER NOT NULL,
  PRIMARY KEY (booth, log, table_name, original_id)
) STRICT, WITHOUT ROWID;

CREATE UNIQUE INDEX IF NOT EXISTS collected_row_by_id ON collected_row (table_name, id);

-- Batches that are in, by name.
CREATE TABLE IF NOT EXISTS collected_batch (name TEXT PRIMARY KEY) STRICT, WITHOUT ROWID;
