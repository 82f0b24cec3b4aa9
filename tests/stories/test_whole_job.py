"""The whole job through the command line, with the clock frozen: from a delivery to a recall answer."""

import json
from pathlib import Path
from typing import Any

from freezegun import freeze_time
from making import CHECKED
from recipes import bar_file

RECIPE = bar_file("Morning Lavender", "morning", {"olive oil": 70, "coconut oil": 30}, more="[work]\nminutes = 60\n")

# of 1426.3 g in all: olive 49.1 %, coconut 21.0 %, water 19.9 %, sodium hydroxide 10.0 %
REPORT = """
assessor = "R. Lund"
reference = "QR-114"
on = 2026-03-03
process = ["cold"]
markets = ["eu"]
superfat = [3, 8]
[[ingredient]]
inci = "OLEA EUROPAEA FRUIT OIL"
highest_percent = 50
[[ingredient]]
inci = "COCOS NUCIFERA OIL"
highest_percent = 22
[[ingredient]]
inci = "SODIUM HYDROXIDE"
highest_percent = 60
[[ingredient]]
inci = "AQUA"
highest_percent = 60
[[notification]]
market = "eu"
reference = "N-7"
on = 2026-03-10
"""


def test_from_a_delivery_to_a_recall_answer(tmp_path: Path, run: Any, monkeypatch: Any) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "morning.toml").write_text(RECIPE, encoding="utf-8")
    with freeze_time("2026-10-05 09:00:00"):
        run("init", "--business", "Wren Soap", "--country", "IE", "--currency", "EUR", "--units", "metric",
            "--maker", "Nuala", "--time-zone", "Europe/Dublin", "--labour", "12",
            "--market", "eu=Orla Wren; Quay Lane")  # fmt: skip
        run("supplier", "add", "Ottersby Oils", "--phone", "020 910 0131")
        run("material", "add", "olive oil", "--kind", "fat", "--sap", "190", "--inci", "OLEA EUROPAEA FRUIT OIL")
        run("material", "add", "coconut oil", "--kind", "fat", "--sap", "256", "--inci", "COCOS NUCIFERA OIL")
        run("material", "add", "lye", "--alkali", "NaOH")
        run("material", "add", "water", "--kind", "liquid", "--inci", "AQUA")
        run("recipe", "add", "morning.toml")
        run("receive", "ottersby", "--accept", "--line", "olive oil; 5 kg; lot 4471/2; 35.00",
            "--line", "coconut oil; 1 kg; lot unknown; 7.00", "--line", "lye; 500 g; lot N1; 4.00",
            "--line", "water; 2 kg; lot W1; 0")  # fmt: skip
        run("batch", "plan", "morning")
        # 700 g x 190 + 300 g x 256 = 133.0 + 76.8 = 209.8 g KOH; x 39.99677 / 56.1053 = 149.564 g NaOH;
        # x 0.95 = 142.086 g. Typed: Enter for clean, scale and the four targets, then what was read.
        logged = run("batch", "log", "26-001-4", input="\n\n\n\n\n142.1\n49 C\n48 C\n\n8 min\n14:05\n\n\n").stdout
        assert "the superfat is 4.99 %" in logged  # 142.1 of 149.564 g
        lines = json.loads(run("batch", "show", "26-001-4", "--worksheet", "--json").stdout)["lines"]
        assert [round(line["target"] / 1000, 1) for line in lines] == [700.0, 300.0, 284.2, 142.1]
    with freeze_time("2026-10-06 09:00:00"):
        run("batch", "cut", "26-001-4", "10", "--weight", "1300 g", "--offcuts", "60 g")
        early = run("pass", "26-001-4", code=1).stderr
        assert "cures until 3 Nov 2026, 28 days more" in early  # 6 October and 28 days
    with freeze_time("2026-11-03 09:00:00"):
        assert "1 batch ready" in run("cure", "list").stdout
        run("pass", "26-001-4", "--wasted", "1", "--reason", "cracked")
        assert "only released bars leave" in run("gift", "26-001-4=1", code=1).stderr
        assert "Nobody approved" in run("label", "print", "26-001-4", "-o", "labels.pdf", code=1).stderr
        run("label", "approve", "26-001-4", "--market", "eu")
        run("label", "print", "26-001-4", "--market", "eu", "-o", "labels.pdf")
        run("label", "count", "1")
        assert "no safety assessment" in run("release", "26-001-4", "--retain", "1", *CHECKED, code=1).stderr
        Path("report.toml").write_text(REPORT, encoding="utf-8")
        run("recipe", "assess", "morning", "report.toml")
        run("release", "26-001-4", "--retain", "1", *CHECKED)
        run("stall", "add", "Saturday market")
        run("stall", "out", "saturday", "26-001-4=4")
        run("stall", "back", "saturday", "26-001-4=1", "--takings", "16.50")
        run("customer", "add", "The Grey Heron", "--shop", "--phone", "020 910 0201")
        run("dispatch", "grey", "26-001-4=2", "--price", "3.60")
        cost = json.loads(run("cost", "26-001-4", "--json").stdout)
        # olive 700 of 5000 g of 35.00 = 4.90; coconut 300 of 1000 g of 7.00 = 2.10; lye 142.086 of 500 g of
        # 4.00 = 1.14; water 0; an hour of work 12.00: 20.14 in all. The offcuts carry 60 / 1360 of it, 0.89.
        assert [line["cost_minor"] for line in cost["lines"]] == [490, 210, 0, 114]
        assert cost["total_minor"] == 2014
        assert (cost["to_bars_minor"], cost["to_offcuts_minor"]) == (1925, 89)
        assert sum(cost["per_bar_minor"]) == 1925
        assert len(cost["per_bar_minor"]) == 9
        answer = json.loads(run("recall", "lot", "LOT 4471-2", "--hold", "-o", "recall.pdf", "--json").stdout)
        totals = answer["totals"]
        # 10 made = 1 wasted + 1 retained + 3 sold + 2 dispatched + 3 still here
        assert (totals["made"], totals["wasted"], totals["retained"]) == (10, 1, 1)
        assert (totals["sold"], totals["dispatched"], totals["on_hand"], totals["unexplained"]) == (3, 2, 3, 0)
        assert answer["call"][0]["phone"] == "020 910 0201"
        assert "on hold" in run("dispatch", "grey", "26-001-4=1", code=1).stderr
        undone = run("undo", "8", "--yes", code=1).stderr
        assert "26-001-4" in undone
        assert "nothing is wrong" in run("check").stdout
        assert (tmp_path / "recall.pdf").read_bytes().startswith(b"%PDF")
