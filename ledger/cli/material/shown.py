"""A material's figures on the screen."""


def sap_text(low: int | None, high: int | None) -> str:
    """A saponification value or range in mg KOH per g; empty where none is known."""
    if low is None or high is None:
        return ""
    return f"{low / 1000:g}" if low == high else f"{low / 1000:g} to {high / 1000:g}"
