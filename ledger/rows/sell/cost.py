"""What everything cost: the facts that costs go by, up to a day, in a handful of statements."""

import json
import sqlite3
from collections import defaultdict
from collections.abc import Collection
from datetime import date
from typing import NamedTuple

from ledger.domain.cost.flows import Happened
from ledger.domain.cost.working import AT_THE_BENCH, Minutes, Rate
from ledger.domain.cost.worth import Account, BatchFacts, CostFacts, LotFacts
from ledger.rows.opened import day
from ledger.rows.reading import minutes_worked
from ledger.units.words import CarriageBy, PlaceKind, WorkStage

_NEVER = "9999-12-31"


def rates(rows: sqlite3.Connection) -> list[Rate]:
    """What an hour and a batch cost, as it was booked."""
    found = rows.execute('SELECT kind, "on", minor FROM live_cost_rate ORDER BY id')
    return [Rate(row[0], day(row[1]), row[2]) for row in found]


# From the latest back, by the index of their days: no more of them is read than is shown.
_WITH_BARS = """
SELECT b.id FROM live_batch b CROSS JOIN material m ON m.id = b.material_id AND m.kind = 'soap'
CROSS JOIN live_lot l ON l.batch_id = b.id AND +l.material_id = b.material_id
WHERE (SELECT sum(v.quantity) FROM movement v WHERE v.lot_id = l.id AND v.kind = 'yielded') <> 0
ORDER BY b."on" DESC, b.id DESC LIMIT ?
"""


def with_bars(rows: sqlite3.Connection, *, last: int | None = None) -> list[int]:
    """The row numbers of the batches of soap that were cut, oldest first; only the last so many where told."""
    found = rows.execute(_WITH_BARS, (-1 if last is None else last,)).fetchall()
    return [row[0] for row in reversed(found)]


def that_count(rows: sqlite3.Connection, batches: Collection[int]) -> set[int]:
    """Those of some batches, by their row numbers, that were not taken back."""
    found = rows.execute(
        "SELECT b.id FROM json_each(?) w CROSS JOIN live_batch b ON b.id = w.value", (json.dumps(sorted(batches)),)
    )
    return {row[0] for row in found}


def cost_facts(
    rows: sqlite3.Connection, *, on: date | None = None, batches: Collection[int] | None = None
) -> CostFacts:
    """The facts of the whole ledger up to a day, or those of some batches with all that they took and gave."""
    given = {"on": on.isoformat() if on else _NEVER, "batches": json.dumps(sorted(batches or ()))}
    few = batches is not None
    among = (
        "(SELECT DISTINCT v.lot_id AS id FROM json_each(:batches) w CROSS JOIN movement v ON v.batch_id = w.value) a "
        "CROSS JOIN "
        if few
        else ""
    )
    lots = _lots(rows, given, among)
    moves: dict[int, list[Happened]] = defaultdict(list)
    for row in rows.execute(
        f'SELECT v.lot_id, v.id, v."on", v.quantity, v.kind, v.batch_id FROM {among} live_movement v '
        f"""{"ON v.lot_id = a.id" if few else ""} WHERE v.kind <> 'moved' AND v."on" <= :on """
        'ORDER BY v.lot_id, v."on", v.quantity < 0, v.id',
        given,
    ):
        moves[row[0]].append(Happened(row[1], row[2], row[3], row[4], row[5]))
    places: dict[int, list[tuple[PlaceKind, int]]] = defaultdict(list)
    for row in rows.execute(
        f"SELECT s.lot_id, p.kind, s.held FROM (SELECT v.lot_id, v.place_id, sum(v.quantity) AS held "
        f'FROM {among} movement v {"ON v.lot_id = a.id" if few else ""} WHERE v."on" <= :on '
        "GROUP BY v.lot_id, v.place_id HAVING held <> 0) s JOIN place p ON p.id = s.place_id ORDER BY s.lot_id, p.id",
        given,
    ):
        places[row[0]].append((row[1], row[2]))
    own = rows.execute("SELECT * FROM live_settings_revision ORDER BY id DESC LIMIT 1").fetchone()
    return CostFacts(
        lots,
        moves,
        places,
        _batches(rows, given, few=few),
        rates(rows),
        own["labour_minor_per_hour"] if own else None,
        load_the_good=not own or own["rejected_bars"] != "written off",
        apart={} if few else _apart(rows, given),
    )


