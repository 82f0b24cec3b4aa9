"""The labels that were approved, printed and counted."""

import sqlite3
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from ledger.errors import BadInput
from ledger.rows.lot import LotRow, lots_by_id
from ledger.rows.opened import day, maybe_day
from ledger.units.dates import show_date
from ledger.units.wording import count


@dataclass(frozen=True)
class Run:
    """One print run, with what became of its labels; `counted` is None until they were counted."""

    number: int
    batch_code: str
    market: str
    layout: str
    on: date
    by: str
    count: int
    text: str
    text_digest: str
    counted: date | None
    used: int | None
    spoiled: int | None
    returned: int | None
    reprint_of: int | None
    specimen: int | None = None  # kept with the record of the batch
    destroyed: int | None = None  # of the returned; the rest of them is kept

    @property
    def became(self) -> str:
        """What became of its labels; together they are those that were issued."""
        if self.counted is None:
            return "not counted yet"
        words = [f"{self.used} used", *([f"{self.specimen} specimen"] if self.specimen else [])]
        words += [f"{self.spoiled} spoiled", f"{self.returned} returned"]
        gone = self.destroyed
        fate = f" ({gone} destroyed, {(self.returned or 0) - gone} kept)" if self.returned and gone is not None else ""
        return f"{' + '.join(words)}{fate}"


_SQL = """
SELECT r.id AS number, l.code AS batch_code, r.market, r.layout, r."on", e.who AS by, r.count, r.text, r.text_digest,
       c."on" AS counted, c.used, c.spoiled, c.returned, c.specimen,
       c.destroyed, r.reprint_of
FROM live_label_run r JOIN lot l ON l.id = r.lot_id JOIN entry e ON e.id = r.entry_id
LEFT JOIN live_label_count c ON c.id = (SELECT max(id) FROM live_label_count WHERE label_run_id = r.id)
"""


def _run(row: sqlite3.Row) -> Run:
    return Run(**{**dict(row), "on": day(row["on"]), "counted": maybe_day(row["counted"])})


def runs(rows: sqlite3.Connection, lot_id: int | None = None, *, last: int | None = None) -> tuple[Run, ...]:
    """Every run, or those of one lot of bars, in order; only the last so many where told."""
    where = "" if lot_id is None else " WHERE r.lot_id = :lot"
    asked = {"lot": lot_id, "last": -1 if last is None else last}
    found = rows.execute(_SQL + where + " ORDER BY r.id DESC LIMIT :last", asked).fetchall()
    return tuple(_run(row) for row in reversed(found))


def run_by_number(rows: sqlite3.Connection, number: int) -> Run:
    """One run. Raises BadInput for a number that is none."""
    row = rows.execute(_SQL + " WHERE r.id = ?", (number,)).fetchone()
    if row is None:
        raise BadInput(f"There is no print run {number}; see them: soapledger label runs")
    return _run(row)


def text_of(rows: sqlite3.Connection, run: Run) -> date:
    """The day the text of a run was first printed: a run printed again carries the words of the first."""
    while run.reprint_of is not None:
        run = run_by_number(rows, run.reprint_of)
    return run.on


def approvals(rows: sqlite3.Connection, lot_id: int) -> dict[tuple[str, str], tuple[str, date]]:
    """Who approved which text for some bars last, and when, by market and digest of the text."""
    found = rows.execute(
        'SELECT market, text_digest, by, "on" FROM live_label_approval WHERE lot_id = ? ORDER BY id', (lot_id,)
    )
    return {(row["market"], row["text_digest"]): (row["by"], day(row["on"])) for row in found}


def approved_by(rows: sqlite3.Connection, lot_id: int, market: str, text_digest: str) -> tuple[str, date] | None:
    """Who approved that very text for those bars and that market, and when; None where nobody did."""
    return approvals(rows, lot_id).get((market, text_digest))


def band_approved(rows: sqlite3.Connection, lot_id: int, market: str) -> tuple[str, str, date] | None:
    """What stands on a lot of bands by the last approval for a market, by whom and when; None where nobody gave one."""
    row = rows.execute(
        'SELECT text, by, "on" FROM live_label_approval WHERE lot_id = ? AND market = ? ORDER BY id DESC LIMIT 1',
        (lot_id, market),
    ).fetchone()
    return None if row is None else (row["text"], row["by"], day(row["on"]))


def wrapped_in(rows: sqlite3.Connection, batch_id: int) -> tuple[LotRow, ...]:
    """The lots of wrapping that were taken for the bars of a batch, in the order of their codes."""
    found = rows.execute(
        """
        SELECT v.lot_id FROM live_movement v JOIN live_plan_line p ON p.id = v.plan_line_id
        WHERE p.batch_id = ? AND p.role = 'packaging' AND v.kind = 'consumed'
        GROUP BY v.lot_id HAVING sum(v.quantity) < 0
        """,
        (batch_id,),
    )
    return tuple(sorted(lots_by_id(rows, [row[0] for row in found]).values(), key=lambda lot: lot.code))


class WordsStand(NamedTuple):
    """Who let questioned words stand, when and why."""

    by: str
    on: date
    reason: str


def words_stand(rows: sqlite3.Connection, market: str, digest: str) -> WordsStand | None:
    """Who let the words of that digest stand for a market last; None where nobody did."""
    row = rows.execute(
        'SELECT by, "on", reason FROM live_label_words WHERE market = ? AND digest = ? ORDER BY id DESC LIMIT 1',
        (market, digest),
    ).fetchone()
    return WordsStand(row["by"], day(row["on"]), row["reason"]) if row else None


