"""Her picture for the face of a label: a paper attached to the recipe, by the name of its file."""

from typing import NamedTuple

from ledger.errors import Refused
from ledger.rows.kept import content_of, papers
from ledger.rows.opened import Rows


class LabelPicture(NamedTuple):
    """A picture by the name of its file, with its content."""

    name: str
    sha256: str
    content: bytes = b""


def picture_of(rows: Rows, recipe: str, name: str) -> LabelPicture:
    """The picture of that name attached to a recipe last. Raises Refused for one that is not kept, or was erased."""
    found = [one for one in papers(rows) if (one.noun, one.code, one.name) == ("recipe", recipe, name)]
    if not found:
        raise Refused(
            f"The recipe {recipe} names the picture '{name}' for its label, and no such file is attached to it; "
            f"attach it: soapledger attach '{name}' --to {recipe} --kind photograph"
        )
    kept = content_of(rows, found[-1].sha256)
    return LabelPicture(name, kept.sha256, kept.content)
