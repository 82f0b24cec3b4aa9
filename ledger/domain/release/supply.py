"""Whether bars may be supplied on a day: nothing prohibited in them, covered by what was assessed, labels usable."""

from collections.abc import Iterable, Mapping
from datetime import date
from typing import NamedTuple

from ledger.domain.bench.decision import Doubt, list_words
from ledger.domain.release.bars import Bars, deviations_settled
from ledger.errors import Refused
from ledger.units.dates import show_date
from ledger.units.wording import count

KEPT = "bars without a label stay here"  # what a release of the labelled bars alone is kept under, among its doubts
BARE = "bars without a label go where they are sold so"  # the same of a release of all; who, and where, stands apart
STALE = "its labels are not usable any more"  # before the reason of a decision to supply bars with them all the same


class Changed(NamedTuple):
    """Labels of an earlier list of allergens, on bars that are first supplied after it ended."""

    words: str
    until: date  # bars first supplied up to that day may carry them
    sold_on_until: date | None  # so long; None: not known


class Before(NamedTuple):
    """When bars were first supplied, as a person says, and what the ledger has of that day."""

    on: date
    booked: int  # bars of the batch that were supplied on that day and of which nobody said so yet


class Supply(NamedTuple):
    """What speaks against supplying the bars of a batch on a day, decided or not."""

    barred: tuple[str, ...]  # what her markets prohibit in them, in words for each
    another_market: bool  # a market of hers prohibits nothing in them
    uncovered: tuple[Doubt, ...]  # why no assessment or notification covers them
    unnamed: tuple[Doubt, ...]  # what is in them that the assessment does not name, where all her markets ask for one
    stale: Mapping[str, Doubt]  # by market: why labels on them are not usable
    changed: Mapping[str, Changed] = {}  # by market: whose labels the end of a list reached
    unlabelled: int = 0  # bars here without a label


class Labels(NamedTuple):
    """The labels printed for the bars of a batch."""

    markets: tuple[tuple[str, str], ...]  # code and name of each of hers in which a bar carries its ingredients
    printed: bool  # for whatever market
    on_bars: int  # neither spoiled nor returned
    uncounted: int | None  # the first run of which nobody said what became of it
    bare_at: tuple[str, ...] = ()  # where bars of the product are sold without one, as was settled before


def not_barred(bars: Bars, supply: Supply) -> None:
    """Raise Refused for bars that hold what every market of hers prohibits, as far as is known here."""
    if supply.barred and not supply.another_market:
        raise Refused(f"The bars of batch {bars.batch} may not be supplied: {'; '.join(supply.barred)}.")


def named(bars: Bars, supply: Supply, recipe: str | None) -> None:
    """Raise Refused for bars that hold what their assessment does not name: the maker cannot decide that."""
    if supply.unnamed:
        raise Refused(
            f"Batch {bars.batch} holds what its assessment does not name: {list_words(supply.unnamed)}. Only the "
            f"assessor's written word lifts that: soapledger recipe word {recipe or 'WHICH'} INCI --up-to PERCENT --by "
            "ASSESSOR --on DAY --text WORDS; a name it has in the report is said when that is booked: "
            "soapledger recipe assess."
        )


def stale_labels(bars: Bars, supply: Supply) -> dict[str, Doubt]:
    """Why labels on the bars are not usable, by market, as far as nobody decided about that very run."""
    return {market: one for market, one in supply.stale.items() if bars.undecided(one)}


def first_supplied_in_time(bars: Bars, supply: Supply, on: date, number: int, before: Before | None) -> bool:
    """Whether bars that go out on a day do so by what was said of their first supply; False where nothing asks for it.

    Raises Refused for bars under labels of a list that has ended, unless they were first supplied while it held and
    may be sold on that day.
    """
    changed = {key: one for key, one in supply.changed.items() if bars.undecided(Doubt("labels", one.words))}
    for one in changed.values():
        last = one.sold_on_until
        if before is None:
            said = (
                f" Bars that were first supplied by {show_date(one.until)} may carry them until {show_date(last)}: add "
                "--first-supplied 'DAY; TO WHOM'."
                if last and on <= last
                else ""
            )
            raise Refused(f"{stale_words(bars, changed)}{said} Nothing was written.")
        if last is None or on > last:
            ended = f"up to {show_date(last)} alone" if last else "so long as is not known here"
            raise Refused(f"{stale_words(bars, changed)} Bars supplied before could be sold on {ended}.")
        if before.on > one.until:
            raise Refused(
                f"Bars first supplied on {show_date(before.on)} were so after {show_date(one.until)}: "
                f"{stale_words(bars, changed)}"
            )
        if number > before.booked:
            raise Refused(
                f"By what is booked, {count(before.booked, 'bar')} of batch {bars.batch} could have been first "
                f"supplied on {show_date(before.on)}, not {number}. {stale_words(bars, changed)}"
            )
    return bool(changed)


