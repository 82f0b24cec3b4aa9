"""What the commands of a lot do alike."""

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.desk import Desk
from ledger.cli.kit.measured import read_amount
from ledger.cli.kit.show import say
from ledger.operations.stock.lots import decide_lots
from ledger.rows.lot import find_lot
from ledger.rows.material import material_by_code
from ledger.units.quantity import parse_pieces
from ledger.units.words import Verdict


def decide(here: Desk, codes: list[str], verdict: Verdict, on: str | None, reason: str | None) -> None:
    """Book a verdict about lots and say what became of each."""
    day = here.day(on)
    lots = decide_lots(here.book(), codes, verdict=verdict, on=day, by=here.decider, reason=reason)
    if not lots:
        say(f"{'That lot is' if len(codes) == 1 else 'Those lots are'} accepted already; nothing to do.")
    for lot in lots:
        held = amount(lot.on_hand, lot.counted, here.settings.units)
        say(f"Lot {lot.code} ({lot.material}, {held} on hand) is {verdict}.")


def read_quantity(here: Desk, code: str, text: str) -> int:
    """A quantity of a lot as typed: pieces, a mass, or a volume by its density. Raises BadInput."""
    lot = find_lot(here.rows(), code)
    if lot.counted:
        return parse_pieces(text)
    return read_amount(text, material_by_code(here.rows(), lot.material_code), here.settings.units)
