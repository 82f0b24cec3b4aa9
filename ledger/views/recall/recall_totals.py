"""Adds up where the bars of a recall are, so that the figures come to the number made."""

from collections import Counter
from collections.abc import Mapping, Sequence

from ledger.rows.bars import BarCount
from ledger.views.recall.recall import Difference, Totals


def totals(counts: Sequence[BarCount], made: int) -> Totals:
    """Bars by where they are now, out of the number made.

    What came back is taken off the way it had left: from a customer off what was dispatched there, then off what was
    sold at a count, then off what was given; from anyone else off what was sold, then off gifts to people not on the
    books. What is left over in the end is unexplained, whatever the reason.
    """
    here: Counter[str] = Counter()
    gone: Counter[tuple[str, int, int | None]] = Counter()
    for one in counts:
        if not one.left:
            here[one.where] += one.count
        elif one.where != "returned":
            gone[one.where, one.lot_id, one.customer_id] += one.count
    for one in counts:
        if one.left and one.where == "returned":
            back = -one.count
            for way in ("sold", "given") if one.customer_id is None else ("dispatched", "sold", "given"):
                part = min(back, gone[way, one.lot_id, one.customer_id])
                gone[way, one.lot_id, one.customer_id] -= part
                back -= part
    by_way: Counter[str] = Counter()
    for (way, _, _), bars in gone.items():
        by_way[way] += bars
    known = sum(here.values()) + sum(by_way[way] for way in ("sold", "dispatched", "given", "wasted", "reworked"))
    return Totals(
        made=made,
        on_hand=here["on hand"],
        at_stall=here["at a stall"],
        retained=here["retained"],
        returned=here["returned"],
        sold=by_way["sold"],
        dispatched=by_way["dispatched"],
        given=by_way["given"],
        wasted=by_way["wasted"],
        reworked=by_way["reworked"],
        unexplained=made - known,
        at_shop=here["at a shop"],
    )


def differences(
    counts: Sequence[BarCount], made: Mapping[int, int], codes: Mapping[int, str]
) -> tuple[Difference, ...]:
    """The batches whose bars do not come to the number made, each by itself: one too many makes up for none missing."""
    of: dict[int, list[BarCount]] = {lot: [] for lot in made}
    for one in counts:
        of[one.lot_id].append(one)
    left = {lot: totals(each, made[lot]).unexplained for lot, each in of.items()}
    return tuple(Difference(codes[lot], made[lot], made[lot] - open_, open_) for lot, open_ in left.items() if open_)
