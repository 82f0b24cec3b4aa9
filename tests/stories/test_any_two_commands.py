"""No ordinary command, in whatever order, makes a ledger that its own check calls damaged or that is not copied."""

import re
import shlex
import shutil
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from ledger.cli.main import app
from ledger.units.codes import lot_code
from ledger.operations.keep.backup import keep_copy

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
UNDO = "undo --yes"


def words_of(shop: Any, command: str) -> list[str]:
    """A command as its words, with the codes it is about."""
    codes = {"CODE": shop.batch, "OIL": shop.olive, "NEW": lot_code(5)}
    return shlex.split(re.sub("|".join(codes), lambda found: codes[found[0]], command))
