"""soapledger batch note and batch decide: what was seen, what went wrong, and what was decided."""

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import say, say_marked
from ledger.domain.bench.steps import SEEN
from ledger.errors import BadInput
from ledger.operations.bench.readings import ReadingValue
from ledger.rows.batch import BatchRow
from ledger.rows.decision import open_deviations


def ticked(text: str) -> list[ReadingValue]:
    """What was typed at the prompt: numbers of the tick list, its words, or words of her own, between commas."""
    found = []
    for part in (one.strip() for one in text.split(",")):
        if part.isdecimal():
            if not 1 <= int(part) <= len(SEEN):
                raise BadInput(f"The tick list has no {part}; its numbers are 1 to {len(SEEN)}.")
            part = SEEN[int(part) - 1]
        if part:
            found.append(ReadingValue("observation", text=part))
    return found


def say_open(here: Desk, batch: BatchRow) -> None:
    """Every deviation still to be decided, and how."""
    found = open_deviations(here.rows(), batch.id)
    for one in found:
        say_marked(f"Deviation {one.number} is open: {one.found}.")
    if found:
        say(f'Decide it: soapledger batch decide {batch.code} {found[0].number} accept --reason "…"')
