"""The drafts of recall notices: files in templates/, and her own beside her ledger, which go before them."""

import re
from pathlib import Path
from typing import Literal, NamedTuple, get_args

from ledger.reference.shipped import templates
from ledger.units.toml_reader import TomlFile, toml_text
from ledger.units.words import checked

For = Literal["customer", "shop", "stall"]
FIELDS = ("business", "contact", "products", "sold", "reason", "hazard", "class", "recall", "date")


class NoticeDraft(NamedTuple):
    """A headline, and the parts with their headings; fields stand in braces."""

    to_hang: bool  # for a stall: read from two metres
    headline: str
    parts: tuple[tuple[str, str], ...]


class _NoticeFile(TomlFile):
    words = {"": ("what", "for", "headline"), "part": ("heading", "text")}
    noun = "recall notice"


def notice_draft(whom: str, folder: Path | None = None) -> NoticeDraft:
    """The draft for a customer, a shop or a stall. Raises BadInput with file and line for one that is not whole."""
    name = f"recall-{checked(whom, get_args(For), what='whom a notice is for')}.toml"
    places = [place / name for place in (folder, templates()) if place is not None]
    path = next((one for one in places if one.exists()), places[-1])
    file = _NoticeFile(toml_text(path), path.name)
    if file.data.get("what") != "recall notice":
        raise file.head.bad('this file is no recall notice; write what = "recall notice" in it.', "what")
    file.check()
    parts = []
    for part in file.parts("part"):
        text = part.word("text")
        for field in re.findall(r"\{([^{}]*)\}", text):
            if field not in FIELDS:
                raise part.bad(f"'{{{field}}}' is not known here; known: {{{'} {'.join(FIELDS)}}}.", "text")
        parts.append((part.word("heading"), text))
    if not parts:
        raise file.head.bad("nothing stands in it; write [[part]] with heading and text.")
    return NoticeDraft(whom == "stall", file.head.word("headline"), tuple(parts))
