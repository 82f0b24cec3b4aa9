"""What every command costs on ledgers of two, eight and more years and on the sample season, side by side in one run.

    python tests/benchmarks/sizes.py [--years 2 8] [--workshops DIR] [--only "batch list" ...] [--kind list view]
                                     [--rounds 3] [--limit 120] [--program CHECKOUT]

CPU seconds (user and system) of one process for each command, medians of the rounds. Each round runs a command on
every ledger in turn, so that a slower minute of the machine touches all of them alike. What writes runs on a copy.
A command that spends more than the limit is stopped; one that takes over ten seconds is run once. Commands come from
the program's own tree, what they are asked from commands.py; what stands in the tree alone is listed as not measured.
"""

import argparse
import json
import os
import resource
import shlex
import shutil
import signal
import sqlite3
import statistics
import string
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from benchmarks.commands import COMMANDS, Measured
from benchmarks.facts import Facts

HERE = Path(__file__).parents[2]
RUN = "from ledger.cli.main import run; run()"
TREE = """
import json
from typer.main import get_command
from ledger.cli.main import app
def leaves(command, words):
    if not hasattr(command, "commands"):
        return [" ".join(words)]
    inside = [(one, command.get_command(None, one)) for one in command.list_commands(None)]
    return [leaf for one, each in inside for leaf in leaves(each, [*words, one])]
print(json.dumps(leaves(get_command(app), [])))
"""
SEASON_ENDS = "2026-11-20"
ON = ("--as", "Elspet", "--ledger")  # the workshop's ledgers say nobody's name
LONG = 10.0  # seconds; what takes longer is not repeated


@dataclass(frozen=True)
class Spent:
    """One run: CPU seconds, or why there are none."""

    seconds: float | None
    why: str = ""


class Program:
    """One checkout, run as a user would, without the start of an installed script."""

    def __init__(self, checkout: Path, limit: int) -> None:
        """`limit`: CPU seconds after which a command is stopped."""
        self.limit = limit
        self.environment = {**os.environ, "PYTHONPATH": str(checkout), "USER": "Elspet", "COLUMNS": "80"}
        self.environment.pop("SOAPLEDGER", None)

    def python(self, code: str) -> str:
        """What a few lines print."""
        asked = [sys.executable, "-c", code]
        return subprocess.run(asked, env=self.environment, check=True, capture_output=True, text=True).stdout

    def spend(self, words: list[str], folder: Path) -> Spent:
        """Run a command in a folder and say what it cost."""
        with (folder / "said").open("w+", encoding="utf-8") as said:
            child = subprocess.Popen(
                [sys.executable, "-c", RUN, *words],
                env=self.environment,
                cwd=folder,
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=said,
                preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_CPU, (self.limit, self.limit + 1)),
            )
            _, status, used = os.wait4(child.pid, 0)
            child.returncode = os.waitstatus_to_exitcode(status)
            said.seek(0)
            last = [line for line in said.read().splitlines() if line.strip()][-1:]
        if child.returncode in (-signal.SIGXCPU, -signal.SIGKILL):
            return Spent(None, f"over {self.limit} s")
        if child.returncode:
            return Spent(None, f"exit {child.returncode}: {''.join(last)}")
        return Spent(used.ru_utime + used.ru_stime)


def run_once(program: Program, ledger: Path, measured: Measured, rooms: Path) -> Spent:
    """One run of a command on one ledger; what writes gets a copy, prepared by what has to be done before."""
    with tempfile.TemporaryDirectory(dir=rooms) as room:
        folder = Path(room)
        path = ledger
        if measured.kind == "write":
            path = folder / "soap.db"
            shutil.copyfile(ledger, path)
        facts = Facts(path, folder)
        for before in measured.before:
            words = filled(before, facts)
            if words is None:
                return Spent(None, "nothing there")
            done = program.spend([*ON, str(path), *words], folder)
            if done.seconds is None:
                return Spent(None, f"before it, {' '.join(words[:2])}: {done.why}")
        words = filled(measured.words, facts)
        return program.spend([*ON, str(path), *words], folder) if words else Spent(None, "nothing there")


def filled(template: str, facts: Facts) -> list[str] | None:
    """The words of a command with the ledger's own codes; None where it has none of that kind."""
    words = []
    for one in shlex.split(template):
        names = [name for _, name, _, _ in string.Formatter().parse(one) if name is not None]
        for name in names:
            value = facts.value(name)
            if value is None:
                return None
            one = one.replace(f"{{{name}}}", value, 1)
        words += one.split() if names and one.startswith("--") else [one]  # as the lines that are read from the scale
    return words


