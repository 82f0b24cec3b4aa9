"""What must hold in every ledger: one function a law, asked in SQL, so that the size of a ledger does not matter.

`check` runs them, and so do the property tests.
"""

import sqlite3
from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from fractions import Fraction

from ledger.domain.cost.worth import costs, statement, used_up_and_not_nothing
from ledger.domain.keep.finding import PUT_RIGHT, Finding
from ledger.domain.stock.graph import Graph
from ledger.rows.dependants import binding, foreign_keys
from ledger.rows.sell.cost import bought, carriage_in_no_lot, cost_facts
from ledger.rows.sell.laws import SALE_LAWS
from ledger.rows.sell.shop_laws import SHOP_LAWS

# Movements that count: of no entry that was taken back, nor of one that took another back.
_GONE = "(SELECT id FROM entry WHERE reverses > 0 UNION SELECT reverses FROM entry WHERE reverses > 0)"
_COUNTS = f"v.entry_id NOT IN {_GONE}"
# The status a lot had on the date of a movement, as known in its entry.
_STATUS = f"""coalesce((SELECT d.verdict FROM decision d WHERE d.lot_id = v.lot_id AND d."on" <= v."on"
  AND d.entry_id <= v.entry_id AND d.entry_id NOT IN {_GONE} ORDER BY d.id DESC LIMIT 1), '')"""


def _breach(words: str, entry: int | None, table: str, row: str, expected: str) -> Finding:
    return Finding(words, entry, table, row, expected, PUT_RIGHT)


def never_below_zero(rows: sqlite3.Connection) -> Iterator[Finding]:
    """No place ever held less than nothing of a lot, on any day."""
    query = """
        SELECT l.code, p.name, min(s."on"), s.held, s.lot_id, s.place_id FROM (
          SELECT lot_id, place_id, "on", sum(sum(quantity)) OVER (PARTITION BY lot_id, place_id ORDER BY "on") AS held
          FROM movement GROUP BY lot_id, place_id, "on") s
        JOIN lot l ON l.id = s.lot_id JOIN place p ON p.id = s.place_id
        WHERE s.held < 0 GROUP BY s.lot_id, s.place_id
    """
    takers = 'SELECT max(entry_id) FROM movement WHERE lot_id = ? AND place_id = ? AND "on" = ? AND quantity < 0'
    for lot, place, on, held, *ids in rows.execute(query):
        entry = rows.execute(takers, (*ids, on)).fetchone()[0]
        yield _breach(f"lot {lot}: {place} held {held} on {on}", entry, "movement", f"lot {lot}", "nothing less than 0")


def nothing_happens_before_a_lot_is_there(rows: sqlite3.Connection) -> Iterator[Finding]:
    """No movement of a lot is dated before the lot."""
    query = f"""
        SELECT l.code, v."on", v.entry_id, l."on" FROM lot l JOIN movement v ON v.lot_id = l.id AND v."on" < l."on"
        WHERE {_COUNTS} AND EXISTS (SELECT 1 FROM live_lot c WHERE c.id = l.id)
    """
    for lot, on, entry, since in rows.execute(query):
        words = f"lot {lot} moved on {on}, before it was there"
        yield _breach(words, entry, "movement", f"lot {lot}", f"{since} or later")


def every_lot_comes_from_somewhere(rows: sqlite3.Connection) -> Iterator[Finding]:
    """A lot came from a supplier or from the batch it names, in the entry that made it, and once."""
    query = f"""
        SELECT l.code, l.entry_id FROM live_lot l LEFT JOIN movement v
          ON v.lot_id = l.id AND v.kind IN ('received', 'yielded') AND v.quantity > 0 AND {_COUNTS}
        GROUP BY l.id HAVING count(v.id) <> 1 OR sum(v.entry_id = l.entry_id
          AND v.batch_id IS CASE WHEN l.supplier_id IS NULL THEN l.batch_id END) <> 1
    """
    for lot, entry in rows.execute(query):
        words = f"lot {lot} does not come from where its papers say"
        yield _breach(words, entry, "lot", f"lot {lot}", "one receipt, or one yield of its batch, in the same entry")


def what_leaves_one_place_arrives_at_another(rows: sqlite3.Connection) -> Iterator[Finding]:
    """A move makes nothing and loses nothing."""
    query = """
        SELECT v.entry_id, l.code, sum(v.quantity) FROM movement v JOIN lot l ON l.id = v.lot_id
        WHERE v.kind = 'moved' GROUP BY v.entry_id, v.lot_id HAVING sum(v.quantity) <> 0
    """
    for entry, lot, total in rows.execute(query):
        words = f"lot {lot}: a move leaves {total:+d} too many or too few"
        yield _breach(words, entry, "movement", f"lot {lot}", "as much arrives as left")


