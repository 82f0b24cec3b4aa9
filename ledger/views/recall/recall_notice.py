"""A recall notice as it is drafted: the words of its template, with what the ledger knows put in."""

from dataclasses import dataclass, field
from datetime import date

from ledger.domain.recall.dulling import dulling
from ledger.errors import Refused
from ledger.reference.recall_notices import NoticeDraft, NoticeWords
from ledger.rows.settings import PrintedFrom
from ledger.views.recall.recall_labels import LabelOf
from ledger.views.recall.recall_paper import RecallPaper


@dataclass(frozen=True)
class RecallNotice:
    """One notice; `dulled` are words in it that lower the sense of risk."""

    recall: str
    to_hang: bool
    business: str
    headline: str
    parts: tuple[tuple[str, str], ...]
    dulled: tuple[str, ...]
    exercise: bool
    language: str
    printed_from: PrintedFrom
    labels: tuple[LabelOf, ...] = field(default=(), metadata={"inner": True})  # drawn, and in no JSON


def recall_notice(paper: RecallPaper, draft: NoticeDraft, *, on: date) -> RecallNotice:
    """Fill a draft. Raises Refused where the hazard, which every notice says, was not stated, or no bars are meant."""
    life, card = paper.life, paper.life.card
    if not card.hazard:
        raise Refused(f"A notice says what the hazard is: soapledger recall note {card.name} --hazard WORDS")
    if not paper.products:
        raise Refused(f"Recall {card.name} reaches no bars, so there is nothing to put on a notice.")
    chosen, words = card.last("class"), draft.words
    set_by = words.class_.replace("{class}", chosen.words or "").replace("{whom}", chosen.whom or "") if chosen else ""
    values = {
        "business": life.answer.business,
        "contact": contact_words(paper, words),
        "products": "\n".join(
            f"{one.name}{f', {one.net}' if one.net else ''}, {words.batch} {', '.join(one.codes)}"
            for one in paper.products
        ),
        "sold": _sold(paper, words),
        "reason": _sentence(card.reason),
        "hazard": _sentence(card.hazard),
        "class": set_by,
        "recall": card.name,
        "date": words.day(on),
    }
    parts = tuple((heading, _filled(text, values)) for heading, text in draft.parts)
    said = " ".join([draft.headline, *(word for part in parts for word in part)])
    return RecallNotice(
        card.name,
        draft.to_hang,
        life.answer.business,
        draft.headline,
        parts,
        dulling(said),
        card.exercise,
        draft.language,
        life.answer.printed_from,
        paper.labels,
    )


def contact_words(paper: RecallPaper, said: NoticeWords) -> str:
    """Whom to call: the firm, its address, its telephone, as far as the ledger has them."""
    life = paper.life
    first = life.firm[0] if life.firm else None
    words = [life.answer.business, *([first.address.replace("\n", ", ")] if first else [])]
    return f"{', '.join(words)}, {said.telephone} {life.phone or '____________'}."


def _filled(text: str, values: dict[str, str]) -> str:
    for name, value in values.items():
        text = text.replace(f"{{{name}}}", value)
    return text.strip()


def _sentence(text: str) -> str:
    said = text[:1].upper() + text[1:]
    return said if said.endswith((".", "!", "?")) else f"{said}."


def _sold(paper: RecallPaper, words: NoticeWords) -> str:
    answer = paper.life.answer
    said = [f"{one.place}, {words.between(one.first_on, one.last_on)}" for one in answer.notices]
    for way, line in (("dispatched", words.through), ("given", words.given)):
        gone = [one for one in answer.bars if one.where == way and one.on]
        if days := sorted(one.on for one in gone if one.on):
            line = line.replace("{number}", str(len({one.detail for one in gone})))
            said.append(line.replace("{days}", words.between(days[0], days[-1])))
    return "\n".join(said) or words.unsold
