"""Print labels for the bars of a batch; the run is booked with its text."""

import hashlib
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date

from ledger.errors import BadInput, Refused
from ledger.storage.book import Book
from ledger.storage.tables import LabelRun
from ledger.views.batch import find_batch
from ledger.views.label import LabelText, label_text


@dataclass(frozen=True)
class LabelRequest:
    """Which labels, how many, and on what."""

    batch: str
    market: str
    layout: str
    count: int
    on: date
    net_mg: int | None = None
    best_before_months: int | None = None


def run_text(view: LabelText) -> str:
    """What one label says, as it is kept with its run."""
    return "\n".join(
        (
            view.product,
            view.function,
            view.net_quantity,
            f"{view.ingredients_heading}: {view.ingredients}",
            view.best_before or "",
            f"{view.responsible_name}, {view.responsible_address}",
            view.batch_code,
        )
    )


def print_labels(book: Book, request: LabelRequest, draw: Callable[[LabelText], bytes]) -> bytes:
    """Draw the labels and book the run in one transaction; what does not fit is refused and not booked.

    Raises Refused for bars that are not passed for packing, BadInput for no labels or what
    `label_text` misses.
    """
    if request.count <= 0:
        raise BadInput("How many labels? Write --count with a number above zero.")
    with book.write("label print") as tx:
        view = label_text(
            tx.rows,
            request.batch,
            request.market,
            net_mg=request.net_mg,
            best_before_months=request.best_before_months,
        )
        if view.draft:
            step = "pass" if view.status == "curing" else "release"
            raise Refused(
                f"The bars of batch {view.batch_code} are {view.status}; labels are printed for bars that are passed "
                f"for packing or released: soapledger {step} {view.batch_code}. A marked draft is printed with --draft."
            )
        lot_id = find_batch(tx.rows, request.batch).yield_lot_id
        assert lot_id is not None
        data = draw(view)
        text = run_text(view)
        tx.add(
            LabelRun(
                lot_id=lot_id,
                on=request.on,
                layout=request.layout,
                market=view.market,
                count=request.count,
                text=text,
                text_digest=hashlib.sha256(text.encode()).hexdigest(),
            )
        )
        tx.say(f"Printed {request.count} labels for batch {view.batch_code}, {view.market}.")
    return data
