"""The tables beside this file, and where templates/ and sample_data/ are, in a checkout or an installed wheel."""

import csv
from functools import cache, lru_cache
from pathlib import Path

from ledger.units.seals import sha256_of

_PACKAGE = Path(__file__).resolve().parents[1]
_ROOT = _PACKAGE / "_shipped" if (_PACKAGE / "_shipped").is_dir() else _PACKAGE.parent


@cache
def table_rows(name: str) -> tuple[dict[str, str], ...]:
    """The rows of one of the tables beside this file, by column."""
    with Path(__file__).with_name(name).open(encoding="utf-8", newline="") as file:
        columns, *rows = csv.reader(file)
    return tuple(dict(zip(columns, row, strict=True)) for row in rows)


def templates() -> Path:
    """The folder of label layouts, sheets and cautions that a maker may copy and edit."""
    return _ROOT / "templates"


@lru_cache
def templates_digest() -> str:
    """How the SHA-256 over the templates' names and contents begins, which a page names as what it was set with."""
    found = b""
    for path in sorted(templates().glob("*.toml")):
        found += path.name.encode() + b"\0" + path.read_bytes().replace(b"\r\n", b"\n") + b"\0"
    return sha256_of(found)[:6]


def sample_data() -> Path:
    """The folder of the sample season."""
    return _ROOT / "sample_data"
