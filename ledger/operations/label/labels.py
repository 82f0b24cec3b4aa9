"""Labels in their order: approved by a named person, printed as one run, and what became of them booked back."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date

from ledger.domain.label.net_quantity import Net
from ledger.domain.label.panel import Front
from ledger.domain.label.run import is_draft, may_be_labelled, specimens, used_of
from ledger.domain.label.words import Words
from ledger.errors import BadInput, Refused
from ledger.markets import known_market, market
from ledger.rows.batch import find_batch
from ledger.rows.kept import content_of
from ledger.rows.label import KeptLabel, Run, approved_by, kept_with, run_by_number
from ledger.rows.lot import lot_by_id
from ledger.rows.opened import Rows
from ledger.storage.book import Book
from ledger.storage.tables.label import LabelApproval, LabelCount, LabelRun, LabelWords
from ledger.storage.transaction import Transaction
from ledger.units.dates import show_date
from ledger.views.label.allergens import barred_words
from ledger.views.label.bands import bands_of
from ledger.views.label.claimed import claimed_words
from ledger.views.label.label import LabelText, digest_of, label_text, run_text
from ledger.views.label.label_kept import FORMAT, kept_text, label_from
from ledger.views.label.usable import bars_wanting

_OWN_WEIGHTS = "\nEach with its own weight: "


@dataclass(frozen=True)
class LabelRequest:
    """Which labels, how many, and on what; the layout and the sheet with their files as they stand."""

    batch: str
    market: str
    layout: str
    count: int
    on: date
    net: Net | None = None
    best_before_months: int | None = None
    layout_source: str | None = None
    sheet_source: str | None = None
    start: int = 1
    front: Front | None = None  # the side of the pack that bears the front
    words: tuple[Words, ...] | None = None  # of its languages
    price: str | None = None  # as it is printed
    own_weights: tuple[Net, ...] = ()  # each bar labelled with its own
    sticker: bool = False  # what changes with every batch alone; the rest stands on bands


def label_asked(rows: Rows, request: LabelRequest) -> LabelText:
    """What the label says; raises like `label_text`."""
    return label_text(
        rows,
        request.batch,
        request.market,
        on=request.on,
        net=request.net,
        front=request.front,
        words=request.words,
        best_before_months=request.best_before_months,
    )


def _view(rows: Rows, request: LabelRequest) -> tuple[LabelText, int]:
    """What the label says, and the lot of bars; raises like `label_text`, and for bars that are not to be labelled."""
    view = label_asked(rows, request)
    batch = find_batch(rows, request.batch)
    assert batch.yield_lot_id is not None
    then = lot_by_id(rows, batch.yield_lot_id, on=request.on).status
    may_be_labelled(batch.code, status=view.status, now=batch.lot_status, then=then, on=request.on)
    return replace(view, price=request.price), batch.yield_lot_id


def approve_label(book: Book, request: LabelRequest, *, by: str, stand: str | None = None) -> str:
    """Book a named person's approval of what a label says, for one batch and market; returns the text.

    Raises Refused for bars that are not passed for packing, a text that was approved already, and for words that are
    questioned, unless `stand` says why they stand or someone let those very words stand before.
    """
    with book.write("label approve") as tx:
        view, lot_id = _view(tx.rows, request)
        text = run_text(view)
        if known := approved_by(tx.rows, lot_id, view.market, digest_of(text)):
            raise Refused(f"That text was approved already, by {known[0]} on {show_date(known[1])}.")
        _settle_words(tx, request, view, by=by, stand=stand)
        tx.add(
            LabelApproval(
                lot_id=lot_id, market=view.market, on=request.on, by=by, text=text, text_digest=digest_of(text)
            )
        )
        tx.say(f"Approved the label of batch {view.batch_code} for {view.market}.")
    return text


def _settle_words(tx: Transaction, request: LabelRequest, view: LabelText, *, by: str, stand: str | None) -> None:
    words = claimed_words(tx.rows, find_batch(tx.rows, request.batch), view, on=request.on)
    if not words.questioned or words.stand:
        return
    named = ", ".join(f"'{one.words}'" for one in words.questioned)
    if not (stand or "").strip():
        raise Refused(
            f"The label says {named}, which a person decides first: soapledger label check {view.batch_code} --market "
            f"{view.market}. Where they may stand: soapledger label approve {view.batch_code} --market {view.market} "
            "--stand REASON; else take them out of the recipe."
        )
    tx.add(
        LabelWords(
            market=view.market,
            digest=words.digest,
            questioned=named,
            reason=(stand or "").strip(),
            by=by,
            on=request.on,
        )
    )


def print_labels(book: Book, request: LabelRequest, draw: Callable[[LabelText], object]) -> int:
    """Draw the labels and book the run in one transaction; what does not fit is refused and not booked.

    Returns the number of the run.

    Raises Refused for bars that are not passed for packing or a text that nobody approved, BadInput for no labels or
    what `label_text` misses.
    """
    if request.count <= 0:
        raise BadInput("How many labels? Write --count with a number above zero.")
    with book.write("label print") as tx:
        view, lot_id = _view(tx.rows, request)
        text = run_text(view)
        on_bands = request.sticker and _stands_on_bands(tx.rows, view)
        if not on_bands and approved_by(tx.rows, lot_id, view.market, digest_of(text)) is None:
            raise _not_approved(view)
        draw(view)
        if request.own_weights:
            text += _OWN_WEIGHTS + ", ".join(map(market(view.market).net_words, request.own_weights))
        run = tx.add(_run(request, view, lot_id, text))
        tx.say(f"Printed {request.count} labels for batch {view.batch_code}, {view.market}.")
    assert run.id is not None
    return run.id


def approved_label(rows: Rows, request: LabelRequest) -> tuple[LabelText, tuple[str, date]]:
    """What a label says for a batch and market, and who approved that very text and when.

    Raises Refused for bars that are not passed for packing, or a text that nobody approved.
    """
    view, lot_id = _view(rows, request)
    known = approved_by(rows, lot_id, view.market, digest_of(run_text(view)))
    if known is None:
        raise _not_approved(view)
    return view, known


def _not_approved(view: LabelText) -> Refused:
    return Refused(
        f"Nobody approved what this label says yet. Read it and approve it: soapledger label approve "
        f"{view.batch_code} --market {view.market}"
    )


def _stands_on_bands(rows: Rows, view: LabelText) -> bool:
    """Whether the bars stand in bands whose text was approved and says what it has to.

    Raises Refused for a band that says otherwise, and for a lot of those bands that nobody approved.
    """
    bands = bands_of(rows, find_batch(rows, view.batch_code), view)
    for one in bands:
        if one.differences:
            raise Refused(
                f"The band of lot {one.lot} does not say what the bars of batch {view.batch_code} have to for "
                f"{view.market}: {'; '.join(one.differences)}. Print whole labels instead, or correct what is wrong."
            )
        if one.approved is None:
            raise Refused(
                f"Bars of batch {view.batch_code} are in bands of lot {one.lot}, whose text nobody approved yet: "
                f"soapledger label band {one.lot} FILE --market {view.market}"
            )
    return bool(bands)


def _run(request: LabelRequest, view: LabelText, lot_id: int, text: str) -> LabelRun:
    return LabelRun(
        lot_id=lot_id,
        on=request.on,
        layout=request.layout,
        market=view.market,
        count=request.count,
        text=text,
        text_digest=digest_of(text),
        view=kept_text(view),
        view_format=FORMAT,
        layout_source=request.layout_source,
        sheet_source=request.sheet_source,
        start=request.start,
    )


# What a run printed again keeps of the first: the bars, the words, and how they were laid out.


def labels_of(rows: Rows, number: int, *, on: date, the_same: bool) -> tuple[Run, KeptLabel, LabelText]:
    """An earlier run with its layout and its label, for more of them, or for the same once more, whose file was lost.

    Raises as `reprint_labels` does, and Refused where the same would need what each bar weighed.
    """
    run = run_by_number(rows, number)
    kept = kept_with(rows, number)
    if kept is None:
        raise Refused(f"Run {number} was kept without its layout; print anew: soapledger label print {run.batch_code}")
    batch = find_batch(rows, run.batch_code)
    if is_draft(batch.lot_status):
        raise Refused(f"The bars of batch {batch.code} are {batch.status}; no labels are printed for them.")
    law = known_market(run.market)
    if law and (words := barred_words(rows, batch, [law], on=on)):
        raise Refused(f"Batch {batch.code} gets no label: {words[0]}.")
    if the_same and _OWN_WEIGHTS in run.text:
        raise Refused(f"Each label of run {number} had a weight of its own; print anew: label print {batch.code}")
    view = label_from(kept.view, kept.view_format)
    if view.picture:
        view = replace(view, picture=view.picture._replace(content=content_of(rows, view.picture.sha256).content))
    return run, kept, view


def reprint_labels(
    book: Book, number: int, count: int, *, on: date, start: int, draw: Callable[[LabelText, str, str], object]
) -> int:
    """Print so many more of an earlier run, with the same text and layout, as a run of its own; returns its number.

    `draw` takes the label and the sources of its layout and its sheet. Raises BadInput for an unknown run, Refused
    for one that was kept without its layout, or bars that may not be labelled now.
    """
    if count <= 0:
        raise BadInput("How many labels? Write --count with a number above zero.")
    with book.write("label reprint") as tx:
        run, kept, view = labels_of(tx.rows, number, on=on, the_same=False)
        draw(view, kept.layout_source, kept.sheet_source)
        more = tx.add(
            LabelRun(
                lot_id=kept.lot_id,
                on=on,
                layout=run.layout,
                market=run.market,
                count=count,
                text=run.text,
                text_digest=run.text_digest,
                view=kept.view,
                view_format=kept.view_format,
                layout_source=kept.layout_source,
                sheet_source=kept.sheet_source,
                start=start,
                reprint_of=number,
            )
        )
        tx.say(f"Printed {count} more labels of run {number} for batch {run.batch_code}.")
    assert more.id is not None
    return more.id


@dataclass(frozen=True)
class Counted:
    """What became of the labels of a run that are not on the bars."""

    spoiled: int = 0
    returned: int = 0  # unused
    destroyed: int = 0  # of the returned; the rest of them is kept
    specimen: int | None = None  # kept with the record; None: one, if the bars leave one over


def count_run(book: Book, number: int, counted: Counted, *, on: date) -> Run:
    """Book what became of the labels of a run; the rest of them is on the bars.

    Raises BadInput for an unknown run, more than were issued, or more destroyed than came back.
    """
    with book.write("label count") as tx:
        run = run_by_number(tx.rows, number)
        back = {"spoiled": counted.spoiled, "returned": counted.returned}
        specimen = counted.specimen
        if specimen is None:
            batch = find_batch(tx.rows, run.batch_code)
            specimen = specimens(run.count, wanting=bars_wanting(tx.rows, batch, number, on=on), **back)
        more = {"specimen": specimen, "destroyed": counted.destroyed}
        used = used_of(number, run.count, printed_on=run.on, on=on, **back, **more)
        tx.add(LabelCount(label_run_id=number, on=on, used=used, **back, **more))
        done = run_by_number(tx.rows, number)
        tx.say(f"Counted run {number}: {done.became.replace(' + ', ', ')}.")
        return done
