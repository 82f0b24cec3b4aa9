"""What is printed on the bars of one batch for one market."""

import sqlite3
from dataclasses import dataclass
from datetime import date

from ledger.domain.dates import MONTHS, add_months
from ledger.domain.declaration import DeclaredIngredient, declare
from ledger.domain.market import Rule
from ledger.domain.net_quantity import dual, metric
from ledger.errors import BadInput, Refused
from ledger.markets import market
from ledger.views.batch import find_batch, recipe_of
from ledger.views.graph import ledger_graph
from ledger.views.ingredients import parts_of_batch
from ledger.views.settings import settings


@dataclass(frozen=True)
class LabelText:
    """The particulars of one label, ready to be set; nothing here is a claim of compliance."""

    market: str  # "eu", "gb", "us", "ca"
    product: str
    function: str  # what it is: "Soap"
    net_quantity: str  # as it is printed, e.g. "100 g" or "Net Wt 3.5 oz (99 g)"
    net_mg: int
    figure_height_mm: float  # the least height of its figures
    ingredients_heading: str
    ingredients: str  # one line, comma-separated
    batch_code: str
    best_before: str | None  # as printed; None where a period after opening stands in its place
    after_opening_months: int | None  # beside the mark of the open jar
    origin: str | None  # "Made in Ireland"
    code_text: str  # what a printed code holds: the batch code, or a GTIN
    responsible_name: str
    responsible_address: str
    precautions: tuple[str, ...]
    made_on: date
    status: str  # of the bars
    draft: bool  # not passed for packing: marked DRAFT
    declared: tuple[DeclaredIngredient, ...]
    rules: tuple[Rule, ...]
    remains: tuple[str, ...]  # what a person or a licensed assessor still has to decide


def label_text(
    rows: sqlite3.Connection,
    code: str,
    market_code: str,
    *,
    net_mg: int | None = None,
    best_before_months: int | None = None,
) -> LabelText:
    """The particulars of the bars of one batch for one market, from the lots that really went in.

    Raises BadInput for an unknown market, a market without a responsible person, a bar without a
    declared weight, or a material without an INCI name; Refused for a batch that gives no bars.
    """
    batch = find_batch(rows, code)
    if not batch.soap or batch.yielded_on is None:
        raise Refused(f"Batch {batch.code} is {batch.status}; labels are for bars that were cut.")
    law, own, recipe = market(market_code), settings(rows), recipe_of(rows, batch)
    responsible = own.addresses.get(law.code)
    if responsible is None:
        raise BadInput(
            f"There is no responsible person for {law.name} yet; give one with: "
            f"soapledger init --market '{law.code}=Name; street, town'"
        )
    net = net_mg if net_mg is not None else recipe.net_weight_mg if recipe else None
    if not net:
        raise BadInput(f"{batch.product} has no net weight per bar; add --net '100 g', or write it in the recipe.")
    months = best_before_months or (recipe.best_before_months if recipe else None)
    made = batch.made_on or batch.planned_on
    declared = declare(parts_of_batch(rows, batch.id), aqua=law.aqua)
    end = add_months(made, months) if months else None
    return LabelText(
        market=law.code,
        product=batch.product,
        function="Soap",
        net_quantity=dual(net) if law.net_style == "dual" else metric(net),
        net_mg=net,
        figure_height_mm=law.figure_height(net),
        ingredients_heading=law.ingredients_heading,
        ingredients=", ".join(one.inci for one in declared),
        batch_code=batch.code,
        after_opening_months=None,
        origin=None,
        code_text=batch.code,
        best_before=f"{law.best_before_wording} {MONTHS[end.month - 1]} {end.year}" if end else None,
        responsible_name=responsible.name,
        responsible_address=responsible.address,
        precautions=(),
        made_on=made,
        status=batch.status,
        draft=batch.lot_status not in ("passed", "released"),
        declared=declared,
        rules=law.rules,
        remains=(*_own_remains(rows, batch.id), *law.remains),
    )


def _own_remains(rows: sqlite3.Connection, batch_id: int) -> tuple[str, ...]:
    """What this very batch leaves to a person, before what its market does."""
    found = ["The best-before date: months from the making as the recipe gives them, or 24 by default (no source)."]
    marks = ledger_graph(rows).upstream([("batch", batch_id)]).of_kind("batch")
    infused = rows.execute(
        f"SELECT code FROM batch WHERE process = 'infusion' AND id IN ({','.join('?' * len(marks))}) ORDER BY code",
        marks,
    ).fetchall()
    if infused:
        found.append(
            f"Whether anything of the plants strained out of {', '.join(row[0] for row in infused)} was carried over "
            "and is to be declared; here it is not."
        )
    return tuple(found)
