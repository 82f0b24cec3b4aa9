"""The steps of a recall in words, the same on the screen and on paper."""

from ledger.domain.recall.question import question_from
from ledger.rows.decision import RecallCard, RecallStep
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.views.recall.recall_life import RecallLife, asked_for


def state_words(card: RecallCard) -> str:
    """What was asked, why, and whether it is open."""
    what = f"{card.name} of {asked_for(question_from(card.question))}"
    if card.exercise:
        ended = card.closed.conclusion if card.closed else ""
        return f"EXERCISE {what}, {show_date(card.on)}, by {card.by}: {card.reason}. {ended}"
    opened = f"opened {show_date(card.on)} by {card.by}: {card.reason}."
    if card.closed is None:
        return f"Recall {what}, open; {opened}"
    end = card.closed
    rest = f" {count(end.unexplained, 'bar')} unexplained: {end.reason}." if end.unexplained else ""
    return (
        f"Recall {what}, closed {show_date(end.on)} by {end.by}: {end.conclusion.rstrip('.')}.{rest} "
        f"{opened[0].upper()}{opened[1:]}"
    )


def effectiveness_words(life: RecallLife) -> str:
    """Whom to ask whether it reached them, and how many answered."""
    asked, of = life.to_ask, len(life.people)
    which = f"level {life.level.words}" + ("" if life.level_said else ", as long as no other is set")
    if not of:
        return "Effectiveness: nobody is known by name to be asked."
    if not asked:
        return f"Effectiveness, {which}: nobody is asked whether it reached them."
    answered = sum(one.answered_on is not None for one in asked)
    waiting = [one.one.name for one in asked if one.answered_on is None]
    rest = f" Still to ask: {', '.join(waiting)}." if waiting else ""
    return f"Effectiveness, {which}: {len(asked)} of {of} asked, {answered} of them answered.{rest}"


def step_words(step: RecallStep) -> str:
    """One step: 4 bars destroyed at Tern Hall."""
    bars = count(step.bars, "bar") if step.bars else ""
    whom = step.whom or ""
    said = {
        "told": f"told {whom}",
        "answered": f"{whom} answered",
        "returned": f"{bars} came back{f' from {whom}' if whom else ''}",
        "destroyed": f"{bars} destroyed{f' at {whom}' if whom else ''}",
        "notice": f"notice put up: {whom}",
        "insurer": f"insurer told: {whom}",
        "authority": f"authority told: {whom}",
        "class": f"class {step.words}, set by {whom}",
        "level": f"effectiveness checks at level {step.words}",
        "hazard": f"the hazard is {step.words}",
        "note": step.words or "",
    }[step.kind]
    how = f", by {step.how}" if step.how else ""
    words = f": {step.words}" if step.words and step.kind not in ("class", "level", "hazard", "note") else ""
    return f"{said}{how}{words}"
