"""A label held against the rules of a market on a day, particular by particular; a person decides."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.label.market import Market
from ledger.domain.label.net_quantity import Net
from ledger.domain.label.panel import Front
from ledger.domain.label.words import Words
from ledger.markets import market
from ledger.rows.bars import bar_counts, still_out
from ledger.rows.batch import find_batch
from ledger.rows.label import Run, WordsStand, approved_by, first_supplies, runs
from ledger.rows.opened import Rows
from ledger.units.dates import show_date
from ledger.units.gs1 import elements
from ledger.units.wording import count
from ledger.views.label.bare import bare_words
from ledger.views.label.claimed import asked_words, claimed_words
from ledger.views.label.label import LabelText, digest_of, label_text, run_text
from ledger.views.label.net import net_words
from ledger.views.label.particulars import Particular, particulars
from ledger.views.stock.made_of import Compositions


class LabelCheck(NamedTuple):
    """What was checked, against what, as of which day; never a claim of compliance."""

    on: date
    label: LabelText
    particulars: tuple[Particular, ...]
    net: tuple[str, ...]  # the last weighings against the rules of the market, a sentence for each
    gs1: str | None  # the element string, where she has a GTIN
    claims: tuple[str, ...]  # words to question, with the reason
    stand: WordsStand | None  # who let those very words stand
    approved: str | None  # by whom, on which day
    runs: tuple[Run, ...]
    bare: tuple[str, ...]  # where the product is sold without a label
    supplied: tuple[str, ...]  # bars that went out already, and which list of allergens holds for them
    remains: tuple[str, ...]


def label_check(
    rows: Rows,
    code: str,
    market_code: str,
    *,
    on: date,
    net: Net | None = None,
    best_before_months: int | None = None,
    front: Front | None = None,
    words: Sequence[Words] | None = None,
) -> LabelCheck:
    """Check the label of a batch for bars first supplied on a day; raises like `label_text`."""
    batch = find_batch(rows, code)
    made_of = Compositions(rows, of=[batch.id])
    label = label_text(
        rows,
        code,
        market_code,
        on=on,
        net=net,
        best_before_months=best_before_months,
        front=front,
        words=words,
        checking=True,
        made_of=made_of,
    )
    law = market(label.market)
    lot_id = batch.yield_lot_id
    assert lot_id is not None
    approval = approved_by(rows, lot_id, label.market, digest_of(run_text(label)))
    claimed = claimed_words(rows, batch, label, on=on)
    return LabelCheck(
        on,
        label,
        particulars(rows, batch, label, on=on, made_of=made_of, months=best_before_months, front=front),
        net_words(rows, batch, label, law),
        _gs1(label),
        tuple(map(asked_words, claimed.questioned)),
        claimed.stand,
        f"{approval[0]}, {show_date(approval[1])}" if approval else None,
        tuple(run for run in runs(rows, lot_id) if run.market == label.market),
        bare_words(rows, batch, on=on),
        _supplied(rows, lot_id, law),
        label.remains,
    )


def _gs1(label: LabelText) -> str | None:
    """What a GS1 code would hold; only with a GTIN of her own, never made up."""
    if label.code_text == label.batch_code:
        return None
    return elements(label.code_text, lot=label.batch_code, made_on=label.made_on)


def _supplied(rows: Rows, lot_id: int, law: Market) -> tuple[str, ...]:
    """Bars are told apart by the day they were first supplied, and with it the list that holds for them."""
    if len(law.allergens) < 2:
        return ()
    found = []
    for one in still_out(bar_counts(rows, [lot_id])):
        bars = count(one.count, "bar")
        them, they = ("it", "it goes") if one.count == 1 else ("them", "they go")
        if one.where in ("dispatched", "given", "sold") and one.on is not None:
            listed = law.allergen_list(one.on)
            if listed is None:
                continue
            until = f", and may be sold on until {show_date(listed.sold_on_until)}" if listed.sold_on_until else ""
            found.append(f"{bars} {one.where} on {show_date(one.on)}: {listed.name} holds for {them}{until}.")
        elif one.where in ("on hand", "at a stall", "at a shop", "returned"):
            found.append(f"{bars} {one.where}: not supplied yet, or back; the day {they} decides.")
    for said in first_supplies(rows, lot_id):
        listed = law.allergen_list(said.supplied_on)
        if listed and listed.sold_on_until and not said.back:
            found.append(
                f"{count(said.bars, 'bar')} left on {show_date(said.on)} under a label of {listed.name}, first "
                f"supplied on {show_date(said.supplied_on)} to {said.whom}, as {said.by} said; to be sold by "
                f"{show_date(listed.sold_on_until)}."
            )
    return tuple(found)