def only_accepted_lots_were_used(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Whatever went into a batch was accepted on that date, as known then; a rework takes bars that may not leave."""
    query = f"""
        SELECT code, batch, "on", entry_id FROM (
          SELECT l.code, b.code AS batch, v."on", v.entry_id, m.kind, {_STATUS} AS status,
                 EXISTS (SELECT 1 FROM live_batch w WHERE w.id = v.batch_id AND w.process = 'rework') AS rework
          FROM movement v JOIN lot l ON l.id = v.lot_id JOIN material m ON m.id = l.material_id
          LEFT JOIN batch b ON b.id = v.batch_id
          WHERE v.kind = 'consumed' AND v.quantity < 0 AND {_COUNTS})
        WHERE status <> 'accepted' AND NOT (rework AND kind = 'soap' AND status IN ('rejected', 'on hold'))
    """
    for lot, batch, on, entry in rows.execute(query):
        words = f"lot {lot} went into batch {batch} and was not accepted on {on}"
        yield _breach(words, entry, "movement", f"lot {lot}", "a lot that was accepted by then")


def only_released_bars_left(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Bars that left for a shop, a person or a stall were released on that date, as known then."""
    query = f"""
        SELECT l.code, v."on", v.entry_id FROM material m JOIN lot l ON l.material_id = m.id
        JOIN movement v ON v.lot_id = l.id JOIN place p ON p.id = v.place_id
        WHERE m.kind = 'soap' AND CASE WHEN v.quantity < 0
            THEN v.kind IN ('dispatched', 'given') OR (v.kind = 'sold' AND p.kind NOT IN ('stall', 'consignment'))
            ELSE v.quantity > 0 AND v.kind = 'moved' AND p.kind IN ('stall', 'consignment') END
          AND {_COUNTS} AND {_STATUS} <> 'released'
    """
    for batch, on, entry in rows.execute(query):
        words = f"bars of batch {batch} left on {on} and were not released"
        yield _breach(words, entry, "movement", f"lot {batch}", "bars that were released by then")


def nobody_returns_more_than_they_got(rows: sqlite3.Connection) -> Iterator[Finding]:
    """No customer brought back more bars of a batch than went there."""
    query = """
        SELECT c.code, l.code, sum(v.quantity) FROM movement v JOIN customer c ON c.id = v.customer_id
        JOIN lot l ON l.id = v.lot_id GROUP BY v.customer_id, v.lot_id HAVING sum(v.quantity) > 0
    """
    for customer, lot, bars in rows.execute(query):
        words = f"customer {customer} brought back {bars} more bars of batch {lot} than went there"
        yield _breach(words, None, "movement", f"lot {lot}", "no more than went there")


def no_more_comes_out_than_went_in(rows: sqlite3.Connection) -> Iterator[Finding]:
    """What a batch gave weighs no more than what went into it, wrapping apart; bars weigh what they did at the cut."""
    loose = """
        SELECT v.batch_id, -sum(v.quantity) FROM movement v JOIN live_lot l ON l.id = v.lot_id
        JOIN material m ON m.id = l.material_id AND m.kind NOT IN ('soap', 'packaging')
        WHERE v.kind IN ('consumed', 'yielded') AND v.batch_id IS NOT NULL GROUP BY v.batch_id
    """
    bars = """
        SELECT u.batch_id, u.used * l.mass_mg,
               (SELECT sum(quantity) FROM movement y WHERE y.lot_id = l.id AND y.kind = 'yielded')
        FROM (SELECT batch_id, lot_id, sum(quantity) AS used FROM movement v
              WHERE kind = 'consumed' AND batch_id IS NOT NULL GROUP BY batch_id, lot_id) u
        JOIN live_lot l ON l.id = u.lot_id JOIN material m ON m.id = l.material_id AND m.kind = 'soap'
    """
    left: dict[int, Fraction] = defaultdict(Fraction)
    for batch, mass in rows.execute(loose):
        left[batch] += mass
    for batch, mass in rows.execute("SELECT batch_id, mass_mg FROM live_lot WHERE batch_id > 0 AND mass_mg > 0"):
        left[batch] -= mass
    for batch, mass, made in rows.execute(bars):
        left[batch] = left[batch] - Fraction(mass, made) if mass and made else Fraction(10**18)  # bars not weighed
    for batch in sorted(batch for batch, mass in left.items() if mass < 0):
        code = rows.execute("SELECT code FROM batch WHERE id = ?", (batch,)).fetchone()[0]
        words = f"batch {code} gave {-left[batch]} mg more than went into it"
        yield _breach(words, None, "movement", f"batch {code}", "no more than went in")


def no_lot_is_made_of_itself(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Going back from a lot never leads to the lot itself.

    Where each batch gave only lots that were opened after those it took, as it always is, there is no circle. Else what
    nothing leads to is taken away until nothing is left but circles and what they lead to; those alone are walked.
    """
    backward = """
        SELECT 1 FROM movement WHERE batch_id IS NOT NULL AND kind IN ('consumed', 'yielded') GROUP BY batch_id
        HAVING max(CASE kind WHEN 'consumed' THEN lot_id END) >= min(CASE kind WHEN 'yielded' THEN lot_id END) LIMIT 1
    """
    if not rows.execute(backward).fetchone():
        return
    query = """
        SELECT lot_id, batch_id FROM movement WHERE kind = ? AND batch_id IS NOT NULL
        GROUP BY batch_id, lot_id HAVING sum(quantity) * ? > 0
    """
    used = rows.execute(query, ("consumed", -1)).fetchall()
    made = rows.execute(query, ("yielded", 1)).fetchall()
    onward: dict[int, list[int]] = defaultdict(list)  # batches by their number, lots by the number below zero
    waiting: Counter[int] = Counter()
    for lot, batch in used:
        onward[-lot].append(batch)
        waiting[batch] += 1
    for lot, batch in made:
        onward[batch].append(-lot)
        waiting[-lot] += 1
    free = [node for node in onward if not waiting[node]]
    while free:
        for node in onward.pop(free.pop(), ()):
            waiting[node] -= 1
            if not waiting[node]:
                free.append(node)
    circling = {node for node, many in waiting.items() if many}
    if not circling:
        return
    graph = Graph(
        consumed=((lot, batch) for lot, batch in used if batch in circling),
        yielded=((batch, lot) for lot, batch in made if batch in circling),
    )
    for lot, batch in made:
        if -lot in circling and ("lot", lot) in graph.upstream([("batch", batch)]).paths:
            of, by = (
                rows.execute(f"SELECT code FROM {table} WHERE id = ?", (number,)).fetchone()[0]
                for table, number in (("lot", lot), ("batch", batch))
            )
            words = f"lot {of} is made of itself, by way of batch {by}"
            yield _breach(words, None, "movement", f"lot {of}", "a lot that came before")


def an_undo_mirrors_what_it_takes_back(rows: sqlite3.Connection) -> Iterator[Finding]:
    """An undo moves back exactly what the entry it names had moved."""
    query = """
        SELECT e.id, e.reverses FROM entry e WHERE e.reverses > 0 AND EXISTS (
          SELECT 1 FROM movement v WHERE v.entry_id IN (e.id, e.reverses)
          GROUP BY v.lot_id, v.place_id, v."on", v.kind HAVING sum(v.quantity) <> 0)
    """
    for undo, entry in rows.execute(query):
        words = f"entry {undo} does not take back exactly what entry {entry} moved"
        yield _breach(words, undo, "movement", f"entry {undo}", f"what entry {entry} moved, the other way")


def what_counts_stands_on_what_counts(rows: sqlite3.Connection) -> Iterator[Finding]:
    """Nothing that counts stands on something that was taken back."""
    for key in foreign_keys(rows):
        query = (
            f"SELECT DISTINCT t.entry_id, r.reverses FROM entry r CROSS JOIN {key.parent} p ON p.entry_id = r.reverses "
            f'CROSS JOIN live_{key.table} t ON t."{key.column}" = p.id WHERE r.reverses > 0 AND {binding(key.table)}'
        )
        noun = key.table.replace("_", " ")
        for entry, gone in rows.execute(query):
            words = f"a {noun} of entry {entry} stands on entry {gone}, taken back"
            yield _breach(words, entry, key.table, f"{noun} of entry {entry}", "what counts")


def what_was_paid_is_somewhere(rows: sqlite3.Connection) -> Iterator[Finding]:
    """What was paid for goods is on hand, in work, in bars or gone somewhere, to the minor unit; likewise the work.

    The one law that is reckoned, since a share is rounded by what went before it: from the facts, read by set.
    """
    for one in carriage_in_no_lot(rows):
        words = f"lot {one.lot_code} came with {one.carriage_minor} of carriage, and its delivery cost {one.lots_minor}"
        yield _breach(words, one.entry, "lot", f"lot {one.lot_code}", "lots that bear their carriage")
    facts = cost_facts(rows)
    found = costs(facts)
    work = sum(one.total_minor for one in found.by_batch.values())
    for flows, put_in, of in ((found.materials, bought(rows).total_minor, "goods"), (found.own, work, "work")):
        for lot in used_up_and_not_nothing(facts, flows):
            words = f"lot {lot.code} is used up and {flows.lots[lot.id].left} of its cost went nowhere ({of})"
            yield _breach(words, None, "lot", f"lot {lot.code}", "all of its cost with what it went into")
        if differs := statement(facts, flows, put_in).differs_minor:
            words = f"{differs} of what {of} cost is nowhere"
            yield _breach(words, None, "movement", "all lots", "on hand, in work, in bars, or gone")


LAWS: tuple[Callable[[sqlite3.Connection], Iterator[Finding]], ...] = (
    never_below_zero,
    nothing_happens_before_a_lot_is_there,
    every_lot_comes_from_somewhere,
    what_leaves_one_place_arrives_at_another,
    only_accepted_lots_were_used,
    only_released_bars_left,
    nobody_returns_more_than_they_got,
    no_more_comes_out_than_went_in,
    no_lot_is_made_of_itself,
    an_undo_mirrors_what_it_takes_back,
    what_counts_stands_on_what_counts,
    *SALE_LAWS,
    what_was_paid_is_somewhere,
    *SHOP_LAWS,
)


def breaches(rows: sqlite3.Connection) -> tuple[Finding, ...]:
    """Everything that does not hold, not only the first."""
    return tuple(one for law in LAWS for one in law(rows))
