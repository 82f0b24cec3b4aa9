"""A label held against the rules of a market on a day, particular by particular; a person decides."""

from dataclasses import replace
from datetime import date
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.label.claims import question
from ledger.domain.label.declarable import AT_PACKING, Suggestion, highest_to_declare
from ledger.domain.label.market import Market, Rule
from ledger.domain.label.packers import System, grams
from ledger.errors import BadInput
from ledger.markets import market
from ledger.rows.bars import bar_counts
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.label import Run, approved_by, runs
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_by_code, recipe_of
from ledger.rows.settings import settings
from ledger.units.dates import show_date
from ledger.units.gs1 import elements, in_words
from ledger.units.quantity import WHOLE_PPM, show_share
from ledger.units.wording import count
from ledger.views.cure.weighings import Weighings, last_weighings
from ledger.views.label.label import LabelText, digest_of, label_text, run_text
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


class LabelCheck(NamedTuple):
    """What was checked, against what, as of which day; never a claim of compliance."""

    on: date
    label: LabelText
    particulars: tuple[Particular, ...]
    net: tuple[str, ...]  # the last weighings against the rules of the market, a sentence for each
    gs1: str | None  # the element string, where she has a GTIN
    claims: tuple[str, ...]  # words to question, with the reason
    approved: str | None  # by whom, on which day
    runs: tuple[Run, ...]
    supplied: tuple[str, ...]  # bars that went out already, and which list of allergens holds for them
    remains: tuple[str, ...]


def label_check(
    rows: Rows,
    code: str,
    market_code: str,
    *,
    on: date,
    net_mg: int | None = None,
    best_before_months: int | None = None,
    panel_cm2: Fraction | None = None,
) -> LabelCheck:
    """Check the label of a batch for bars first supplied on a day; raises like `label_text`."""
    batch = find_batch(rows, code)
    made_of = Compositions(rows, of=[batch.id])
    label = label_text(
        rows,
        code,
        market_code,
        on=on,
        net_mg=net_mg,
        best_before_months=best_before_months,
        checking=True,
        made_of=made_of,
    )
    law = market(label.market)
    if panel_cm2 is not None:
        label = replace(label, figure_height_mm=law.figure_height(label.net_mg, panel_cm2))
    lot_id = batch.yield_lot_id
    assert lot_id is not None
    approval = approved_by(rows, lot_id, label.market, digest_of(run_text(label)))
    return LabelCheck(
        on,
        label,
        tuple(_particular(rows, batch, label, rule, on, made_of) for rule in label.rules),
        _net(rows, batch, label, law),
        _gs1(label),
        _claims(rows, batch, label, soap_alone=law.asks("only soap", on)),
        f"{approval[0]}, {show_date(approval[1])}" if approval else None,
        tuple(run for run in runs(rows, lot_id) if run.market == label.market),
        _supplied(rows, lot_id, law),
        label.remains,
    )


def _particular(
    rows: Rows, batch: BatchRow, label: LabelText, rule: Rule, on: date, made_of: Compositions
) -> Particular:
    if rule.particular in ("assessment", "notification"):
        found, stands = _covered(rows, batch, label, rule.particular, on, made_of)
    else:
        found, stands = _found(label, rule.particular)
    return Particular(rule.particular, found, rule.says, rule.source, rule.status, stands)


def _found(label: LabelText, particular: str) -> tuple[str, str]:
    """What the label has of one particular, and whether that is found, missing, or for a person."""
    height = f"{label.figure_height_mm:g} mm at least" if label.figure_height_mm else "by the panel of the layout"
    period = f"{label.after_opening_months}M, with the open jar" if label.after_opening_months else ""
    simple = {
        "responsible person": f"{label.responsible_name}, {label.responsible_address}",
        "net quantity": label.net_quantity,
        "figure height": f"{height}; the layout sets it",
        "durability": label.best_before or period,
        "batch code": label.batch_code,
        "function": label.function,
        "ingredients": f"{label.ingredients} ({label.policy})",
        "letters of the ingredients": "the layout's least height of small letters",
        "contact": label.responsible_address,
    }
    if particular in simple:
        return (simple[particular], "found") if simple[particular] else ("nothing", "missing")
    if particular == "allergens":
        return _allergens(label)
    if particular == "precautions":
        return (" ".join(label.precautions), "found") if label.precautions else ("none given", "for a person")
    if particular == "origin":
        return (label.origin, "found") if label.origin else ("none given; wanted if imported", "for a person")
    return "not to be read from the ledger", "for a person"


def _allergens(label: LabelText) -> tuple[str, str]:
    found = label.allergens
    if found is None:
        return "no list applies", "found"
    if found.barred:
        return f"PROHIBITED, so it gets no label and is not released: {'; '.join(found.barred)}", "missing"
    asked = [f"not known here: {'; '.join(found.unknown)}"] if found.unknown else []
    asked += [f"prohibited in the EU, here for a person: {'; '.join(found.asked)}"] if found.asked else []
    if found.no_statement:
        return "; ".join([f"no statement for {'; '.join(found.no_statement)}", *asked]), "missing"
    names = ", ".join(found.declared) or "none exceeds the threshold"
    words = f"{names} (over {show_share(found.threshold_ppm, 2)} of the bar at its driest; {found.list_name})"
    return "; ".join([words, *asked]), "for a person" if asked else "found"


