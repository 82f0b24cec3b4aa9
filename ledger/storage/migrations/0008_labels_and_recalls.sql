-- What labels and recalls keep of their own; each table stands under the words that say why it is there.

-- What the report of an assessment says of an ingredient beyond its letters: the name it has there, matched when the
-- report was booked; or the assessor's own written word on one the report does not name, with who gave it and when.
CREATE TABLE assessment_covers (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  assessment_id INTEGER NOT NULL REFERENCES assessment(id),
  inci TEXT NOT NULL,
  named TEXT,
  word TEXT, highest_ppm INTEGER, by TEXT, "on" TEXT,
  CHECK ((named IS NULL) = (word IS NOT NULL AND highest_ppm IS NOT NULL AND by IS NOT NULL AND "on" IS NOT NULL))
);

-- Words on a label that were questioned, and who let them stand: by the digest of all that was read, so that the same
-- words are not asked about again.
CREATE TABLE label_words (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  market TEXT NOT NULL, digest TEXT NOT NULL, questioned TEXT NOT NULL, reason TEXT NOT NULL,
  by TEXT NOT NULL, "on" TEXT NOT NULL
);

-- A share as the statement has it, where that is no plain percentage: below a bound, or in parts per million.
ALTER TABLE constituent ADD COLUMN stated TEXT;

-- What a person says that a name in statements is which is not known here: an entry by its label name, or none. Of one
-- material, or of all; the latest counts.
CREATE TABLE name_meant (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER REFERENCES material(id), name TEXT NOT NULL, meant TEXT,
  "on" TEXT NOT NULL, "by" TEXT NOT NULL, reason TEXT NOT NULL
);

-- The peroxide value of a material or of one lot, which some entries ask for: in micromoles per litre; the latest counts.
CREATE TABLE peroxide (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  material_id INTEGER NOT NULL REFERENCES material(id), lot_id INTEGER REFERENCES lot(id),
  umol_per_l INTEGER NOT NULL, source TEXT NOT NULL
);

-- Bars under labels of an earlier list of allergens that go out again after it ended: when and to whom these very bars
-- were first supplied, as a person said. `back`: they stand here again, put back on sale; else they left.
CREATE TABLE first_supply (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  lot_id INTEGER NOT NULL REFERENCES lot(id),
  "on" TEXT NOT NULL, bars INTEGER NOT NULL CHECK (bars > 0), back INTEGER NOT NULL CHECK (back IN (0, 1)),
  supplied_on TEXT NOT NULL, whom TEXT NOT NULL, by TEXT NOT NULL
);

-- Of the labels of a run: the one kept with the record of the batch, and those of the unused that were destroyed, the rest
-- of which is kept; empty where it was not said.
ALTER TABLE label_count ADD COLUMN specimen INTEGER;
ALTER TABLE label_count ADD COLUMN destroyed INTEGER;

-- What a label shows of her beside the name she trades under: her web address, printed as a code, and a line of her own.
ALTER TABLE settings_revision ADD COLUMN web TEXT;
ALTER TABLE settings_revision ADD COLUMN line TEXT;

-- Where bars of a product are sold without a label, as a person decided once for an outlet: a stall, or who buys them. With
-- the notice that stands there and where the batch code is; `bare` 0: from that day on with a label again. The latest counts.
CREATE TABLE sold_bare (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_id INTEGER NOT NULL REFERENCES recipe(id),
  place_id INTEGER REFERENCES place(id), customer_id INTEGER REFERENCES customer(id),
  "on" TEXT NOT NULL, bare INTEGER NOT NULL CHECK (bare IN (0, 1)),
  notice TEXT, code_on TEXT, reason TEXT NOT NULL, by TEXT NOT NULL,
  CHECK ((place_id IS NULL) <> (customer_id IS NULL)),
  CHECK (bare = (notice IS NOT NULL AND code_on IS NOT NULL))
);

-- A recall: what was asked and at which entry, never what was answered, since that is asked again; who opened it and why.
-- An exercise holds nothing and keeps how long its answer took.
CREATE TABLE recall (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL, by TEXT NOT NULL, question TEXT NOT NULL, asked_at INTEGER NOT NULL,
  reason TEXT NOT NULL, hazard TEXT, found_by TEXT,
  exercise INTEGER NOT NULL CHECK (exercise IN (0, 1)), took_ms INTEGER,
  CHECK ((took_ms IS NULL) = (exercise = 0))
);

-- What was done about it: who was told and answered, what came back or was destroyed, where a notice went up, who else was
-- told, the class an authority gave it, how many are asked whether they were reached.
CREATE TABLE recall_step (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recall_id INTEGER NOT NULL REFERENCES recall(id), "on" TEXT NOT NULL, by TEXT NOT NULL, kind TEXT NOT NULL,
  customer_id INTEGER REFERENCES customer(id), complaint_id INTEGER REFERENCES complaint(id),
  whom TEXT, how TEXT, bars INTEGER CHECK (bars > 0), words TEXT,
  CHECK (customer_id IS NULL OR complaint_id IS NULL)
);

-- Its end, by name: what was concluded, and why of bars that nobody can tell of.
CREATE TABLE recall_close (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recall_id INTEGER NOT NULL REFERENCES recall(id), "on" TEXT NOT NULL, by TEXT NOT NULL,
  conclusion TEXT NOT NULL, unexplained INTEGER NOT NULL, reason TEXT,
  CHECK (unexplained = 0 OR reason IS NOT NULL)
);
