"""The options that several commands take, each with one meaning and one line of help."""

from pathlib import Path
from typing import Annotated

import typer

Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]
On = Annotated[str | None, typer.Option("--on", help="The day (today).")]
Force = Annotated[bool, typer.Option("--force", help="Overwrite an existing file.")]
Yes = Annotated[bool, typer.Option("--yes", help="Do not ask again.")]
Pdf = Annotated[Path | None, typer.Option("-o", help="Write it as a PDF file.")]
Note = Annotated[str | None, typer.Option("--note", help="In your own words.")]
Why = Annotated[str, typer.Option("--reason", help="Why.")]
Batch = Annotated[str, typer.Argument(help="The batch code, e.g. 26-118-0.", metavar="CODE")]
Recipe = Annotated[str, typer.Argument(help="The recipe's short name or name.", metavar="RECIPE")]
Which = Annotated[str, typer.Argument(help="Its short name or name.", metavar="NAME")]
ShortName = Annotated[str | None, typer.Option("--code", help="A short name of your choosing.")]
NewName = Annotated[str | None, typer.Option("--name", help="A new name.")]
Phone = Annotated[str | None, typer.Option("--phone", help="The telephone number.")]
Email = Annotated[str | None, typer.Option("--email", help="The email address.")]
Address = Annotated[str | None, typer.Option("--address", help="The postal address.")]

# What stands behind an option or for an argument, by its name; TEXT, or the argument's own name, for any other.
TAKES: dict[str, str] = {}
for _word, _names in {
    "DATE": "--on --since --until --keep-until --next --bought-on --dated",
    "WEIGHT": "--weight --total --offcuts --waste --spent --net --net-weight --fats --scale-step",
    "MONEY": "--price --carriage --takings --labour --reduction --paid --refund",
    "NUMBER": "--bars --count --wasted --retain --spoiled --returned --destroyed --specimen --months --last "
    "--version --start --amendment --leave",
    "DAYS": "--every",
    "VALUE": "--against --tolerance --density --sap",
    "PERCENT": "--purity --strength --water",
    "FILE": "-o --csv --ledger --against",
    "CODE": "--batch --lot --code codes",
    "NAME": "--maker --supplier --material --by --decided-by --as --name --contact --stall --like --with --into --from "
    "--to",
    "NAMES": "--inci --salts",
    "REASON": "--reason --anyway --lift --bare --no-refund",
    "NOTICE": "--notice",
    "BAR|TRAY": "--code-on",
    "WORDS": "--for --business --note --done --seen --source --sap-source --health --bought --also",
    "DAY; TO WHOM": "--first-supplied",
    "PLACE": "--at --kept-at",
    "PHONE": "--phone",
    "EMAIL": "--email",
    "ADDRESS": "--address --web",
    "KIND": "--kind --category",
    "MARKET": "--market",
    "COUNTRY": "--country",
    "CURRENCY": "--currency",
    "UNITS": "--units",
    "UNIT": "--unit",
    "N": "--sale",
    "PRODUCT": "--product",
    "ENTRY": "--is",
    "ZONE": "--time-zone",
    "ALKALI": "--alkali",
    "LINE": "--line --except",
    "READING": "--reading",
    "POINT": "--check",
    "LOT": "--using",
    "WAY": "--take",
    "FAT": "--stock",
    "MOULD": "--mould",
    "SIZE": "--size --panel",
    "PAPER": "--paper",
    "LAYOUT": "--layout",
    "SHEET": "--sheet",
    "SHIFT": "--nudge",
    "WEIGHTS": "--each --own-weights",
    "ENTRY|DATE": "--as-of",
    "SEAL": "--seal",
    "VALUE|MASS": "--carriage-by",
    "STAGE": "--stage",
    "WHICH": "--rejected-bars",
}.items():
    TAKES |= dict.fromkeys(_names.split(), _word)
