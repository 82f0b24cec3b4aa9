"""What check, backup and a comparison say."""

from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from ledger.cli.kit.show import count
from ledger.operations.keep.check import HEAD, Verdict
from ledger.storage.compared import Compared
from ledger.units.seals import Seal
from ledger.units.wording import opening


class Answer(NamedTuple):
    """What else was asked of a check, and whether all is well with it."""

    key: str  # in JSON
    facts: object
    words: str
    good: bool


NOT_LOOKED_AT = (
    "Not looked at: earlier entries, the pages of the file, its guards, papers, people's details, and every law but "
    "that nothing is below zero. All of it: soapledger check"
)


def looked_at(verdict: Verdict, fast: bool) -> str:
    """How far a check went."""
    if not fast:
        return f"{count(verdict.entries, 'entry', 'entries')} checked"
    last = min(HEAD, verdict.entries)
    return f"The last {count(last, 'entry', 'entries')} of {verdict.entries} and what is on hand were looked at"


def damage(verdict: Verdict, path: Path, asked: Sequence[Answer]) -> str:
    """Everything that is wrong in a ledger, what else was asked, and what to do."""
    return "\n".join(
        [
            f"{count(len(verdict.findings), 'thing is', 'things are')} wrong in {path}:",
            *(f"  {one.what}.{f' Expected: {one.expected}.' if one.expected else ''}" for one in verdict.findings),
            *(one.words for one in asked),
            *dict.fromkeys(f"{opening(one.do)}." for one in verdict.findings),
        ]
    )


def sealed(seal: Seal, unheld: str | None, verdict: Verdict, *, fast: bool) -> Answer:
    """Whether a ledger holds what was sealed; only a clean one proves it."""
    facts = {"seal": seal.text, "held": unheld is None}
    if unheld:
        return Answer(
            "sealed", facts, f"The seal {seal.text} is typed rightly and not held here: {unheld}.", good=False
        )
    since = count(verdict.entries - seal.entry, "entry", "entries")
    words = f"All up to entry {seal.entry} stands as it was sealed; {since} since."
    if fast:
        words = (
            f"Entry {seal.entry} has that seal, {since} since; whether its rows are those, a check without --fast says."
        )
    return Answer("sealed", facts, words, good=True)


def set_beside(found: Compared, ours: Path, theirs: Path) -> Answer:
    """How another copy stands to this ledger."""
    words = _how_they_stand(found, ours, theirs)
    return Answer("against", found, words, good=found.kinship in ("the same", "ours goes on", "theirs goes on"))


def _how_they_stand(found: Compared, ours: Path, theirs: Path) -> str:
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
