"""Book the safety assessment of a product."""

from collections.abc import Mapping

from ledger.domain.release.assessment import ASSESSED_PROCESSES, Assessment, AssessmentFile, inci_key, read_assessment
from ledger.errors import BadInput
from ledger.markets import market
from ledger.rows.opened import Rows
from ledger.rows.recipe import RecipeCard, recipe_by_code
from ledger.storage.book import Book
from ledger.storage.tables.recipe import Assessment as AssessmentRow
from ledger.storage.tables.recipe import AssessmentCovers
from ledger.units.dates import show_date
from ledger.views.recipe.recipe import recipe_sheet
from ledger.views.release.assessment import matched


def read_report(text: str, *, file: str) -> Assessment:
    """An assessment file, with every market in it known. Raises BadInput with file and line."""
    assessment = read_assessment(text, file=file)
    for one in assessment.markets:
        try:
            market(one)
        except BadInput as error:
            raise AssessmentFile(text, file).head.bad(str(error), "markets") from None
    return assessment


def recipes_covered(rows: Rows, code: str, assessment: Assessment) -> tuple[RecipeCard, ...]:
    """The recipe meant, and the others that the report names; raises BadInput where it does not name that one."""
    card = recipe_by_code(rows, code)
    named = tuple(recipe_by_code(rows, one) for one in assessment.recipes)
    if named and card not in named:
        raise BadInput(
            f"The report covers {', '.join(one.code for one in named)}, and not {card.code}; look at recipes."
        )
    for one in named or (card,):
        if one.process not in ASSESSED_PROCESSES:
            raise BadInput(
                f"{one.name} is made by {one.process} and gives no bars; book the assessment with the soap it "
                "goes into: soapledger recipe assess WHICH FILE.toml"
            )
    return named or (card,)


def assess_recipe(
    book: Book, code: str, text: str, *, file: str, same: Mapping[str, str] | None = None
) -> tuple[RecipeCard, Assessment]:
    """Book the text of an assessment for every recipe it covers; those before stay to be read, and the latest counts.

    The names of the ingredients are matched to those of the report and the matches kept; `same` gives those a person
    made, by the ingredient. Raises BadInput with file and line for what cannot be read, an unknown recipe or market, a
    recipe that gives no bars, and a match with a name that is not in the report.
    """
    assessment = read_report(text, file=file)
    given = {inci_key(one): named_there(assessment, name) for one, name in (same or {}).items()}
    with book.write("recipe assess") as tx:
        covered = recipes_covered(tx.rows, code, assessment)
        for card in covered:
            row = tx.add(AssessmentRow(recipe_id=card.id, source=text))
            assert row.id is not None
            sheet = recipe_sheet(tx.rows, card)
            names = [one.inci or one.name for one in sheet.materials.values()]
            known = matched(assessment._replace(also=tuple(given.items())), names).also
            for inci, named in known:
                tx.add(AssessmentCovers(assessment_id=row.id, inci=inci, named=named))
        tx.say(
            f"Booked assessment {assessment.reference} of {assessment.assessor}, {show_date(assessment.on)}, "
            f"for {', '.join(f'{card.name} ({card.code})' for card in covered)}."
        )
        return recipe_by_code(tx.rows, code), assessment


def named_there(assessment: Assessment, name: str) -> str:
    """A name as the report has it. Raises BadInput for one it does not have."""
    key = inci_key(name)
    if key not in assessment.names:
        raise BadInput(f"{key} is no name of the report; it names {', '.join(assessment.names)}.")
    return key