def _covered(
    rows: Rows, batch: BatchRow, label: LabelText, particular: str, on: date, made_of: Compositions
) -> tuple[str, str]:
    """The assessment of the product or its notification for the market, beside the batch as weighed."""
    if batch.recipe_code is None:
        return "none: it has no recipe", "missing"
    card = recipe_by_code(rows, batch.recipe_code)
    view = batch_beside(rows, card, batch.code, markets=[label.market], on=on, made=made_of)
    if view is None:
        return f"none booked for {card.name}", "missing"
    if particular == "notification":
        one = next(one for one in view.compared if one.what.startswith("notification"))
        return one.assessed, "found" if one.verdict == "inside" else "missing"
    outside = [one for one in view.compared if one.verdict == "outside"]
    name = f"{view.assessment.reference} of {view.assessment.assessor}, {show_date(view.assessment.on)}"
    if outside:
        return f"{name}; outside it: {'; '.join(f'{one.what} {one.found}' for one in outside)}", "missing"
    return f"{name}; nothing compared lies outside, silent on {view.silent}", "for a person"


def _net(rows: Rows, batch: BatchRow, label: LabelText, law: Market) -> tuple[str, ...]:
    """The bars weighed last against the packers' rules, and the highest weight that could be declared."""
    weighed = last_weighings(rows, batch)
    if weighed is None:
        return (
            f"No bar was weighed yet; weigh some at packing: soapledger batch log {batch.code} "
            "--reading 'bar weight=98.2 g'",
        )
    found = [f"{count(len(weighed.weights_mg), 'bar')} weighed on {show_date(weighed.on)}, {weighed.moment}."]
    if weighed.moment != AT_PACKING:
        found.append(
            "The packers' rules are for bars as they are packed, so what follows is not yet their answer; weigh some "
            f"then: soapledger batch log {batch.code} --reading 'bar weight=98.2 g'"
        )
    systems = law.packers_rules(settings(rows).country)
    if not systems:
        found.append(_no_rules(label, law))
    for system in systems:
        found += system.judge(label.net_mg, weighed.weights_mg).words
        if weighed.left is not None:
            try:
                found.append(_highest(weighed, weighed.left, system).why)
            except BadInput as error:
                found.append(str(error))
    if weighed.left is None:
        found.append(f"The highest weight to declare is not known here: {weighed.when}.")
    else:
        end = Fraction(sum(weighed.weights_mg), len(weighed.weights_mg)) * weighed.left
        found.append(f"The least that is known of the mean is {grams(end)}, {weighed.when}.")
    return tuple(found)


def _no_rules(label: LabelText, law: Market) -> str:
    return f"The packers' rules of {law.name} are not known here; whether {grams(label.net_mg)} holds is for a person."


def _highest(weighed: Weighings, left: Fraction, system: System) -> Suggestion:
    return highest_to_declare(
        weighed.weights_mg, left * WHOLE_PPM, system=system, when=weighed.when, weighed=weighed.moment
    )


def net_doubts(rows: Rows, label: LabelText) -> tuple[str, ...]:
    """Why the declared weight may not hold until the bars have dried, a sentence for each; a person decides."""
    weighed = last_weighings(rows, find_batch(rows, label.batch_code))
    if weighed is None:
        return (f"No bar was weighed yet, so whether {grams(label.net_mg)} holds is not known here.",)
    if weighed.left is None:
        return (f"Whether {grams(label.net_mg)} holds as the bars dry is not known here: {weighed.when}.",)
    law = market(label.market)
    systems = law.packers_rules(settings(rows).country)
    found = [] if systems else [_no_rules(label, law)]
    for system in systems:
        try:
            most = _highest(weighed, weighed.left, system)
        except BadInput as error:
            found.append(str(error))
        else:
            if label.net_mg > most.nominal_mg:
                found.append(f"{grams(label.net_mg)} is declared: {most.why}")
    return tuple(dict.fromkeys(found))


def _claims(rows: Rows, batch: BatchRow, label: LabelText, *, soap_alone: bool) -> tuple[str, ...]:
    """Words in what the maker wrote that are questioned; an empty answer passes nothing."""
    recipe = recipe_of(rows, batch)
    hers = (label.product, label.function, label.line, label.use, recipe.label.claims if recipe else None)
    text = ". ".join(word for word in hers if word)
    asked = question(text, market_is_soap=soap_alone)
    return tuple(f"'{one.words}': {one.reason} [{one.source}; {one.status}]" for one in asked)


def _gs1(label: LabelText) -> str | None:
    """What a GS1 code would hold; only with a GTIN of her own, never made up."""
    if label.code_text == label.batch_code:
        return None
    return in_words(elements(gtin=label.code_text, lot=label.batch_code, made_on=label.made_on))


def _supplied(rows: Rows, lot_id: int, law: Market) -> tuple[str, ...]:
    """Bars are told apart by the day they were first supplied, and with it the list that holds for them."""
    if len(law.allergens) < 2:
        return ()
    found = []
    for one in bar_counts(rows, [lot_id]):
        bars = count(one.count, "bar")
        them, they = ("it", "it goes") if one.count == 1 else ("them", "they go")
        if one.where in ("dispatched", "given", "sold") and one.on is not None:
            listed = law.allergen_list(one.on)
            if listed is None:
                continue
            until = f", and may be sold on until {show_date(listed.sold_on_until)}" if listed.sold_on_until else ""
            found.append(f"{bars} {one.where} on {show_date(one.on)}: {listed.name} holds for {them}{until}.")
        elif one.where in ("on hand", "at a stall", "returned"):
            found.append(f"{bars} {one.where}: not supplied yet, or back; the day {they} decides.")
    return tuple(found)
