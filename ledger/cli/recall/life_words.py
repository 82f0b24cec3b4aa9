"""Says how a recall stands: what was asked and why, its answer now, who was told, what else was done."""

from shlex import quote

from ledger.cli.kit.show import count, say, say_next, say_wrapped, table
from ledger.cli.recall.words import say_answer
from ledger.units.dates import show_date
from ledger.views.recall.recall_life import RecallLife
from ledger.views.recall.recall_steps import effectiveness_words, state_words, step_words
from ledger.views.recall.recall_words import to_hold_words


def say_life(life: RecallLife) -> None:
    """One recall on the screen."""
    card = life.card
    say_wrapped(state_words(card))
    asked = f"entry {card.asked_at}; as it was known then, a look-up takes --as-of {card.asked_at}"
    for name, value in (("hazard", card.hazard), ("found by", card.found_by), ("asked at", asked)):
        if value:
            say_wrapped(f"{name}: {value}", first="  ", indent="    ")
    say()
    if life.answer.lots or life.answer.batches:
        say_answer(life.answer)
    else:  # what it asks about was taken back since
        say_wrapped("Nothing answers to it any more.")
        for one in life.answer.cannot_exclude:
            say_wrapped(f"{one.what}: {one.why}.", first="  ", indent="    ")
    say()
    if life.people:
        say(f"Told: {len(life.people) - len(life.not_told)} of {len(life.people)}.")
        table(
            ("name", "bars", "told", "how", "answered", "back", "destroyed", "what they said"),
            [
                (
                    one.one.name,
                    str(one.one.bars or ""),
                    show_date(one.told_on) if one.told_on else "no",
                    one.how or "",
                    show_date(one.answered_on) if one.answered_on else "",
                    str(one.back or ""),
                    str(one.destroyed or ""),
                    one.answer or "",
                )
                for one in life.people
            ],
            right=(1, 5, 6),
        )
    say_wrapped(effectiveness_words(life))
    if life.others:
        say("Done beside that:")
        for step in life.others:
            say_wrapped(f"{show_date(step.on)}, {step.by}: {step_words(step)}", first="  ", indent="    ")
    if card.closed or card.exercise:
        return
    name = card.name
    if life.answer.stoppable:  # since it was opened more came to be reached, or was let go
        codes = " ".join(one.code for one in life.answer.stoppable)
        say_next(f"Not on hold: {to_hold_words(life.answer)}: soapledger lot hold {codes} --reason 'recall {name}'")
    if life.not_told:
        first = life.not_told[0].one
        whom = f"complaint {first.complaint}" if first.complaint else first.name
        calls = count(len(life.not_told), "call")
        say_next(f"{calls} left: soapledger recall note {name} --told {quote(whom)} --how telephone")
    else:
        say_next(f'When it is over: soapledger recall close {name} --conclusion "…"')
