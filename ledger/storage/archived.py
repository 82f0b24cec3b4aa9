"""The ledger as plain text, from which it can be made again row by row: entries, people, papers."""

import hashlib
import json
import re
import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from functools import cache
from itertools import zip_longest
from pathlib import Path
from typing import Any, NamedTuple

from ledger.errors import BadInput, DamagedLedger, Refused
from ledger.fileformat import SCHEMA_VERSION
from ledger.storage.chain import GENESIS, Head, fact_tables, lines_by_entry
from ledger.storage.migrations import migrate

FORMAT = 1
_CONTENT = "attached_content"  # the papers, each a file of its own
_SEEN = 5  # differences that are named; one more would say nothing new


class Sealed(NamedTuple):
    """How far a ledger goes: its last entry and that entry's digest, which stands for all before it."""

    entries: int
    head: str


def write_data(rows: sqlite3.Connection, folder: Path) -> Sealed:
    """Write every row of a ledger into a folder: the entries with their lines as hashed, people apart, papers as files.

    What was erased is in no row any more, so it is not written either.
    """
    ours = set(_ours())
    written = lines_by_entry(rows, [table for table in fact_tables(rows) if table in ours])
    ahead = next(written, None)
    sealed = Sealed(0, GENESIS)
    with (folder / "entries.jsonl").open("w", encoding="utf-8", newline="\n") as out:
        for row in rows.execute("SELECT * FROM entry ORDER BY id"):
            lines: Sequence[str] = ()
            if ahead is not None and ahead[0] == row["id"]:
                lines, ahead = ahead[1], next(written, None)
            head = {"entry" if name == "id" else name: row[name] for name in (*Head.__dataclass_fields__, "digest")}
            out.write(_line(head | {"lines": list(lines)}))
            sealed = Sealed(row["id"], row["digest"])
    with (folder / "people.jsonl").open("w", encoding="utf-8", newline="\n") as out:
        for table in _apart(rows):
            for row in rows.execute(f"SELECT * FROM main.{table} ORDER BY 1"):
                known = {name: row[name] for name in row.keys() if row[name] is not None}  # noqa: SIM118
                out.write(_line({"table": table, "row": known}))
    _write_papers(rows, folder / "papers")
    version = rows.execute("PRAGMA user_version").fetchone()[0]
    about = {"format": FORMAT, "tables": version, "entries": sealed.entries, "head": sealed.head}
    (folder / "ledger.json").write_text(json.dumps(about, indent=2) + "\n", encoding="utf-8")
    return sealed


def _line(value: dict[str, Any]) -> str:
    return json.dumps(value, ensure_ascii=False) + "\n"


def _apart(rows: sqlite3.Connection) -> list[str]:
    """The tables whose rows stand in no entry, so that they may be erased; papers are files, entries have their own."""
    rest = set(_ours()) - set(fact_tables(rows)) - {"entry", _CONTENT}
    return sorted(rest & {row[0] for row in rows.execute("SELECT name FROM main.sqlite_schema WHERE type = 'table'")})


