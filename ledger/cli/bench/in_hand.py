"""At the prompt: a lot's code, typed or scanned, says what is in her hand; then its weight is asked."""

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple, NoReturn

import typer

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import ask, say, warn
from ledger.errors import BadInput
from ledger.operations.bench.weigh import Weighed, may_go_in
from ledger.rows.batch import PlanLineRow
from ledger.rows.lot import find_lot, lot_by_id
from ledger.rows.material import material_by_code
from ledger.units.codes import looks_like_lot_code


class InHand(NamedTuple):
    """A lot that may go in: its code, its material, and how its weight is asked."""

    code: str
    material: str
    question: str


def take_in_hand(here: Desk, line: PlanLineRow, typed: str, batch: str, on: date, asked: str) -> InHand:
    """The lot of a code, ticked where it is the line's material; `asked` is what the line asks for, with its window.

    Raises Refused for a lot that may not go in on that day, BadInput for a wrong code.
    """
    lot = find_lot(here.rows(), typed, on=on)
    other = lot.material_id != line.material_id
    if other:
        answer = really_in(lot.material, line, batch)
        if looks_like_lot_code(answer):  # the right one was scanned in reply
            return take_in_hand(here, line, answer, batch, on, asked)
        if answer != "pot":
            raise BadInput(f"Then scan or type the right one; line {line.number} asks for {line.material}.")
    may_go_in(lot, on)
    planned = lot_by_id(here.rows(), line.lot_id).code if line.lot_id is not None else lot.code
    if other:
        warn(f"  In hand: {lot.material}, lot {lot.code}, in place of {line.material}.")
    else:
        warn(f"  ✓ {lot.material}, lot {lot.code}" + (f"; the plan says {planned}" if planned != lot.code else ""))
    return InHand(lot.code, lot.material, f"{line.number}. {lot.material}, lot {lot.code} in hand: {asked}")


def no_lot_here(typed: str, what: str) -> NoReturn:
    """Raise BadInput for a lot's code where no lot is asked for, so that no scan is taken for an answer."""
    raise BadInput(f"'{typed}' is the code of a lot, and here is asked: {what}.")


def other_material(here: Desk, line: PlanLineRow, takes: Sequence[Weighed]) -> str | None:
    """The other material that was typed on a line, by its name; None where there is none."""
    for take in takes:
        name = None
        if take.of is not None:
            name = material_by_code(here.rows(), take.of).name
        elif take.lot_code is not None:
            name = find_lot(here.rows(), take.lot_code).material
        if name is not None and name != line.material:
            return name
    return None


def really_in(name: str, line: PlanLineRow, code: str) -> str:
    """'pot' where the other material is in it, 'code' where the code was wrong, or the next lot's code that is scanned.

    Enter is no answer.
    """
    warn(f"  Line {line.number} asks for {line.material}, and that lot is {name}.")
    while True:
        typed = ask(f"  {name} in the pot, or the wrong code? Write pot or code", default="").casefold()
        if typed == "q":
            stop(code)
        if typed in ("pot", "code") or looks_like_lot_code(typed):
            return typed


def surely(question: str, code: str) -> bool:
    """Whether something unlikely is right; q stops here too."""
    typed = ask(f"  {question}Is it right? yes or no", default="no").casefold()
    if typed == "q":
        stop(code)
    return typed in ("y", "yes")


def stop(code: str) -> NoReturn:
    """Leave the prompt; what was answered is booked."""
    say(f"Stopped; what you logged is kept. Go on with: soapledger batch log {code}")
    raise typer.Exit
