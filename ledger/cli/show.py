"""How answers are shown: a sentence, a table, JSON, a question."""

import re
import sys
from collections.abc import Collection, Sequence
from dataclasses import fields, is_dataclass
from datetime import date
from typing import Any

import typer

from ledger.errors import BadInput, Refused

_GLUE = "\ue000"  # a private sign that no text holds
_UNIT = re.compile(r"(\d) (?=(?:%|g|kg|oz|lb|mL|fl oz|°C|°F|mg)(?:\W|$))")


def say(text: str = "") -> None:
    """One line of the answer, on standard output."""
    typer.echo(text)


def say_wrapped(text: str, *, indent: str = "", first: str = "") -> None:
    """A longer text, wrapped to the width of the screen; `first` stands before its first line."""
    import shutil
    import textwrap

    wide = max(40, shutil.get_terminal_size((80, 24)).columns)
    glued = _UNIT.sub(lambda found: found[1] + _GLUE, text)  # a number stays on the line of its unit
    lines = textwrap.fill(glued, wide, initial_indent=first or indent, subsequent_indent=indent, break_on_hyphens=False)
    say(lines.replace(_GLUE, " "))


def warn(text: str) -> None:
    """One line beside the answer, on standard error."""
    typer.echo(text, err=True)


def table(headers: Sequence[str], rows: Sequence[Sequence[str]], *, right: Collection[int] = ()) -> None:
    """A plain table, columns in `right` set to the right; empty columns are left out."""
    kept = [i for i in range(len(headers)) if any(row[i] for row in rows)]
    widths = {i: max(len(headers[i]), *(len(row[i]) for row in rows)) for i in kept}

    def line(cells: Sequence[str]) -> str:
        return "  ".join(cells[i].rjust(widths[i]) if i in right else cells[i].ljust(widths[i]) for i in kept).rstrip()

    say("  " + line(headers))
    for row in rows:
        say("  " + line(row))


def plain(value: Any) -> Any:
    """A view as plain data for JSON: dates in ISO form, tuples as lists, dataclasses by field."""
    if is_dataclass(value) and not isinstance(value, type):
        return {field.name: plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, dict):
        return {str(key): plain(one) for key, one in value.items()}
    if isinstance(value, (list, tuple, set, frozenset)):
        return [plain(one) for one in value]
    return value


def out_json(value: Any) -> None:
    """The answer as JSON on standard output."""
    import json

    typer.echo(json.dumps(plain(value), ensure_ascii=False, indent=2))


def confirm(question: str, yes: bool) -> None:
    """Ask before going on. Raises Refused on no, BadInput where nobody can be asked."""
    if yes:
        return
    if not sys.stdin.isatty() and not _fed():
        raise BadInput(f"{question} Say so with --yes.")
    if not typer.confirm(question, err=True):
        raise Refused("Stopped; nothing written.")


def _fed() -> bool:
    """Whether answers come from a file or a test in place of the keyboard."""
    try:
        return sys.stdin.readable() and sys.stdin.seekable()
    except (OSError, ValueError):
        return False


def ask(question: str, *, default: str | None = None) -> str:
    """Ask for one value; Enter takes the default where there is one."""
    answer: str = typer.prompt(question, default=default, err=True, show_default=bool(default))
    return answer.strip()


def count(number: int, one: str, many: str | None = None) -> str:
    """A number with its noun: 1 bar, 2 bars."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def amount(quantity: int, counted: bool, units: str) -> str:
    """Pieces as a number, anything else as a mass."""
    from ledger.domain.quantity import show_mass

    return str(quantity) if counted else show_mass(quantity, units)
