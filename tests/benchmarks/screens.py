"""Writes down all that one checkout says of its sample season: `screens.py CHECKOUT OUT [--help-too] [--only NOUN …]`.

Run by compare.py, once for each commit, with the checkout first on the path. Every reading command is asked of every
code that the season has; what it says goes into one file for each run, with its exit code.
"""

import argparse
import importlib
import json
import os
import pkgutil
import random
import re
import secrets
import shlex
import sqlite3
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

MOMENT = "2026-11-25 12:00:00"
LEDGER = "season/soap.db"
# What is asked with codes of one kind; {} is the code. Papers go to {paper}.
OF_EACH = {
    "supplier": ("supplier show {}",),
    "customer": ("customer show {}",),
    "material": ("material show {}",),
    "equipment": ("equipment show {}",),
    "recipe": (
        "recipe show {}",
        "recipe show {} --fats 750g",
        "recipe scale {} --bars 20 --net-weight 100g",
        "recipe assessment {}",
        "attachments {}",
        "recipe print {} -o {paper}.pdf",
    ),
    "lot": ("lot show {}", "trace {}", "trace {} --forward", "attachments {}"),
    "number": (
        "recall lot {}",
        "recall lot {} --all",
        "recall lot {} -o {paper}.pdf",
        "recall lot {} --csv {paper}.csv -o {paper}.pdf",
    ),
    "batch": (
        "batch show {}",
        "batch show {} --as-of 150",
        "cure show {}",
        "cost {}",
        "trace {}",
        "trace {} --forward",
        "attachments {}",
        "recipe assessment {recipe} --batch {}",
        "complaint list --batch {}",
        "batch show {} -o {paper}.pdf",
        "batch show {} --worksheet -o {paper}.pdf",
    ),
    "bars": (
        "label check {} --market eu",
        "label check {} --market gb",
        "label check {} --market ca",
        "label check {} --market us-soap",
        "label check {} --market us-cosmetic",
        "label runs {}",
        "label print {} --market eu --draft -o {paper}.pdf",
        "label print {} --market gb --layout small --draft -o {paper}.pdf",
        "label ticket {} --price 6.50 -o {paper}.pdf",
        "label rack {} -o {paper}.pdf",
    ),
    "complaint": ("complaint show {}",),
    "layout": ("label print {bar} --market eu --layout {} --draft -o {paper}.pdf",),
    "sheet": ("label try-sheet {} -o {paper}.pdf",),
    "sha": ("attachment save {} -o {paper}.bin",),
}
ONCE = (
    "supplier list", "customer list", "material list", "material list --kind fat", "equipment list", "recipe list",
    "stock", "stock --all", "stock --kind fat", "batch list", "cure list", "cure list --on 2026-10-20",
    "cure calendar -o {paper}.ics", "samples", "label runs", "label due", "label due --by 2028-08-01", "stall list",
    "cost", "complaint list", "attachments", "upkeep list", "history --last 1000", "check",
)  # fmt: skip
CODES = {
    "supplier": "SELECT code FROM supplier ORDER BY id",
    "customer": "SELECT code FROM customer ORDER BY id",
    "material": "SELECT code FROM material ORDER BY id",
    "equipment": "SELECT code FROM equipment ORDER BY id",
    "recipe": "SELECT code FROM recipe ORDER BY id",
    "lot": "SELECT code FROM lot WHERE code LIKE 'L%' ORDER BY id",
    "number": "SELECT DISTINCT supplier_number FROM lot WHERE supplier_number IS NOT NULL ORDER BY id",
    "batch": "SELECT code FROM batch ORDER BY id",
    "bars": "SELECT b.code FROM batch b JOIN lot l ON l.code = b.code ORDER BY b.id",
    "complaint": "SELECT id FROM complaint ORDER BY id",
    "sha": "SELECT DISTINCT digest FROM attachment ORDER BY digest",
}
OF_BATCH = (
    "SELECT r.code FROM batch b JOIN recipe_version v ON v.id = b.recipe_version_id "
    "JOIN recipe r ON r.id = v.recipe_id WHERE b.code = ?"
)


