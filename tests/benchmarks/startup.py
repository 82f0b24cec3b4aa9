"""What commands cost from outside in CPU time, side by side in one run.

    python tests/benchmarks/startup.py [ROUNDS]

Every round runs each command once, in turn, so that a slower minute of the machine touches all of them alike; the
ratio of a goal is taken within each round, and the median of the rounds is printed.
"""

import json
import os
import resource
import shutil
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

PYTHON = sys.executable
SOAPLEDGER = str(Path(PYTHON).with_name("soapledger"))
TYPER, ONE, SQLMODEL = "import typer", "one-parameter typer command", "import sqlmodel"
ONE_PARAMETER = """
import typer
app = typer.Typer(rich_markup_mode=None, pretty_exceptions_enable=False, add_completion=False)
@app.command()
def show(word: str) -> None:
    print(word)
app()
"""
GOALS = {
    "--version": (TYPER, 1.25),
    "--help": (TYPER, 1.25),
    "stock": (ONE, 0.8),
    "batch list": (ONE, 0.8),
    "recall lot": (ONE, 0.8),
    "cure list": (ONE, 1.1),
    "label check": (ONE, 1.1),
    "batch show": (ONE, 1.1),
    "supplier add": (SQLMODEL, 1.3),
    "batch note": (SQLMODEL, 1.3),
}


def a_batch(ledger: str) -> str:
    """The first batch whose bars were released."""
    listed = subprocess.run(
        [SOAPLEDGER, "--ledger", ledger, "batch", "list", "--json"],
        check=True,
        capture_output=True,
    )
    return str(next(one["batch"]["code"] for one in json.loads(listed.stdout) if one["status"] == "released"))


def commands(folder: Path, batch: str, turn: int) -> dict[str, list[str]]:
    """What is timed, by the name it is printed under."""
    one = folder / "one_parameter.py"
    one.write_text(ONE_PARAMETER, encoding="utf-8")
    words = {
        "stock": ["stock"],
        "batch list": ["batch", "list"],
        "recall lot": ["recall", "lot", recall_number()],
        "cure list": ["cure", "list"],
        "label check": ["label", "check", batch],
        "batch show": ["batch", "show", batch],
        "supplier add": ["supplier", "add", f"Benchmark supplier {turn}"],
        "batch note": ["batch", "note", batch, f"note {turn}"],
    }
    ledger = str(folder / "season" / "soap.db")
    return {
        "python -c pass": [PYTHON, "-c", "pass"],
        TYPER: [PYTHON, "-c", "import typer"],
        ONE: [PYTHON, str(one), "soap"],
        SQLMODEL: [PYTHON, "-c", "import sqlmodel"],
        "--version": [SOAPLEDGER, "--version"],
        "--help": [SOAPLEDGER, "--help"],
        **{name: [SOAPLEDGER, "--ledger", ledger, *one_command] for name, one_command in words.items()},
    }


def recall_number() -> str:
    """The supplier's lot number the demo answers, as its scenario names it."""
    import tomllib

    from ledger.reference.shipped import sample_data

    scenario = tomllib.loads((sample_data() / "soapworks.toml").read_text(encoding="utf-8"))
    return str(scenario["recall_example"])


def spent() -> float:
    """CPU seconds that ended processes of this one took."""
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def timed(argv: list[str]) -> float:
    """CPU seconds of one run; a run that fails stops the benchmark."""
    before = spent()
    subprocess.run(
        argv,
        check=True,
        stdout=subprocess.DEVNULL,
        env={**os.environ, "PYTHONDONTWRITEBYTECODE": ""},
    )
    return spent() - before


def main(rounds: int) -> None:
    """Run every command in turn and print the table."""
    folder = Path(tempfile.mkdtemp(prefix="soapledger-bench-"))
    try:
        print(f"demo: {timed([SOAPLEDGER, 'demo', str(folder / 'season')]):.2f} s of CPU (goal 6)")
        batch = a_batch(str(folder / "season" / "soap.db"))
        timings: dict[str, list[float]] = {name: [] for name in commands(folder, batch, 0)}
        for turn in range(rounds + 1):
            for name, argv in commands(folder, batch, turn).items():
                seconds = timed(argv)
                if turn:  # the first round only warms the disk
                    timings[name].append(seconds)
    finally:
        shutil.rmtree(folder)
    for name, times in timings.items():
        line = f"{name:30} {statistics.median(times) * 1000:6.0f} ms"
        if name in GOALS:
            base, goal = GOALS[name]
            ratio = statistics.median(one / other for one, other in zip(times, timings[base], strict=True))
            line += f"   {ratio:5.2f} x {base} (goal {goal})"
        print(line)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 9)
