"""Open a recall, note what is done about it, close it; and rehearse one."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from time import perf_counter

from ledger import __version__
from ledger.domain.recall.effectiveness import level
from ledger.domain.recall.question import Question
from ledger.errors import BadInput, Refused
from ledger.operations.recall.hold_reached import hold_here
from ledger.rows.complaint import complaint
from ledger.rows.decision import RecallCard, recalls
from ledger.rows.people import customer_by_code, customer_list
from ledger.storage.book import Book
from ledger.storage.tables.recall import Recall, RecallClose, RecallStep
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date
from ledger.units.quantity import parse_pieces
from ledger.units.signs import folded
from ledger.units.wording import count
from ledger.units.words import RecallStepKind
from ledger.views.recall.recall_kinds import asked_about_anything
from ledger.views.recall.recall_life import answered_now, asked_for, recall_life, recall_meant
from ledger.views.recall.recall_words import rehearsed_words

_EXPLAINED = "as the exercise found it"


@dataclass(frozen=True)
class Opening:
    """Why a recall is opened, what the danger is and who found it."""

    reason: str
    hazard: str | None = None
    found_by: str | None = None


@dataclass(frozen=True)
class Done:
    """One thing that was done; of `told`, `answered`, `returned` and `destroyed`, whom it is about."""

    kind: RecallStepKind
    whom: str | None = None
    how: str | None = None
    bars: int | None = None
    words: str | None = None


def open_recall(book: Book, question: Question, opening: Opening, *, on: date, by: str) -> tuple[str, tuple[str, ...]]:
    """Open a recall and hold all that is here of what it reaches, in one entry; returns its number and what it held.

    Raises BadInput without a reason or for what matches nothing, Refused where an open recall asks the same.
    """
    if not opening.reason.strip():
        raise BadInput("Say why it is recalled, in quotes: --reason WORDS")
    with book.write("recall open") as tx:
        for one in recalls(tx.rows):
            if one.question == question.kept and not one.closed:
                raise Refused(f"Recall {one.name} asks the same and is open: soapledger recall show {one.name}")
        asked = asked_about_anything(tx.rows, question, on=on)
        reason = opening.reason.strip()
        held = hold_here(tx, asked.starts, on=on, by=by, reason=reason)
        row = tx.add(
            Recall(
                on=on,
                by=by,
                question=question.kept,
                asked_at=tx.entry - 1,
                reason=reason,
                hazard=opening.hazard,
                found_by=opening.found_by,
            )
        )
        tx.say(f"Opened recall R{row.id} of {', '.join(asked.words)}: put {', '.join(held) or 'nothing'} on hold.")
    return f"R{row.id}", tuple(held)


def note_recall(book: Book, number: str, done: Sequence[Done], *, on: date, by: str) -> str:
    """Note what was done about a recall, in one entry; returns its number as people say it.

    Raises BadInput for an unknown number, an unknown customer or complaint, no words, or a day before it was opened;
    Refused for a closed one.
    """
    with book.write("recall note") as tx:
        card = _open(tx, number, on, "noted")
        said = []
        for one in done:
            row, known_as = _step(tx, card, one, on=on, by=by)
            tx.add(row)
            said.append(_said(row, known_as))
        tx.say(f"Noted of recall {card.name}: {'; '.join(said)}.")
    return card.name


def close_recall(book: Book, number: str, conclusion: str, *, reason: str | None, on: date, by: str) -> RecallCard:
    """Close a recall with its conclusion; returns it as it stands then.

    Raises like `note_recall`; Refused with bars unexplained and no reason for them.
    """
    if not conclusion.strip():
        raise BadInput("Say what was concluded, in quotes: --conclusion WORDS")
    with book.write("recall close") as tx:
        card = _open(tx, number, on, "closed")
        if card.steps and on < card.steps[-1].on:
            raise BadInput(f"Something was done about it on {show_date(card.steps[-1].on)} still; look at --on.")
        life = recall_life(tx.rows, card.name, on=on, program=__version__)
        if life.unexplained and not (reason and reason.strip()):
            batches = ", ".join(f"{one.batch_code}: {one.unexplained}" for one in life.answer.differences)
            raise Refused(
                f"{count(life.unexplained, 'bar')} of recall {card.name} {'is' if life.unexplained == 1 else 'are'} "
                f"unexplained ({batches}). Say why, in quotes: --reason WORDS"
            )
        tx.add(
            RecallClose(
                recall_id=card.number,
                on=on,
                by=by,
                conclusion=conclusion.strip(),
                unexplained=life.unexplained,
                reason=reason,
            )
        )
        tx.say(f"Closed recall {card.name}: {conclusion.strip()}.")
        return recall_meant(tx.rows, card.name)


def rehearse(book: Book, question: Question, *, on: date, by: str, reason: str | None) -> str:
    """Answer a recall as an exercise, holding nothing; keeps how long it took and how it adds up; returns its name."""
    with book.write("recall rehearse") as tx:
        begun = perf_counter()
        asked = asked_about_anything(tx.rows, question, on=on)
        answer = answered_now(tx.rows, asked, program=__version__, exercise=True)
        took = max(1, round((perf_counter() - begun) * 1000))
        row = tx.add(
            Recall(
                on=on,
                by=by,
                question=question.kept,
                asked_at=tx.entry - 1,
                reason=reason or "the yearly exercise",
                exercise=1,
                took_ms=took,
            )
        )
        assert row.id is not None
        unexplained = sum(abs(one.unexplained) for one in answer.differences)
        conclusion = rehearsed_words(answer, took)
        tx.add(
            RecallClose(
                recall_id=row.id,
                on=on,
                by=by,
                conclusion=conclusion,
                unexplained=unexplained,
                reason=_EXPLAINED if unexplained else None,
            )
        )
        tx.say(f"Rehearsed recall R{row.id} of {asked_for(question)}, an exercise: {conclusion}")
    return f"R{row.id}"


def _open(tx: Transaction, number: str, on: date, word: str) -> RecallCard:
    """A recall of which something can still be noted."""
    card = recall_meant(tx.rows, number)
    if card.exercise:
        raise Refused(f"Recall {card.name} was an exercise of {show_date(card.on)}; nothing of it is {word}.")
    if card.closed:
        raise Refused(
            f"Recall {card.name} was closed on {show_date(card.closed.on)} by {card.closed.by}; to go on with it, take "
            f"that back: soapledger undo {card.closed.entry}"
        )
    if on < card.on:
        raise BadInput(f"Recall {card.name} was opened on {show_date(card.on)}; look at --on.")
    return card


def _step(tx: Transaction, card: RecallCard, one: Done, *, on: date, by: str) -> tuple[RecallStep, str | None]:
    """The row of a step, and whom it is about as the history says it: a customer by the short name."""
    customer, about, whom = None, None, one.whom and one.whom.strip()
    known_as = whom
    words = one.words and one.words.strip()
    if one.kind == "note" and not words:
        raise BadInput("Write what was done, in quotes.")
    if one.kind == "level" and words:
        words = level(words).words
    if whom and one.kind in ("told", "answered", "returned", "destroyed"):
        customer, about, whom, known_as = _whom(tx, card, whom, on)
    row = RecallStep(
        recall_id=card.number,
        on=on,
        by=by,
        kind=one.kind,
        customer_id=customer,
        complaint_id=about,
        whom=whom,
        how=one.how,
        bars=one.bars,
        words=words,
    )
    return row, known_as


def _whom(
    tx: Transaction, card: RecallCard, text: str, on: date
) -> tuple[int | None, int | None, str | None, str | None]:
    """The customer or the complaint meant, or a gift as its note says; raises BadInput for anybody else."""
    word, _, number = text.partition(" ")
    if word.lower() == "complaint" and number:
        about = complaint(tx.rows, parse_pieces(number, what="the number of the complaint")).number
        return None, about, f"complaint {about}", f"complaint {about}"
    called = recall_life(tx.rows, card.name, on=on, program=__version__).answer.call
    meant = next((one for one in called if one.complaint is None and folded(one.name) == folded(text)), None)
    if meant and meant.customer_id is None:
        return None, None, meant.name, "a gift"
    if meant:
        found = next(one for one in customer_list(tx.rows) if one.id == meant.customer_id)
    else:
        found = customer_by_code(tx.rows, text)
    return found.id, None, None, found.code


def _said(row: RecallStep, known_as: str | None) -> str:
    """A step for the history: told tern-hall by telephone."""
    bars = f" {count(row.bars, 'bar')}" if row.bars else ""
    between = {"returned": "from ", "destroyed": "at ", "notice": "at "}.get(row.kind, "")
    whom = f" {between}{known_as}" if known_as else ""
    how = f" by {row.how}" if row.how else ""
    return f"{row.kind}{bars}{whom}{how}{f': {row.words}' if row.words else ''}".rstrip(".")
