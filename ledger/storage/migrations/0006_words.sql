-- Which words a column may hold is the guards' to say, so that a new word lays no table anew; the tables that held such
-- lists are laid anew once, without them. And what is asked of a stored text gets rows of its own.

CREATE TABLE settings_revision_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  business TEXT NOT NULL, country TEXT NOT NULL, currency TEXT NOT NULL, units TEXT NOT NULL, time_zone TEXT NOT NULL,
  phone TEXT, labour_minor_per_hour INTEGER,
  scale_step_mg INTEGER                  -- the smallest step her scale shows
);
INSERT INTO settings_revision_anew (id, entry_id, business, country, currency, units, time_zone, phone,
                                    labour_minor_per_hour, scale_step_mg)
  SELECT id, entry_id, business, country, currency, units, time_zone, phone, labour_minor_per_hour, scale_step_mg
  FROM settings_revision;
DROP TABLE settings_revision;
ALTER TABLE settings_revision_anew RENAME TO settings_revision;

CREATE TABLE customer_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, kind TEXT NOT NULL
);
INSERT INTO customer_anew (id, entry_id, code, kind) SELECT id, entry_id, code, kind FROM customer;
DROP TABLE customer;
ALTER TABLE customer_anew RENAME TO customer;

CREATE TABLE material_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, kind TEXT NOT NULL
);
INSERT INTO material_anew (id, entry_id, code, kind) SELECT id, entry_id, code, kind FROM material;
DROP TABLE material;
ALTER TABLE material_anew RENAME TO material;

CREATE TABLE material_revision_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER NOT NULL REFERENCES material(id), name TEXT NOT NULL, inci TEXT,
  reference_key TEXT, sap_low_mg_per_kg INTEGER, sap_high_mg_per_kg INTEGER, sap_source TEXT,
  alkali_kind TEXT, purity_ppm INTEGER, density_mg_per_ml INTEGER, note TEXT,
  inci_sodium TEXT, inci_potassium TEXT,               -- the names of its soaps, where they are known
  acid_koh_mg_per_kg INTEGER,                          -- KOH that the pure acid uses up; purity_ppm is its strength
  water_ppm INTEGER                                    -- the share of water in a liquid, or in a dissolved alkali
);
INSERT INTO material_revision_anew (id, entry_id, material_id, name, inci, reference_key, sap_low_mg_per_kg,
                                    sap_high_mg_per_kg, sap_source, alkali_kind, purity_ppm, density_mg_per_ml, note,
                                    inci_sodium, inci_potassium, acid_koh_mg_per_kg, water_ppm)
  SELECT id, entry_id, material_id, name, inci, reference_key, sap_low_mg_per_kg, sap_high_mg_per_kg, sap_source,
         alkali_kind, purity_ppm, density_mg_per_ml, note, inci_sodium, inci_potassium, acid_koh_mg_per_kg, water_ppm
  FROM material_revision;
DROP TABLE material_revision;
ALTER TABLE material_revision_anew RENAME TO material_revision;

CREATE TABLE place_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, name TEXT NOT NULL, kind TEXT NOT NULL
);                                       -- init makes codes: workshop, retained, returns; a stall is added by name
INSERT INTO place_anew (id, entry_id, code, name, kind) SELECT id, entry_id, code, name, kind FROM place;
DROP TABLE place;
ALTER TABLE place_anew RENAME TO place;

CREATE TABLE batch_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL UNIQUE, process TEXT NOT NULL,
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

CREATE TABLE movement_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id), place_id INTEGER NOT NULL REFERENCES place(id),
  "on" TEXT NOT NULL, quantity INTEGER NOT NULL CHECK (quantity <> 0), kind TEXT NOT NULL,
  batch_id INTEGER REFERENCES batch(id),            -- consumed by, or yielded by
  plan_line_id INTEGER REFERENCES plan_line(id),
  customer_id INTEGER REFERENCES customer(id),      -- dispatched to, given to, returned by
  money_minor INTEGER,                              -- takings for sold and dispatched
  note TEXT
);
INSERT INTO movement_anew (id, entry_id, lot_id, place_id, "on", quantity, kind, batch_id, plan_line_id, customer_id,
                           money_minor, note)
  SELECT id, entry_id, lot_id, place_id, "on", quantity, kind, batch_id, plan_line_id, customer_id, money_minor, note
  FROM movement;
DROP TABLE movement;
ALTER TABLE movement_anew RENAME TO movement;

CREATE TABLE decision_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER REFERENCES lot(id), batch_id INTEGER REFERENCES batch(id),
  verdict TEXT NOT NULL, "on" TEXT NOT NULL, by TEXT NOT NULL, reason TEXT,
  CHECK ((lot_id IS NULL) <> (batch_id IS NULL))
);                                       -- the latest decision of a lot is its status; none: quarantine (a raw lot) or curing (bars)
INSERT INTO decision_anew (id, entry_id, lot_id, batch_id, verdict, "on", by, reason)
  SELECT id, entry_id, lot_id, batch_id, verdict, "on", by, reason FROM decision;
DROP TABLE decision;
ALTER TABLE decision_anew RENAME TO decision;

CREATE TABLE equipment_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL, kind TEXT NOT NULL
);
INSERT INTO equipment_anew (id, entry_id, code, kind) SELECT id, entry_id, code, kind FROM equipment;
DROP TABLE equipment;
ALTER TABLE equipment_anew RENAME TO equipment;

CREATE TABLE upkeep_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  kind TEXT NOT NULL, "on" TEXT NOT NULL, by TEXT NOT NULL, what TEXT NOT NULL, next_on TEXT,
  supplier_id INTEGER REFERENCES supplier(id)
);
INSERT INTO upkeep_anew (id, entry_id, kind, "on", by, what, next_on, supplier_id)
  SELECT id, entry_id, kind, "on", by, what, next_on, supplier_id FROM upkeep;
DROP TABLE upkeep;
ALTER TABLE upkeep_anew RENAME TO upkeep;

CREATE TABLE deviation_decision_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  deviation_id INTEGER NOT NULL REFERENCES deviation(id),
  verdict TEXT NOT NULL, "on" TEXT NOT NULL, by TEXT NOT NULL, reason TEXT NOT NULL, done TEXT
);
INSERT INTO deviation_decision_anew (id, entry_id, deviation_id, verdict, "on", by, reason, done)
  SELECT id, entry_id, deviation_id, verdict, "on", by, reason, done FROM deviation_decision;
DROP TABLE deviation_decision;
ALTER TABLE deviation_decision_anew RENAME TO deviation_decision;

-- A recipe version as it was understood when it was added: what lists, cure, cost and recall ask of it. The text itself
-- stays for showing and revising, and is not judged again by a later program.
CREATE TABLE recipe_figures (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_version_id INTEGER NOT NULL REFERENCES recipe_version(id),
  process TEXT NOT NULL, cure_days INTEGER NOT NULL, usable_from_days INTEGER,
  format INTEGER NOT NULL, figures TEXT NOT NULL      -- all of it as JSON, in a numbered format
);

-- What a decision was about: the doubts it was given for, and no later one.
CREATE TABLE decision_doubt (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  decision_id INTEGER NOT NULL REFERENCES decision(id), subject TEXT NOT NULL, doubt TEXT NOT NULL
);

ALTER TABLE label_run ADD COLUMN view_format INTEGER;   -- how `view` is written; none in the first
