"""Whether labels may be approved and printed for the bars of a batch, and how many of a run are on them."""

from datetime import date

from ledger.errors import BadInput, Refused
from ledger.units.dates import show_date

_LABELLED = ("passed", "released")


def is_draft(status: str | None) -> bool:
    """Whether a label is a draft, by what was decided last of its bars: they are not passed for packing."""
    return status not in _LABELLED


def may_be_labelled(batch: str, *, status: str, now: str | None, then: str, on: date) -> None:
    """Raise Refused for bars that are drafts by what was decided last (`now`), or were on the day (`then`)."""
    if is_draft(now):
        step = "pass" if status == "curing" else "release"
        raise Refused(
            f"The bars of batch {batch} are {status}; labels are approved and printed for bars that are "
            f"passed for packing or released: soapledger {step} {batch}. A marked draft: --draft."
        )
    if is_draft(then):
        raise Refused(
            f"The bars of batch {batch} were not passed for packing on {show_date(on)}; "
            "look at --on. A marked draft: --draft."
        )


def specimens(issued: int, *, spoiled: int, returned: int, wanting: int) -> int:
    """How many labels of a run are kept with the record where she does not say: one, if the bars leave one over."""
    return int(issued - spoiled - returned > wanting)


def used_of(
    number: int,
    issued: int,
    *,
    printed_on: date,
    spoiled: int,
    returned: int,
    on: date,
    specimen: int = 0,
    destroyed: int = 0,
) -> int:
    """How many labels of a run are on the bars.

    Raises BadInput for more spoiled, returned and kept as a specimen than were issued, for more destroyed than were
    returned, or a day before they were printed.
    """
    used = issued - spoiled - returned - specimen
    if destroyed > returned:
        raise BadInput(f"{returned} labels of run {number} came back unused; {destroyed} of them cannot be destroyed.")
    if used < 0 < specimen:
        raise BadInput(
            f"Run {number} issued {issued} labels; {spoiled}, {returned} and {specimen} as a specimen are more than "
            "that."
        )
    if used < 0:
        raise BadInput(f"Run {number} issued {issued} labels; {spoiled} and {returned} are more than that.")
    if on < printed_on:
        raise BadInput(f"Run {number} was printed on {show_date(printed_on)}; look at --on.")
    return used
