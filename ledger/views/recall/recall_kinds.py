"""What a question means that begins with a recipe, a tool or a slip at the bench; loaded only where one does."""

from collections.abc import Mapping
from datetime import date

from ledger.domain.recall.question import Kind, Question
from ledger.errors import BadInput, Refused
from ledger.rows.batch import batches_by_id, batches_coded
from ledger.rows.equipment import checks_of, equipment_by_code
from ledger.rows.material import material_by_code
from ledger.rows.opened import Rows
from ledger.rows.reached import batches_made_as, weighed_for_another
from ledger.rows.recipe import recipe_by_code
from ledger.units.quantity import parse_pieces
from ledger.views.recall.recall import CannotBeExcluded
from ledger.views.recall.recall_starts import Asked, Meant, MeantBy, asked_about, between, in_order, within
from ledger.views.tools.equipment_doubts import touched_since_last_good


def asked_about_anything(rows: Rows, question: Question, *, on: date) -> Asked:
    """The starts of any question. Raises BadInput or Refused where something of it matches nothing."""
    return asked_about(rows, question, on=on, others=OTHERS)


def _recipe(rows: Rows, what: str, _question: Question, _on: date) -> Meant:
    name, _, number = what.partition("@")
    card = recipe_by_code(rows, name)
    version = parse_pieces(number, what="the version of the recipe") if number else None
    if version is not None and not 1 <= version <= card.version:
        raise BadInput(f"{card.name} has versions 1 to {card.version}; write {card.code}@{card.version}.")
    made = in_order(batches_by_id(rows, batches_made_as(rows, recipe_id=card.id, version=version)).values())
    which = f"{card.name}, version {version}" if version else f"{card.name}, every version"
    if not any(one.made_on for one in made):
        raise Refused(f"Nothing was made of {which} yet.")
    return Meant(made, which)


def _tool(rows: Rows, what: str, _question: Question, on: date) -> Meant:
    item = equipment_by_code(rows, what, on)
    failed = [one for one in checks_of(rows, item.id) if not one.passed]
    if not failed:
        raise Refused(f"{item.name} failed no check; see: soapledger equipment show {item.code}")
    touched = [touched_since_last_good(rows, item, one) for one in failed]
    codes = {one.code for each in touched for one in each.batches}
    made = in_order(batches_coded(rows, codes).values())
    unsaid = {one.code: one for each in touched for one in each.unsaid if one.code not in codes}
    if not made and not unsaid:
        raise Refused(f"Nothing was measured with {item.name} before it failed.")
    doubts = tuple(
        CannotBeExcluded(f"batch {one.code}, {one.product}", f"it was not said that {item.name} measured it, nor which")
        for one in unsaid.values()
    )
    return Meant(made, f"what {item.name} measured before it failed", doubts)


def _instead(rows: Rows, what: str, question: Question, _on: date) -> Meant:
    card = material_by_code(rows, what)
    found = batches_by_id(rows, weighed_for_another(rows, card.id)).values()
    made = in_order(one for one in found if within(one, question))
    if not made:
        raise BadInput(f"{card.name} was weighed for no other material{between(question, '')[1:]}.")
    return Meant(made, f"{card.name} weighed for another material")


OTHERS: Mapping[Kind, MeantBy] = {"recipe": _recipe, "tool": _tool, "instead": _instead}