class Door(NamedTuple):
    """Where bars go, as far as a bar without a label asks."""

    bare: bool = False  # it is settled that the product is sold there without a label
    option: str = ""  # how the outlet is named where that is settled; nothing for who is not on the books


def bare_way(recipe: str | None, option: str = "--stall STALL (or --to CUSTOMER)") -> str:
    """How it is settled that the bars of a product are sold without a label at an outlet."""
    return (
        f"it is settled that it is sold bare there: soapledger label bare {recipe or 'RECIPE'} {option} --notice "
        "notice-shelf --code-on tray --reason WHY"
    )


def with_a_label(bars: Bars, supply: Supply, number: int, door: Door, recipe: str | None) -> None:
    """Raise Refused for more bars than have a label, where the others stay or go to settled outlets alone."""
    left, bare = max(0, bars.here - supply.unlabelled), supply.unlabelled
    if door.bare or number <= left or not {("bare", KEPT), ("bare", BARE)} & bars.decided:
        return
    settle = f"; or until {bare_way(recipe, door.option)}" if door.option else ""
    raise Refused(
        f"Of batch {bars.batch} {count(left, 'bar')} in the workshop {'has' if left == 1 else 'have'} a label, and "
        f"{number} would leave; {bare} without one stay{'s' * (bare == 1)} until labels for them are printed and "
        f"counted: soapledger label print {bars.batch} --count {bare} -o more.pdf{settle}"
    )


def may_leave(
    bars: Bars,
    supply: Supply,
    on: date,
    number: int = 1,
    before: Before | None = None,
    *,
    recipe: str | None = None,
    door: Door = Door(),
) -> bool:
    """Whether so many released bars leave by what was said of their first supply. Raises Refused where they may not.

    While a deviation found by then is open, for what is prohibited, without a label where it is not settled that bars
    are sold so, under labels of a list that has ended, and unless someone decided so by name for bars that no
    assessment covers, that only some of her markets prohibit, or whose labels lack what was stated since.
    """
    not_barred(bars, supply)
    named(bars, supply, recipe)
    deviations_settled(bars, found_by=on)
    with_a_label(bars, supply, number, door, recipe)
    again = first_supplied_in_time(bars, supply, on, number, before)
    way = (
        "Nothing was written. To supply it all the same, a person decides so: "
        f"soapledger release {bars.batch} --anyway REASON"
    )
    if doubts := bars.undecided(*supply.uncovered):
        raise Refused(f"{uncovered_words(bars, doubts)} {way}")
    if stale := stale_labels(bars, supply):
        raise Refused(f"{stale_words(bars, stale)} {way}")
    return again


def uncovered_words(bars: Bars, doubts: Iterable[Doubt]) -> str:
    """That bars are not covered, and why."""
    return f"Batch {bars.batch} is not covered by what was assessed: {list_words(doubts)}."


def stale_words(bars: Bars, stale: Mapping[str, Doubt | Changed]) -> str:
    """What is wrong with the labels, and how new ones are made."""
    ways = "; ".join(
        f"soapledger label approve {bars.batch} --market {one}, then soapledger label print {bars.batch} --market "
        f"{one} -o labels.pdf, then label count"
        for one in stale
    )
    return f"Batch {bars.batch}: {STALE}: {'; '.join(one.words for one in stale.values())}. New labels: {ways}."


def too_few_labels(bars: Bars, labels: Labels, leaving: int) -> tuple[Doubt, str] | None:
    """That no label was printed for the bars, or fewer are on them than bars leave, and what to do; None for neither.

    Only where she sells in a market in which a bar carries its ingredients on a label.
    """
    if not labels.markets:
        return None
    first = labels.markets[0][0]
    way = f"soapledger label print {bars.batch} --market {first}"
    if not labels.printed:
        names = "; ".join(name for _, name in labels.markets)
        return (
            Doubt("bare", f"no label was printed for it, and a bar carries one in: {names}"),
            f"soapledger label approve {bars.batch} --market {first}, then {way} -o labels.pdf",
        )
    if labels.on_bars < leaving:
        have = f"it has {count(labels.on_bars, 'label')} on its bars"
        would = f"{count(leaving, 'bar')} would leave"
        return Doubt("bare", f"{have}, and {would}"), f"{way} --count {leaving - labels.on_bars} -o more.pdf"
    return None
