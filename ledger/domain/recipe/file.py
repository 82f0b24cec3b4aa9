"""Which words a recipe file may hold, and which of its parts each process has a use for."""

from ledger.units.toml_reader import TomlFile, TomlPart
from ledger.units.words import Process, known

_WORDS: dict[str, tuple[str, ...]] = {
    "": ("name", "code", "process", "superfat", "fats_total", "best_before_months"),
    "alkali": ("material", "kind", "percent_of_demand"),
    "water": ("material", "per_alkali", "lye_concentration", "of_fats", "grams"),
    "fat": ("material", "percent", "grams", "when", "in_demand", "note"),
    "liquid": ("material", "percent_of_fats", "grams", "when", "note"),
    "portion": ("name", "percent", "bars"),
    "additive": ("material", "percent_of_fats", "grams", "when", "add_alkali", "portion", "note"),
    "fragrance": ("material", "percent_of_fats", "grams", "when", "portion", "note"),
    "part": ("material", "grams", "note"),
    "rework": ("material", "grams", "note"),
    "infusion": ("yields", "days", "declare", "carried_percent", "carried_source"),
    "label": (
        "declaration",
        "fragrance",
        "function",
        "precautions",
        "claims",
        "origin",
        "after_opening_months",
        "gtin",
        "opening_matters",
        "list_ingredients",
        "line",
        "use",
        "colour",
        "picture",
    ),
    "blend": ("yields",),
    "cure": ("days", "usable_from_days", "water_left", "driest_water", "weekly_loss_percent", "weigh_every_days"),
    "mould": ("name", "size", "bars", "net_weight"),
    "limits": (
        "lye_fats_apart",
        "lye_temperature",
        "cook_minutes",
        "fragrance_temperature",
        "bar_weight",
        "pH",
        "loss_percent",
    ),
    "release": ("checks",),
    "work": ("minutes",),
    "packaging": ("material", "per_bar"),
    "step": ("text", "when", "reading", "from", "to"),
}
_ONCE = ("label", "release", "limits", "water", "infusion", "blend", "cure", "mould", "work")
_EVERY = ("name", "code", "process", "best_before_months", "work", "packaging", "step")
_SOAP = (
    *_EVERY, "superfat", "fats_total", "alkali", "water", "fat", "liquid", "additive", "fragrance", "portion", "cure",
    "mould", "label", "limits", "release",
)  # fmt: skip
# What each process has a use for. An infusion takes its parts alone: what was strained out is not declared, so
# whatever stays in the oil goes into the soap, where it is.
_PLACE: dict[Process, tuple[str, ...]] = {
    "cold": _SOAP,
    "hot": _SOAP,
    "infusion": (*_EVERY, "part", "infusion"),
    "blend": (*_EVERY, "part", "blend"),
    "rebatch": (*_EVERY, "rework", "water", "additive", "fragrance", "cure", "mould", "label", "limits", "release"),
}


class RecipeFile(TomlFile):
    """A recipe file as it was parsed."""

    words, once, noun = _WORDS, _ONCE, "recipe"

    def process(self) -> Process:
        """The process, once every word in the file is one that it takes.

        Raises BadInput for a part that this process has no use for, so that nothing is passed over in silence.
        """
        self.check()
        written = self.head.word("process")
        process = known(written, _PLACE)
        if process is None:
            raise self.head.bad(f"process '{written}' is not known; write one of {', '.join(_PLACE)}.", "process")
        for key in self.data:
            if key not in _PLACE[process]:
                part = TomlPart(self, key, 0, {}) if key in _WORDS else self.head
                raise part.bad(f"{key} has no place in the {process} process; take it out.", key)
        return process
