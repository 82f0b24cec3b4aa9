"""The list of whom to call, as CSV."""

import csv
import io
import re

from ledger.documents.kit.csv_cells import plain_text
from ledger.views.recall.recall import RecallAnswer
from ledger.views.recall.recall_people import without_a_name


def contact_list(answer: RecallAnswer, *, names: bool = False) -> bytes:
    """One line for each customer reached, in UTF-8, then one for each complaint, then for bars that may be of it.

    The file may be handed on, so unless `names` are asked for it tells of private persons only how many bars they have
    and of which batch, and of who complained the number of the complaint: that someone was harmed is for the ledger,
    and its report, to tell. Every text is in quotes, so that no sign of hers ends a cell; one that starts like a
    formula gets a single quote before it; a telephone number is a tel: URI (RFC 3966), which every spreadsheet keeps as
    text, with its plus sign and its noughts.
    """
    out = io.StringIO(newline="")
    writer = csv.writer(out, quoting=csv.QUOTE_NONNUMERIC)
    writer.writerow(["name", "phone", "email", "address", "bars", "batches", "last_on"])
    told = answer.call if names else tuple(map(without_a_name, answer.call))
    for one in sorted(told, key=lambda one: one.complaint or 0):
        texts = (
            plain_text(one.name),
            _phone(one.phone or ""),
            plain_text(one.email or ""),
            plain_text(one.address or ""),
        )
        writer.writerow([*texts, one.bars, " ".join(one.batches), one.last_on.isoformat()])
    for bars in answer.may_be:
        words = plain_text(f"cannot be excluded: {bars.product} {bars.where}")
        writer.writerow([words, "", "", "", bars.bars, bars.batch_code, bars.on.isoformat() if bars.on else ""])
    return out.getvalue().encode("utf-8")


def _phone(text: str) -> str:
    """020 910 0177 as tel:020-910-0177; what is more than a number (two of them, an extension) stays as a text."""
    number = re.sub(r"[ ()./-]+", "-", text).strip("-")
    return f"tel:{number}" if re.fullmatch(r"[+]?[0-9-]+", number) else plain_text(text)
