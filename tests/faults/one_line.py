"""Puts one-line faults into a copy of the program, one at a time, and says which no test finds.

    python tests/faults/one_line.py --list            what faults there are
    python tests/faults/one_line.py --run             all of them, minutes of work; never part of an ordinary run
    python tests/faults/one_line.py --run --only cure those with that word in their file, text or tests
    python tests/faults/one_line.py --run --jobs 2    so many at once, each in a copy of its own

A fault is found when a test that ought to find it fails; before that, those tests must pass without it (--sure trusts
that they do). Ends with 1 where a fault was found by no test, or where its text does not stand in the program any
more. It forks, so it runs on Linux and macOS.
"""

import argparse
import importlib
import os
import shutil
import signal
import sys
import tempfile
from collections import Counter
from collections.abc import Iterable, Iterator
from compileall import compile_dir
from dataclasses import dataclass
from importlib.util import cache_from_source
from pathlib import Path

import pytest
from one_line_inner import INNER
from one_line_outer import OUTER
from one_line_shop import SHOP
from one_line_stall import STALL

# What the tests import beside the program and is slow to load.
LOADED_ONCE = ("hypothesis", "typer.testing", "freezegun", "sqlmodel", "reportlab.platypus", "icalendar", "xdist")
ROOT = Path(__file__).resolve().parents[2]
FOUND, NOT_FOUND, NO_MORE, NO_TEST = "found", "NOT FOUND", "does not apply", "no sound test"
FAILED = 1  # pytest: tests were run, and some failed
SECONDS = 300  # for one fault; a fault that hangs a test is one that it finds


@dataclass(frozen=True)
class Fault:
    """A text of one file that is written otherwise, and the test files that ought to find it."""

    file: str
    old: str
    new: str
    tests: tuple[str, ...]

    @property
    def words(self) -> str:
        """The fault on one line."""
        return f"{self.file.removeprefix('ledger/')}: {' '.join(self.old.split())}  ->  {' '.join(self.new.split())}"


def all_faults() -> Iterator[Fault]:
    """Every fault of the lists; a file's tests are named once for all its faults, or behind one of them."""
    for (file, tests), lines in (*INNER.items(), *OUTER.items(), *STALL.items(), *SHOP.items()):
        for old, new, *own in lines:
            named = " ".join(own) or tests
            yield Fault(f"ledger/{file}", old, new, tuple(f"tests/{one}" for one in named.split()))


def copy_of(folder: Path) -> Path:
    """What the tests need of the tree, compiled."""
    for name in ("ledger", "tests", "templates", "sample_data"):
        shutil.copytree(ROOT / name, folder / name)
    for name in ("pyproject.toml", "README.md", "DEVELOPERS.md"):
        shutil.copy2(ROOT / name, folder / name)
    compile_dir(folder / "ledger", quiet=2)
    return folder


def start(tree: Path, tests: tuple[str, ...]) -> int:
    """Fork a process that runs those test files of a copy; returns its number.

    What the tests import beside the program itself is loaded once, in the parent, so that one fault costs seconds.
    """
    if number := os.fork():
        return number
    code = 3  # of pytest: something went wrong in it
    try:
        os.chdir(tree)
        os.environ["PYTHONPATH"] = str(tree)
        sys.path[:0] = [str(tree)]
        sys.dont_write_bytecode = False  # else every run compiles the tests again
        nowhere = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(nowhere, stream)
        signal.alarm(SECONDS)
        code = pytest.main(["-x", "-q", "-n", "0", "-p", "no:cacheprovider", *tests])
    finally:
        os._exit(code)


def run_tests(trees: list[Path], work: Iterable[tuple[Fault | None, tuple[str, ...]]]) -> Iterator[tuple[int, int]]:
    """Run each piece of work in whichever copy is free; yields (its place in the list, what pytest ended with)."""
    busy: dict[int, tuple[int, Path, Fault | None]] = {}
    for place, (fault, tests) in enumerate(work):
        if not trees:
            yield _ended(busy, trees)
        tree = trees.pop()
        if fault:
            rewrite(tree / fault.file, fault.old, fault.new)
        busy[start(tree, tests)] = place, tree, fault
    while busy:
        yield _ended(busy, trees)


def _ended(busy: dict[int, tuple[int, Path, Fault | None]], trees: list[Path]) -> tuple[int, int]:
    number, status = os.wait()
    place, tree, fault = busy.pop(number)
    if fault:
        rewrite(tree / fault.file, fault.new, fault.old, whole=(ROOT / fault.file).read_text(encoding="utf-8"))
    trees.append(tree)
    code = os.waitstatus_to_exitcode(status)
    return place, FAILED if code == -signal.SIGALRM else code


def rewrite(path: Path, old: str, new: str, *, whole: str | None = None) -> None:
    """Write a text otherwise, or as it was (`whole`); what was compiled of it goes."""
    text = whole if whole is not None else path.read_text(encoding="utf-8").replace(old, new)
    path.write_text(text, encoding="utf-8")
    Path(cache_from_source(str(path))).unlink(missing_ok=True)


def applies(fault: Fault) -> bool:
    """Whether its text stands in the program, once."""
    return (ROOT / fault.file).read_text(encoding="utf-8").count(fault.old) == 1


def run_all(faults: list[Fault], jobs: int, *, sure: bool) -> Counter[str]:
    """Try each fault and print what became of it."""
    said: Counter[str] = Counter()

    def say(verdict: str, fault: Fault) -> None:
        said[verdict] += 1
        print(f"{verdict:<14}  {fault.words}", flush=True)

    with tempfile.TemporaryDirectory() as folder:
        trees = [copy_of(Path(folder, str(number))) for number in range(jobs)]
        files = [] if sure else sorted({one for fault in faults for one in fault.tests})
        broken = {files[place] for place, code in run_tests(trees, ((None, (one,)) for one in files)) if code}
        if broken:
            print(f"Without any fault these do not pass: {', '.join(sorted(broken))}", flush=True)
        sound = []
        for fault in faults:
            if not applies(fault):
                say(NO_MORE, fault)
            elif broken & {*fault.tests}:
                say(NO_TEST, fault)
            else:
                sound.append(fault)
        for place, code in run_tests(trees, ((one, one.tests) for one in sound)):
            say(FOUND if code == FAILED else NOT_FOUND, sound[place])
    return said


def main() -> int:
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--run", action="store_true", help="try the faults")
    parser.add_argument("--list", action="store_true", help="only list them")
    parser.add_argument("--only", metavar="WORD", default="", help="those with that word in file, text or tests")
    parser.add_argument(
        "--sure", action="store_true", help="their tests passed just now; do not run them without a fault"
    )
    parser.add_argument("--jobs", type=int, default=1, help="so many at once (1)")
    asked = parser.parse_args()
    faults = [one for one in all_faults() if asked.only in f"{one.words} {' '.join(one.tests)}"]
    if asked.list:
        for one in faults:
            print(f"{one.words}  [{', '.join(one.tests)}]")
        print(f"{len(faults)} faults.")
        return 0
    if not asked.run:
        parser.print_help()
        return 2
    for name in LOADED_ONCE:
        importlib.import_module(name)
    said = run_all(faults, max(asked.jobs, 1), sure=asked.sure)
    print(f"{len(faults)} faults: {', '.join(f'{number} {verdict}' for verdict, number in said.most_common())}.")
    return 0 if faults and said[FOUND] == len(faults) else 1


if __name__ == "__main__":
    sys.exit(main())
