"""Who complained of bars that a recall reaches: they have one, and are called like anyone who has."""

from collections.abc import Collection

from ledger.rows.complaint import ComplaintCard, complaints
from ledger.rows.opened import Rows
from ledger.views.recall.recall import ToCall


def complainants(rows: Rows, codes: Collection[str]) -> tuple[list[ToCall], list[ToCall]]:
    """Those who reported a bar of these batches, oldest first: with health or decided serious, and the others.

    Their bars left by a sale, a dispatch or a gift that is counted there, so none is added here.
    """
    grave: list[ToCall] = []
    others: list[ToCall] = []
    for one in complaints(rows):
        if one.batch_code in codes:
            (grave if one.health or one.serious else others).append(_to_call(one, one.batch_code or ""))
    return grave, others


def _to_call(one: ComplaintCard, code: str) -> ToCall:
    bought = f", bought {one.where}" if one.where and not one.person else ""
    return ToCall(
        name=f"{one.person or 'no name kept'} (complaint {one.number}){bought}",
        phone=one.phone,
        email=one.email,
        address=None,
        bars=0,
        batches=(code,),
        last_on=one.bought_on or one.on,
        complaint=one.number,
    )
