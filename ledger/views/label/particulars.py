"""What a label has of every particular its market asks for, and what of it is for a person."""

from collections.abc import Callable
from datetime import date
from typing import NamedTuple

from ledger.domain.label.durability import last_day_printed
from ledger.domain.label.market import Market
from ledger.domain.label.panel import Front
from ledger.markets import market
from ledger.reference.countries import country_named, country_of
from ledger.rows.batch import BatchRow
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_by_code, recipe_of
from ledger.units.dates import add_months, show_date
from ledger.units.quantity import show_share
from ledger.units.wording import count
from ledger.units.words import MaterialKind
from ledger.views.label.colours import colours_stand, nano_stands
from ledger.views.label.label import LabelText
from ledger.views.label.net import net_stands
from ledger.views.label.setting import height_words, language_words
from ledger.views.recipe.ingredients import bases_of_batch
from ledger.views.recipe.outlived import outlived
from ledger.views.release.assessment import batch_beside
from ledger.views.stock.made_of import Compositions


class Particular(NamedTuple):
    """One particular: what the rule says, what was found, and how it stands."""

    particular: str
    found: str
    says: str
    source: str
    status: str
    stands: str  # found, missing, for a person


class Checked(NamedTuple):
    """One label as it is checked for a day."""

    rows: Rows
    batch: BatchRow
    label: LabelText
    law: Market
    on: date
    made_of: Compositions
    months: int | None  # how long the bars keep, from their making
    front: Front | None  # the side of the pack that bears the front


def particulars(
    rows: Rows,
    batch: BatchRow,
    label: LabelText,
    *,
    on: date,
    made_of: Compositions,
    months: int | None,
    front: Front | None = None,
) -> tuple[Particular, ...]:
    """Every particular its market asks for on a day; months as typed, else those of the recipe."""
    recipe = recipe_of(rows, batch)
    kept = months or (recipe.best_before_months if recipe else None)
    one = Checked(rows, batch, label, market(label.market), on, made_of, kept, front)
    asked = ((rule, *_found(one, rule.particular)) for rule in label.rules)
    return tuple(
        Particular(rule.particular, found, rule.says, rule.source, rule.status, stands) for rule, found, stands in asked
    )


def _found(one: Checked, particular: str) -> tuple[str, str]:
    """What the label has of one particular, and whether that is found, missing, or for a person."""
    label = one.label
    looked: dict[str, Callable[[Checked], tuple[str, str]]] = {
        "responsible person": _responsible,
        "contact": _contact,
        "net quantity": lambda one: net_stands(one.rows, one.batch, one.label, one.law),
        "figure height": lambda one: height_words(one.label, one.front),
        "language": lambda one: language_words(one.label),
        "voluntary ingredients": _voluntary,
        "durability": _durability,
        "colours": lambda one: colours_stand(_inside(one), one.law.colours),
        "nanomaterials": lambda one: nano_stands(_inside(one)),
        "may contain": _may_contain,
        "allergens": lambda one: _allergens(one.label),
        "assessment": lambda one: _covered(one, "assessment"),
        "notification": lambda one: _covered(one, "notification"),
    }
    if particular in looked:
        return looked[particular](one)
    simple = {
        "batch code": label.batch_code,
        "function": label.function,
        "ingredients": f"{label.ingredients} ({label.policy})",
        "letters of the ingredients": f"{label.lettering.ingredients_mm:g} mm at least, in capitals",
        "letters": f"{label.lettering.others_mm:g} mm at least",
    }
    if particular in simple:
        return (simple[particular], "found") if simple[particular] else ("nothing", "missing")
    if particular == "precautions":
        return (" ".join(label.precautions), "found") if label.precautions else ("none given", "for a person")
    if particular == "origin":
        return (label.origin, "found") if label.origin else ("none given; wanted if imported", "for a person")
    return "not to be read from the ledger", "for a person"


def _responsible(one: Checked) -> tuple[str, str]:
    """Name and address; for a person where the address does not end in a country that serves the market."""
    label, law = one.label, one.law
    shown = f"{label.responsible_name}, {label.responsible_address}"
    country = country_of(label.responsible_address)
    if country is None:
        return (
            f"{shown}; its last line names no country known here, so whether it lies in {law.name} is for a person. "
            f"Write the country last: soapledger init --market '{law.address}=Name; street, town, country'",
            "for a person",
        )
    if country not in law.seats.split():
        return (
            f"{shown}; it ends in {country_named(country)}, which is not of {law.name} as far as is known here, so "
            "whether it may stand is for a person",
            "for a person",
        )
    return shown, "found"


