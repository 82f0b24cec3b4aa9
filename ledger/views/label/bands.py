"""The bands that the bars of a batch were wrapped in, each held against the label of the batch."""

from datetime import date
from typing import NamedTuple

from ledger.domain.label.band import Declared, band_differences
from ledger.reference.label_words import label_words
from ledger.rows.batch import BatchRow
from ledger.rows.label import band_approved, wrapped_in
from ledger.rows.opened import Rows
from ledger.views.label.label import LabelText


class Band(NamedTuple):
    """One lot of bands on the bars: who approved its text and when, and where it says otherwise than the label."""

    lot: str
    approved: tuple[str, date] | None
    differences: tuple[str, ...]


def bands_of(rows: Rows, batch: BatchRow, label: LabelText) -> tuple[Band, ...]:
    """The lots of bands whose text was approved for the market, and all other lots of the same bands.

    Other wrapping, boxes or string, is none of them.
    """
    texts = {lot: band_approved(rows, lot.id, label.market) for lot in wrapped_in(rows, batch.id)}
    bands = {lot.material_id for lot, known in texts.items() if known}
    declared = _declared(label)
    return tuple(
        Band(lot.code, known[1:] if known else None, band_differences(known[0], declared) if known else ())
        for lot, known in texts.items()
        if lot.material_id in bands
    )


def _declared(label: LabelText) -> Declared:
    names = tuple(name for name in label.ingredients.split(", ") if name)
    fixed = {one.inci for one in label.declared if not one.floats}
    said = (
        ("product", label.product),
        ("responsible person", f"{label.responsible_name}, {label.responsible_address}"),
        *(("precaution", one) for one in label.precautions),
        *((("origin", label.origin),) if label.origin else ()),
    )
    spoken = label_words(label.languages)
    wording = tuple(one.best_before for one in spoken if one.best_before) if label.best_before else None
    return Declared(label.ingredients_heading, names, frozenset(names) - fixed, said, wording, label.net_quantity)
