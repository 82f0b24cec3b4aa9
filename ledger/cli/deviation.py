"""soapledger batch note and batch decide: what was seen, what went wrong, and what was decided."""

from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import Desk, desk
from ledger.cli.show import out_json, say, say_wrapped
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.operations.readings import ReadingValue
    from ledger.views.batch import BatchRow

Code = Annotated[str, typer.Argument(help="The batch code, e.g. 26-118-0.")]


def note(
    ctx: typer.Context,
    code: Code,
    words: Annotated[str, typer.Argument(help="What you saw, or what went wrong.")] = "",
    seen: Annotated[
        list[str] | None, typer.Option("--seen", help="In the trade's words: gel, soda ash, seizing … (repeat).")
    ] = None,
    deviation: Annotated[
        bool, typer.Option("--deviation", help="It went wrong: to be decided before release.")
    ] = False,
    done: Annotated[str | None, typer.Option("--done", help="What was done about it.")] = None,
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
) -> None:
    """Note what was seen or went wrong, e.g. batch note 26-118-0 "seized at trace" --deviation."""
    from ledger.operations.deviations import report_deviation
    from ledger.operations.readings import ReadingValue, log_readings

    here = desk(ctx)
    found = [ReadingValue("observation", text=one) for one in map(seen_word, seen or ())]
    if deviation:
        number = report_deviation(here.book(), code, words, on=here.day(on), done=done)
        say(f"Deviation {number} is noted and open.")
        say(f'Next: soapledger batch decide {code} {number} accept --reason "…" (or rework, or reject)')
    elif done:
        raise BadInput("What was done belongs to a deviation; add --deviation.")
    elif words.strip():
        found.append(ReadingValue("observation", text=words.strip()))
    elif not found:
        raise BadInput('Write what you saw, in quotes, or tick it: --seen "soda ash".')
    if found:
        log_readings(here.book(), code, found, on=here.day(on))
        say(f"Noted: {', '.join(one.text or '' for one in found)}.")


def seen_word(text: str) -> str:
    """One of the words of the tick list. Raises BadInput for any other, with what was probably meant."""
    from ledger.domain.bench import SEEN
    from ledger.domain.names import near

    word = " ".join(text.casefold().split())
    if word in SEEN:
        return word
    close = near(word, SEEN, 1)
    hint = f"did you mean {close[0]}?" if close else f"the list has {', '.join(SEEN)}; anything else goes in quotes."
    raise BadInput(f"'{text}' is not on the tick list; {hint}")


def ticked(text: str) -> list["ReadingValue"]:
    """What was typed at the prompt: numbers of the tick list, its words, or words of her own, between commas."""
    from ledger.domain.bench import SEEN
    from ledger.operations.readings import ReadingValue

    found = []
    for part in (one.strip() for one in text.split(",")):
        if part.isdecimal():
            if not 1 <= int(part) <= len(SEEN):
                raise BadInput(f"The tick list has no {part}; its numbers are 1 to {len(SEEN)}.")
            part = SEEN[int(part) - 1]
        if part:
            found.append(ReadingValue("observation", text=part))
    return found


def decide(
    ctx: typer.Context,
    code: Code,
    number: Annotated[str, typer.Argument(help="Which deviation, by its number.")],
    verdict: Annotated[str, typer.Argument(help="accept, rework or reject.")],
    reason: Annotated[str, typer.Option("--reason", help="Why.")],
    done: Annotated[str | None, typer.Option("--done", help="What was done about it.")] = None,
    by: Annotated[str | None, typer.Option("--by", help="Who decides (you).")] = None,
    on: Annotated[str | None, typer.Option("--on", help="The day (today).")] = None,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """Decide about a deviation, e.g. batch decide 26-118-0 1 accept --reason "trace was even"."""
    from ledger.domain.quantity import parse_pieces
    from ledger.operations.deviations import decide_deviation
    from ledger.views.batch import find_batch
    from ledger.views.deviation import deviations

    here = desk(ctx)
    which = parse_pieces(number, what="the number of the deviation")
    decider = by or here.who
    decide_deviation(here.book(), code, which, verdict, on=here.day(on), by=decider, reason=reason, done=done)
    batch = find_batch(here.rows(), code)
    one = deviations(here.rows(), batch.id)[which - 1]
    if json:
        out_json(one)
        return
    say_wrapped(f"Deviation {which} of batch {batch.code} ({one.found}): {one.verdict}, by {decider}: {reason}.")
    if verdict == "reject":
        say(f'Next: soapledger reject {batch.code} --reason "deviation {which}"')
    say_open(here, batch)


def say_open(here: Desk, batch: "BatchRow") -> None:
    """Every deviation still to be decided, and how."""
    from ledger.views.deviation import open_deviations

    found = open_deviations(here.rows(), batch.id)
    for one in found:
        say_wrapped(f"Deviation {one.number} is open: {one.found}.", first="  ! ", indent="    ")
    if found:
        say(f'Decide it: soapledger batch decide {batch.code} {found[0].number} accept --reason "…"')
