"""A product's safety assessment, read from the small TOML file that holds the figures of the assessor's report."""

from datetime import date
from typing import NamedTuple

from ledger.units.toml_reader import TomlFile
from ledger.units.words import Process, known

_BOUNDS = ("inci", "lowest_percent", "highest_percent")
# What gives bars; an oil is assessed with the soap it goes into.
ASSESSED_PROCESSES: tuple[Process, ...] = ("cold", "hot", "rebatch")


class AssessmentFile(TomlFile):
    """A file of an assessment as it was parsed."""

    words = {
        "": ("assessor", "reference", "on", "until", "process", "markets", "superfat", "durability_months", "recipes"),
        "ingredient": _BOUNDS,
        "fragrance": _BOUNDS,
        "notification": ("market", "reference", "on"),
    }


class Bounds(NamedTuple):
    """How much of one ingredient was assessed: its share of everything weighed in, wrapping apart, in ppm."""

    inci: str
    lowest_ppm: int  # 0 where none is stated
    highest_ppm: int


class Notification(NamedTuple):
    """Under which reference, and since when, the product is notified for one market."""

    market: str
    reference: str
    on: date


class Assessment(NamedTuple):
    """What the assessor looked at and supports; None is what the file is silent on."""

    assessor: str
    reference: str
    on: date
    until: date | None
    process: tuple[Process, ...]
    markets: tuple[str, ...]
    superfat_ppm: tuple[int, int] | None
    durability_months: int | None
    ingredients: tuple[Bounds, ...]
    fragrances: tuple[Bounds, ...]
    notifications: tuple[Notification, ...]
    recipes: tuple[str, ...] = ()  # what the report names that it covers; nothing: the recipe it is booked for
    also: tuple[tuple[str, str], ...] = ()  # names of ingredients, and the names they have in the report
    held: tuple[str, ...] = ()  # alkalis that no name of their own stands for: they are in the soaps it names

    @property
    def names(self) -> tuple[str, ...]:
        """Every ingredient and fragrance it names."""
        return tuple(one.inci for one in (*self.ingredients, *self.fragrances))

    def with_word(self, inci: str, highest_ppm: int) -> "Assessment":
        """The same with so much of one ingredient, scent or not, by the assessor's word in place of what was."""
        bound = Bounds(inci, 0, highest_ppm)
        return self._replace(
            ingredients=(*(one for one in self.ingredients if one.inci != inci), bound),
            fragrances=(*(one for one in self.fragrances if one.inci != inci), bound),
        )


def read_assessment(text: str, *, file: str) -> Assessment:
    """Read an assessment file; percentages become ppm exactly.

    Raises BadInput with file and line for what cannot be read, is missing, or is no word of an assessment.
    """
    source = AssessmentFile(text, file)
    source.check()
    head = source.head
    on, until = head.day("on"), head.maybe_day("until")
    if until is not None and until < on:
        raise head.bad("until lies before on; look at both days.", "until")
    markets = _listed(source, "markets", '["eu", "gb"]')
    ingredients = _bounds(source, "ingredient")
    if not ingredients:
        raise head.bad("no ingredient is named; write an [[ingredient]] part for each one assessed.")
    return Assessment(
        assessor=head.word("assessor"),
        reference=head.word("reference"),
        on=on,
        until=until,
        process=_process(source),
        markets=markets,
        superfat_ppm=head.pair("superfat", "[3, 8]", lambda one: one.share("superfat", least=0, exact=True)),
        durability_months=head.whole("durability_months"),
        ingredients=ingredients,
        fragrances=_bounds(source, "fragrance"),
        notifications=_notifications(source, markets),
        recipes=head.listed("recipes", '["morning", "evening"]') or (),
    )


def inci_key(name: str) -> str:
    """An INCI name as it is compared: in capitals, and water under its one name AQUA."""
    plain = " ".join(name.upper().split())
    return "AQUA" if plain == "WATER" else plain


def _listed(source: AssessmentFile, key: str, example: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one.lower() for one in source.head.listed(key, example, needed=True) or ()))


def _process(source: AssessmentFile) -> tuple[Process, ...]:
    found: list[Process] = []
    for one in _listed(source, "process", '["cold"]'):
        if (process := known(one, ASSESSED_PROCESSES)) is None:
            listed = ", ".join(ASSESSED_PROCESSES)
            raise source.head.bad(f"process '{one}' is not known here; write one or more of {listed}.", "process")
        found.append(process)
    return tuple(found)


def _bounds(source: AssessmentFile, table: str) -> tuple[Bounds, ...]:
    found: dict[str, Bounds] = {}
    for part in source.parts(table):
        name = inci_key(part.word("inci"))
        highest = part.share("highest_percent", exact=True)
        if highest is None:
            raise part.bad(f"highest_percent is missing for {name}; write highest_percent = 60.")
        lowest = part.share("lowest_percent", least=0, exact=True) or 0
        if lowest > highest:
            raise part.bad(f"lowest_percent of {name} lies above its highest_percent; look at both.")
        if name in found:
            raise part.bad(f"{name} stands here a second time; write one [[{table}]] for it.", "inci")
        found[name] = Bounds(name, lowest, highest)
    return tuple(found.values())


def _notifications(source: AssessmentFile, markets: tuple[str, ...]) -> tuple[Notification, ...]:
    found: dict[str, Notification] = {}
    for part in source.parts("notification"):
        market = part.word("market").lower()
        if market not in markets:
            message = f"market '{market}' is not among the markets assessed; add it there, or mend it here."
            raise part.bad(message, "market")
        if market in found:
            raise part.bad(f"market '{market}' stands here a second time.", "market")
        found[market] = Notification(market, part.word("reference"), part.day("on"))
    return tuple(found.values())
