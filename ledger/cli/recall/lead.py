"""soapledger trace: from a bar back to every drum, or on from a drum to every bar."""

from ledger.cli.recall.trace import DEEPEST


def lead(depth: int) -> str:
    """What stands before a step so many steps away from the start."""
    return "   " * min(depth, DEEPEST) + (f"step {depth}: " if depth > DEEPEST else "")
