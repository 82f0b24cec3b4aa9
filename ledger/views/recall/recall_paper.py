"""What the report of a recall says beside its answer: the products by name and weight, and what happened when."""

from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from ledger.rows.batch import batches_coded
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_of
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass
from ledger.units.wording import count
from ledger.views.recall.recall_labels import LabelOf, label_of
from ledger.views.recall.recall_life import RecallLife
from ledger.views.recall.recall_steps import step_words


class ProductRecalled(NamedTuple):
    """One soap: its net weight as the recipe has it, the codes on its bars, when they were made."""

    name: str
    net: str  # empty where the recipe says none
    codes: tuple[str, ...]
    bars: int
    first_on: date
    last_on: date


class Happened(NamedTuple):
    """One thing on the line of time."""

    on: date
    what: str


@dataclass(frozen=True)
class RecallPaper:
    """Everything the report draws."""

    life: RecallLife
    products: tuple[ProductRecalled, ...]
    timeline: tuple[Happened, ...]
    labels: tuple[LabelOf, ...] = ()  # of those products of which one was kept


def recall_paper(rows: Rows, life: RecallLife) -> RecallPaper:
    """One recall as its report tells it."""
    products = products_of(rows, life)
    labels = (label_of(rows, one.name, one.codes) for one in products)
    return RecallPaper(life, products, _timeline(life), tuple(one for one in labels if one))


def products_of(rows: Rows, life: RecallLife) -> tuple[ProductRecalled, ...]:
    """The soaps reached, those of different weight apart, in the order they were made."""
    made = [one for one in life.answer.batches if one.yields_bars]
    known = batches_coded(rows, [one.batch_code for one in made])
    found: dict[tuple[str, str], ProductRecalled] = {}
    for one in made:
        recipe = recipe_of(rows, known[one.batch_code])
        net = ""
        if recipe and recipe.net_weight_mg:
            net = recipe.net_weight or show_mass(recipe.net_weight_mg, life.answer.units)
        so_far = found.get((one.product, net), ProductRecalled(one.product, net, (), 0, one.made_on, one.made_on))
        found[one.product, net] = so_far._replace(
            codes=(*so_far.codes, one.batch_code), bars=so_far.bars + one.bars_made, last_on=one.made_on
        )
    return tuple(found.values())


def _timeline(life: RecallLife) -> tuple[Happened, ...]:
    card, answer = life.card, life.answer
    found = [
        Happened(one.received_on, f"lot {one.lot_code} of {one.material} came from {one.supplier}")
        for one in answer.lots
    ]
    made = [one for one in answer.batches if one.yields_bars]
    if made:
        first, last = min(one.made_on for one in made), max(one.made_on for one in made)
        batches = count(len(made), "batch", "batches")
        if first == last:
            found.append(Happened(first, f"{batches} of bars made"))
        else:
            found.append(Happened(first, f"the first of {batches} of bars made"))
            found.append(Happened(last, "the last of them made"))
    gone = sorted(one.on for one in answer.bars if one.left and one.on and one.where in ("sold", "dispatched", "given"))
    if gone:
        found.append(Happened(gone[0], "the first bars left"))
        found.append(Happened(gone[-1], "the last bars left"))
    found.append(Happened(card.on, f"recall {card.name} {'rehearsed' if card.exercise else 'opened'}: {card.reason}"))
    found += [Happened(step.on, step_words(step)) for step in card.steps]
    if card.closed and not card.exercise:
        found.append(Happened(card.closed.on, f"closed by {card.closed.by}: {card.closed.conclusion}"))
    return tuple(sorted(dict.fromkeys(found), key=lambda one: one.on))


def span_words(paper: RecallPaper) -> str:
    """When the bars were made."""
    days = [day for one in paper.products for day in (one.first_on, one.last_on)]
    if not days:
        return "no bars were made of it"
    first, last = min(days), max(days)
    return show_date(first) if first == last else f"{show_date(first)} to {show_date(last)}"
