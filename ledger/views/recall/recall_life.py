"""A recall that was opened: its answer asked again, who was told of those who have bars, and what else was done."""

import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import NamedTuple

from ledger.domain.recall.effectiveness import EVERYBODY, Level, level
from ledger.domain.recall.question import Question, question_from
from ledger.errors import BadInput, Refused
from ledger.rows.bars import BarsWith
from ledger.rows.decision import RecallCard, RecallStep, recalls
from ledger.rows.opened import Rows
from ledger.rows.people import contacts, customer_list
from ledger.rows.settings import Responsible, settings
from ledger.units.dates import show_date
from ledger.views.recall.reach import Starts
from ledger.views.recall.recall import CannotBeExcluded, RecallAnswer, ToCall
from ledger.views.recall.recall_answer import recall_answer
from ledger.views.recall.recall_kinds import asked_about_anything
from ledger.views.recall.recall_people import SOMEBODY, to_call, without_a_name, without_names
from ledger.views.recall.recall_starts import Asked

_ABOUT_SOMEBODY = ("told", "answered", "returned", "destroyed")


class Told(NamedTuple):
    """One who has bars or complained, or had some: whether told, what was answered, what became of the bars."""

    one: ToCall
    told_on: date | None
    how: str | None
    answered_on: date | None
    answer: str | None
    back: int  # bars, as was said of them
    destroyed: int
    asked: bool  # whether the level of effectiveness checks has them asked


@dataclass(frozen=True)
class RecallLife:
    """One recall as it stands now."""

    card: RecallCard
    answer: RecallAnswer
    people: tuple[Told, ...]
    others: tuple[RecallStep, ...]  # what was done beside telling them
    level: Level
    level_said: bool
    firm: tuple[Responsible, ...]
    phone: str | None

    @property
    def unexplained(self) -> int:
        """Bars that do not come to the number made, batch by batch, too many and too few."""
        return sum(abs(one.unexplained) for one in self.answer.differences)

    @property
    def not_told(self) -> tuple[Told, ...]:
        """Who has bars or complained, and was not told."""
        return tuple(one for one in self.people if not one.told_on and not one.answered_on)

    @property
    def to_ask(self) -> tuple[Told, ...]:
        """Who is asked whether the recall reached them."""
        return tuple(one for one in self.people if one.asked)


def recall_meant(rows: Rows, text: str) -> RecallCard:
    """The recall of a number as people say it: R1, r1 or 1. Raises BadInput with those near it."""
    found = re.fullmatch(r"[Rr]?\s*0*(\d{1,8})", text.strip())
    if found and (card := recalls(rows, number=int(found[1]))):
        return card[0]
    known = [one.number for one in recalls(rows)]
    if not known:
        raise BadInput(f"There is no recall '{text.strip()}'; none was opened yet: soapledger recall open --help")
    near = sorted(known, key=lambda one: (abs(one - int(found[1])) if found else -one, one))[:3]
    raise BadInput(
        f"There is no recall '{text.strip()}'; {'near it' if found else 'the last'}: "
        f"{', '.join(f'R{one}' for one in near)}. All of them: soapledger recall list"
    )


def asked_for(question: Question) -> str:
    """What a question begins with, in a few words, as it was asked, and what narrows it."""
    said = [one.what if one.kind == "number" else f"{one.kind} {one.what}" for one in question.starts]
    if question.of_a_delivery:
        said.append(f"{question.material} from {question.supplier}")
    words = " and ".join(dict.fromkeys(said))
    if not question.of_a_delivery and (question.material or question.supplier):
        only = (question.material, f"from {question.supplier}" if question.supplier else None)
        words += f", only {' '.join(one for one in only if one)}"
    days = (("from", question.first), ("to", question.last))
    span = " ".join(f"{which} {show_date(day)}" for which, day in days if day)
    return f"{words}, {span}" if span else words


def answered_now(rows: Rows, asked: Asked, *, program: str, exercise: bool) -> RecallAnswer:
    """The answer to what is asked, with what of the question itself could not be told for certain."""
    starts = asked.starts
    answer = recall_answer(
        rows, starts.lots, bars_of=starts.bars_of, labelled=starts.labelled, asked=asked.words, program=program,
        exercise=exercise,
    )  # fmt: skip
    return replace(answer, cannot_exclude=(*answer.cannot_exclude, *asked.doubts))


