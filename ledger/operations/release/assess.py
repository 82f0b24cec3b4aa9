"""Book the safety assessment of a product."""

from ledger.domain.release.assessment import ASSESSED_PROCESSES, Assessment, AssessmentFile, read_assessment
from ledger.errors import BadInput
from ledger.markets import market
from ledger.rows.recipe import RecipeCard, recipe_by_code
from ledger.storage.book import Book
from ledger.storage.tables.recipe import Assessment as AssessmentRow
from ledger.units.dates import show_date


def assess_recipe(book: Book, code: str, text: str, *, file: str) -> tuple[RecipeCard, Assessment]:
    """Book the text of an assessment for a recipe; the one before stays to be read, and the latest counts.

    Raises BadInput with file and line for what cannot be read, an unknown recipe or market, and for a
    recipe that gives no bars.
    """
    assessment = read_assessment(text, file=file)
    for one in assessment.markets:
        try:
            market(one)
        except BadInput as error:
            raise AssessmentFile(text, file).head.bad(str(error), "markets") from None
    with book.write("recipe assess") as tx:
        card = recipe_by_code(tx.rows, code)
        if card.process not in ASSESSED_PROCESSES:
            raise BadInput(
                f"{card.name} is made by {card.process} and gives no bars; book the assessment with the soap it "
                "goes into: soapledger recipe assess WHICH FILE.toml"
            )
        tx.add(AssessmentRow(recipe_id=card.id, source=text))
        tx.say(
            f"Booked assessment {assessment.reference} of {assessment.assessor}, {show_date(assessment.on)}, "
            f"for {card.name} ({card.code})."
        )
    return card, assessment
