-- What was sold, for how much, to whom, and what it cost; each table stands under the words that say why it is there.
-- Amounts that earlier programs booked on a movement stay there; new ones stand on the lines of a sale alone.

-- Bars that are hers stand at a shop on sale or return: a place of kind consignment, of one customer.
ALTER TABLE place ADD COLUMN customer_id INTEGER REFERENCES customer(id);

-- The number under which she is registered for a tax on sales, which stands on an invoice; whether the bars of a batch
-- that were rejected or thrown away load the good ones or are written off; empty: they load the good ones.
ALTER TABLE settings_revision ADD COLUMN tax_number TEXT;
ALTER TABLE settings_revision ADD COLUMN rejected_bars TEXT;

-- By what the carriage of a delivery was shared: value or mass; empty: by value, as earlier programs did.
ALTER TABLE delivery ADD COLUMN carriage_by TEXT;

-- Of a customer or of where a parcel goes: bars stay hers until the shop's count (consignment), what the shop keeps of the
-- price, what its price is less, in how many days it pays, to which country it goes. The latest counts.
CREATE TABLE customer_terms (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  customer_id INTEGER NOT NULL REFERENCES customer(id), "on" TEXT NOT NULL,
  consignment INTEGER NOT NULL CHECK (consignment IN (0, 1)),
  commission_ppm INTEGER, reduction_ppm INTEGER, pay_days INTEGER, country TEXT
);

-- A price from a day on: of a product or of all, at a stall, for a customer or everywhere; for one bar, or for so many
-- together (an offer). Empty: from that day on there is none. The latest of its kind counts.
CREATE TABLE price (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_id INTEGER REFERENCES recipe(id),
  place_id INTEGER REFERENCES place(id), customer_id INTEGER REFERENCES customer(id),
  "on" TEXT NOT NULL, bars INTEGER NOT NULL CHECK (bars > 0), price_minor INTEGER CHECK (price_minor >= 0),
  CHECK (place_id IS NULL OR customer_id IS NULL)
);

-- The share of tax in a price from a day on, of a product or of all, at an outlet, for a country or everywhere; what it is
-- called. Empty: from that day on none is booked.
CREATE TABLE tax_rate (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  recipe_id INTEGER REFERENCES recipe(id),
  place_id INTEGER REFERENCES place(id), customer_id INTEGER REFERENCES customer(id), country TEXT,
  "on" TEXT NOT NULL, rate_ppm INTEGER CHECK (rate_ppm >= 0), name TEXT NOT NULL,
  CHECK ((place_id IS NOT NULL) + (customer_id IS NOT NULL) + (country IS NOT NULL) < 2)
);

-- Bars promised to a customer by a day; lines of a later entry add to it or, below zero, take from it. Its end by a person.
CREATE TABLE customer_order (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  customer_id INTEGER NOT NULL REFERENCES customer(id), "on" TEXT NOT NULL, due_on TEXT NOT NULL, note TEXT
);
CREATE TABLE order_line (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  order_id INTEGER NOT NULL REFERENCES customer_order(id), recipe_id INTEGER NOT NULL REFERENCES recipe(id),
  lot_id INTEGER REFERENCES lot(id), batch_id INTEGER REFERENCES batch(id),
  bars INTEGER NOT NULL CHECK (bars <> 0), price_minor INTEGER
);
CREATE TABLE order_end (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  order_id INTEGER NOT NULL REFERENCES customer_order(id), "on" TEXT NOT NULL, by TEXT NOT NULL, reason TEXT NOT NULL
);

-- What changed hands: at a stall or at a shop's count (place), to a customer, or to someone in her words. A return and a
-- credit take from one that was.
CREATE TABLE sale (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL, kind TEXT NOT NULL,
  place_id INTEGER REFERENCES place(id), customer_id INTEGER REFERENCES customer(id),
  order_id INTEGER REFERENCES customer_order(id), whom TEXT, terms TEXT, pay_by TEXT
);

-- One line of it: bars with the movement by which they went or came; or goods that are not in the ledger, the difference
-- to what was taken, carriage. The amount is gross less the reduction, with any tax in it; an empty gross was never told.
-- A line of a return or of a credit points at the line it takes from, and its amounts are below zero.
CREATE TABLE sale_line (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  sale_id INTEGER NOT NULL REFERENCES sale(id), kind TEXT NOT NULL,
  lot_id INTEGER REFERENCES lot(id), movement_id INTEGER REFERENCES movement(id), of_line_id INTEGER REFERENCES sale_line(id),
  bars INTEGER NOT NULL, gross_minor INTEGER, reduction_minor INTEGER NOT NULL,
  tax_ppm INTEGER, tax_minor INTEGER, words TEXT,
  CHECK ((kind = 'bars') = (lot_id IS NOT NULL)),
  CHECK (gross_minor IS NOT NULL OR (reduction_minor = 0 AND tax_minor IS NULL)),
  CHECK ((tax_ppm IS NULL) = (tax_minor IS NULL))
);

-- What was paid of a sale, or paid back (below zero); of cash from a box, the float that stays in it.
CREATE TABLE payment (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  sale_id INTEGER NOT NULL REFERENCES sale(id), "on" TEXT NOT NULL, way TEXT NOT NULL,
  amount_minor INTEGER NOT NULL, float_minor INTEGER, note TEXT
);

-- What selling cost: the pitch of a stall, card, post, a shop's commission; of a sale, of an outlet, or of none.
CREATE TABLE fee (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  sale_id INTEGER REFERENCES sale(id), place_id INTEGER REFERENCES place(id), customer_id INTEGER REFERENCES customer(id),
  "on" TEXT NOT NULL, kind TEXT NOT NULL, amount_minor INTEGER NOT NULL, note TEXT
);

-- An invoice or a credit note over sales: its numbers follow each other without a gap, and it is never taken back.
CREATE TABLE invoice (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  number INTEGER NOT NULL UNIQUE CHECK (number > 0), kind TEXT NOT NULL, "on" TEXT NOT NULL,
  customer_id INTEGER NOT NULL REFERENCES customer(id), of_invoice_id INTEGER REFERENCES invoice(id), pay_by TEXT
);
CREATE TABLE invoice_sale (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  invoice_id INTEGER NOT NULL REFERENCES invoice(id), sale_id INTEGER NOT NULL REFERENCES sale(id)
);

-- The batch of a movement was assumed, the oldest first: these bars may as well be of the lot named here, one row for
-- each. Until someone looked and says that the movement is as booked.
CREATE TABLE assumed_batch (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  movement_id INTEGER NOT NULL REFERENCES movement(id), lot_id INTEGER NOT NULL REFERENCES lot(id)
);
CREATE TABLE assumed_ticked (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  movement_id INTEGER NOT NULL REFERENCES movement(id), "on" TEXT NOT NULL, by TEXT NOT NULL
);

-- Minutes of work on a batch by what was done; and what an hour, or a batch beside its materials, costs from a day on.
CREATE TABLE work (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  batch_id INTEGER NOT NULL REFERENCES batch(id), "on" TEXT NOT NULL, stage TEXT NOT NULL, minutes INTEGER NOT NULL,
  by TEXT NOT NULL
);
CREATE TABLE cost_rate (
  id INTEGER PRIMARY KEY, entry_id INTEGER NOT NULL REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL, kind TEXT NOT NULL, minor INTEGER NOT NULL CHECK (minor >= 0)
);
