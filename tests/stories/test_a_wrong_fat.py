"""A slip of the hand from the prompt to the recall: coconut oil from the drum beside, where olive oil was asked for."""

import json
from pathlib import Path
from typing import Any

from freezegun import freeze_time
from making import CHECKED
from recipes import bar_file

# Two fats and a lye that is reckoned as pure: 700 x 190 + 300 x 256 = 209.8 g KOH, x 0.7128876 x 0.95 = 142.086 g.
RECIPE = bar_file("Quay Bar", "quay", {"olive oil": 70, "coconut oil": 30})


def typed(*answers: str) -> str:
    return "".join(f"{one}\n" for one in answers)


def test_a_wrong_fat_is_written_down_found_again_and_recalled(run: Any) -> None:
    def said(*words: str, code: int = 0, input: str | None = None) -> str:
        done = run(*words, code=code, input=input)
        return " ".join((done.stdout + done.stderr).replace("\u00a0", " ").replace("\u202f", " ").split())

    with freeze_time("2026-10-05 10:00:00"):
        run("init", "--business", "Quay Soap", "--maker", "Orla Wren",
            "--country", "US", "--currency", "USD", "--units", "metric", "--scale-step", "0.1 g",
            "--time-zone", "Europe/Dublin", "--market", "us=Orla Wren; Quay Lane")  # fmt: skip
        run("supplier", "add", "Ottersby Oils", "--phone", "020 910 0131")
        run("material", "add", "olive oil", "--kind", "fat", "--sap", "190", "--inci", "OLEA EUROPAEA FRUIT OIL")
        run("material", "add", "coconut oil", "--kind", "fat", "--sap", "256", "--inci", "COCOS NUCIFERA OIL")
        run("material", "add", "lye", "--alkali", "NaOH")
        run("material", "add", "water", "--kind", "liquid", "--inci", "AQUA")
        run("receive", "ottersby", "--accept", "--line", "olive oil; 5 kg; lot 4471/2; 35",
            "--line", "coconut oil; 5 kg; lot CN; 35", "--line", "lye; 500 g; lot N1; 4",
            "--line", "water; 2 kg; lot W1; 0")  # fmt: skip
        Path("quay.toml").write_text(RECIPE, encoding="utf-8")
        run("recipe", "add", "quay.toml")
        run("batch", "plan", "quay")
        # clean, scale; 700 g, of which 500 g were poured from the drum beside; coconut, water; then the lye
        answers = ("", "", "200@L1-X,500@L2-8", "pot", "300", "284.2", "q")
        asked = said("batch", "log", "26-001-4", input=typed(*answers))
        assert "Line 1 asks for olive oil, and that lot is coconut oil." in asked
        assert "coconut oil in the pot, or the wrong code?" in asked
        # 200 x 190 + 800 x 256 = 242.8 g KOH, x 0.7128876 x 0.95 = 164.4 g
        assert "The fats as weighed take 164.4 g of lye" in asked
        run("batch", "log", "26-001-4", "--line", "4=164.4 g", "--yes", "--reading", "poured=14:05")
    with freeze_time("2026-10-06 10:00:00"):
        run("batch", "cut", "26-001-4", "10", "--weight", "1390 g")
    with freeze_time("2026-11-10 10:00:00"):
        # a person decides before it goes on: what went in, and the lye that is 22.3 g over its line
        assert "open deviation" in said("pass", "26-001-4", code=1)
        shown = said("batch", "show", "26-001-4")
        assert "olive oil was asked for, and 500 g of coconut oil, lot L2-8 went in" in shown
        for number in "12":
            run("batch", "decide", "26-001-4", number, "accept", "--reason", "for washing hands", "--by", "Orla Wren")
        run("pass", "26-001-4")
        # the label and the record say what went in: more coconut than olive
        record = json.loads(run("batch", "show", "26-001-4", "--json").stdout)
        fats = [(one["material"], one["used"]) for one in record["materials"] if one["role"] == "fat"]
        assert fats == [("olive oil", 200_000), ("coconut oil", 500_000), ("coconut oil", 300_000)]
        label = said("label", "check", "26-001-4", "--market", "us-soap")
        assert label.index("COCOS NUCIFERA OIL") < label.index("OLEA EUROPAEA FRUIT OIL")
        run("label", "approve", "26-001-4", "--market", "us-soap")
        run("label", "print", "26-001-4", "--market", "us-soap", "-o", "labels.pdf")
        run("label", "count", "1")
        run("release", "26-001-4", *CHECKED)
        run("stall", "add", "Quay")
        run("stall", "out", "quay", "26-001-4=4")
    with freeze_time("2026-11-12 10:00:00"):
        assert "800 g" in said("trace", "26-001-4")
        # the supplier of the coconut oil rings, and later she learns that the rest of line 1 was coconut oil too
        assert "coconut oil, lot L2-8 (their number CN): 1 batch, 10 bars." in said("recall", "lot", "CN")
        run("batch", "log", "26-001-4", "--line", "1=700 g@L2-8", "--instead", "--correct")
        assert "on hold" in said("batch", "list")
        assert "on hold" in said("stall", "out", "quay", "26-001-4=1", code=1)
        assert "1 batch" not in said("recall", "lot", "4471/2")
        assert "COCOS NUCIFERA OIL" in said("label", "check", "26-001-4", "--market", "us-soap")
        assert "nothing is wrong" in said("check")
