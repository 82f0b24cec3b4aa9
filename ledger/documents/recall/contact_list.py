"""The list of whom to call, as CSV."""

import csv
import io
import re

from ledger.documents.kit.csv_cells import plain_text
from ledger.views.recall.recall import RecallAnswer


def contact_list(answer: RecallAnswer) -> bytes:
    """One line for each customer reached, in UTF-8, and at the end one for each complaint.

    The file may be handed on, so who complained stands in it by the number of the complaint alone: that someone was
    harmed is for the ledger, and its report, to tell. Every text is in quotes, so that no sign of hers ends a cell; one
    that starts like a formula gets a single quote before it; a telephone number is a tel: URI (RFC 3966), which every
    spreadsheet keeps as text, with its plus sign and its noughts.
    """
    out = io.StringIO(newline="")
    writer = csv.writer(out, quoting=csv.QUOTE_NONNUMERIC)
    writer.writerow(["name", "phone", "email", "address", "bars", "batches", "last_on"])
    for one in (one for one in answer.call if one.complaint is None):
        texts = (
            plain_text(one.name),
            _phone(one.phone or ""),
            plain_text(one.email or ""),
            plain_text(one.address or ""),
        )
        writer.writerow([*texts, one.bars, " ".join(one.batches), one.last_on.isoformat()])
    for one in sorted((one for one in answer.call if one.complaint), key=lambda one: one.complaint or 0):
        writer.writerow([f"complaint {one.complaint}", "", "", "", 0, " ".join(one.batches), one.last_on.isoformat()])
    return out.getvalue().encode("utf-8")


def _phone(text: str) -> str:
    """020 910 0177 as tel:020-910-0177; what is more than a number (two of them, an extension) stays as a text."""
    number = re.sub(r"[ ()./-]+", "-", text).strip("-")
    return f"tel:{number}" if re.fullmatch(r"[+]?[0-9-]+", number) else plain_text(text)
