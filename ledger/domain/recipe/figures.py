"""Keeps a recipe as it was understood when it was added, so that no later reader of its text judges it again."""

import json
from collections.abc import Mapping
from functools import lru_cache
from typing import Any, TypeVar

from ledger.domain.lye.saponification import WaterRule
from ledger.domain.recipe.mould import Mould
from ledger.domain.recipe.recipe import (
    BEST_BEFORE_MONTHS,
    CURE_DAYS,
    DRIEST_WATER_PPM,
    WATER_LEFT_PPM,
    WEEKLY_LOSS_PPM,
    WEIGH_EVERY_DAYS,
    Herb,
    LabelWishes,
    OwnStep,
    Portion,
    Recipe,
    RecipeLine,
)
from ledger.domain.tools.bounds import Limits
from ledger.errors import BadInput
from ledger.units.toml_reader import TomlFile
from ledger.units.words import Process

FORMAT = 1
NOT_UNDERSTOOD = 0  # a text of an earlier program that the one which kept it could not read

Kept = TypeVar("Kept")
Values = Mapping[str, Any]

# What a figure is where an earlier format did not keep it.
_UNSAID: dict[str, Any] = {
    "superfat_ppm": None,
    "fats_total_mg": None,
    "alkali_shares_ppm": {},
    "cure_days": CURE_DAYS,
    "usable_from_days": None,
    "water_left_ppm": WATER_LEFT_PPM,
    "driest_water_ppm": DRIEST_WATER_PPM,
    "weekly_loss_ppm": WEEKLY_LOSS_PPM,
    "weigh_every_days": WEIGH_EVERY_DAYS,
    "best_before_months": BEST_BEFORE_MONTHS,
    "mould": None,
    "bars": None,
    "net_weight_mg": None,
    "net_weight": None,
    "work_minutes": None,
    "yields": None,
    "infusion_days": None,
    "release_checks": (),
}


def figures_text(recipe: Recipe) -> str:
    """All of a recipe as JSON, in the format of today."""
    return json.dumps(_plain(recipe), ensure_ascii=False, sort_keys=True, separators=(",", ":"))


def _plain(value: Any) -> Any:
    """A part by its names, and what it holds likewise."""
    if hasattr(value, "_asdict"):
        return {name: _plain(one) for name, one in value._asdict().items()}
    return [_plain(one) for one in value] if isinstance(value, tuple) else value


@lru_cache(maxsize=256)  # a list of batches asks for the same few recipes again and again
def recipe_from(figures: str, *, name: str, code: str, process: Process, text: str = "") -> Recipe:
    """The recipe that was kept, in whatever format; what the format did not know is as where nothing was written.

    Name, code and process stand in columns of their own, and are given from there. In which unit the net weight was
    decided, which figures of a program before 28 Nov 2026 do not say, stands in the recipe's own `text`.
    """
    data = json.loads(figures)
    if data.get("net_weight_mg") and "net_weight" not in data:
        data["net_weight"] = _written_net(text)
    kept = _UNSAID | {key: value for key, value in data.items() if key in _UNSAID}
    return Recipe(
        **(kept | {"release_checks": tuple(kept["release_checks"])}),
        name=name,
        code=code,
        process=process,
        lines=tuple(_one(RecipeLine, line) for line in data.get("lines", ())),
        water_rule=_maybe(WaterRule, data.get("water_rule")),
        mould_size=_maybe(Mould, data.get("mould_size")),
        herb=_maybe(Herb, data.get("herb")),
        label=_one(LabelWishes, data.get("label", {})),
        portions=tuple(_one(Portion, portion) for portion in data.get("portions", ())),
        steps=tuple(_one(OwnStep, step) for step in data.get("steps", ())),
        limits=_one(Limits, data.get("limits", {})),
    )


def _written_net(text: str) -> str | None:
    """The net weight as a text has it; None for a text that cannot be read any more."""
    try:
        return TomlFile(text, "").one("mould").maybe_word("net_weight")
    except BadInput:
        return None


def _maybe(kind: type[Kept], values: Values | None) -> Kept | None:
    return None if values is None else _one(kind, values)


def _one(kind: type[Kept], values: Values) -> Kept:
    """One part, from the values it knows; lists are tuples."""
    known = kind._fields  # type: ignore[attr-defined]
    return kind(**{k: tuple(v) if isinstance(v, list) else v for k, v in values.items() if k in known})
