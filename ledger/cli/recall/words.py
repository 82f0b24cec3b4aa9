"""Says the answer to a recall: what was asked for, every bar, and whom to call."""

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.show import count, say, say_wrapped, table
from ledger.units.dates import show_date
from ledger.views.recall.recall import RecallAnswer


def say_answer(answer: RecallAnswer) -> None:
    """The answer on the screen: the sentence for the telephone, then the tables."""
    totals = answer.totals
    with_bars = [one for one in answer.batches if one.yields_bars]
    say(
        f"{'EXERCISE. ' if answer.exercise else ''}{_what(answer)}: {count(len(with_bars), 'batch', 'batches')}, "
        f"{count(totals.made, 'bar')}. {totals.on_hand} here, {totals.at_stall} at a stall, "
        f"{totals.retained} retained, {totals.returned} returned, {totals.sold} sold, "
        f"{totals.dispatched} dispatched, {totals.given} given away, {totals.wasted} thrown away, "
        f"{f'{totals.reworked} reworked, ' if totals.reworked else ''}{totals.unexplained} unexplained."
    )
    units = answer.units
    if answer.lots:
        say()
        _say_lots(answer)
    if answer.batches:
        say()
        table(
            ("batch", "what", "made", "took", "bars", "status", "through"),
            [
                (
                    one.batch_code,
                    one.product,
                    show_date(one.made_on),
                    "" if one.used is None else amount(one.used, one.pieces, units),
                    str(one.bars_made) if one.yields_bars else "",
                    one.status,
                    " → ".join(one.through[1:-1]),
                )
                for one in answer.batches
            ],
            right=(3, 4),
        )
    if answer.bars:
        say()
        table(
            ("batch", "bars", "where", "", "on"),
            [
                (one.batch_code, str(one.count), one.where, one.detail, show_date(one.on) if one.on else "")
                for one in answer.bars
            ],
            right=(1,),
        )
    for back in answer.back_on_sale:
        say_wrapped(f"Of batch {back.batch_code}, {back.words}.", first="  ", indent="    ")
    if answer.bulk:
        say()
        say("Loose material made from it that is still here:")
        table(
            ("lot", "material", "where", "quantity", "status"),
            [(b.lot_code, b.material, b.place, amount(b.on_hand, b.pieces, units), b.status) for b in answer.bulk],
            right=(3,),
        )
    if answer.call:
        say()
        say("To call:")
        table(
            ("name", "phone", "email", "bars", "batches"),
            [
                (c.name, c.phone or "no number", c.email or "", str(c.bars or ""), ", ".join(c.batches))
                for c in answer.call
            ],
            right=(3,),
        )
    elif answer.bars:
        say()
        say("To call: nobody known by name has any of it.")
    if answer.cannot_exclude:
        say()
        say("Cannot be excluded:")
        for one in answer.cannot_exclude:
            say(f"  {one.what}: {one.why}.")
    if answer.held:
        say()
        how = " or ".join(answer.stopped)
        say(f"Everything of it that is here is {how}." if how else "Nothing of it is here any more.")


def _what(answer: RecallAnswer) -> str:
    """What was asked for, in the words the answer begins with."""
    if answer.bars_of:
        named = {one.batch_code: one.product for one in answer.batches}
        products = " and ".join(dict.fromkeys(named[code] for code in answer.bars_of))
        more = ", and what was made of it" if len(answer.batches) > len(answer.bars_of) else ""
        word = "batch" if len(answer.bars_of) == 1 else "batches"
        return f"{products}, {word} {' and '.join(answer.bars_of)}{more}"
    if len(answer.lots) > 1:
        materials = " and ".join(dict.fromkeys(one.material for one in answer.lots))
        return f"{count(len(answer.lots), 'lot')} of {materials}"
    first = answer.lots[0]
    return f"{first.material}, lot {first.lot_code} (their number {first.supplier_lot or 'unknown'})"


def _say_lots(answer: RecallAnswer) -> None:
    units = answer.units
    table(
        ("lot", "their number", "supplier", "received", "quantity", "left", "status"),
        [
            (
                one.lot_code,
                one.supplier_lot or "unknown",
                one.supplier or "",
                show_date(one.received_on),
                amount(one.received, one.pieces, units),
                amount(one.on_hand, one.pieces, units),
                one.status,
            )
            for one in answer.lots
        ],
        right=(4, 5),
    )
