-- Nothing new. Format 4 was laid with a batch table that knew no rework, and with other texts of its views and a guard,
-- before it was as it stands in 0004; now every file has the same, since each step up lays views and guards anew.

CREATE TABLE batch_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL UNIQUE,
  process TEXT NOT NULL CHECK (process IN ('cold','hot','infusion','blend','rebatch','portion','combine','rework')),
  recipe_version_id INTEGER REFERENCES recipe_version(id),      -- none for a combined drum or a rework
  material_id INTEGER NOT NULL REFERENCES material(id),         -- what it gives
  "on" TEXT NOT NULL,                                           -- the day it is planned for, then made on
  bars_planned INTEGER,
  part_of INTEGER REFERENCES batch(id),                         -- the batch a portion was divided from
  portion TEXT
);
INSERT INTO batch_anew (id, entry_id, code, process, recipe_version_id, material_id, "on", bars_planned, part_of, portion)
  SELECT id, entry_id, code, process, recipe_version_id, material_id, "on", bars_planned, part_of, portion FROM batch;
DROP TABLE batch;
ALTER TABLE batch_anew RENAME TO batch;
