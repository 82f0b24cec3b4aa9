"""Check a ledger: that it is what was written, and that what must hold does."""

from dataclasses import dataclass

from ledger.domain.keep.finding import Finding
from ledger.errors import Refused
from ledger.rows.history import digest_of, history
from ledger.rows.laws import breaches, never_below_zero
from ledger.rows.opened import Rows, one_state
from ledger.storage.chain import GENESIS
from ledger.storage.verify import newer_rules, remarks, verify, verify_head
from ledger.units.seals import Seal, seal_of


@dataclass(frozen=True)
class Verdict:
    """What was checked and what was found."""

    entries: int
    head: str  # digest of the last entry
    seal: str  # the short form of it: kept elsewhere, it proves everything up to that entry
    findings: tuple[Finding, ...]  # what threatens what was written
    remarks: tuple[str, ...] = ()  # what is not soapledger's, or not as it lays it, and threatens nothing


def check(rows: Rows) -> Verdict:
    """Check a whole ledger; everything that is wrong is found, not only the first.

    What the facts say of the trade is looked at only where they are the facts that were written. Raises Refused for
    one whose guards and views a newer program laid.
    """
    _refuse_newer(rows)
    with one_state(rows):  # else an entry written meanwhile would look like rows of none
        found = verify(rows)
        if any(one.entry is None for one in found):  # the file or its guards: even counting may be wrong there
            return Verdict(0, "", "", found)
        return _verdict(rows, found or breaches(rows), remarks(rows))


HEAD = 50  # how many of the last entries a quick look goes through


def look_quickly(rows: Rows) -> Verdict:
    """Look at the last entries and at what is on hand alone: at those it takes no longer in a ledger of many years.

    Raises like `check`.
    """
    _refuse_newer(rows)
    with one_state(rows):
        return _verdict(rows, verify_head(rows, HEAD) or tuple(never_below_zero(rows)))


def _refuse_newer(rows: Rows) -> None:
    if newer_rules(rows):
        raise Refused("This ledger has the rules of a newer soapledger, which alone can check them; install that one.")


def _verdict(rows: Rows, findings: tuple[Finding, ...], beside: tuple[str, ...] = ()) -> Verdict:
    entries, head = next(((one.entry, one.digest) for one in history(rows, last=1)), (0, GENESIS))
    return Verdict(entries, head, seal_of(entries, head).text, findings, beside)


def unheld(rows: Rows, seal: Seal) -> str | None:
    """Why a seal does not prove this ledger, in words; None where its entry has the digest the seal was made of.

    That the digest is the one of what stands there, and of all before it, is for `check` to prove.
    """
    digest = digest_of(rows, seal.entry)
    if digest is not None and seal_of(seal.entry, digest) == seal:
        return None
    if digest is not None:
        return (
            f"entry {seal.entry} has another seal here: something up to it was changed and what follows made to fit, "
            "or the seal is of another ledger"
        )
    last = next((one.entry for one in history(rows, last=1)), 0)
    return (
        f"this ledger ends at entry {last}: what followed was cut off, this is an older copy, or the seal is of "
        "another ledger"
    )
