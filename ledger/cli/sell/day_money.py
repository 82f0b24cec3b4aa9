"""What the money of a day at a stall came to, in words."""

from ledger.cli.kit.show import count, say_next, say_wrapped
from ledger.domain.sell.takings import BY
from ledger.operations.sell.stall_money import Money
from ledger.units.money import show_money


def say_money(money: Money | None, currency: str, stall: str) -> None:
    """What the bars should have brought, what was taken, and the difference; and what is still to be told."""
    if money is None:
        return

    def show(minor: int) -> str:
        return show_money(minor, currency)

    if money.bars_minor is not None:
        least = f"; {count(money.unpriced, 'bar')} {'has' if money.unpriced == 1 else 'have'} no price" * bool(
            money.unpriced
        )
        say_wrapped(f"By their prices they bring {show(money.bars_minor)}, as many under offers as can be{least}.")
    if money.taken_minor is not None:
        ways = [f"{show(one.amount_minor)} {BY[one.way]}" for one in money.paid if one.amount_minor]
        float_ = next((one.float_minor for one in money.paid if one.float_minor), None)
        parts = ", ".join(ways) if len(ways) > 1 else ""
        by = f" {BY[money.paid[0].way]}" if len(ways) == 1 and money.paid[0].way != "other" else ""
        less = f", without a float of {show(float_)}" if float_ else ""
        other = f"; {show(money.other_minor)} of it for other goods" if money.other_minor else ""
        said = f"Taken {show(money.taken_minor)}"
        say_wrapped(f"{said} ({parts}{less}){other}." if parts else f"{said}{by}{less}{other}.")
    if money.difference_minor:
        way = "more" if money.difference_minor > 0 else "less"
        say_wrapped(f"That is {show(abs(money.difference_minor))} {way} than it should be, and is booked so.")
    takings = f"soapledger stall takings {stall}"
    if money.taken_minor is not None and not money.complete:
        told = {one.way for one in money.paid}
        missing = "--card AMOUNT" if "card" not in told else "--cash AMOUNT --float AMOUNT"
        say_next(f"When the rest is known, or with --complete where nothing more comes: {takings} {missing}")
    elif money.taken_minor is None and money.bars_minor is not None:
        say_next(f"Next, what was taken: {takings} --cash AMOUNT --card AMOUNT")
