"""Where templates/ and sample_data/ are, in a checkout, an editable install or an installed wheel."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parents[1]
_ROOT = _PACKAGE / "_shipped" if (_PACKAGE / "_shipped").is_dir() else _PACKAGE.parent


def templates() -> Path:
    """The folder of label layouts, sheets and cautions that a maker may copy and edit."""
    return _ROOT / "templates"


def sample_data() -> Path:
    """The folder of the sample season."""
    return _ROOT / "sample_data"
