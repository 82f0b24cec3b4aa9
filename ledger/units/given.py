"""Files she hands over: read only where they are plain files, of a size they should have, with every sign seen."""

import stat
from pathlib import Path

from ledger.errors import BadInput
from ledger.units.signs import refuse_unseen

# Far above any recipe or delivery, and what a scan or a photograph takes; common practice, no source.
MOST_TEXT, MOST_PAPER = 1_000_000, 25_000_000


def read_given(path: Path, most: int = MOST_PAPER) -> bytes:
    """The content of a file. Raises BadInput for a folder or a device, for too large a file, or one not to be read."""
    try:
        mode = path.stat().st_mode  # before it is opened: a pipe would wait for whoever fills it
        if stat.S_ISDIR(mode):
            raise BadInput(f"{path} is a folder; name the file in it.")
        if not stat.S_ISREG(mode):
            raise BadInput(f"{path} is no plain file but a device or a pipe; save what it gives in a file.")
        with path.open("rb") as file:
            content = file.read(most + 1)
    except (OSError, ValueError) as error:  # ValueError: a name that no file has
        raise BadInput(f"{path} cannot be read ({getattr(error, 'strerror', None) or error}).") from None
    if len(content) > most:
        raise BadInput(f"{path} is larger than {most // 1_000_000} MB, the most that is taken here; make it smaller.")
    return content


def read_given_text(path: Path) -> str:
    """A text file in UTF-8, with or without a byte order mark. Raises BadInput as well for a sign that is not seen."""
    try:
        text = read_given(path, MOST_TEXT).decode("utf-8-sig")
    except UnicodeDecodeError:
        so = "as CSV UTF-8" if path.suffix.lower() == ".csv" else "so"
        raise BadInput(f"{path} is not in UTF-8; save it {so} and try again.") from None
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    refuse_unseen(text, str(path), lines=True)
    return text
