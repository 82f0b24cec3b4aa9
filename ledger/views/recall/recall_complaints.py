"""Who complained of bars that a recall reaches, or may reach: they have one, though no sale says so."""

from collections.abc import Collection, Sequence

from ledger.rows.complaint import ComplaintCard
from ledger.views.recall.recall import ToCall


def complainants(found: Sequence[ComplaintCard], codes: Collection[str]) -> tuple[list[ToCall], list[ToCall]]:
    """Those who reported a bar of these batches, or of one not known: with health or decided serious, and the others.

    Oldest first, those whose batch is not known after the rest. Their bars left by a sale, a dispatch or a gift that
    is counted there, so none is added here.
    """
    grave: list[ToCall] = []
    others: list[ToCall] = []
    for one in sorted(found, key=lambda one: one.batch_code is None):
        if one.batch_code is None or one.batch_code in codes:
            (grave if one.health or one.serious else others).append(_to_call(one))
    return grave, others


def _to_call(one: ComplaintCard) -> ToCall:
    bought = f", bought {one.where}" if one.where and not one.person else ""
    return ToCall(
        name=f"{one.person or 'no name kept'} (complaint {one.number}){bought}",
        phone=one.phone,
        email=one.email,
        address=None,
        bars=0,
        batches=(one.batch_code,) if one.batch_code else (),
        last_on=one.bought_on or one.on,
        complaint=one.number,
        private=True,
        possible=one.batch_code is None,
    )
