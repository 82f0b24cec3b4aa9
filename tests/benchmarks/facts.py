"""What a command can be asked about in a ledger, whichever it is: the latest code of each kind, by a query."""

import sqlite3
from pathlib import Path

_LATEST = "latest AS (SELECT lot_id, verdict, max(id) FROM decision WHERE lot_id IS NOT NULL GROUP BY lot_id)"
_HELD = (
    "held AS (SELECT lot_id, sum(quantity) AS q FROM movement "
    "WHERE place_id = (SELECT id FROM place WHERE kind = 'workshop') GROUP BY lot_id)"
)
_BARS = (
    "FROM batch b JOIN lot l ON l.code = b.code LEFT JOIN latest d ON d.lot_id = l.id JOIN held h ON h.lot_id = l.id"
)
_RAW = (
    "FROM lot l JOIN material m ON m.id = l.material_id JOIN latest d ON d.lot_id = l.id "
    "JOIN held h ON h.lot_id = l.id WHERE d.verdict = 'accepted' AND h.q > 0"
)
# Each gives one value; nothing where the ledger has no such thing.
# The options that book lye and fragrance of a batch, which are never taken from the plan.
_TO_READ = (
    "SELECT coalesce(group_concat('--line ' || number || '=' || (target / 1000.0) || 'g', ' '), '') FROM plan_line "
    "WHERE role IN ('alkali', 'fragrance') AND batch_id = {}"
)
QUERIES = {
    "day": 'SELECT max(d) FROM (SELECT max("on") AS d FROM movement UNION ALL SELECT max("on") FROM batch)',
    "supplier": "SELECT s.code FROM lot l JOIN supplier s ON s.id = l.supplier_id WHERE NOT s.own "
    "ORDER BY l.id LIMIT 1",
    "customer": "SELECT c.code FROM movement v JOIN customer c ON c.id = v.customer_id WHERE v.kind = 'dispatched' "
    "ORDER BY v.id DESC LIMIT 1",
    "stall": "SELECT code FROM place WHERE kind = 'stall' ORDER BY id LIMIT 1",
    "material": "SELECT m.code FROM lot l JOIN material m ON m.id = l.material_id WHERE m.kind = 'fat' "
    "AND l.supplier_id IS NOT NULL ORDER BY l.id LIMIT 1",
    "fragrance": "SELECT code FROM material WHERE kind = 'fragrance' ORDER BY id LIMIT 1",
    "equipment": "SELECT code FROM equipment WHERE kind = 'scale' ORDER BY id LIMIT 1",
    "complaint": "SELECT max(id) FROM complaint",
    "sale": "SELECT max(id) FROM sale WHERE kind = 'sale' AND customer_id IS NOT NULL",
    "order": "SELECT max(id) FROM customer_order",
    "invoice": "SELECT max(number) FROM invoice",
    "recall": "SELECT max(id) FROM recall",
    "run": "SELECT max(id) FROM label_run WHERE layout_source <> ''",
    "uncounted": "SELECT max(id) FROM label_run",
    "sha": "SELECT digest FROM attachment ORDER BY id LIMIT 1",
    "lot": f"WITH {_LATEST}, {_HELD} SELECT l.code {_RAW} AND m.kind = 'fat' ORDER BY h.q DESC LIMIT 1",
    "last_lot": "SELECT code FROM lot WHERE code LIKE 'L%' ORDER BY id DESC LIMIT 1",
    "lot_before": "SELECT code FROM lot WHERE code LIKE 'L%' ORDER BY id DESC LIMIT 1 OFFSET 1",
    "first_lot": "SELECT l.code FROM lot l JOIN material m ON m.id = l.material_id WHERE m.kind = 'fat' "
    "AND l.supplier_number IS NOT NULL ORDER BY l.id LIMIT 1",
    "drawn_lot": "SELECT l.code FROM lot l JOIN material m ON m.id = l.material_id WHERE m.kind = 'fragrance' "
    "AND l.supplier_number IS NOT NULL AND l.id IN (SELECT lot_id FROM movement WHERE kind = 'consumed') "
    "ORDER BY l.id DESC LIMIT 1",
    "entry": "SELECT max(id) - 10 FROM entry",
    "released": f"WITH {_LATEST}, {_HELD} SELECT b.code {_BARS} WHERE d.verdict = 'released' AND h.q >= 4 "
    "AND b.part_of IS NULL ORDER BY b.id DESC LIMIT 1",
    "curing": f"WITH {_LATEST}, {_HELD} SELECT b.code {_BARS} WHERE d.verdict IS NULL AND b.process = 'cold' "
    "ORDER BY b.id LIMIT 1",
    "weighed": f"WITH {_LATEST}, {_HELD} SELECT b.code {_BARS} WHERE d.verdict IS NULL AND b.id IN "
    "(SELECT batch_id FROM reading WHERE mark IS NOT NULL) ORDER BY b.id LIMIT 1",
    "planned": "SELECT code FROM batch WHERE process IN ('cold', 'hot') AND id NOT IN "
    "(SELECT batch_id FROM movement WHERE batch_id IS NOT NULL) ORDER BY id DESC LIMIT 1",
    "line": "SELECT number FROM plan_line WHERE role = 'fat' AND batch_id = (SELECT max(batch_id) FROM plan_line) "
    "ORDER BY number LIMIT 1",
    "to_read": _TO_READ.format(
        "(SELECT id FROM batch WHERE process IN ('cold', 'hot') AND id NOT IN (SELECT batch_id "
        "FROM movement WHERE batch_id IS NOT NULL) ORDER BY id DESC LIMIT 1)"
    ),
    "dough_to_read": _TO_READ.format("(SELECT max(part_of) FROM batch)"),
    "last_to_read": _TO_READ.format("(SELECT max(id) FROM batch)"),
    "recipe": "SELECT r.code FROM batch b JOIN recipe_version v ON v.id = b.recipe_version_id JOIN recipe r ON "
    "r.id = v.recipe_id WHERE b.process = 'cold' AND b.part_of IS NULL AND NOT EXISTS (SELECT 1 FROM batch p "
    "WHERE p.part_of = b.id) ORDER BY b.id DESC LIMIT 1",
    "recipe_of_released": f"WITH {_LATEST}, {_HELD} SELECT r.code {_BARS} JOIN recipe_version v ON "
    "v.id = b.recipe_version_id JOIN recipe r ON r.id = v.recipe_id WHERE d.verdict = 'released' AND h.q >= 4 "
    "AND b.part_of IS NULL ORDER BY b.id DESC LIMIT 1",
    "blend": "SELECT r.code FROM batch b JOIN recipe_version v ON v.id = b.recipe_version_id JOIN recipe r ON "
    "r.id = v.recipe_id WHERE b.process = 'blend' ORDER BY b.id DESC LIMIT 1",
    "infusion": "SELECT b.code FROM batch b WHERE b.process = 'infusion' AND b.id NOT IN "
    "(SELECT batch_id FROM movement WHERE kind = 'yielded' AND batch_id IS NOT NULL) "
    "AND b.id IN (SELECT batch_id FROM movement WHERE "
    "batch_id IS NOT NULL) ORDER BY b.id LIMIT 1",
    "divided": "SELECT r.code FROM batch b JOIN recipe_version v ON v.id = b.recipe_version_id JOIN recipe r ON "
    "r.id = v.recipe_id WHERE b.id IN (SELECT part_of FROM batch) ORDER BY b.id DESC LIMIT 1",
    "deviating": "SELECT b.code FROM deviation d JOIN batch b ON b.id = d.batch_id ORDER BY d.id DESC LIMIT 1",
    "last_batch": "SELECT code FROM batch ORDER BY id DESC LIMIT 1",
    "dough": "SELECT code FROM batch WHERE id = (SELECT max(part_of) FROM batch)",
}
# What a preparation makes is asked anew; everything else stays what it was at first, whatever was prepared.
FRESH = {
    "last_lot",
    "lot_before",
    "last_batch",
    "last_to_read",
    "dough",
    "dough_to_read",
    "run",
    "uncounted",
    "complaint",
    "deviating",
    "sale",
    "order",
    "invoice",
    "recall",
}
_SOURCE = (
    "SELECT v.source FROM recipe_version v JOIN recipe r ON r.id = v.recipe_id WHERE r.code = ? "
    "ORDER BY v.id DESC LIMIT 1"
)


