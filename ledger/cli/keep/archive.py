"""soapledger archive."""

import shlex
from collections.abc import Iterable
from pathlib import Path
from typing import Annotated

import typer

from ledger import __version__
from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.loading import loaded
from ledger.cli.kit.show import count, say, say_wrapped
from ledger.errors import BadInput, DamagedLedger
from ledger.rows.batch import BatchRow


def command(
    ctx: typer.Context,
    folder: Annotated[Path, typer.Argument(help="A new folder, e.g. on a memory stick.", metavar="DIR")],
    check: Annotated[bool, typer.Option("--check", help="Prove a folder written before against the ledger.")] = False,
    papers: Annotated[bool, typer.Option("--papers", help="Also the record of every batch as a PDF.")] = False,
) -> None:
    """Write the whole ledger as a folder that needs no program, in twenty years too, e.g. soapledger archive kept."""
    here = desk(ctx)
    if check:
        if papers:
            raise BadInput("--check reads a folder and --papers writes into one; leave one of them out.")
        _check(here, folder)
        return
    sealed = loaded("operations.keep.archive").keep_archive(
        here.rows(), folder, draw=lambda beside: _draw(here, beside, papers=papers)
    )
    say(f"{folder} holds {count(sealed.entries, 'entry', 'entries')}; begin with {folder / 'pages' / 'index.html'}")
    say_wrapped("People's names and telephone numbers stand in it; keep it where you keep the ledger.")
    say(f"To prove it against the ledger: {here.typed(f'archive --check {shlex.quote(str(folder))}')}")


def _draw(here: Desk, beside: Path, *, papers: bool) -> None:
    rows = here.rows()
    loaded("documents.keep.sheets").write_sheets(loaded("views.keep.sheets").sheets(rows), beside / "sheets")
    known = loaded("views.keep.everything").Everything(rows, program=__version__)
    loaded("documents.keep.pages").write_pages(known, beside, papers=papers)
    if papers:
        _print_records(here, known.batches.values(), beside / "records")


def _print_records(here: Desk, batches: Iterable[BatchRow], folder: Path) -> None:
    folder.mkdir()
    draw = loaded("documents.record.batch_record").draw_batch_record
    for batch in batches:
        record = loaded("views.record.record").batch_record(here.rows(), batch.code, program=__version__)
        (folder / f"batch-{batch.code}.pdf").write_bytes(draw(record))


def _check(here: Desk, folder: Path) -> None:
    found = loaded("operations.keep.archive").check_archive(here.rows(), folder)
    if found.findings:
        lines = "\n".join(f"  {one}." for one in found.findings)
        raise DamagedLedger(f"{folder} does not hold what was written in {here.path}:\n{lines}")
    but = f", but for {count(found.erased_in, 'entry', 'entries')} of which something was erased since"
    held = f"{folder} holds {count(found.entries, 'entry', 'entries')}, row by row as the ledger has them"
    say_wrapped(f"{held}{but if found.erased_in else ''}.")
    say(f"The last digest is {found.head[:16]}….")
    if found.ledger_entries > found.entries:
        since = count(found.ledger_entries - found.entries, "entry is", "entries are")
        say(f"{since} in the ledger since; write a new folder to have them too.")
    if found.erased_since:
        people = count(found.erased_since, "person", "people")
        say_wrapped(f"It still holds the details of {people} erased since; destroy it when you have a new one.")
    elif found.erased_in:
        say_wrapped("It still holds what was erased since; destroy it when you have a new one.")
