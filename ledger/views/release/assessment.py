"""The latest safety assessment of a recipe, and how a version as written or a batch as weighed lies to it."""

from collections.abc import Iterable, Sequence
from datetime import date
from typing import NamedTuple

from ledger.domain.release.assessed import Assessed, Compared, Share, compare
from ledger.domain.release.assessment import Assessment, inci_key, read_assessment
from ledger.errors import BadInput, Refused
from ledger.markets import laws_at, market
from ledger.reference.inci_names import salt_of, same_as
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.opened import Rows
from ledger.rows.recipe import Covered, RecipeCard, covered_by_latest, latest_assessment_text, recipe_of
from ledger.rows.settings import settings
from ledger.views.lye.lye_check import lye_check
from ledger.views.recipe.ingredients import parts_of_batch
from ledger.views.recipe.recipe import RecipeSheet, recipe_sheet
from ledger.views.stock.made_of import Compositions


class AssessmentView(NamedTuple):
    """A recipe version, or a batch of it, beside the latest assessment, as of one day."""

    recipe: str
    product: str
    version: int
    batch: str | None  # None for the recipe as written
    on: date
    assessment: Assessment
    compared: tuple[Compared, ...]
    outside: int  # how many particulars lie outside
    silent: int  # on how many the assessment is silent
    without_inci: tuple[str, ...]  # materials compared under their own names
    words: tuple[Covered, ...]  # what the assessor wrote of single ingredients since


def latest_assessment(rows: Rows, card: RecipeCard) -> Assessment | None:
    """The assessment booked last for a recipe; None when there is none."""
    text = latest_assessment_text(rows, card.id)
    if text is None:
        return None
    given, kept = read_assessment(text, file=f"assessment of {card.code}"), covered_by_latest(rows, card.id)
    for one in kept[1] if kept else ():
        if one.named is not None:
            given = given._replace(also=(*given.also, (one.inci, one.named)))
        elif one.highest_ppm is not None:
            given = given.with_word(one.inci, one.highest_ppm)
    return given


def matched(given: Assessment, names: Iterable[str]) -> Assessment:
    """The same with every name that by the reference tables means one that is in the report."""
    known = {*given.names, *dict(given.also)}
    also, held = list(given.also), list(given.held)
    for name in dict.fromkeys(map(inci_key, names)):
        if name in known:
            continue
        if found := same_as(name, given.names):
            also.append((name, found))
        elif salt_of(given.names, name):
            held.append(name)
    return given._replace(also=tuple(also), held=tuple(dict.fromkeys(held)))


def _melted_with(sheet: RecipeSheet, given: Assessment) -> Assessment:
    """As written nothing tells what soap that is melted again was made of; a batch as weighed tells it."""
    melted = (inci_key(one.inci or one.name) for one in sheet.materials.values() if one.kind == "rework")
    return given._replace(held=(*given.held, *melted))


def not_named(rows: Rows, card: RecipeCard, given: Assessment) -> tuple[str, ...]:
    """The ingredients of a recipe, as it stands, that a report does not name under any name known here."""
    sheet = recipe_sheet(rows, card)
    names = [one.inci for one in _shares_of_sheet(sheet) if one.mass_mg]
    full = matched(_melted_with(sheet, given), names)
    known = {*full.names, *dict(full.also), *full.held}
    return tuple(dict.fromkeys(key for key in map(inci_key, names) if key not in known))


def recipe_beside(
    rows: Rows, card: RecipeCard, *, version: int | None = None, markets: Sequence[str] = (), on: date
) -> AssessmentView | None:
    """A version as written, the latest unless told; None without an assessment.

    Asked for are the markets she has an address for that ask for an assessment, unless told. Raises
    BadInput for an unknown version or market.
    """
    asked = _markets(rows, markets, on)
    assessment = latest_assessment(rows, card)
    if assessment is None:
        return None
    sheet = recipe_sheet(rows, card, version=version)
    recipe = sheet.recipe
    shares = _shares_of_sheet(sheet)
    reckoned = sheet.formulation.pot.superfat().nominal_ppm if sheet.formulation else recipe.superfat_ppm
    facts = Assessed(recipe.process, reckoned, recipe.best_before_months, shares, asked)
    assessment = _melted_with(sheet, assessment)
    named = [sheet.materials[line.material] for line in recipe.lines if line.role != "packaging"]
    without = tuple(dict.fromkeys(one.name for one in named if one.inci is None))
    return _view(rows, card, sheet.version, None, assessment, facts, without, on)


def batch_beside(
    rows: Rows,
    card: RecipeCard,
    code: str,
    *,
    markets: Sequence[str] = (),
    on: date,
    made: Compositions | None = None,
) -> AssessmentView | None:
    """A batch as weighed, down to the lots as received; None without an assessment.

    Raises BadInput for a batch of another recipe or a material without an INCI name, Refused for a batch
    that is not weighed to the end.
    """
    asked = _markets(rows, markets, on)
    batch = find_batch(rows, code)
    recipe = recipe_of(rows, batch)
    if recipe is None or batch.recipe_version is None or batch.recipe_code != card.code:
        raise BadInput(f"Batch {batch.code} is {batch.product}, and was not planned from the recipe {card.name}.")
    assessment = latest_assessment(rows, card)
    if assessment is None:
        return None
    shares = _shares_of_batch(rows, batch, made)
    whole = find_batch(rows, batch.part_of) if batch.part_of else batch
    superfat = lye_check(rows, whole.id).superfat_ppm
    facts = Assessed(recipe.process, superfat, recipe.best_before_months, shares, asked)
    return _view(rows, card, batch.recipe_version, batch.code, assessment, facts, (), on)


def _markets(rows: Rows, asked: Sequence[str], on: date) -> dict[str, bool]:
    """Those named, else hers that ask for an assessment; and whether each asks for a notification."""
    hers = (law for law in laws_at(settings(rows).addresses) if law.asks("assessment", on))
    return {law.code: law.asks("notification", on) for law in (map(market, asked) if asked else hers)}


def _shares_of_sheet(sheet: RecipeSheet) -> tuple[Share, ...]:
    masses = [(one.line, one.target) for one in sheet.targets if one.line.role != "packaging"]
    cards = [(sheet.materials[line.material], mass) for line, mass in masses]
    return tuple(Share(card.inci or card.name, mass, card.kind == "fragrance") for card, mass in cards)


def _shares_of_batch(rows: Rows, batch: BatchRow, made: Compositions | None) -> tuple[Share, ...]:
    if batch.open_lines:
        raise Refused(
            f"Batch {batch.code} is not weighed to the end, so its shares cannot be told; "
            f"weigh it first: soapledger batch log {batch.code}"
        )
    parts = parts_of_batch(rows, batch.id, made)
    return tuple(Share(part.inci, part.mass_mg, part.role == "fragrance") for part in parts)


def _view(
    rows: Rows,
    card: RecipeCard,
    version: int,
    batch: str | None,
    assessment: Assessment,
    facts: Assessed,
    without_inci: tuple[str, ...],
    on: date,
) -> AssessmentView:
    assessment = matched(assessment, [one.inci for one in facts.shares])
    compared = compare(assessment, facts, on=on)
    verdicts, kept = [one.verdict for one in compared], covered_by_latest(rows, card.id)
    return AssessmentView(
        recipe=card.code,
        product=card.name,
        version=version,
        batch=batch,
        on=on,
        assessment=assessment,
        compared=compared,
        outside=verdicts.count("outside"),
        silent=verdicts.count("silent"),
        without_inci=without_inci,
        words=tuple(one for one in kept[1] if one.word) if kept else (),
    )
