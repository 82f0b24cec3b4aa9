"""A page of the archive: what it is of, and its sections, told in the pieces that the batch record is told in."""

from dataclasses import dataclass, field
from typing import Literal

from ledger.units.seals import sha256_of
from ledger.views.record.pieces import Facts, Pieces

Kind = Literal["batch", "lot", "product", "customer", "supplier"]


@dataclass(frozen=True)
class Text:
    """A text as it was given, line by line: a recipe."""

    text: str


@dataclass(frozen=True)
class Part:
    """One section of a page; one that holds nothing says so in `nothing`, or is left out."""

    title: str
    pieces: Pieces | tuple[Text, ...]
    nothing: str = ""


@dataclass(frozen=True)
class Page:
    """One page: what is large on it, what it is, and what is known of it."""

    kind: Kind
    code: str
    name: str
    status: str = ""
    facts: Facts = field(default_factory=lambda: Facts(()))
    parts: tuple[Part, ...] = ()

    @property
    def file(self) -> str:
        """The name of its file."""
        return page_file(self.kind, self.code)


@dataclass(frozen=True)
class Index:
    """The page that leads to all others."""

    parts: tuple[Part, ...]


def page_file(kind: Kind, code: str) -> str:
    """The file of a page; codes hold letters, digits and dashes alone, and a file's name has 255 bytes at most."""
    short = code if len(code) <= _LONGEST else f"{code[:_LONGEST]}-{sha256_of(code.encode())[:16]}"
    return f"{kind}-{short}.html"


_LONGEST = 100
