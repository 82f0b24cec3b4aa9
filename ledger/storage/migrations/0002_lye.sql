-- What the lye, the composition of the soap and the skin limits need.

ALTER TABLE settings_revision ADD COLUMN scale_step_mg INTEGER;   -- the smallest step her scale shows

ALTER TABLE material_revision ADD COLUMN inci_sodium TEXT;        -- the name of its sodium soap, where one is known
ALTER TABLE material_revision ADD COLUMN inci_potassium TEXT;
ALTER TABLE material_revision ADD COLUMN acid_koh_mg_per_kg INTEGER;   -- KOH that the pure acid uses up; purity_ppm is its strength
ALTER TABLE material_revision ADD COLUMN water_ppm INTEGER;       -- the share of water in a liquid, or in a dissolved alkali

ALTER TABLE lot ADD COLUMN purity_high_ppm INTEGER;               -- the top of a certificate's range; purity_ppm is its foot
ALTER TABLE lot ADD COLUMN water_ppm INTEGER;

ALTER TABLE plan_line ADD COLUMN in_demand INTEGER CHECK (in_demand IN (0,1));   -- 0: a fat or an acid the lye is not reckoned for

-- A new target for a line after a mis-weighing was corrected; the latest counts.
CREATE TABLE plan_target (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  plan_line_id INTEGER NOT NULL REFERENCES plan_line(id),
  target INTEGER NOT NULL, low INTEGER NOT NULL, high INTEGER NOT NULL
);
CREATE INDEX plan_target_line ON plan_target (plan_line_id);

-- What an oil or a fragrance contains, by name, as its supplier states it for a lot or in general.
CREATE TABLE constituent (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER NOT NULL REFERENCES material(id), lot_id INTEGER REFERENCES lot(id),
  name TEXT NOT NULL, share_ppm INTEGER NOT NULL, source TEXT NOT NULL
);
CREATE INDEX constituent_material ON constituent (material_id, lot_id);

-- The highest share in the finished product that a certificate allows, of one material or of one constituent.
CREATE TABLE skin_limit (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER REFERENCES material(id), constituent TEXT, limit_ppm INTEGER NOT NULL,
  certificate TEXT NOT NULL, amendment TEXT, category TEXT NOT NULL, dated TEXT NOT NULL,
  CHECK ((material_id IS NULL) <> (constituent IS NULL))
);

-- The safety assessment of a product, as its text was given; the latest counts.
CREATE TABLE assessment (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_id INTEGER NOT NULL REFERENCES recipe(id), source TEXT NOT NULL
);

-- A batch may be a blend, or a portion of another divided at trace; so its table is laid anew.
CREATE TABLE batch_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL UNIQUE,
  process TEXT NOT NULL CHECK (process IN ('cold','hot','infusion','blend','rebatch','portion','combine')),
  recipe_version_id INTEGER REFERENCES recipe_version(id),      -- none for a combined drum
  material_id INTEGER NOT NULL REFERENCES material(id),         -- what it gives
  "on" TEXT NOT NULL,                                           -- the day it is planned for, then made on
  bars_planned INTEGER,
  part_of INTEGER REFERENCES batch(id),                         -- the batch a portion was divided from
  portion TEXT
);
INSERT INTO batch_anew (id, entry_id, code, process, recipe_version_id, material_id, "on", bars_planned)
  SELECT id, entry_id, code, process, recipe_version_id, material_id, "on", bars_planned FROM batch;
DROP TABLE batch;
ALTER TABLE batch_anew RENAME TO batch;

-- More can be read than weights, times and temperatures; what each is read in is the program's to say.
CREATE TABLE reading_anew (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), "on" TEXT NOT NULL, at TEXT,   -- at: local clock time 14:05
  what TEXT NOT NULL, value INTEGER, unit TEXT, text TEXT,
  plan_line_id INTEGER REFERENCES plan_line(id),    -- the line that was left out
  CHECK ((value IS NULL) = (unit IS NULL))
);
INSERT INTO reading_anew (id, entry_id, batch_id, "on", at, what, value, unit, text, plan_line_id)
  SELECT id, entry_id, batch_id, "on", at, what, value, unit, text, plan_line_id FROM reading;
DROP TABLE reading;
ALTER TABLE reading_anew RENAME TO reading;
