"""How answers are shown: a sentence, a table, JSON, a question."""

import codecs
import io
import json
import os
import re
import shutil
import sys
import textwrap
from collections.abc import Collection, Iterable, Sequence
from dataclasses import fields, is_dataclass
from datetime import date
from typing import IO, Any

import typer

from ledger.cli.kit.waiting import let_go
from ledger.errors import BadInput, NotShown
from ledger.units.signs import composed, escaped, masked, refuse_unseen
from ledger.units.wording import count as count

_GLUE = "\ue000"  # a private sign that no text holds
_UNIT = re.compile(r"(\d) (?=(?:%|g|kg|oz|lb|mL|fl oz|°C|°F|mg)(?:\W|$))")


# What stands for a sign that a screen cannot show; for any other its number, as on paper: [U+0142].
_PLAIN = {
    **{"→": "->", "−": "-", "≈": "about ", "≤": "<=", "≥": ">=", "×": "x", "–": "-", "…": "...", "\u00a0": " "},
    **{"°": "deg ", "±": "+/-", "•": "-", "‑": "-", "—": "-", "’": "'", "⁄": "/", "✓": "OK"},
}
_LEAST_WRAPPED = 12  # no column of a table is made narrower
_numbered: list[str] = []  # the signs of this run that were shown by their number


def show_plainly() -> None:
    """Let no answer end at a sign that the screen cannot show; once, before anything is said."""
    _numbered.clear()
    codecs.register_error("soapledger", _plain_sign)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="soapledger")


def _plain_sign(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    signs = error.object[error.start : error.end]
    _numbered.extend(one for one in signs if one not in _PLAIN)
    return "".join(_PLAIN.get(one) or f"[U+{ord(one):04X}]" for one in signs), error.end


def say_numbered() -> None:
    """Where a sign was shown by its number, say so beside the answer; last of all."""
    if _numbered:
        warn(f"This screen lacks some signs; each stands by its number in Unicode, as [U+{ord(_numbered[0]):04X}].")


def say(text: str = "") -> None:
    """One line of the answer, on standard output.

    Where its reader has seen enough (| head) the rest is not shown and the work goes on. Raises NotShown when it
    cannot be written, as on a full disk.
    """
    _say(masked(text))


def _say(text: str) -> None:
    try:
        print(text, flush=True)
    except BrokenPipeError:
        hush(sys.stdout)
    except OSError as error:
        hush(sys.stdout)
        raise NotShown(f"The answer could not be shown to its end ({error.strerror}).") from error


def hush(stream: IO[str]) -> None:
    """Send what else goes to a stream nowhere: it has failed, and would fail again when the program ends."""
    try:
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
    except (OSError, ValueError):  # a stream of a test, which has no number
        return


def say_next(text: str) -> None:
    """Sentences that end with a command to copy, line by line: wrapped, a command that is long on a line of its own."""
    for line in text.split("\n"):
        sentence, begins, command = line.partition("soapledger ")
        if len(line) <= screen_width() or not begins:
            say_wrapped(line)
            continue
        if sentence.strip():
            say_wrapped(sentence.strip())
        say(f"  {begins}{command}")


def say_wrapped(text: str, *, indent: str = "", first: str | None = None) -> None:
    """A longer text, wrapped to the width of the screen; `first` stands before its first line."""
    wide = screen_width()
    glued = _UNIT.sub(lambda found: found[1] + _GLUE, text)  # a number stays on the line of its unit
    lead = indent if first is None else first
    lines = textwrap.fill(glued, wide, initial_indent=lead, subsequent_indent=indent, break_on_hyphens=False)
    say(lines.replace(_GLUE, " "))


def say_marked(text: str) -> None:
    """What is to be looked at, marked beside the answer, and wrapped."""
    say_wrapped(text, first="  ! ", indent="    ")


def warn(text: str) -> None:
    """One line beside the answer, on standard error; where that cannot be written, the answer still is."""
    try:
        print(masked(text), file=sys.stderr, flush=True)
    except OSError:
        hush(sys.stderr)


def on_screen() -> bool:
    """Whether a person reads the answer; else a line stays whole, to be searched."""
    return sys.stdout.isatty()


def screen_width() -> int:
    """How many signs a line of the screen holds: 80 where that is not known."""
    return max(40, shutil.get_terminal_size((80, 24)).columns)


def table(
    headers: Sequence[str],
    rows: Sequence[Sequence[str]],
    *,
    right: Collection[int] = (),
    wraps: Collection[int] = (),
) -> None:
    """A plain table, columns in `right` set to the right; empty columns are left out.

    Where it is wider than the screen, the texts in the columns `wraps` go on below themselves. Nothing more is read for
    the answer: whoever pages through a long one keeps no writer out.
    """
    let_go()
    rows = [tuple(map(masked, row)) for row in rows]
    kept = [i for i in range(len(headers)) if any(row[i] for row in rows)]
    widths = {i: max(len(headers[i]), *(len(row[i]) for row in rows)) for i in kept}

    over = sum(widths.values()) + 2 * len(kept) - screen_width()
    narrow = [i for i in kept if i in wraps]
    while over > 0 and (widest := max(narrow, key=lambda i: widths[i], default=None)) is not None:
        if widths[widest] <= max(_LEAST_WRAPPED, len(headers[widest])):
            break
        widths[widest] -= 1
        over -= 1

    def line(cells: Sequence[str]) -> str:
        return "  ".join(cells[i].rjust(widths[i]) if i in right else cells[i].ljust(widths[i]) for i in kept).rstrip()

    say("  " + line(headers))
    for row in rows:
        lines = {i: _below(row[i], widths[i]) for i in narrow if len(row[i]) > widths[i]}
        for number in range(max((len(one) for one in lines.values()), default=1)):
            cells = [
                (lines[i][number] if number < len(lines[i]) else "") if i in lines else cell if number == 0 else ""
                for i, cell in enumerate(row)
            ]
            say("  " + line(cells))


def _below(text: str, wide: int) -> list[str]:
    """A text in lines of a width, a number on the line of what it counts."""
    glued = re.sub(r"(?<=\d) (?=[^\W\d])", _GLUE, text)
    return [line.replace(_GLUE, " ") for line in textwrap.wrap(glued, wide, break_on_hyphens=False)]


def plain(value: Any) -> Any:
    """A view as plain data for JSON: dates in ISO form, tuples as lists, what has fields by field."""
    if is_dataclass(value) and not isinstance(value, type):
        shown = (field for field in fields(value) if not field.metadata.get("inner"))  # inner: a means, not an answer
        return {field.name: plain(getattr(value, field.name)) for field in shown}
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, dict):
        return {str(key): plain(one) for key, one in value.items()}
    if isinstance(value, tuple) and hasattr(value, "_asdict"):
        return plain(value._asdict())
    if isinstance(value, (list, tuple, set, frozenset)):
        return [plain(one) for one in value]
    return value


