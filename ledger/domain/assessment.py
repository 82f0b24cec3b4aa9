"""A product's safety assessment, read from the small TOML file that holds the figures of the assessor's report."""

from dataclasses import dataclass
from datetime import date

from ledger.domain.assessment_file import AssessmentFile

ASSESSED_PROCESSES = ("cold", "hot", "rebatch")  # what gives bars; an oil is assessed with the soap it goes into


@dataclass(frozen=True)
class Bounds:
    """How much of one ingredient was assessed: its share of everything weighed in, wrapping apart, in ppm."""

    inci: str
    lowest_ppm: int  # 0 where none is stated
    highest_ppm: int


@dataclass(frozen=True)
class Notification:
    """Under which reference, and since when, the product is notified for one market."""

    market: str
    reference: str
    on: date


@dataclass(frozen=True)
class Assessment:
    """What the assessor looked at and supports; None is what the file is silent on."""

    assessor: str
    reference: str
    on: date
    until: date | None
    process: tuple[str, ...]
    markets: tuple[str, ...]
    superfat_ppm: tuple[int, int] | None
    durability_months: int | None
    ingredients: tuple[Bounds, ...]
    fragrances: tuple[Bounds, ...]
    notifications: tuple[Notification, ...]


def read_assessment(text: str, *, file: str) -> Assessment:
    """Read an assessment file; percentages become ppm exactly.

    Raises BadInput with file and line for what cannot be read, is missing, or is no word of an assessment.
    """
    source = AssessmentFile(text, file)
    source.check()
    head = source.data
    on, until = source.day(head, "on", ""), source.maybe_day(head, "until", "")
    if until is not None and until < on:
        raise source.bad("", 0, "until lies before on; look at both days.", "until")
    markets = source.listed("markets", '["eu", "gb"]')
    ingredients = _bounds(source, "ingredient")
    if not ingredients:
        raise source.bad("", 0, "no ingredient is named; write an [[ingredient]] part for each one assessed.")
    return Assessment(
        assessor=source.word(head, "assessor", ""),
        reference=source.word(head, "reference", ""),
        on=on,
        until=until,
        process=_process(source),
        markets=markets,
        superfat_ppm=_superfat(source),
        durability_months=source.whole(head, "durability_months", ""),
        ingredients=ingredients,
        fragrances=_bounds(source, "fragrance"),
        notifications=_notifications(source, markets),
    )


def inci_key(name: str) -> str:
    """An INCI name as it is compared: in capitals, and water under its one name AQUA."""
    plain = " ".join(name.upper().split())
    return "AQUA" if plain == "WATER" else plain


def _process(source: AssessmentFile) -> tuple[str, ...]:
    found = source.listed("process", '["cold"]')
    for one in found:
        if one not in ASSESSED_PROCESSES:
            known = ", ".join(ASSESSED_PROCESSES)
            raise source.bad("", 0, f"process '{one}' is not known here; write one or more of {known}.", "process")
    return found


def _superfat(source: AssessmentFile) -> tuple[int, int] | None:
    value = source.data.get("superfat")
    if value is None:
        return None
    if not isinstance(value, list) or len(value) != 2:
        raise source.bad("", 0, "superfat is a range, from and to; write superfat = [3, 8].", "superfat")
    low, high = (source.share({"superfat": one}, "superfat", "", 0, or_nothing=True) or 0 for one in value)
    if low > high:
        raise source.bad("", 0, "superfat runs from the lower to the higher; write superfat = [3, 8].", "superfat")
    return low, high


def _bounds(source: AssessmentFile, table: str) -> tuple[Bounds, ...]:
    found: dict[str, Bounds] = {}
    for index, part in enumerate(source.tables(table)):
        name = inci_key(source.word(part, "inci", table, index))
        highest = source.share(part, "highest_percent", table, index)
        if highest is None:
            raise source.bad(table, index, f"highest_percent is missing for {name}; write highest_percent = 60.")
        lowest = source.share(part, "lowest_percent", table, index, or_nothing=True) or 0
        if lowest > highest:
            raise source.bad(table, index, f"lowest_percent of {name} lies above its highest_percent; look at both.")
        if name in found:
            raise source.bad(table, index, f"{name} stands here a second time; write one [[{table}]] for it.", "inci")
        found[name] = Bounds(name, lowest, highest)
    return tuple(found.values())


def _notifications(source: AssessmentFile, markets: tuple[str, ...]) -> tuple[Notification, ...]:
    found: dict[str, Notification] = {}
    for index, part in enumerate(source.tables("notification")):
        market = source.word(part, "market", "notification", index).lower()
        if market not in markets:
            message = f"market '{market}' is not among the markets assessed; add it there, or mend it here."
            raise source.bad("notification", index, message, "market")
        if market in found:
            raise source.bad("notification", index, f"market '{market}' stands here a second time.", "market")
        reference = source.word(part, "reference", "notification", index)
        found[market] = Notification(market, reference, source.day(part, "on", "notification", index))
    return tuple(found.values())
