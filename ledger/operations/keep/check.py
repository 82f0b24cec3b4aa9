"""Check a ledger: that it is what was written, and that what must hold does."""

from dataclasses import dataclass

from ledger.domain.keep.invariants import Finding, findings
from ledger.errors import Refused
from ledger.rows.facts import facts
from ledger.rows.history import history
from ledger.rows.opened import Rows, one_state
from ledger.storage.chain import GENESIS
from ledger.storage.verify import newer_rules, verify


@dataclass(frozen=True)
class Verdict:
    """What was checked and what was found."""

    entries: int
    head: str  # digest of the last entry: written down elsewhere, it seals everything up to it
    findings: tuple[Finding, ...]


def check(rows: Rows) -> Verdict:
    """Check a whole ledger; everything that is wrong is found, not only the first.

    What the facts say of the trade is looked at only where they are the facts that were written. Raises Refused for
    one whose guards and views a newer program laid.
    """
    if newer_rules(rows):
        raise Refused("This ledger has the rules of a newer soapledger, which alone can check them; install that one.")
    with one_state(rows):  # else an entry written meanwhile would look like rows of none
        found = verify(rows)
        if any(one.entry is None for one in found):  # the file or its guards: even counting may be wrong there
            return Verdict(0, "", found)
        entries, head = next(((one.entry, one.digest) for one in history(rows, last=1)), (0, GENESIS))
        return Verdict(entries, head, found or findings(facts(rows)))