def recall_life(rows: Rows, text: str, *, on: date, program: str) -> RecallLife:
    """One recall, its question asked again now. Raises BadInput for an unknown number."""
    card = recall_meant(rows, text)
    asked = _asked_again(rows, question_from(card.question), on)
    answer = answered_now(rows, asked, program=program, exercise=card.exercise)
    chosen = card.last("level")
    which = level(chosen.words) if chosen and chosen.words else EVERYBODY
    own = settings(rows)
    return RecallLife(
        card=card,
        answer=answer,
        people=_people(rows, answer, card.steps, which),
        others=tuple(one for one in card.steps if _whose(one) is None and one.kind not in ("level", "hazard")),
        level=which,
        level_said=chosen is not None,
        firm=tuple(dict.fromkeys(own.addresses.values())),
        phone=own.phone,
    )


def _asked_again(rows: Rows, question: Question, on: date) -> Asked:
    """What a kept question means now; where what it names was taken back since, nothing, and that is said."""
    try:
        return asked_about_anything(rows, question, on=on)
    except (BadInput, Refused) as error:
        words = asked_for(question)
        return Asked(Starts(), (words,), (CannotBeExcluded(f"what was asked, {words}", str(error).rstrip(".")),))


def discreet(rows: Rows, life: RecallLife) -> RecallLife:
    """The same for others to read: private persons without names and details, and no word of theirs."""
    persons = {one.id for one in customer_list(rows) if one.kind == "person"}
    people = tuple(
        one._replace(one=without_a_name(one.one), answer=None) if one.one.private else one for one in life.people
    )
    steps = tuple(_discreet_step(one, persons) for one in life.card.steps)
    return replace(life, people=people, answer=without_names(life.answer), card=life.card._replace(steps=steps))


def _discreet_step(step: RecallStep, persons: Collection[int]) -> RecallStep:
    whose = _whose(step)
    if whose is None or (step.customer_id is not None and step.customer_id not in persons):
        return step
    named = {"customer": SOMEBODY, "whom": "someone with a gift"}.get(whose[0], step.whom)
    return step._replace(whom=named, words=None)


def _whose(step: RecallStep) -> tuple[str, int | str] | None:
    """Who a step is about; None where it is about nobody who has bars."""
    if step.customer_id is not None:
        return "customer", step.customer_id
    if step.complaint is not None:
        return "complaint", step.complaint
    if step.kind in _ABOUT_SOMEBODY and step.whom:
        return "whom", step.whom
    return None


def _key(one: ToCall) -> tuple[str, int | str]:
    if one.customer_id is not None:
        return "customer", one.customer_id
    return ("complaint", one.complaint) if one.complaint is not None else ("whom", one.name)


def _people(rows: Rows, answer: RecallAnswer, steps: Sequence[RecallStep], which: Level) -> tuple[Told, ...]:
    """Everyone to call, then those who were told and have none any more."""
    known = {_key(one): one for one in answer.call}
    on_the_books = contacts(rows, [one.customer_id for one in steps if one.customer_id is not None])
    for step in steps:
        whose = _whose(step)
        if whose is None or whose in known:
            continue
        if step.customer_id in on_the_books:
            known[whose] = to_call((BarsWith(step.customer_id, None, 0, step.on, ()),), on_the_books)[0]
        else:
            name = step.whom or "not known any more"
            known[whose] = ToCall(name, None, None, None, 0, (), step.on, complaint=step.complaint, private=True)
    asked = {*which.chosen(sorted(known, key=lambda key: (known[key].name, str(key))))}
    people = []
    for key, one in known.items():
        done = [step for step in steps if _whose(step) == key]
        told = [step for step in done if step.kind == "told"]
        answers = [step for step in done if step.kind == "answered"]
        people.append(
            Told(
                one=one,
                told_on=told[-1].on if told else None,
                how=told[-1].how if told else None,
                answered_on=answers[-1].on if answers else None,
                answer=answers[-1].words if answers else None,
                back=sum(step.bars or 0 for step in done if step.kind == "returned"),
                destroyed=sum(step.bars or 0 for step in done if step.kind == "destroyed"),
                asked=key in asked,
            )
        )
    return tuple(people)