def _lots(rows: sqlite3.Connection, given: dict[str, str], among: str) -> dict[int, LotFacts]:
    found = rows.execute(
        f"""
        SELECT l.id, l.code, coalesce(mr.name, m.code), m.kind, l.batch_id,
               l.material_id IS NOT b.material_id AND l.batch_id IS NOT NULL, l.cost_minor, l.mass_mg,
               m.kind = 'soap' AND coalesce((SELECT d.verdict FROM live_decision d
                 WHERE d.lot_id = l.id AND d."on" <= :on ORDER BY d.id DESC LIMIT 1), '') = 'rejected'
        FROM {among} live_lot l {"ON l.id = a.id" if among else ""}
        JOIN material m ON m.id = l.material_id
        LEFT JOIN (SELECT material_id, max(id) AS last FROM live_material_revision GROUP BY material_id) n
          ON n.material_id = m.id
        LEFT JOIN material_revision mr ON mr.id = n.last
        LEFT JOIN batch b ON b.id = l.batch_id
        WHERE l."on" <= :on ORDER BY l.id
        """,
        given,
    )
    return {row[0]: LotFacts(*row) for row in found}


def _apart(rows: sqlite3.Connection, given: dict[str, str]) -> dict[int, Account]:
    """Bars that she used herself, and goods that went back to their supplier, as their notes say."""
    found = rows.execute(
        """
        SELECT v.id, CASE v.kind WHEN 'given' THEN 'own use' ELSE 'sent back' END FROM live_movement v
        WHERE v."on" <= :on AND (v.kind = 'given' AND v.note LIKE '%own use%' OR v.kind = 'wasted'
          AND v.note LIKE 'sent back%' AND v.lot_id IN (SELECT id FROM lot WHERE supplier_id IS NOT NULL))
        """,
        given,
    )
    return {row[0]: row[1] for row in found}


# The minutes of work that recipes say, as they were understood; read without the whole recipe, which takes longer than
# all the rest of a check to load.
_RECIPES_SAY = """
SELECT recipe_version_id, json_extract(figures, '$.work_minutes') FROM main.recipe_figures WHERE json_valid(figures)
"""


def _batches(rows: sqlite3.Connection, given: dict[str, str], *, few: bool) -> dict[int, BatchFacts]:
    among = "AND {}.batch_id IN (SELECT value FROM json_each(:batches))" if few else ""
    stages: dict[int, dict[WorkStage, int]] = defaultdict(dict)
    for row in rows.execute(
        f'SELECT k.batch_id, k.stage, sum(k.minutes) FROM live_work k WHERE k."on" <= :on {among.format("k")} '
        "GROUP BY k.batch_id, k.stage ORDER BY min(k.id)",
        given,
    ):
        stages[row[0]][row[1]] = row[2]
    found = rows.execute(
        f"""
        SELECT b.id, b.code, b.process, b."on", b.part_of IS NOT NULL, b.recipe_version_id, d.batch_id IS NOT NULL
        FROM live_batch b LEFT JOIN (SELECT DISTINCT batch_id FROM live_decision
          WHERE verdict = 'discarded' AND "on" <= :on) d ON d.batch_id = b.id
        {"WHERE b.id IN (SELECT value FROM json_each(:batches))" if few else ""}
        """,
        given,
    ).fetchall()
    read = minutes_worked(rows, [row[0] for row in found], on=date.fromisoformat(given["on"]))
    recipes = dict(rows.execute(_RECIPES_SAY).fetchall())
    return {
        row[0]: BatchFacts(
            row[0],
            row[1],
            row[2],
            day(row[3]),
            bool(row[6]),
            Minutes(stages.get(row[0], {}), read.get(row[0]), recipes.get(row[5]), bool(row[4])),
        )
        for row in found
    }


class Bought(NamedTuple):
    """What was paid by a day for what came from suppliers and is known; carriage that is in no lot's cost apart."""

    goods_minor: int
    carriage_minor: int
    carriage_outside_minor: int

    @property
    def total_minor(self) -> int:
        """All that is in lots."""
        return self.goods_minor + self.carriage_minor


def bought(rows: sqlite3.Connection, *, on: date | None = None) -> Bought:
    """What was paid by a day: goods and their carriage, which is in the cost of the lots of its delivery."""
    found = rows.execute(
        """
        SELECT coalesce(sum(s.cost), 0), coalesce(sum(min(d.carriage_minor, s.cost)), 0),
               coalesce(sum(CASE WHEN s.known THEN 0 ELSE d.carriage_minor END), 0) FROM (
          SELECT l.delivery_id, coalesce(sum(l.cost_minor), 0) AS cost, count(l.cost_minor) > 0 AS known
          FROM live_lot l WHERE l.supplier_id IS NOT NULL AND l."on" <= ? GROUP BY l.delivery_id) s
        LEFT JOIN delivery d ON d.id = s.delivery_id
        """,
        (on.isoformat() if on else _NEVER,),
    ).fetchone()
    return Bought(found[0] - found[1], found[1], found[2])


class FeeShare(NamedTuple):
    """A fee of a sale, with every line of that sale by which it is shared: (lot, bars, amount)."""

    amount_minor: int
    place_id: int | None
    customer_id: int | None
    lines: tuple[tuple[int | None, int, int], ...]


