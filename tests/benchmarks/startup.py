"""How long commands take from outside, side by side in one run.

    python tests/benchmarks/startup.py [ROUNDS]

Every round times each command once, in turn, so that a slower minute of the machine touches all of
them alike; medians are printed, and the ratios the goals are stated in.
"""

import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

PYTHON = sys.executable
SOAPLEDGER = str(Path(PYTHON).with_name("soapledger"))
ONE_PARAMETER = """
import typer
app = typer.Typer(rich_markup_mode=None, pretty_exceptions_enable=False, add_completion=False)
@app.command()
def show(word: str) -> None:
    print(word)
app()
"""


def commands(folder: Path) -> dict[str, list[str]]:
    """What is timed, by the name it is printed under."""
    one = folder / "one_parameter.py"
    one.write_text(ONE_PARAMETER, encoding="utf-8")
    ledger = ["--ledger", str(folder / "season" / "soap.db")]
    return {
        "python -c pass": [PYTHON, "-c", "pass"],
        "import typer": [PYTHON, "-c", "import typer"],
        "one-parameter typer command": [PYTHON, str(one), "soap"],
        "import sqlmodel": [PYTHON, "-c", "import sqlmodel"],
        "soapledger --version": [SOAPLEDGER, "--version"],
        "soapledger --help": [SOAPLEDGER, "--help"],
        "soapledger stock": [SOAPLEDGER, *ledger, "stock"],
        "soapledger recall lot": [SOAPLEDGER, *ledger, "recall", "lot", recall_number()],
        "one write (supplier add)": [SOAPLEDGER, *ledger, "supplier", "add"],
    }


def recall_number() -> str:
    """The supplier's lot number the demo answers, as its scenario names it."""
    import tomllib

    from ledger.reference.shipped import sample_data

    scenario = tomllib.loads((sample_data() / "soapworks.toml").read_text(encoding="utf-8"))
    return str(scenario["recall_example"])


def timed(argv: list[str]) -> float:
    """Wall seconds of one run; a run that fails stops the benchmark."""
    start = time.perf_counter()
    subprocess.run(argv, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - start


def main(rounds: int) -> None:
    """Time every command in turn and print the table."""
    folder = Path(tempfile.mkdtemp(prefix="soapledger-bench-"))
    try:
        subprocess.run(
            [SOAPLEDGER, "demo", str(folder / "season")],
            check=True,
            stdout=subprocess.DEVNULL,
        )
        timings: dict[str, list[float]] = {name: [] for name in commands(folder)}
        for turn in range(rounds + 1):
            for name, argv in commands(folder).items():
                unique = [f"Benchmark supplier {turn}"] if name.startswith("one write") else []
                seconds = timed([*argv, *unique])
                if turn:  # the first round only warms the disk
                    timings[name].append(seconds)
    finally:
        shutil.rmtree(folder)
    median = {name: statistics.median(times) for name, times in timings.items()}
    for name, times in timings.items():
        print(f"{name:30} median {median[name] * 1000:7.0f} ms  min {min(times) * 1000:7.0f} ms")
    goals = (
        ("soapledger --version", "import typer", 1.5),
        ("soapledger --help", "import typer", 1.5),
        ("soapledger stock", "one-parameter typer command", 1.25),
        ("soapledger recall lot", "one-parameter typer command", 1.25),
        ("one write (supplier add)", "import sqlmodel", 1.4),
    )
    for name, base, goal in goals:
        print(f"{name} / {base} = {median[name] / median[base]:.2f} (goal {goal})")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 9)
