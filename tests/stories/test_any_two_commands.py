"""No ordinary command, in whatever order, makes a ledger that its own check calls damaged or that is not copied."""

import re
import shlex
import shutil
from pathlib import Path
from typing import Any

import pytest
from freezegun import freeze_time
from shop import NOW, PLAIN_BAR, SETUP, work_a_shop
from typer.testing import CliRunner

from ledger.cli.main import app
from ledger.operations.house.setup import set_up
from ledger.operations.keep.backup import keep_copy
from ledger.units.codes import lot_code

ENTRIES = 14  # of the worked shop
# What the shop did before, one after the other; CODE is its batch, OIL a lot of its oil and NEW another, on the shelf.
BEFORE = (
    "stall add quay",
    "customer add 'Orla Fenn' --person --phone '020 910 0177' --address '2 Weir Row' --code orla",
    "customer add 'Tomas Reed' --person --phone '020 910 0177' --code tomas",
    "customer erase tomas --reason asked --yes",
    "receive tarnlow --accept --line 'olive oil; 1 kg; lot X8; 7'",
    "stall out quay CODE=3",
    "dispatch orla CODE=2 --price 5",
    "return CODE=1 --from orla --reason crumbled",
    "complaint add itched --name 'Ida Marsh' --health 'red hands' --batch CODE",
    "equipment add scale bench --against '500 g' --tolerance '1 g'",
)
# What each command does then.
COMMANDS = {
    "a person edited": "customer edit orla --phone '020 910 0199'",
    "a person erased": "customer erase orla --reason asked --yes",
    "an erased person edited": "customer edit tomas --phone '020 910 0166'",
    "a person erased again": "customer erase tomas --reason asked --yes",
    "a person added": "customer add 'Nia Brook' --person --phone '020 910 0111' --code nia",
    "the same person erased": "customer erase nia --reason asked --yes",
    "bars sent": "dispatch orla CODE=1 --price 5",
    "bars given": "gift CODE=1 --to orla",
    "bars back": "return CODE=1 --from orla --reason crumbled",
    "bars back on sale": "resell CODE=1 --reason sound --by Nuala",
    "a supplier edited": "supplier edit tarnlow --phone '020 910 0123'",
    "a material edited": "material edit 'olive oil' --inci 'OLEA EUROPAEA'",
    "a complaint": "complaint add itched --name 'Ida Marsh' --health 'red hands' --batch CODE",
    "a note of it": "complaint note 1 'rang again' --serious no --decided-by Nuala",
    "its end": "complaint close 1 'bar replaced'",
    "its person erased": "complaint erase 1 --reason asked --yes",
    "bars on hold": "lot hold CODE --reason 'smells off'",
    "bars released": "--as Nuala release CODE --anyway t --bare t --reason t --check pH=9.6 --check look=good "
    "--check smell=good --check weight=good",
    "bars rejected": "reject CODE --reason rancid",
    "bars reworked": "rework CODE '200 g'",
    "an oil accepted": "lot accept OIL",
    "an oil on hold": "lot hold OIL --reason smell",
    "an oil counted": "lot count OIL '4000 g'",
    "an oil counted higher": "lot count OIL '4900 g'",
    "an oil spilt": "lot waste OIL '100 g' --reason spilt",
    "bars wasted": "lot waste CODE 1 --reason broken",
    "a delivery": "receive tarnlow --accept --line 'olive oil; 1 kg; lot X9; 7'",
    "oils combined": "lot combine OIL NEW --yes",
    "a batch planned": "batch plan plain-bar",
    "bars to the stall": "stall out quay CODE=1",
    "bars from the stall": "stall back quay CODE=1 --takings 5",
    "a bar weighed": "cure weigh CODE A=120g",
    "a note": "batch note CODE pale",
    "a deviation": "batch note CODE cracked --deviation --done pressed",
    "a label approved": "label approve CODE --market eu",
    "a scale tried": "equipment check bench '500 g'",
    "a scale retired": "equipment edit bench --retired",
    "an upkeep": "upkeep add cleaning floor",
    "the settings": "init --labour 16",
    "a paper": "attach plain.toml --to OIL",
    "a recipe revised": "recipe revise plain-bar revised.toml",
}
FIRST = [pytest.param(one, marks=() if one == "a person edited" else pytest.mark.slow) for one in COMMANDS]
QUICK = ("a person erased", "an erased person edited")  # after the first; every other pair is behind --slow


@pytest.fixture(scope="module")
def begun(built: Any, tmp_path_factory: pytest.TempPathFactory) -> tuple[bytes, Any]:
    """The shop after `BEFORE`: its file, and what it is called there."""
    path, made = built("shop", work_a_shop, built("book", lambda new: set_up(new, SETUP))[0])
    folder = tmp_path_factory.mktemp("before")
    shutil.copyfile(path, folder / "soap.db")
    with freeze_time(NOW):
        for command in BEFORE:
            typed = ["--ledger", str(folder / "soap.db"), *words_of(made, command)]
            assert CliRunner().invoke(app, typed).exit_code == 0, command
    return (folder / "soap.db").read_bytes(), made


@pytest.mark.usefixtures("frozen")
@pytest.mark.parametrize("first", FIRST)
def test_any_two_commands_leave_a_ledger_that_is_clean(
    first: str, begun: Any, tmp_path: Path, pytestconfig: pytest.Config
) -> None:
    """One after the other, either taken back in between or after, and copied at the end."""
    whole, made = begun
    path = tmp_path / "soap.db"
    (tmp_path / "plain.toml").write_text(PLAIN_BAR, encoding="utf-8")
    (tmp_path / "revised.toml").write_text(PLAIN_BAR.replace("superfat = 5", "superfat = 6"), encoding="utf-8")
    entry = len(BEFORE) + ENTRIES + 1
    undo_one, undo_two = ["undo", str(entry), "--yes"], ["undo", str(entry + 1), "--yes"]
    one = words_of(made, COMMANDS[first])
    for second in COMMANDS if pytestconfig.getoption("--slow") else QUICK:
        two = words_of(made, COMMANDS[second])
        for commands in ((one, two, undo_one, undo_two), (one, undo_one, two, ["undo", "--yes"])):
            path.write_bytes(whole)
            for typed in commands:
                done = CliRunner().invoke(app, typed)  # some are refused, which is an answer too
                assert done.exit_code in (0, 1, 2), done.output
            assert keep_copy(path, tmp_path / "copy.db", overwrite=True).findings == (), (first, second)
            (tmp_path / "copy.db").unlink()


def words_of(shop: Any, command: str) -> list[str]:
    """A command as its words, with the codes it is about."""
    codes = {"CODE": shop.batch, "OIL": shop.olive, "NEW": lot_code(5)}
    return shlex.split(re.sub("|".join(codes), lambda found: codes[found[0]], command))
