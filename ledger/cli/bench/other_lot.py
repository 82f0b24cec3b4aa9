"""At the prompt: a lot of another material than the line asks for is in the pot, or its code was typed wrongly."""

from collections.abc import Sequence

from ledger.cli.bench.cut_prompt import stop
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import ask, warn
from ledger.operations.bench.weigh import Weighed
from ledger.rows.batch import PlanLineRow
from ledger.rows.lot import find_lot
from ledger.rows.material import material_by_code
from ledger.units.codes import looks_like_lot_code


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
