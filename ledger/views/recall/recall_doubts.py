"""What a recall cannot rule out: lots without a number, bars missing at a count, complaints without a batch."""

from collections.abc import Collection, Mapping, Sequence

from ledger.rows.bars import BarCount
from ledger.rows.batch import BatchRow, batches_by_id, batches_coded, portions_of
from ledger.rows.complaint import ComplaintCard
from ledger.rows.lot import NOBODY, LotRow, lots_without_a_number
from ledger.rows.movement import graph_from
from ledger.rows.opened import Rows
from ledger.rows.people import contacts
from ledger.units.dates import show_date
from ledger.units.wording import count
from ledger.views.recall.recall import CannotBeExcluded


def cannot_exclude(
    rows: Rows,
    named: Sequence[LotRow],
    counts: Sequence[BarCount],
    about: Sequence[ComplaintCard],
    *,
    asked: Sequence[BatchRow],
    reached: Collection[int],
    lots: Mapping[int, LotRow],
) -> tuple[CannotBeExcluded, ...]:
    """Everything that may belong to it, each with the reason.

    `counts` are the bars that were reached, `about` the complaints of them, or of no batch known since the first of
    them was cut, `reached` the batches, `asked` those asked for by the code on a bar.
    """
    return (
        *_without_a_number(rows, named),
        *_of_the_same_dough(rows, asked, reached),
        *_missing(counts, lots),
        *_without_a_batch(rows, about),
    )


def _without_a_number(rows: Rows, named: Sequence[LotRow]) -> list[CannotBeExcluded]:
    """Lots of the same material, from any supplier, with the batches and the number of bars they went into."""
    named_ids = {lot.id for lot in named}
    unknown = [lot for lot in lots_without_a_number(rows, {lot.material_id for lot in named}) if lot.number_unknown]
    found: list[CannotBeExcluded] = []
    if not unknown:
        return found
    graph = graph_from(rows, [("lot", lot.id) for lot in unknown], "down")
    ways = {lot.id: graph.downstream([("lot", lot.id)]).of_kind("batch") for lot in unknown}
    made = batches_by_id(rows, {number for way in ways.values() for number in way})
    for lot in sorted(unknown, key=lambda lot: lot.id):
        if lot.id in named_ids:
            continue
        reached = ways[lot.id]
        bars = sum(made[number].made for number in reached if made[number].soap)
        codes = ", ".join(sorted(made[number].code for number in reached))
        into = f"it went into {codes} ({count(bars, 'bar')})" if codes else "it went into nothing yet"
        found.append(
            CannotBeExcluded(
                f"lot {lot.code}, {lot.material} from {lot.supplier}, "
                f"{'in a pot on' if lot.supplier == NOBODY else 'received'} {show_date(lot.on)}",
                f"their lot number is unknown; {into}",
            )
        )
    return found


def _of_the_same_dough(rows: Rows, asked: Sequence[BatchRow], reached: Collection[int]) -> list[CannotBeExcluded]:
    """The other portions of a dough: what is wrong with a bar of one may have been in the pot of all."""
    doughs = batches_coded(rows, {one.part_of for one in asked if one.part_of is not None})
    portions = portions_of(rows, *(dough.id for dough in doughs.values()))
    return [
        CannotBeExcluded(
            f"batch {other.code}, {other.product}",
            f"cut from the same dough as {one.code}; for all of it: soapledger recall bar {one.part_of}",
        )
        for one in asked
        for other in sorted(portions, key=lambda other: other.planned_on)
        if other.part_of == one.part_of and other.id not in reached and other.made
    ]


def _missing(counts: Sequence[BarCount], lots: Mapping[int, LotRow]) -> list[CannotBeExcluded]:
    return [
        CannotBeExcluded(
            f"{one.count} bar{'s' if one.count > 1 else ''} of batch {lots[one.lot_id].code}",
            f"missing at a count{f' on {show_date(one.on)}' if one.on else ''}; it is not known where they went",
        )
        for one in counts
        if one.where == "missing at a count" and one.count > 0
    ]


def _without_a_batch(rows: Rows, about: Sequence[ComplaintCard]) -> list[CannotBeExcluded]:
    """Complaints about bars of an unknown batch; a person they were sent or given to is named among whom to call."""
    found = sorted((one for one in about if one.batch_code is None), key=lambda one: one.number)
    known = contacts(rows, [one.customer_id for one in found if one.customer_id is not None])
    persons = {number for number, one in known.items() if one.kind == "person"}
    return [
        CannotBeExcluded(
            f"complaint {one.number} of {show_date(one.on)}",
            "its batch is not known; " + ("had from us directly" if one.customer_id in persons else _bought(one.where)),
        )
        for one in found
    ]


def _bought(where: str) -> str:
    return f"bought {where or 'where and when is not known'}"
