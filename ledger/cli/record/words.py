"""The batch record on the screen."""

from ledger.cli.kit.show import say, say_wrapped, table
from ledger.views.record.pieces import Chart, Facts, Grid, Pieces
from ledger.views.record.record import BatchRecord


def say_record(record: BatchRecord) -> None:
    """Say what is known of a batch: the answer first, then what went in, was read, decided and became of it."""
    _say(record.head.screen())
    for section in record.on_screen:
        _say(section.screen(record.head))


def _say(pieces: Pieces) -> None:
    for one in pieces:
        if isinstance(one, Facts):
            for label, value in one.pairs:
                if value:
                    say(f"  {label:12} {value}")
        elif isinstance(one, Grid):
            table(one.heads, one.rows, right=one.right)
        elif isinstance(one, Chart):
            continue  # drawn on paper alone
        elif one.wrapped:
            say_wrapped(one.text, first=one.first, indent="    ")
        else:
            say(f"{one.first}{one.text}")