class Asked:
    """The program of one checkout, asked through its own command line, in one process."""

    def __init__(self, tree: Path) -> None:
        """Everything is imported before the clock stops: a date class taken while time stands still is a fake one."""
        import ledger

        assert Path(ledger.__file__).is_relative_to(tree), ledger.__file__
        for module in pkgutil.walk_packages(ledger.__path__, "ledger."):
            importlib.import_module(module.name)
        from typer.testing import CliRunner

        from ledger.cli.main import app

        self.app, self.runner, self.number = app, CliRunner(), 0

    def run(self, words: list[str], name: str) -> None:
        """What a command says, into a file."""
        result = self.runner.invoke(self.app, words)
        if result.exception and not isinstance(result.exception, SystemExit):
            raise result.exception
        said = f"$ soapledger {' '.join(words)}\nexit {result.exit_code}\n{result.stdout}--- messages\n{result.stderr}"
        Path("screens", f"{name}.txt").write_text(said, encoding="utf-8")

    def tree(self) -> dict[str, Any]:
        """Every command by its words, groups too."""
        from typer.main import get_command

        def below(command: Any, words: str) -> Iterator[tuple[str, Any]]:
            yield words, command
            for one in command.list_commands(None) if hasattr(command, "commands") else ():
                yield from below(command.get_command(None, one), f"{words} {one}".strip())

        return dict(below(get_command(self.app), ""))


def codes(tree: Path) -> dict[str, list[str]]:
    """Every code of the season by its kind, and the layouts and sheets of the checkout."""
    raw = sqlite3.connect(LEDGER)
    found = {kind: [str(row[0]) for row in raw.execute(query)] for kind, query in CODES.items()}
    raw.close()
    names = sorted(path.stem for path in (tree / "templates").glob("*.toml"))
    found["layout"] = [name.partition("-")[2] for name in names if name.startswith(("label-", "notice-"))]
    found["sheet"] = [name.partition("-")[2] for name in names if name.startswith("sheet-")]
    return found


def questions(found: dict[str, list[str]]) -> Iterator[tuple[str, str]]:
    """Every run: its words with a name for what it says."""
    raw = sqlite3.connect(LEDGER)
    templates = [(one, "") for one in ONCE]
    templates += [(one, code) for kind, each in OF_EACH.items() for code in found[kind] for one in each]
    for template, code in templates:
        recipe = raw.execute(OF_BATCH, (code,)).fetchone() if "{recipe}" in template else None
        if "{recipe}" in template and recipe is None:
            continue
        quoted = f"'{code}'" if " " in code else code
        words = template.replace("{}", quoted).replace("{bar}", found["bars"][0])
        words = words.replace("{recipe}", recipe[0] if recipe else "")
        name = re.sub(r"[^A-Za-z0-9.]+", "-", words.replace("{paper}", "").replace("-o", "paper")).strip("-.")
        yield words.replace("{paper}", f"papers/{name}"), name
    raw.close()


def main() -> None:
    """Play the season and ask everything."""
    from freezegun import freeze_time

    parser = argparse.ArgumentParser()
    parser.add_argument("tree", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--help-too", action="store_true")
    parser.add_argument("--only", nargs="*", default=[])
    given = parser.parse_args()
    tree, out = given.tree.resolve(), given.out
    for name in ("SOAPLEDGER", "NO_COLOR"):
        os.environ.pop(name, None)
    os.environ |= {"USER": "Orla", "COLUMNS": "80"}
    out.mkdir(parents=True)
    os.chdir(out)
    for name in ("screens", "papers"):
        Path(name).mkdir()
    asked = Asked(tree)
    salts = random.Random(0)
    secrets.token_hex = lambda size=32: salts.randbytes(size).hex()
    commands = asked.tree()
    with freeze_time(MOMENT):
        asked.run(["demo", "season"], "demo")
        seen = set()
        for words, name in questions(codes(tree)):
            typed = shlex.split(words)
            command = next((w for n in (2, 1) if (w := " ".join(typed[:n])) in commands), None)
            if command is None or (given.only and typed[0] not in given.only):
                continue  # not of this commit, where the screen is missing on this side; or not asked for
            seen.add(command)
            asked.run(["--ledger", LEDGER, *typed], name)
            if "-o" not in typed and any("--json" in one.opts for one in commands[command].params):
                asked.run(["--ledger", LEDGER, *typed, "--json"], f"{name}.json")
        if given.help_too:
            for words in commands:
                asked.run([*words.split(), "--help"], f"help-{words.replace(' ', '-') or 'root'}")
    reading = {
        words
        for words, one in commands.items()
        if words and any(o in ("--json", "-o") for p in one.params for o in p.opts) and not hasattr(one, "commands")
    }
    if (left := sorted(reading - seen)) and not given.only:
        print(f"Shows something, and was not asked: {json.dumps(left)}", file=sys.stderr)


if __name__ == "__main__":
    main()
