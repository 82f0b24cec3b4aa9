"""Cells of CSV files that no spreadsheet runs."""

from ledger.units.signs import masked

# What a spreadsheet may take for the start of a formula, in full width too: https://owasp.org/www-community/attacks/
# CSV_Injection (from memory, unverified) and OWASP ASVS 1.2.10.
_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\0", "＝", "＋", "－", "＠")


def plain_text(text: str) -> str:
    """A text as a cell: unseen signs by their number, and a single quote before what starts like a formula."""
    text = masked(text)
    return f"'{text}" if text.startswith(_STARTS) else text
