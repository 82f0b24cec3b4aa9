"""Says the answer to a recall: what was asked for, every bar, and whom to call."""

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.show import count, on_screen, say, say_next, say_wrapped, table
from ledger.units.dates import show_date
from ledger.views.recall.recall import ReachedBatch, RecallAnswer
from ledger.views.recall.recall_words import (
    as_known_words,
    back_from_nowhere_words,
    differences_words,
    grams_words,
    took_words,
)

_DEEPEST = 8  # steps that are set in; deeper ones are numbered, so that the words keep to the screen


def say_answer(answer: RecallAnswer) -> None:
    """The answer on the screen: the sentence for the telephone, then the tables."""
    if known := as_known_words(answer):
        say_wrapped(known)
    totals = answer.totals
    with_bars = [one for one in answer.batches if one.yields_bars]
    say_wrapped(
        f"{'EXERCISE. ' if answer.exercise else ''}{_what(answer)}: {count(len(with_bars), 'batch', 'batches')}, "
        f"{count(totals.made, 'bar')}. {totals.on_hand} here, {totals.at_stall} at a stall, "
        f"{f'{totals.at_shop} at a shop, ' if totals.at_shop else ''}"
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
        say_tree(answer)
    if answer.bars:
        say()
        table(
            ("batch", "bars", "where", "", "on"),
            [
                (one.batch_code, str(one.count), one.where, one.detail, show_date(one.on) if one.on else "")
                for one in answer.bars
            ],
            right=(1,),
            wraps=(2, 3) if on_screen() else (),
        )
    for line in differences_words(answer):
        say_wrapped(line, first="  ", indent="    ")
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
            wraps=(0, 4) if on_screen() else (),
        )
    elif answer.bars:
        say()
        say("To call: nobody known by name has any of it.")
    if answer.notices:
        say()
        say("Sold to buyers nobody knows by name; put up a notice:")
        table(
            ("where", "bars", "first sold", "last sold"),
            [(one.place, str(one.bars), show_date(one.first_on), show_date(one.last_on)) for one in answer.notices],
            right=(1,),
        )
        if unsaid := back_from_nowhere_words(answer):
            say_wrapped(unsaid, first="  ", indent="    ")
    if answer.cannot_exclude:
        say()
        say("Cannot be excluded:")
        for one in answer.cannot_exclude:
            say_wrapped(f"{one.what}: {one.why}.", first="  ", indent="    ")
    if answer.look_next:
        say()
        codes = " ".join(f"--bar {code}" for code in answer.bars_of)
        say_wrapped("Look at next: these share a lot with it, and are in no figure above, no call and no hold.")
        table(
            ("batch", "product", "shares", "of", "which is in"),
            [
                (one.batch_code, one.product, one.lot_code, one.material, count(one.shared_by, "batch", "batches"))
                for one in answer.look_next
            ],
        )
        say_next(f"To take one in: soapledger recall of {codes} --bar {answer.look_next[0].batch_code}")
    if answer.held:
        say()
        how = " or ".join(answer.stopped)
        say(f"Everything of it that is here is {how}." if how else "Nothing of it is here any more.")


def say_tree(answer: RecallAnswer) -> None:
    """Every batch once, set in under the batch or lot that the shortest way to it comes from."""
    below: dict[str, list[ReachedBatch]] = {}
    for one in answer.batches:
        below.setdefault(one.after or (one.first if one.steps else ""), []).append(one)
    waiting: list[tuple[int, ReachedBatch | str]] = [(0, one) for one in reversed(below.get("", []))]
    for lot in reversed(answer.lots):
        waiting += [(1, one) for one in reversed(below.get(lot.lot_code, []))]
        waiting += [(0, lot.lot_code)]
    while waiting:
        depth, item = waiting.pop()
        if isinstance(item, str):
            if item in below:
                say(f"From lot {item}:")
            continue
        lead = "  " * min(depth + 1, _DEEPEST) + (f"step {depth}: " if depth >= _DEEPEST else "")
        say_wrapped(_batch_words(item, answer), first=lead, indent="  " * min(depth + 1, _DEEPEST) + "    ")
        waiting += [(depth + 1, after) for after in reversed(below.get(item.batch_code, []))]


def _batch_words(one: ReachedBatch, answer: RecallAnswer) -> str:
    took = took_words(one, answer.units)
    bars = f"{count(one.bars_made, 'bar')}, " if one.yields_bars else ""
    through = f", through {one.last}" if one.steps > 1 else ""
    return (
        f"{one.batch_code} {one.product}, {show_date(one.made_on)}: {f'{took}; ' if took else ''}{bars}{one.status}"
        f"{through}"
    )


def _what(answer: RecallAnswer) -> str:
    """What was asked for, in the words the answer begins with."""
    named = {one.batch_code: one.product for one in answer.batches}
    said = []
    if len(answer.lots) == 1:
        first = answer.lots[0]
        said.append(f"{first.material}, lot {first.lot_code} (their number {first.supplier_lot or 'unknown'})")
    elif answer.lots:
        materials = " and ".join(dict.fromkeys(one.material for one in answer.lots))
        said.append(f"{count(len(answer.lots), 'lot')} of {materials}")
    for codes, what in ((answer.bars_of, ""), (answer.labels_of, "labels of ")):
        if codes:
            products = " and ".join(dict.fromkeys(named[code] for code in codes))
            word = "batch" if len(codes) == 1 else "batches"
            listed = " and ".join(codes) if len(codes) < 4 else f"{codes[0]} and {len(codes) - 1} more"
            said.append(f"{what}{products}, {word} {listed}")
    asked_for = len(answer.bars_of) + len(answer.labels_of)
    more = ", and what was made of it" if answer.bars_of and len(answer.batches) > asked_for else ""
    return "; ".join(said) + more


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
    for one in answer.lots:
        say_wrapped(f"{one.lot_code}: {grams_words(one, units)}.", first="  ", indent="    ")