def fees_on_sales_of(rows: sqlite3.Connection, lots: Collection[int]) -> list[FeeShare]:
    """What selling bars of some lots cost, as far as it was booked with a sale of theirs."""
    found: dict[int, FeeShare] = {}
    for row in rows.execute(
        """
        SELECT f.id, f.amount_minor, s.place_id, s.customer_id, n.lot_id, n.bars,
               coalesce(n.gross_minor - n.reduction_minor, 0)
        FROM (SELECT DISTINCT n.sale_id FROM json_each(?) w CROSS JOIN live_sale_line n ON n.lot_id = w.value) a
        CROSS JOIN live_fee f ON f.sale_id = a.sale_id JOIN sale s ON s.id = f.sale_id
        JOIN live_sale_line n ON n.sale_id = f.sale_id ORDER BY f.id, n.id
        """,
        (json.dumps(sorted({*lots})),),
    ):
        one = found.get(row[0]) or FeeShare(row[1], row[2], row[3], ())
        found[row[0]] = one._replace(lines=(*one.lines, (row[4], row[5], row[6])))
    return list(found.values())


def never_priced(rows: sqlite3.Connection, lots: Collection[int]) -> dict[int, int]:
    """Bars of some lots that were sold for nobody knows what, by the lot; takings told later have no bars."""
    found = rows.execute(
        """
        SELECT lot, sum(bars) FROM (
          SELECT n.lot_id AS lot, sum(CASE WHEN n.gross_minor IS NULL THEN n.bars ELSE 0 END) AS bars
          FROM json_each(:lots) w CROSS JOIN live_sale_line n ON n.lot_id = w.value
          JOIN sale s ON s.id = n.sale_id AND s.kind = 'sale' GROUP BY n.sale_id, n.lot_id
          HAVING sum(n.bars = 0 AND n.gross_minor IS NOT NULL AND n.of_line_id IS NULL) = 0
          UNION ALL
          SELECT v.lot_id, -v.quantity FROM json_each(:lots) w CROSS JOIN live_movement v ON v.lot_id = w.value
          WHERE v.kind IN ('sold', 'dispatched') AND v.money_minor IS NULL
            AND NOT EXISTS (SELECT 1 FROM live_sale_line n WHERE n.movement_id = v.id))
        GROUP BY lot HAVING sum(bars) > 0
        """,
        {"lots": json.dumps(sorted({*lots}))},
    )
    return {row[0]: row[1] for row in found}


class Carried(NamedTuple):
    """The carriage of the delivery of a lot, and by what it was shared."""

    carriage_minor: int
    by: CarriageBy


def carriage_of(rows: sqlite3.Connection, lots: Collection[int]) -> dict[int, Carried]:
    """In whose cost a share of carriage is: the lots of known cost whose delivery had any, by their row numbers."""
    found = rows.execute(
        "SELECT l.id, d.carriage_minor, coalesce(d.carriage_by, 'value') FROM json_each(?) w "
        "CROSS JOIN live_lot l ON l.id = w.value AND l.cost_minor > 0 "
        "JOIN delivery d ON d.id = l.delivery_id AND d.carriage_minor > 0",
        (json.dumps(sorted({*lots})),),
    )
    return {row[0]: Carried(row[1], row[2]) for row in found}


class CarriageLost(NamedTuple):
    """A delivery whose lots cost less than its carriage; its first lot."""

    entry: int
    lot_code: str
    carriage_minor: int
    lots_minor: int


def carriage_in_no_lot(rows: sqlite3.Connection) -> list[CarriageLost]:
    """Deliveries of which some cost is known and whose carriage is in no lot; her own harvest may bear none."""
    found = rows.execute(
        """
        SELECT d.entry_id, min(l.code), d.carriage_minor, sum(l.cost_minor) AS cost
        FROM live_delivery d JOIN live_lot l ON l.delivery_id = d.id LEFT JOIN supplier s ON s.id = d.supplier_id
        WHERE d.carriage_minor > 0 AND coalesce(s.own, 0) = 0 GROUP BY d.id HAVING cost < d.carriage_minor
        """
    )
    return [CarriageLost(*row) for row in found]


def batches_since(rows: sqlite3.Connection, on: date, before: date | None) -> int:
    """How many batches of work at the bench were begun on a day or later, up to another."""
    found = rows.execute(
        """
        SELECT count(*) FROM (SELECT min(v."on") AS begun FROM live_movement v JOIN lot l ON l.id = v.lot_id
          JOIN material m ON m.id = l.material_id AND m.kind <> 'packaging'
          JOIN live_batch b ON b.id = v.batch_id AND b.process IN (SELECT value FROM json_each(?))
          WHERE v.kind = 'consumed' GROUP BY v.batch_id)
        WHERE begun >= ? AND begun < ?
        """,
        (json.dumps(AT_THE_BENCH), on.isoformat(), before.isoformat() if before else _NEVER),
    )
    return int(found.fetchone()[0])
