"""Book the assessor's written word on an ingredient that the report does not name."""

from datetime import date
from typing import NamedTuple

from ledger.domain.release.assessment import inci_key
from ledger.errors import BadInput, Refused
from ledger.operations.record.attach import keep_paper
from ledger.rows.recipe import RecipeCard, covered_by_latest, recipe_by_code
from ledger.storage.book import Book
from ledger.storage.tables.recipe import AssessmentCovers
from ledger.units.dates import not_future, show_date
from ledger.units.quantity import show_share
from ledger.units.signs import folded
from ledger.views.release.assessment import latest_assessment


class Word(NamedTuple):
    """What the assessor wrote of one ingredient: up to which share of everything weighed in, and the words or paper."""

    inci: str
    highest_ppm: int
    by: str
    on: date
    text: str = ""
    paper: tuple[str, bytes] | None = None  # its name and content


def add_word(book: Book, code: str, given: Word, *, today: date) -> RecipeCard:
    """Book a word to the report that counts for a recipe; its paper is kept with the recipe in the same entry.

    Raises Refused without a report, and for a word that is not of the assessor who signed it; BadInput for a day to
    come or before the report, and for neither words nor a paper.
    """
    if not given.text.strip() and given.paper is None:
        raise BadInput("Keep the words themselves, or the paper they stand on: --text WORDS or --paper FILE.")
    not_future(given.on, today=today, what="the day of the assessor's word")
    with book.write("recipe word") as tx:
        card = recipe_by_code(tx.rows, code)
        report, kept = latest_assessment(tx.rows, card), covered_by_latest(tx.rows, card.id)
        if report is None or kept is None:
            raise Refused(f"No assessment of {card.name} is booked: soapledger recipe assess {card.code} FILE.toml")
        if folded(given.by.strip()) != folded(report.assessor):
            raise Refused(
                f"The report {report.reference} is of {report.assessor}, and only that assessor's word adds to it; the "
                f"word of another is a report of its own: soapledger recipe assess {card.code} FILE.toml"
            )
        if given.on < report.on:
            raise BadInput(f"The report is of {show_date(report.on)}; a word on it cannot be of before.")
        words = given.text.strip()
        if given.paper:
            name, content = given.paper
            paper = keep_paper(tx, content, name=name, kind="assessment report", to=card.code)
            words = "; ".join(filter(None, (words, f"{name}, SHA-256 {paper.sha256[:12]}")))
        inci = inci_key(given.inci)
        tx.add(
            AssessmentCovers(
                assessment_id=kept[0],
                inci=inci,
                word=words,
                highest_ppm=given.highest_ppm,
                by=report.assessor,
                on=given.on,
            )
        )
        tx.say(
            f"Noted the word of {report.assessor}, {show_date(given.on)}, on {inci} in {card.name} ({card.code}): at "
            f"most {show_share(given.highest_ppm, 2)}."
        )
    return card
