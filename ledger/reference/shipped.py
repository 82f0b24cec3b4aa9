"""Where templates/ and sample_data/ are, in a checkout, an editable install or an installed wheel."""

import hashlib
from functools import lru_cache
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parents[1]
_ROOT = _PACKAGE / "_shipped" if (_PACKAGE / "_shipped").is_dir() else _PACKAGE.parent


def templates() -> Path:
    """The folder of label layouts, sheets and cautions that a maker may copy and edit."""
    return _ROOT / "templates"


@lru_cache
def templates_digest() -> str:
    """How the SHA-256 over the templates' names and contents begins, which a page names as what it was set with."""
    found = hashlib.sha256()
    for path in sorted(templates().glob("*.toml")):
        found.update(path.name.encode() + b"\0" + path.read_bytes().replace(b"\r\n", b"\n") + b"\0")
    return found.hexdigest()[:6]


def sample_data() -> Path:
    """The folder of the sample season."""
    return _ROOT / "sample_data"