@cache
def _ours() -> tuple[str, ...]:
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as clean:
        migrate(clean)
        found = clean.execute("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
        return tuple(row[0] for row in found)


_ERASES_PAPERS = 7  # the first format that may have erased one: its content is nothing, and no file
_ERASED_PAPERS = f"""
INSERT INTO {_CONTENT} (digest, content)
SELECT DISTINCT a.digest, x'' FROM blanked b JOIN attachment a ON a.id = b.of_row
WHERE b.of_table = 'attachment' AND b.of_column = 'content'
"""


def _write_papers(rows: sqlite3.Connection, folder: Path) -> None:
    folder.mkdir()
    named = rows.execute("SELECT digest, min(name) FROM main.attachment GROUP BY digest").fetchall()
    for digest, name in named:
        kept = rows.execute(f"SELECT content FROM main.{_CONTENT} WHERE digest = ?", (digest,)).fetchone()
        if kept is not None and kept[0]:  # one that was erased has no content any more
            (folder / paper_file(digest, name)).write_bytes(kept[0])


def paper_file(digest: str, name: str) -> str:
    """The name of a paper's file: its digest, with the ending it came with, so that it opens."""
    ending = re.search(r"\.[A-Za-z0-9]{1,8}$", name)
    return digest + (ending[0].lower() if ending else "")


@contextmanager
def rebuilt(folder: Path, into: Path | None = None) -> Iterator[tuple[sqlite3.Connection, Sealed]]:
    """The ledger that a folder holds, made again in an empty file, or in memory, as long as the block lasts.

    Raises BadInput for a folder that is no such one, Refused for one of a newer program, DamagedLedger for one that
    cannot be read to its end.
    """
    with closing(sqlite3.connect(into or ":memory:", isolation_level=None)) as raw:
        raw.row_factory = sqlite3.Row
        sealed = _rebuild(folder, raw)
        migrate(raw)
        yield raw, sealed


def _rebuild(folder: Path, raw: sqlite3.Connection) -> Sealed:
    try:
        about = json.loads((folder / "ledger.json").read_text(encoding="utf-8"))
        number, version = int(about["format"]), int(about["tables"])
    except (OSError, ValueError, KeyError, TypeError):
        raise BadInput(
            f"{folder.parent} holds no ledger that soapledger archive wrote (no data/ledger.json)."
        ) from None
    if number > FORMAT or version > SCHEMA_VERSION:
        raise Refused(f"{folder.parent} was written by a newer soapledger; install that one to read it.")
    migrate(raw, to=version)
    for (name,) in raw.execute("SELECT name FROM main.sqlite_schema WHERE type = 'trigger'").fetchall():
        # Rows come by table, not in the order they were written; `rebuilt` lays the guards once they are in.
        raw.execute(f"DROP TRIGGER {name}")
    raw.execute("BEGIN")
    sealed = _insert_all(folder, raw)
    if version >= _ERASES_PAPERS:
        raw.execute(_ERASED_PAPERS)
    raw.execute("COMMIT")
    if tuple(sealed) != (about.get("entries"), about.get("head")):
        raise DamagedLedger(f"{folder / 'entries.jsonl'} does not end where data/ledger.json says it does.")
    return sealed


def _insert_all(folder: Path, raw: sqlite3.Connection) -> Sealed:
    put = _Inserts(raw)
    sealed = Sealed(0, GENESIS)
    for place, entry in _read(folder / "entries.jsonl"):
        with _told(folder / "entries.jsonl", place):
            for line in entry.pop("lines"):
                table, _, text = line.partition(" ")
                put.row(table, json.loads(text))
            sealed = Sealed(entry.pop("entry"), entry["digest"])
            put.row("entry", {"id": sealed.entries, **entry})
    for place, one in _read(folder / "people.jsonl"):
        with _told(folder / "people.jsonl", place):
            put.row(one["table"], one["row"])
    for path in sorted((folder / "papers").iterdir()) if (folder / "papers").is_dir() else ():
        content = path.read_bytes()
        if hashlib.sha256(content).hexdigest() != path.name.partition(".")[0]:
            raise DamagedLedger(f"{path} is not the paper that was kept: its SHA-256 is another one.")
        put.row(_CONTENT, {"digest": path.name.partition(".")[0], "content": content})
    return sealed


class _Inserts:
    """Rows put into tables that are known, with columns that are known."""

    def __init__(self, raw: sqlite3.Connection) -> None:
        self._raw = raw
        self._columns: dict[str, list[str]] = {}
        for (table,) in raw.execute("SELECT name FROM sqlite_schema WHERE type = 'table'").fetchall():
            self._columns[table] = [row[1] for row in raw.execute(f"PRAGMA table_info({table})")]

    def row(self, table: str, values: dict[str, Any]) -> None:
        """Put one row in; what it does not name is empty. Raises ValueError for what is no table or column of ours."""
        columns = self._columns.get(table, [])
        if not columns or values.keys() - set(columns):
            raise ValueError(f"no such table or column: {table} {sorted(values.keys() - set(columns))}")
        named = ", ".join(f'"{one}"' for one in columns)
        self._raw.execute(
            f"INSERT INTO {table} ({named}) VALUES ({', '.join('?' * len(columns))})",
            [values.get(one) for one in columns],
        )


@contextmanager
def _told(path: Path, place: int) -> Iterator[None]:
    """What goes wrong in one line of a file is told with the file and the line."""
    try:
        yield
    except (ValueError, KeyError, TypeError, AttributeError, sqlite3.Error) as error:
        raise DamagedLedger(f"Line {place} of {path} is not as it was written ({error}).") from error


def _read(path: Path) -> Iterator[tuple[int, dict[str, Any]]]:
    """Every line of a file of JSON Lines with its number."""
    try:
        with path.open(encoding="utf-8", newline="\n") as file:
            for place, line in enumerate(file, 1):
                with _told(path, place):
                    found = json.loads(line)
                    if not isinstance(found, dict):
                        raise ValueError("not an object")
                yield place, found
    except (OSError, UnicodeDecodeError) as error:
        raise DamagedLedger(f"{path} cannot be read ({error}).") from error


def differences(rows: sqlite3.Connection, other: sqlite3.Connection, *, until: int) -> list[str]:
    """Where two ledgers of one format differ in what was written up to an entry, row by row; the first few are named.

    What the first has erased since is no difference.
    """
    found: list[str] = []
    facts = set(fact_tables(rows))
    erased = {row[0] for row in rows.execute("SELECT personal_id FROM main.erasure")}
    blanked = ",".join(map(str, blanked_since(rows, until)))
    apart = {
        "entry": f" AND id NOT IN ({blanked})",
        _CONTENT: f" AND digest NOT IN (SELECT digest FROM main.attachment WHERE entry_id IN ({blanked}))",
    }
    for table in _ours():
        within = {"entry": f"id <= {until}"}.get(table) or (
            f"entry_id <= {until}" if table in facts else _WITHIN.get(table, "1").format(until=until)
        )
        within += apart.get(table, f" AND entry_id NOT IN ({blanked})" if table in facts else "")
        query = f"SELECT * FROM main.{table} WHERE {within} ORDER BY 1"
        theirs = (tuple(row) for row in other.execute(query) if table != "personal_text" or row[0] not in erased)
        for one, two in zip_longest((tuple(row) for row in rows.execute(query)), theirs):
            if one != two:
                found.append(f"a row of {table} ({(one or two or ('',))[0]}) is not as in the ledger")
                break
    return found[:_SEEN]


def blanked_since(rows: sqlite3.Connection, until: int) -> list[int]:
    """The entries up to one of which a text was erased after it."""
    query = "SELECT DISTINCT of_entry FROM main.blanked WHERE entry_id > ?1 AND of_entry <= ?1 ORDER BY 1"
    return [row[0] for row in rows.execute(query, (until,))]


def erased_since(rows: sqlite3.Connection, other: sqlite3.Connection) -> int:
    """Of how many people the second holds details that the first has erased."""
    held = {row[0] for row in other.execute("SELECT personal_id FROM main.personal_text")}
    return len(held & {row[0] for row in rows.execute("SELECT personal_id FROM main.erasure")})


# What stands in no entry goes with what names it.
_WITHIN = {
    "personal_text": "personal_id IN (SELECT id FROM main.personal WHERE entry_id <= {until})",
    _CONTENT: "digest IN (SELECT digest FROM main.attachment WHERE entry_id <= {until})",
}
