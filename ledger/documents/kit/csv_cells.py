"""Cells of CSV files that no spreadsheet runs."""

# What a spreadsheet may take for the start of a formula, in full width too: https://owasp.org/www-community/attacks/
# CSV_Injection (from memory, unverified) and OWASP ASVS 1.2.10.
_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\0", "＝", "＋", "－", "＠")


def plain_text(text: str) -> str:
    """A text as a cell: one that starts like a formula gets a single quote before it."""
    return f"'{text}" if text.startswith(_STARTS) else text