class KeptLabel(NamedTuple):
    """A label as a run printed it: its particulars, and the sources of its layout and its sheet."""

    lot_id: int
    view: str
    view_format: int
    layout_source: str
    sheet_source: str
    start: int | None  # the first place of the sheet; None is the first of all


def kept_with(rows: sqlite3.Connection, number: int) -> KeptLabel | None:
    """The label that is kept with a run; None where its layout was not."""
    row = rows.execute(
        "SELECT lot_id, view, view_format, layout_source, sheet_source, start FROM label_run WHERE id = ?", (number,)
    ).fetchone()
    return None if None in (row["view"], row["layout_source"], row["sheet_source"]) else KeptLabel(*row)


class FirstSupplied(NamedTuple):
    """Bars under an earlier list that went on, as a person said when and to whom they were first supplied."""

    on: date
    bars: int
    back: bool  # put back on sale here; else they left
    supplied_on: date
    whom: str
    by: str

    @property
    def words(self) -> str:
        """The same in words."""
        went = f"{count(self.bars, 'bar')} {'put back on sale' if self.back else 'left'} on {show_date(self.on)}"
        return f"{went}, first supplied on {show_date(self.supplied_on)} to {self.whom}, as {self.by} said."


def first_supplies(rows: sqlite3.Connection, lot_id: int) -> tuple[FirstSupplied, ...]:
    """Every such statement about the bars of a lot, as they were booked."""
    found = rows.execute(
        'SELECT "on", bars, back, supplied_on, whom, by FROM live_first_supply WHERE lot_id = ? ORDER BY id', (lot_id,)
    )
    return tuple(FirstSupplied(day(row[0]), row[1], bool(row[2]), day(row[3]), row["whom"], row["by"]) for row in found)


def supplied_on(rows: sqlite3.Connection, lot_id: int, on: date) -> int:
    """How many bars of a lot were sent, given, or taken to a stall or sold there on a day, as booked."""
    row = rows.execute(
        """
        SELECT coalesce(-sum(v.quantity) FILTER (WHERE v.kind IN ('dispatched', 'given')), 0) + max(
          coalesce(sum(v.quantity) FILTER (WHERE v.kind = 'moved' AND v.quantity > 0
                                           AND p.kind IN ('stall', 'consignment')), 0),
          coalesce(-sum(v.quantity) FILTER (WHERE v.kind = 'sold'), 0))
        FROM live_movement v JOIN place p ON p.id = v.place_id WHERE v.lot_id = ? AND v."on" = ?
        """,
        (lot_id, on.isoformat()),
    ).fetchone()
    return int(row[0])


class SoldBare(NamedTuple):
    """What a person settled of the bars of a product at one outlet: sold without a label, or with one again."""

    recipe: str
    product: str
    outlet: str
    place_id: int | None
    customer_id: int | None
    on: date
    bare: bool
    notice: str | None
    code_on: str | None
    reason: str
    by: str

    @property
    def words(self) -> str:
        """The same in words."""
        if not self.bare:
            return f"{self.outlet}: with a label again from {show_date(self.on)}, as {self.by} decided: {self.reason}."
        return (
            f"{self.outlet}: without a label from {show_date(self.on)}, as {self.by} decided: {self.reason}. Notice: "
            f"{self.notice}; the batch code is on the {self.code_on}."
        )


def sold_bare(rows: sqlite3.Connection, recipe: str | None = None) -> tuple[SoldBare, ...]:
    """What was settled, of one recipe by its code or of all, in the order it was booked."""
    found = rows.execute(
        """
        SELECT r.code AS recipe, n.name AS product, coalesce(p.name, k.name, t.name, c.code) AS outlet, s.place_id,
               s.customer_id, s."on", s.bare, s.notice, s.code_on, s.reason, s.by
        FROM live_sold_bare s JOIN live_recipe r ON r.id = s.recipe_id
        JOIN live_recipe_version n ON n.id = (SELECT max(id) FROM live_recipe_version WHERE recipe_id = r.id)
        LEFT JOIN live_place p ON p.id = s.place_id LEFT JOIN live_customer c ON c.id = s.customer_id
        LEFT JOIN live_customer_revision k
          ON k.id = (SELECT max(id) FROM live_customer_revision WHERE customer_id = c.id)
        LEFT JOIN personal_text t ON t.personal_id = k.personal_id
        WHERE :recipe IS NULL OR r.code = :recipe ORDER BY s.id
        """,
        {"recipe": recipe},
    )
    return tuple(SoldBare(**{**dict(row), "on": day(row["on"]), "bare": bool(row["bare"])}) for row in found)


class WentOut(NamedTuple):
    """Bars of a lot that went to a stall or a customer on a day; less than nothing: they came home from the stall."""

    place_id: int | None
    customer_id: int | None
    on: date
    bars: int


def went_out(rows: sqlite3.Connection, lot_id: int) -> tuple[WentOut, ...]:
    """Where bars of a lot were taken, sent and given; what a shop on sale or return sends back is looked at first."""
    found = rows.execute(
        """
        SELECT CASE WHEN v.kind = 'moved' AND p.customer_id IS NULL THEN v.place_id END,
               coalesce(v.customer_id, p.customer_id), v."on",
               CASE WHEN v.kind = 'moved' THEN v.quantity ELSE -v.quantity END
        FROM live_movement v JOIN place p ON p.id = v.place_id
        WHERE v.lot_id = ? AND (v.kind IN ('dispatched', 'given') OR (v.kind = 'moved' AND
          (p.kind = 'stall' OR (p.kind = 'consignment' AND v.quantity > 0))))
        """,
        (lot_id,),
    )
    return tuple(WentOut(row[0], row[1], day(row[2]), row[3]) for row in found)
