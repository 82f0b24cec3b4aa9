"""soapledger batch note."""

from typing import Annotated

import typer

from ledger.cli.kit.desk import desk
from ledger.cli.kit.options import Batch, On
from ledger.cli.kit.show import say
from ledger.domain.bench.steps import SEEN
from ledger.errors import BadInput
from ledger.operations.bench.deviations import report_deviation
from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.units.names import near


def command(
    ctx: typer.Context,
    code: Batch,
    words: Annotated[str, typer.Argument(help="What you saw, or what went wrong.")] = "",
    seen: Annotated[
        list[str] | None, typer.Option("--seen", help="In the trade's words: gel, soda ash, seizing … (repeat).")
    ] = None,
    deviation: Annotated[
        bool, typer.Option("--deviation", help="It went wrong: to be decided before release.")
    ] = False,
    done: Annotated[str | None, typer.Option("--done", help="What was done about it.")] = None,
    on: On = None,
) -> None:
    """Note what was seen or went wrong, e.g. batch note 26-118-0 "seized at trace" --deviation."""
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
    word = " ".join(text.casefold().split())
    if word in SEEN:
        return word
    close = near(word, SEEN, 1)
    hint = f"did you mean {close[0]}?" if close else f"the list has {', '.join(SEEN)}; anything else goes in quotes."
    raise BadInput(f"'{text}' is not on the tick list; {hint}")
