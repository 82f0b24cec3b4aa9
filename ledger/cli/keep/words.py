"""What check, backup and a comparison say."""

from pathlib import Path

from ledger.cli.kit.show import count
from ledger.storage.compared import Compared


def how_they_stand(found: Compared, ours: Path, theirs: Path) -> str:
    """Two files of a ledger beside each other, in one or two sentences."""
    ahead, beyond = found.ours - found.shared, found.theirs - found.shared
    here = count(ahead, "entry more stands", "entries more stand")
    there = count(beyond, "entry more stands", "entries more stand")
    return {
        "the same": f"{theirs} and {ours} hold the same {count(found.shared, 'entry', 'entries')}.",
        "ours goes on": f"{ours} goes on where {theirs} ends: up to entry {found.shared} both are the same, and "
        f"{here} in {ours}.",
        "theirs goes on": f"{theirs} goes on where {ours} ends: up to entry {found.shared} both are the same, and "
        f"{there} in {theirs}. Write in that one from now on.",
        "they part": f"{theirs} and {ours} part after entry {found.shared}: "
        f"{count(ahead, 'entry follows', 'entries follow')} in {ours} and {count(beyond, 'other')} in {theirs}. Keep "
        f"both; to see what follows: soapledger --ledger {theirs} history --all",
        "no relation": f"{theirs} is another ledger: it shares no entry with {ours}.",
        "unreadable": f"{theirs} cannot be read as a ledger, so it cannot be compared. Keep it.",
    }[found.kinship]
