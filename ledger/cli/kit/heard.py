"""What she typed beyond European letters, so that what papers cannot print of it is told once it is booked."""

from ledger.cli.kit.loading import loaded
from ledger.cli.kit.show import warn

_LAST_EUROPEAN = "\u024f"  # of Latin Extended-B (The Unicode Standard, Blocks.txt)
_NAMED = 5  # so that the line stays one line

heard: list[str] = []


def hear(text: str) -> str:
    """Remember a text that may not print; returns it."""
    if not text.isascii() and max(text) > _LAST_EUROPEAN:
        heard.append(text)
    return text


def tell_unprintable() -> None:
    """One line on what of it no typeface here has."""
    signs = loaded("documents.kit.fonts").unprintable("".join(heard)) if heard else ()
    if not signs:
        return
    named = ", ".join(f"{sign} as [U+{ord(sign):04X}]" for sign in signs[:_NAMED])
    more = f" and {len(signs) - _NAMED} more" if len(signs) > _NAMED else ""
    warn(f"No typeface here has {named}{more}: so it stands on papers, and a label with it is refused.")