def wanted(tree: list[str], only: list[str], kinds: list[str]) -> Iterator[tuple[str, Measured]]:
    """What is to be measured, in the order of the program's help, with the words it is printed under."""
    for command in tree:
        for one in COMMANDS.get(command, ()):
            if (not only or command in only) and (not kinds or one.kind in kinds):
                yield one.words.replace("{", "").replace("}", ""), one


def sizes(path: Path) -> str:
    """What a ledger holds."""
    raw = sqlite3.connect(f"file:{path}?mode=ro", uri=True)
    counts = [raw.execute(f"SELECT count(*) FROM {table}").fetchone()[0] for table in ("movement", "entry", "batch")]
    raw.close()
    return f"{counts[0]} movements, {counts[1]} entries, {counts[2]} batches, {path.stat().st_size / 1e6:.1f} MB"


def ledgers(program: Program, years: list[int], workshops: Path, folder: Path) -> dict[str, Path]:
    """The season, played now, and the workshops, made where they are not there yet."""
    asked = [sys.executable, "-c", RUN, "demo", str(folder / "season"), "--on", SEASON_ENDS]
    subprocess.run(asked, env=program.environment, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    found = {"season": folder / "season" / "soap.db"}
    for one in years:
        room = workshops / f"{one}y"
        if not (room / "soap.db").exists():
            maker = HERE / "tests" / "benchmarks" / "workshop.py"
            subprocess.run([sys.executable, str(maker), str(room), "--years", str(one)], check=True)
        found[f"{one} years"] = room / "soap.db"
    return found


def shown(runs: list[Spent]) -> str:
    """A cell of the table."""
    seconds = [one.seconds for one in runs if one.seconds is not None]
    if seconds:
        return f"{statistics.median(seconds):.2f}"
    why = runs[0].why
    return why if why.startswith(("over", "nothing")) else why.split(":")[0]


def measure(
    program: Program, found: dict[str, Path], asked: list[tuple[str, Measured]], rounds: int, rooms: Path
) -> None:
    """Run everything and print the table line by line, then what was refused."""
    wide = max(len(words) for words, _ in asked) if asked else 10
    wide = min(wide, 64)
    print(f"{'command':{wide}}  kind " + "".join(f"{name:>14}" for name in found), flush=True)
    refused = []
    for words, one in asked:
        runs: dict[str, list[Spent]] = {name: [] for name in found}
        for _ in range(rounds):
            for name, path in found.items():
                if not runs[name] or (runs[name][0].seconds or LONG) < LONG:
                    runs[name].append(run_once(program, path, one, rooms))
        print(
            f"{words[:wide]:{wide}}  {one.kind:5}" + "".join(f"{shown(cell):>14}" for cell in runs.values()), flush=True
        )
        refused += [f"  {words} ({name}): {cell[0].why}" for name, cell in runs.items() if ":" in cell[0].why]
    print("\n".join(["", "Refused:", *refused] if refused else []))


def main() -> None:
    """Measure what was asked for."""
    parser = argparse.ArgumentParser(description="What every command costs on ledgers of several sizes.")
    parser.add_argument("--years", type=int, nargs="*", default=[2, 8])
    parser.add_argument("--workshops", type=Path, default=Path(tempfile.gettempdir()) / "workshops")
    parser.add_argument("--only", nargs="+", default=[], metavar="COMMAND")
    parser.add_argument("--kind", nargs="+", default=[], choices=["list", "view", "paper", "write", "check"])
    parser.add_argument("--rounds", type=int, default=3)
    parser.add_argument("--limit", type=int, default=120, help="CPU seconds after which a command is stopped")
    parser.add_argument("--program", type=Path, default=HERE, help="the checkout that is measured")
    asked = parser.parse_args()
    program = Program(asked.program.resolve(), asked.limit)
    tree = json.loads(program.python(TREE))
    memory = Path("/dev/shm")
    with tempfile.TemporaryDirectory(dir=memory if memory.is_dir() else None) as folder:
        found = ledgers(program, asked.years, asked.workshops, Path(folder))
        for name, path in found.items():
            print(f"{name}: {sizes(path)}")
        print(f"CPU seconds, median of {asked.rounds}; over {LONG:.0f} s once; limit {asked.limit} s\n")
        measure(program, found, list(wanted(tree, asked.only, asked.kind)), asked.rounds, Path(folder))
    if left := [one for one in tree if one not in COMMANDS]:
        print(f"Not measured: {', '.join(left)}.")
    if gone := [one for one in COMMANDS if one not in tree]:
        print(f"Known to this benchmark and no longer in the program: {', '.join(gone)}.")


if __name__ == "__main__":
    main()
