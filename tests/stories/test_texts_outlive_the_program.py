"""What was accepted once stays listed, shown, cured and recalled, however strict a later program reads."""

import json
from pathlib import Path
from typing import Any

import pytest
from freezegun import freeze_time

from ledger.errors import Refused

QUESTIONS = (
    ("recipe", "list"),
    ("recipe", "show", "calendula"),
    ("batch", "list"),
    ("cure", "list"),
    ("stock", "--all"),
    ("label", "due"),
    ("recall", "lot", "lot ot 4471/2"),
    ("check",),
)


def test_a_program_that_refuses_a_superfat_under_6_still_answers_for_the_season(
    play: Any, run: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    with freeze_time("2026-11-25 12:00:00"):
        ledger = ("--ledger", str(play("2026-11-25").folder / "soap.db"))
        before = [run(*ledger, *words).stdout for words in QUESTIONS]
        made = [one["batch"] for one in json.loads(run(*ledger, "batch", "list", "--json").stdout)]
        codes = {(one["recipe_code"], one["recipe_version"]): one["code"] for one in made}.values()  # of each text one
        shown = [run(*ledger, "batch", "show", code).stdout for code in codes]

        def refuse(_: str, *, file: str) -> None:
            raise Refused(f"{file}: a superfat under 6 is not accepted here.")

        for module in ("ledger.domain.recipe.reader", "ledger.operations.recipe.recipes", "ledger.storage.upgrade"):
            monkeypatch.setattr(f"{module}.read_recipe", refuse)
        assert [run(*ledger, *words).stdout for words in QUESTIONS] == before
        assert [run(*ledger, "batch", "show", code).stdout for code in codes] == shown
        assert len(made) >= 24
        assert len(codes) >= 6
        recipe = Path(__file__).parents[2] / "sample_data" / "recipes" / "calendula.toml"
        assert "under 6" in run(*ledger, "recipe", "revise", "calendula", str(recipe), code=1).stderr