class Facts:
    """The values of one ledger, each looked up when first asked for."""

    def __init__(self, path: Path, folder: Path) -> None:
        """`folder` takes the files that a command is given, and those it writes."""
        self.path, self.folder = path, folder
        self._known: dict[str, str | None] = {}
        self._out = 0

    def value(self, name: str) -> str | None:
        """One value as it is typed, or None."""
        if name.startswith("out"):
            self._out += 1
            return str(self.folder / f"out-{self._out}.{name[4:] or 'pdf'}")
        if name.endswith("_file"):
            return self._file(name)
        if name not in self._known or name in FRESH:
            self._known[name] = self._asked(name)
        return self._known[name]

    def _asked(self, name: str) -> str | None:
        raw = sqlite3.connect(f"file:{self.path}?mode=ro", uri=True)
        row = raw.execute(QUERIES[name]).fetchone()
        raw.close()
        return None if row is None or row[0] is None else str(row[0])

    def _file(self, name: str) -> str | None:
        raw = sqlite3.connect(f"file:{self.path}?mode=ro", uri=True)
        recipe = raw.execute(QUERIES["recipe"]).fetchone()[0]
        text = str(raw.execute(_SOURCE, (recipe,)).fetchone()[0])
        if name == "assessment_file":
            query = "SELECT a.source FROM assessment a JOIN recipe r ON r.id = a.recipe_id WHERE r.code = ?"
            text = str(raw.execute(query, (recipe,)).fetchone()[0])
        elif name == "recipe_file":
            title = next(line for line in text.splitlines() if line.startswith("name"))
            text = text.replace(f'code = "{recipe}"', 'code = "measured"').replace(title, 'name = "Measured"', 1)
        elif name == "revised_file":
            text += '\n[label]\norigin = "Made in Ireland"\n' if "[label]" not in text else "\n# revised\n"
        raw.close()
        path = self.folder / f"{name}.toml"
        path.write_text(text, encoding="utf-8")
        return str(path)
