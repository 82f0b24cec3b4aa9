"""How a command ends: with its answer in words or as JSON, or drawn to the file she named."""

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any, NamedTuple

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.show import out_json, say, say_next, table, warn


class Listed(NamedTuple):
    """A list in words: a sentence, a table, and what she can do next; or what to do while there is none."""

    head: str
    columns: Sequence[str]
    rows: Iterable[Sequence[str]]
    right: Collection[int] = ()
    wraps: Collection[int] = ()  # columns whose texts go on below themselves where the screen is too narrow
    none: str = ""  # said alone where nothing was found
    then: str = ""  # said last
    earlier: str = ""  # where earlier ones are left out, the command that shows them


class Paper(NamedTuple):
    """A file in place of the answer on the screen: what is said of it, how it is drawn, and where, if anywhere."""

    said: str
    draw: Callable[[], bytes]
    path: Path | None
    force: bool


def answer(
    found: Any, json: bool, words: Listed | Callable[[], object] | None = None, *, paper: Paper | None = None
) -> bool:
    """Give what was found: in the file she named, else as JSON where she asks for it, else in words.

    Without words it is given as JSON or not at all; returns whether it was given.
    """
    if paper and paper.path:
        loaded("documents.kit.files").write_file(paper.path, paper.draw(), force=paper.force)
        say(paper.said)
    elif json:
        out_json(found)
        if isinstance(words, Listed) and words.earlier:
            warn(f"Earlier ones: {words.earlier}")
    elif isinstance(words, Listed):
        _say_list(found, words)
    elif words:
        words()
    return bool(json or words)


@contextmanager
def paper_of_entry(here: Desk, output: Path | None, *, force: bool) -> Iterator[Callable[[bytes], None]]:
    """Takes the paper of what the block books, and gives it its name once that stands; raises as `drawn_with_entry`."""
    with loaded("documents.kit.files").drawn_with_entry(output, force=force) as put:
        yield put
    here.paper = output


def _say_list(found: Any, words: Listed) -> None:
    if not found and words.none:
        say_next(words.none)
        return
    say_next(words.head)
    table(words.columns, list(words.rows), right=words.right, wraps=words.wraps)
    if words.then:
        say_next(words.then)
    if words.earlier:
        say_next(f"Earlier ones: {words.earlier}")
