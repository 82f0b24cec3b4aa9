"""Where bars of a product are sold without a label: settled by name, once for an outlet."""

from dataclasses import dataclass
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.rows.label import sold_bare
from ledger.rows.people import customer_by_code
from ledger.rows.recipe import RecipeCard, recipe_by_code
from ledger.storage.book import Book
from ledger.storage.tables.label import SoldBare
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date
from ledger.units.words import CodeOn
from ledger.views.label.bare import Outlet, settled_at
from ledger.views.stock.stall import stall_by_name


@dataclass(frozen=True)
class Bare:
    """What a person settles of one product at one outlet, a stall or a customer."""

    recipe: str
    stall: str | None
    customer: str | None
    on: date
    by: str
    reason: str


def settle_bare(book: Book, asked: Bare, *, notice: str, code_on: CodeOn) -> str:
    """Book that the bars of a product are sold there without a label; returns the name of the outlet.

    Raises BadInput without a notice, a reason or one outlet, Refused where it is settled just so, or for a day before
    what was settled last.
    """
    if not notice.strip():
        raise BadInput("Which notice stands beside the bars? Name it: --notice notice-shelf, or in your words.")
    with book.write("label bare") as tx:
        recipe, outlet, name = _asked_about(tx, asked)
        last = settled_at(sold_bare(tx.rows, recipe.code), outlet, asked.on)
        if last and last.bare and (last.notice, last.code_on) == (notice.strip(), code_on):
            raise Refused(f"That is settled already. {last.words}")
        row = _row(recipe, outlet, asked)
        row.bare, row.notice, row.code_on = 1, notice.strip(), code_on
        tx.add(row)
        tx.say(f"{recipe.name} is sold without a label at {name}.")
    return name


def end_bare(book: Book, asked: Bare) -> str:
    """Book that from a day on the bars of a product go there with a label again; returns the name of the outlet.

    Raises like `settle_bare`, and Refused where they are not sold there without one.
    """
    with book.write("label bare") as tx:
        recipe, outlet, name = _asked_about(tx, asked)
        last = settled_at(sold_bare(tx.rows, recipe.code), outlet, asked.on)
        if not (last and last.bare):
            raise Refused(f"It is not settled that {recipe.name} is sold without a label at {name}.")
        row = _row(recipe, outlet, asked)
        tx.add(row)
        tx.say(f"{recipe.name} goes to {name} with a label again.")
    return name


def _asked_about(tx: Transaction, asked: Bare) -> tuple[RecipeCard, Outlet, str]:
    if not asked.reason.strip():
        raise BadInput('Say why, so that it can be read later: --reason "…".')
    if (asked.stall is None) == (asked.customer is None):
        raise BadInput("Where are they sold? Name one outlet: --stall STALL, or --to CUSTOMER.")
    recipe = recipe_by_code(tx.rows, asked.recipe)
    if asked.stall is not None:
        place = stall_by_name(tx.rows, asked.stall)
        outlet, name = Outlet(place_id=place.id), place.name
    else:
        card = customer_by_code(tx.rows, asked.customer or "")
        outlet, name = Outlet(customer_id=card.id), card.name
    last = settled_at(sold_bare(tx.rows, recipe.code), outlet, date.max)
    if last and last.on > asked.on:
        raise Refused(
            f"What holds for {recipe.name} at {name} was settled from {show_date(last.on)} on; date this that day or "
            "later."
        )
    return recipe, outlet, name


def _row(recipe: RecipeCard, outlet: Outlet, asked: Bare) -> SoldBare:
    return SoldBare(
        recipe_id=recipe.id,
        place_id=outlet.place_id,
        customer_id=outlet.customer_id,
        on=asked.on,
        bare=0,
        reason=asked.reason.strip(),
        by=asked.by,
    )
