-- What the order of labels needs: approved by a person, printed, applied, counted.

CREATE TABLE label_approval (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), market TEXT NOT NULL, "on" TEXT NOT NULL, by TEXT NOT NULL,
  text TEXT NOT NULL, text_digest TEXT NOT NULL
);

ALTER TABLE label_run ADD COLUMN view TEXT;            -- all that was set, as JSON, for a reprint
ALTER TABLE label_run ADD COLUMN layout_source TEXT;   -- the layout and the sheet as their files stood
ALTER TABLE label_run ADD COLUMN sheet_source TEXT;
ALTER TABLE label_run ADD COLUMN start INTEGER;        -- the first position on the sheet
ALTER TABLE label_run ADD COLUMN reprint_of INTEGER REFERENCES label_run(id);

-- What became of the labels of one run; the latest counts.
CREATE TABLE label_count (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  label_run_id INTEGER NOT NULL REFERENCES label_run(id), "on" TEXT NOT NULL,
  used INTEGER NOT NULL CHECK (used >= 0), spoiled INTEGER NOT NULL CHECK (spoiled >= 0),
  returned INTEGER NOT NULL CHECK (returned >= 0)
);
CREATE INDEX label_count_run ON label_count (label_run_id);
