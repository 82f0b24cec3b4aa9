-- What an erasure took out: each place of which a text was blanked, and the digest of that place's entry as it reads
-- from then on. The entry's own digest stays, so the chain and every seal stay; what it said is attested by this row.
CREATE TABLE blanked (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  of_entry INTEGER NOT NULL REFERENCES entry(id),
  of_table TEXT NOT NULL, of_row INTEGER NOT NULL, of_column TEXT NOT NULL,   -- attachment, content: the paper itself
  digest TEXT NOT NULL
);
-- A weighing of several bars at once: how many. What they weighed together is the value.
ALTER TABLE reading ADD COLUMN bars INTEGER;

-- The maker's own name: who decides where nobody else is named.
ALTER TABLE settings_revision ADD COLUMN maker TEXT;

-- Drawn by lot for each entry, and erased with a text of it: else the entry's own digest, which stays, would tell whoever
-- guesses the text right.
CREATE TABLE entry_salt (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  salt TEXT NOT NULL
);
-- A short mark of each row that an entry wrote, so that a check can say which of them was changed; none in entries of
-- before.
ALTER TABLE entry ADD COLUMN marks TEXT;
