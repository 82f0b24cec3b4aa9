-- What the bench, the cure and the release need: corrected readings, deviations, equipment, upkeep, checks.

-- Bars that may not leave may be booked back in as mass, by a batch of its own; so its table is laid anew.
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

CREATE TABLE equipment (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, kind TEXT NOT NULL CHECK (kind IN ('scale','thermometer','pH meter'))
);
CREATE TABLE equipment_revision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  equipment_id INTEGER NOT NULL REFERENCES equipment(id), name TEXT NOT NULL,
  every_days INTEGER,                    -- a check is due so many days after the last
  expected INTEGER, tolerance INTEGER,   -- what it is tried against: mg, thousandths of a degree, thousandths of pH
  retired INTEGER NOT NULL CHECK (retired IN (0,1)), note TEXT
);
CREATE TABLE equipment_check (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  equipment_id INTEGER NOT NULL REFERENCES equipment(id), "on" TEXT NOT NULL, by TEXT NOT NULL,
  expected INTEGER NOT NULL, found INTEGER NOT NULL, tolerance INTEGER NOT NULL,
  passed INTEGER NOT NULL CHECK (passed IN (0,1)), note TEXT
);
CREATE INDEX equipment_check_of ON equipment_check (equipment_id, "on");

-- Cleaning, training, the approval of a supplier, the yearly self-inspection: short dated notes.
CREATE TABLE upkeep (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  kind TEXT NOT NULL CHECK (kind IN ('cleaning','training','supplier approval','self-inspection')),
  "on" TEXT NOT NULL, by TEXT NOT NULL, what TEXT NOT NULL, next_on TEXT, supplier_id INTEGER REFERENCES supplier(id)
);

ALTER TABLE reading ADD COLUMN corrects INTEGER REFERENCES reading(id);        -- the reading it stands in for
ALTER TABLE reading ADD COLUMN mark TEXT;                                      -- which marked bar was weighed
ALTER TABLE reading ADD COLUMN method TEXT;                                    -- of a pH: method, dilution, calibration
ALTER TABLE reading ADD COLUMN equipment_id INTEGER REFERENCES equipment(id);  -- what it was read with
CREATE INDEX reading_batch ON reading (batch_id, what, "on");

-- What lay outside a limit, or went wrong; open until a person decides.
CREATE TABLE deviation (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), "on" TEXT NOT NULL,
  subject TEXT NOT NULL,                 -- which limit, or 'seen' for what she reports herself
  found TEXT NOT NULL, done TEXT         -- what it was and by how much; what was done about it
);
CREATE INDEX deviation_batch ON deviation (batch_id);
CREATE TABLE deviation_decision (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  deviation_id INTEGER NOT NULL REFERENCES deviation(id),
  verdict TEXT NOT NULL CHECK (verdict IN ('accepted','rework','reject','corrected')),  -- corrected: the reading was
  "on" TEXT NOT NULL, by TEXT NOT NULL, reason TEXT NOT NULL, done TEXT
);
CREATE INDEX deviation_decision_of ON deviation_decision (deviation_id);

-- What was looked at before the bars were released, and the samples set aside.
CREATE TABLE finished_check (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), "on" TEXT NOT NULL, by TEXT NOT NULL,
  what TEXT NOT NULL, found TEXT NOT NULL, good INTEGER NOT NULL CHECK (good IN (0,1))
);
CREATE TABLE retained_sample (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), "on" TEXT NOT NULL, bars INTEGER NOT NULL CHECK (bars > 0),
  kept_at TEXT NOT NULL, keep_until TEXT NOT NULL
);

ALTER TABLE complaint ADD COLUMN bought_on TEXT;                                 -- where the code is not known
ALTER TABLE complaint ADD COLUMN place_id INTEGER REFERENCES place(id);          -- the stall it was bought at
ALTER TABLE complaint ADD COLUMN customer_id INTEGER REFERENCES customer(id);    -- the shop it was bought at

-- What was done about a complaint; the latest word on its seriousness and batch counts.
CREATE TABLE complaint_step (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  complaint_id INTEGER NOT NULL REFERENCES complaint(id), "on" TEXT NOT NULL, by TEXT NOT NULL, action TEXT NOT NULL,
  serious INTEGER CHECK (serious IN (0,1)), decided_by TEXT, lot_id INTEGER REFERENCES lot(id),
  closes INTEGER NOT NULL CHECK (closes IN (0,1))
);
