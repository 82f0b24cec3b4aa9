"""The figures of a recall in words, the same on the screen and on paper."""

from ledger.units.dates import show_moment
from ledger.units.quantity import show_mass, show_share
from ledger.units.wording import count
from ledger.units.words import Units
from ledger.views.recall.recall import NamedLot, ReachedBatch, RecallAnswer


def as_known_words(answer: RecallAnswer) -> str:
    """That the answer is of an earlier moment, and of which; empty where it is of now."""
    printed = answer.printed_from
    written = show_moment(printed.recorded_at)
    return f"This is what was known at entry {printed.entry}, written {written}." if answer.as_known else ""


def back_from_nowhere_words(answer: RecallAnswer) -> str:
    """That of the bars that notices are for some came back, and it is not known from where; empty where none did."""
    back = sum(one.bars for one in answer.notices) - answer.totals.sold
    return f"{back} of these bars came back, and nobody said from where." if back > 0 else ""


def took_words(one: ReachedBatch, units: Units) -> str:
    """What of the named lots is in a batch: at most 600 g (42.1 %), 54 g in a bar; empty where it was asked for."""
    if one.used is None:
        return ""
    if one.pieces:
        return str(one.used)
    much = show_mass(one.used, units) if one.used else "under 1 mg"
    share = f" ({_share(one.share_ppm)})" if one.share_ppm is not None else ""
    bar = f", {_little(one.in_a_bar_ug, units)} in a bar" if one.in_a_bar_ug is not None else ""
    return f"{'at most ' if one.at_most else ''}{much}{share}{bar}"


def _share(ppm: int) -> str:
    if ppm < 100:
        return "under 0.01 %"
    return show_share(ppm, 1 if ppm >= 100_000 else 2)


def _little(micrograms: int, units: Units) -> str:
    return show_mass((micrograms + 500) // 1000, units) if micrograms >= 1000 else "under 1 mg"


def way_words(one: ReachedBatch) -> str:
    """How a batch was reached: the first, the last, and the number of steps; empty for one that took it directly."""
    if one.steps < 2:
        return ""
    return f"{one.steps} steps from {one.first}, the last from {one.last}"


def grams_words(lot: NamedLot, units: Units) -> str:
    """The lot's own sum: what came in, and where all of it is. What is not told of is named, and never spread."""
    parts = [(lot.into_batches, "in batches"), (lot.on_hand, "on hand"), (lot.returned, "returned")]
    parts += [(lot.wasted, "thrown away")]
    told = " + ".join(
        f"{_much(quantity, lot, units)} {word}" for quantity, word in parts if quantity or word != "returned"
    )
    rest = f"{_much(lot.unexplained, lot, units)} unexplained{_scale(lot, units)}"
    return f"{_much(lot.received, lot, units)} received = {told} + {rest}"


def _much(quantity: int, lot: NamedLot, units: Units) -> str:
    return str(quantity) if lot.pieces else show_mass(quantity, units)


def _scale(lot: NamedLot, units: Units) -> str:
    if not lot.unexplained or lot.pieces:
        return ""
    within = abs(lot.unexplained) <= lot.within
    return f" ({'within' if within else 'more than'} what the scale leaves open, {show_mass(lot.within, units)})"


def differences_words(answer: RecallAnswer) -> list[str]:
    """A sentence for each batch whose bars do not come to the number made."""
    return [
        f"Of batch {one.batch_code}, {one.made} made and {one.known} known of: "
        + (f"{one.unexplained} unexplained." if one.unexplained > 0 else f"{-one.unexplained} more than were made.")
        for one in answer.differences
    ]


def to_hold_words(answer: RecallAnswer) -> str:
    """What a hold would stop: 36 bars and 2 lots."""
    bars = sum(one.quantity for one in answer.stoppable if one.bars)
    lots = sum(not one.bars for one in answer.stoppable)
    said = [count(bars, "bar")] if any(one.bars for one in answer.stoppable) else []
    return " and ".join([*said, *([count(lots, "lot")] if lots else [])])


def already_words(answer: RecallAnswer) -> str:
    """That there is nothing to hold, and why."""
    if answer.stopped:
        return f"All of it that is here is {' or '.join(answer.stopped)} already."
    return "Nothing of it is here any more."


def rehearsed_words(answer: RecallAnswer, took_ms: int) -> str:
    """What a rehearsal found: in how long, how many batches and bars, whether they add up, and each lot's own sum."""
    bars = [one for one in answer.batches if one.yields_bars]
    off = sum(abs(one.unexplained) for one in answer.differences)
    known = answer.totals.made - answer.totals.unexplained
    said = (
        f"Answered in {max(took_ms, 10) / 1000:.2f} s: {count(len(bars), 'batch', 'batches')}, "
        f"{count(answer.totals.made, 'bar')} made, {known} told of, {off or 'none'} unexplained; "
        f"{count(len(answer.call), 'telephone call')}."
    )
    return " ".join([said, *(f"Lot {one.lot_code}: {grams_words(one, answer.units)}." for one in answer.lots)])
