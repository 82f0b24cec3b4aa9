"""The list of whom to call, as CSV."""

import csv
import io

from ledger.documents.kit.csv_cells import plain_text
from ledger.views.recall.recall import RecallAnswer


def contact_list(answer: RecallAnswer) -> bytes:
    """One line for each customer reached, in UTF-8, and at the end one for each complaint.

    The file may be handed on, so who complained stands in it by the number of the complaint alone: that someone was
    harmed is for the ledger, and its report, to tell.
    A text that starts like a formula gets a single quote before it (OWASP ASVS 1.2.10), so that no
    spreadsheet runs it.
    """
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(["name", "phone", "email", "address", "bars", "batches", "last_on"])
    for one in (one for one in answer.call if one.complaint is None):
        texts = (one.name, one.phone, one.email, one.address)
        writer.writerow(
            [*(plain_text(text or "") for text in texts), one.bars, " ".join(one.batches), one.last_on.isoformat()]
        )
    for one in sorted((one for one in answer.call if one.complaint), key=lambda one: one.complaint or 0):
        writer.writerow([f"complaint {one.complaint}", "", "", "", 0, " ".join(one.batches), one.last_on.isoformat()])
    return out.getvalue().encode("utf-8")