def out_json(value: Any) -> None:
    """The answer as JSON on standard output, with no sign lost: escaped, as JSON does, where not all can be shown."""
    let_go()
    every = (getattr(sys.stdout, "encoding", None) or "").lower().startswith("utf")
    _say(escaped(json.dumps(plain(value), ensure_ascii=not every, indent=2)))


def confirm(question: str, yes: bool) -> None:
    """Ask before going on. Stops the run on no; raises BadInput where nobody can be asked."""
    if yes:
        return
    if not can_answer():
        raise BadInput(f"{question} Say so with --yes.")
    let_go()
    if not typer.confirm(masked(question), err=True):
        raise typer.Abort


def warn_of(doubts: Iterable[str], yes: bool) -> None:
    """Say what to look at twice, and ask whether it is booked all the same; raises as `confirm`."""
    said = tuple(doubts)
    for sentence in said:
        warn(sentence)
    if said:
        confirm("Book it all the same?", yes)


def can_answer() -> bool:
    """Whether someone can be asked."""
    return sys.stdin is not None and (sys.stdin.isatty() or _fed())  # None: it was closed


def _fed() -> bool:
    """Whether answers come from a file or a test in place of the keyboard."""
    try:
        return sys.stdin.readable() and sys.stdin.seekable()
    except (OSError, ValueError):
        return False


def ask(question: str, *, default: str | None = None) -> str:
    """Ask for one value; Enter takes the default where there is one."""
    let_go()
    while True:
        answer: str = typer.prompt(masked(question), default=default, err=True, show_default=bool(default))
        try:
            refuse_unseen(answer.strip(), "What you typed")
        except BadInput as error:
            warn(f"  {error}")
        else:
            return composed(answer.strip())
