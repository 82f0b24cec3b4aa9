"""The labels of what is recalled, by which a bar is known again: of each product the last that was kept."""

from collections.abc import Collection
from dataclasses import dataclass, replace

from ledger.errors import Refused
from ledger.rows.kept import content_of
from ledger.rows.label import last_kept
from ledger.rows.opened import Rows
from ledger.views.label.label import LabelText
from ledger.views.label.label_kept import label_from


@dataclass(frozen=True)
class LabelOf:
    """One label as its run printed it, and the text of its layout."""

    product: str
    label: LabelText
    layout_source: str


def label_of(rows: Rows, product: str, codes: Collection[str]) -> LabelOf | None:
    """The label of a product by the last run for some of its batches; None where none was kept, or can be read."""
    kept = last_kept(rows, codes)
    if kept is None:
        return None
    try:
        label = label_from(kept.view, kept.view_format)
        if label.picture:
            content = content_of(rows, label.picture.sha256).content
            label = replace(label, picture=label.picture._replace(content=content))
    except Refused:  # of a newer program, or its picture was erased
        return None
    return LabelOf(product, label, kept.layout_source)
