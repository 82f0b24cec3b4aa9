"""soapledger material contains."""

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated, get_args

import typer

from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Which
from ledger.cli.kit.show import confirm, say_wrapped, table
from ledger.cli.material.statement import ShareUnit, Sheet, Stated, read_statement, read_typed
from ledger.errors import BadInput
from ledger.operations.material.skin import state_contents
from ledger.reference.allergens import allergen_named
from ledger.rows.material import MaterialCard, material_by_code
from ledger.units.wording import count
from ledger.units.words import checked
from ledger.views.material.meant import Meanings, number_words, said_of
from ledger.views.recipe.skin import constituent_doubt, show_stated


def command(
    ctx: typer.Context,
    which: Which,
    source: Annotated[str, typer.Option("--source", help="Where it stands, e.g. 'allergen statement, 2 Mar 2026'.")],
    shares: Annotated[
        list[str] | None, typer.Argument(help="What it contains, in percent: linalool=32 'limonene=<0.01' 87-44-5=0.8.")
    ] = None,
    csv_file: Annotated[
        Path | None, typer.Option("--csv", help="The statement as a CSV file: names or CAS numbers, and shares.")
    ] = None,
    unit: Annotated[str | None, typer.Option("--unit", help="Of shares in the file: percent or ppm.")] = None,
    lot: Annotated[str | None, typer.Option("--lot", help="For this lot alone.")] = None,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again about a name not known here.")] = False,
) -> None:
    """State what an oil or fragrance contains, by name or CAS number, as its supplier says, or for one lot."""
    if bool(shares) == (csv_file is not None):
        raise BadInput("Say what it contains in one way: linalool=32 limonene=0.8, or --csv FILE.")
    in_unit: ShareUnit | None = checked(unit, get_args(ShareUnit), what="a unit of shares") if unit else None
    sheet = read_typed(shares or []) if csv_file is None else read_statement(csv_file, in_unit)
    here = desk(ctx)
    card = material_by_code(here.rows(), which)
    meanings = Meanings(here.rows())
    if csv_file is None:
        for one in sheet.lines:
            if meanings.of(one.name, card.id) is None and (words := constituent_doubt(here.rows(), one.name)):
                confirm(f"{words} Is it right?", yes)
    else:
        _show(here, csv_file, card, sheet, meanings)
        confirm(f"Book this as what {card.name}{f', lot {lot},' if lot else ''} contains?", yes)
    card = state_contents(
        here.book(),
        which,
        {one.name: one.share_ppm for one in sheet.lines},
        source=source,
        lot=lot,
        written={one.name: one.written for one in sheet.lines if one.written},
    )
    held = ", ".join(one.name for one in sheet.lines if one.share_ppm) or "nothing of what was asked"
    say_wrapped(f"{card.name}{f', lot {lot},' if lot else ''} contains {held} as stated ({source}).")
    if none := [one.name for one in sheet.lines if not one.share_ppm]:
        say_wrapped(f"None of: {', '.join(none)}.")
    _say_of_names(card, sheet.lines, meanings)


def _show(here: Desk, path: Path, card: MaterialCard, sheet: Sheet, meanings: Meanings) -> None:
    """What was understood of a file, before anything is booked."""
    rows = []
    for one in sheet.lines:
        entry, said = allergen_named(one.name), meanings.of(one.name, card.id)
        doubt = None if entry or said else constituent_doubt(here.rows(), one.name)
        if entry:
            counts = f"PROHIBITED: {entry.name}" if entry.prohibited and one.share_ppm else entry.name
        elif said:
            counts = said.meant or "no entry"
        else:
            counts = doubt.partition("; ")[2].partition("?")[0] + "?" if doubt else ""
        share = show_stated(one.share_ppm, one.written)
        rows.append((str(one.line), one.called, share, counts or "not known here"))
    say_wrapped(f"{path}, read as {sheet.read_as}: {count(len(rows), 'line')} with a share.")
    if sheet.before:
        say_wrapped(f"Not read: {count(sheet.before, 'line')} before the headings.")
    table(("line", "as it is called", "share", "counts as"), rows, right=(0,))
    if sheet.silent:
        say_wrapped(
            f"Neither how much nor that there is none is said of {', '.join(sheet.silent)}; they are left out, and "
            "count as none."
        )


def _say_of_names(card: MaterialCard, lines: Sequence[Stated], meanings: Meanings) -> None:
    """What of a statement is prohibited, what is not known here and how to say what it is."""
    for one in lines:
        entry, said = allergen_named(one.name), meanings.of(one.name, card.id)
        if entry and entry.prohibited and one.share_ppm:
            say_wrapped(f"Prohibited in the EU: {one.name} is {entry.name} ({entry.entry}; {entry.source}).")
        elif said:
            say_wrapped(f"{said_of(said)}.")
    unknown = [one.name for one in lines if one.share_ppm and not allergen_named(one.name)]
    unknown = [name for name in unknown if meanings.of(name, card.id) is None]
    for name in unknown:
        if words := number_words(name):
            say_wrapped(words)
    if unknown:
        say_wrapped(
            f"Not known here, so no label counts it: {', '.join(unknown)}. State it by its CAS number, which may be "
            f'known; or, once you know what it is: soapledger material means "{unknown[0]}" --is ENTRY --reason WHY, '
            "or --no-entry."
        )
