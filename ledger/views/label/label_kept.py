"""Keeps what was set on a label as text, so that a run printed again is the same whatever a later program sets."""

import json
from dataclasses import asdict, fields
from datetime import date
from typing import Any

from ledger.domain.label.market import Lettering
from ledger.errors import Refused
from ledger.views.label.label import LabelText
from ledger.views.label.picture import LabelPicture

FORMAT = 3  # of the text; runs without a number are format 0, which is written as format 1

# What reads the label and is not set on it; where it comes from is in the ledger anyway.
_NOT_SET: dict[str, Any] = {
    "declared": (),
    "allergens": None,
    "rules": (),
    "remains": (),
    "untranslated": (),
    "words_from": (),
}
# What a particular is where an earlier format did not keep it: what was set then.
_UNSAID: dict[str, Any] = {
    "lettering": {}, "languages": "", "hourglass": False, "batch_word": "Batch", "business": "", "line": None,
    "use": None, "web": None, "price": None, "colour": None, "picture": None,
    "breaks": (),
}  # fmt: skip


def kept_text(view: LabelText) -> str:
    """What is set on a label, as JSON in the format of today."""
    kept = {key: value for key, value in asdict(view).items() if key not in _NOT_SET}
    if view.picture:  # its content is kept once, among the papers
        kept["picture"] = [view.picture.name, view.picture.sha256]
    return json.dumps(kept, ensure_ascii=False, default=date.isoformat, sort_keys=True)


def label_from(text: str, number: int | None) -> LabelText:
    """The label that was set, from a text of any format so far. Raises Refused for one of a newer program."""
    if (number or 0) > FORMAT:
        raise Refused("These labels were set by a newer soapledger; install the newer one to print them again.")
    kept = {**_UNSAID, **json.loads(text), **_NOT_SET}
    kept["made_on"] = date.fromisoformat(kept["made_on"])
    kept["lettering"] = Lettering(**kept["lettering"])
    kept["precautions"], kept["breaks"] = tuple(kept["precautions"]), tuple(kept["breaks"])
    kept["picture"] = LabelPicture(*kept["picture"]) if kept["picture"] else None
    return LabelText(**{one.name: kept[one.name] for one in fields(LabelText)})