def _contact(one: Checked) -> tuple[str, str]:
    address = one.label.responsible_address
    if country_of(address) in one.law.seats.split():
        return address, "found"
    return f"{address}; whether that can be reached as the rule asks is for a person", "for a person"


def _voluntary(one: Checked) -> tuple[str, str]:
    """A list that no rule asks for: where it is given, whether it is whole and true is for a person."""
    listed = one.label.ingredients
    return (f"{listed} ({one.label.policy})", "for a person") if listed else ("none given", "found")


def _durability(one: Checked) -> tuple[str, str]:
    """What is printed; for a person where an oil that went in was best before an earlier day."""
    label = one.label
    shown = label.best_before or (
        f"{label.after_opening_months}M, with the open jar" if label.after_opening_months else ""
    )
    recipe = recipe_of(one.rows, one.batch)
    if not shown and recipe and recipe.label.opening_matters is False:
        return "no date, and no period: the recipe says that opening does not matter", "for a person"
    if not shown:
        return "nothing", "missing"
    late = outlived_words(one.rows, one.batch, label, one.made_of, one.months)
    return (f"{shown}; {late}", "for a person") if late else (shown, "found")


def outlived_words(
    rows: Rows, batch: BatchRow, label: LabelText, made_of: Compositions, months: int | None
) -> str | None:
    """That the bars are to outlast oils that went into them, by the last day their label gives; None where not."""
    if months is None:
        return None
    day = add_months(label.made_on, months)
    lots = [base.lot for base in bases_of_batch(rows, batch.id, made_of)]
    late = outlived(lots, last_day_printed(day) if label.best_before else day)
    return f"that is later than the best before of what went in: {'; '.join(late)}" if late else None


def _may_contain(one: Checked) -> tuple[str, str]:
    listed = one.label.ingredients.upper()
    if "MAY CONTAIN" in listed or "+/-" in listed or "±" in listed:
        return "an ingredient is named with 'may contain' or +/-; whether it is a colour of a range is for a person", (
            "for a person"
        )
    return "not used: the list is of what went into this batch", "found"


def _inside(one: Checked) -> list[tuple[str, MaterialKind]]:
    """The ingredients by INCI name, with what each is booked as."""
    return list(
        dict.fromkeys((base.inci, base.lot.kind) for base in bases_of_batch(one.rows, one.batch.id, one.made_of))
    )


def _allergens(label: LabelText) -> tuple[str, str]:
    found = label.allergens
    if found is None:
        return "no list applies", "found"
    if found.refused:
        ways = (("PROHIBITED", found.barred), ("NOT ALLOWED", found.above))
        return "; ".join(
            f"{way}, so it gets no label and is not released: {'; '.join(what)}" for way, what in ways if what
        ), "missing"
    asked = [f"not known here: {'; '.join(found.unknown)}"] if found.unknown else []
    asked += [f"prohibited in the EU, here for a person: {'; '.join(found.asked)}"] if found.asked else []
    if found.questions:
        asked.append(f"asked by its entries: {count(len(found.questions), 'thing')}, below")
    if found.no_statement:
        return "; ".join([f"no statement for {'; '.join(found.no_statement)}", *asked]), "missing"
    names = ", ".join(found.declared) or "none exceeds the threshold"
    words = f"{names} (over {show_share(found.threshold_ppm, 2)} of the bar at its driest; {found.list_name})"
    return "; ".join([words, *asked]), "for a person" if asked else "found"


def _covered(one: Checked, particular: str) -> tuple[str, str]:
    """The assessment of the product or its notification for the market, beside the batch as weighed."""
    rows, batch, label = one.rows, one.batch, one.label
    if batch.recipe_code is None:
        return "none: it has no recipe", "missing"
    card = recipe_by_code(rows, batch.recipe_code)
    view = batch_beside(rows, card, batch.code, markets=[label.market], on=one.on, made=one.made_of)
    if view is None:
        return f"none booked for {card.name}", "missing"
    if particular == "notification":
        noted = next(each for each in view.compared if each.what.startswith("notification"))
        return noted.assessed, "found" if noted.verdict == "inside" else "missing"
    outside = [each for each in view.compared if each.verdict == "outside"]
    name = f"{view.assessment.reference} of {view.assessment.assessor}, {show_date(view.assessment.on)}"
    if outside:
        return f"{name}; outside it: {'; '.join(f'{each.what} {each.found}' for each in outside)}", "missing"
    return f"{name}; nothing compared lies outside, and it is silent on {view.silent or 'none'}", "for a person"
