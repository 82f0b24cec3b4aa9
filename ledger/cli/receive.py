"""soapledger receive: a whole delivery in one go, by prompts, flags or a CSV file."""

import csv
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import Desk, desk
from ledger.cli.material import read_sap
from ledger.cli.show import amount, ask, count, out_json, say, table, warn
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.operations.receive import DeliveryLine

COLUMNS = ("material", "quantity", "lot", "cost", "best_before", "sap", "purity", "certificate", "hold")


def command(
    ctx: typer.Context,
    supplier: Annotated[str, typer.Argument(help="Who it came from: short name or name.")],
    line: Annotated[
        list[str] | None,
        typer.Option(
            "--line",
            help="'material; quantity; lot NUMBER; cost' and, as needed, '; best before DATE', "
            "'; sap 189', '; purity 99.2', '; hold REASON' (repeat for each line).",
        ),
    ] = None,
    csv_file: Annotated[
        Path | None, typer.Option("--csv", help=f"A CSV file with the columns {', '.join(COLUMNS)}.")
    ] = None,
    note: Annotated[str | None, typer.Option("--note", help="The number on the delivery note.")] = None,
    carriage: Annotated[str | None, typer.Option("--carriage", help="What the carriage cost.")] = None,
    on: Annotated[str | None, typer.Option("--on", help="The day it came (today).")] = None,
    accept: Annotated[bool, typer.Option("--accept", help="Accept every line that has no reason to wait.")] = False,
    json: Annotated[bool, typer.Option("--json", help="Answer as JSON.")] = False,
) -> None:
    """Book a delivery as new lots. A lot number you do not have is written as: lot unknown."""
    from ledger.domain.money import parse_money
    from ledger.operations.receive import DeliveryNote, receive
    from ledger.views.supplier import supplier_by_code

    here = desk(ctx)
    came = here.day(on, what="the day it came")
    card = supplier_by_code(here.rows(), supplier)
    if csv_file is not None and line:
        raise BadInput("Give the lines by --line or by --csv, not both.")
    if csv_file is not None:
        lines = list(_from_csv(here, csv_file, came, own=card.own))
    elif line:
        lines = [_from_text(here, text, came, f"--line '{text}'", own=card.own) for text in line]
    else:
        lines = list(_from_prompts(here, came, own=card.own))
        if lines and not accept:
            accept = typer.confirm("Accept them all, looked at and as ordered?", default=True, err=True)
    for one in lines:
        _warn_if_known(here, card.id, one)
    received = receive(
        here.book(),
        DeliveryNote(
            supplier=card.code,
            on=came,
            lines=tuple(lines),
            note_number=note,
            carriage_minor=parse_money(carriage, here.settings.currency, what="the carriage") if carriage else 0,
            accepted_by=here.who if accept else None,
        ),
    )
    if json:
        out_json(received)
        return
    say(f"{count(len(received), 'lot')} from {card.name}. Write these codes on the containers:")
    table(
        ("lot", "material", "quantity", "their number", "status"),
        [
            (
                one.code,
                one.material,
                amount(one.quantity, one.counted, here.settings.units),
                one.supplier_number or ("own" if card.own else "unknown"),
                one.status,
            )
            for one in received
        ],
        right=(2,),
    )
    if waiting := [one.code for one in received if one.status == "quarantine"]:
        say(f"Next, once looked at: soapledger lot accept {' '.join(waiting)}")


def _warn_if_known(here: Desk, supplier_id: int, line: "DeliveryLine") -> None:
    from ledger.domain.codes import supplier_number_key

    if not line.supplier_number:
        return
    row = (
        here.rows()
        .execute(
            "SELECT code FROM live_lot WHERE supplier_id = ? AND supplier_number_key = ?",
            (supplier_id, supplier_number_key(line.supplier_number)),
        )
        .fetchone()
    )
    if row:
        warn(
            f"Their number {line.supplier_number} came before, as lot {row['code']}; this is kept as a lot of its own."
        )


def _line(here: Desk, values: dict[str, str], came: date, *, own: bool) -> "DeliveryLine":
    from ledger.domain.dates import parse_date
    from ledger.domain.money import parse_money
    from ledger.domain.quantity import parse_amount, parse_pieces, parse_share
    from ledger.operations.receive import DeliveryLine
    from ledger.views.material import material_by_code

    card = material_by_code(here.rows(), values["material"])
    if card.counted:
        quantity = parse_pieces(values["quantity"], what=f"the number of {card.name}")
    else:
        quantity = parse_amount(
            values["quantity"], density_mg_per_ml=card.density_mg_per_ml, what=f"the weight of {card.name}"
        )
    number = values.get("lot", "").strip()
    if not number and not own:
        raise BadInput(f"{card.name} has no lot number; copy it from the container, or write: lot unknown.")
    best_before = values.get("best_before")
    return DeliveryLine(
        material=card.code,
        quantity=quantity,
        supplier_number=None if number.casefold() in ("", "unknown") else number,
        cost_minor=parse_money(values["cost"], here.settings.currency, what="the cost") if values.get("cost") else None,
        best_before=parse_date(best_before, today=came, what="the best-before date") if best_before else None,
        sap_mg_per_kg=read_sap(values["sap"]) if values.get("sap") else None,
        purity_ppm=parse_share(values["purity"], what="the purity") if values.get("purity") else None,
        certificate=values.get("certificate") or None,
        hold_back=values.get("hold") or None,
    )


def _from_text(here: Desk, text: str, came: date, where: str, *, own: bool) -> "DeliveryLine":
    words = [part.strip() for part in text.split(";")]
    if len(words) < 2:
        raise BadInput(f"{where}: write it as 'olive oil; 5 kg; lot 4471/2; 32.50'.")
    values = {"material": words[0], "quantity": words[1]}
    for part in words[2:]:
        for prefix, key in (
            ("lot ", "lot"),
            ("best before ", "best_before"),
            ("sap ", "sap"),
            ("purity ", "purity"),
            ("certificate ", "certificate"),
            ("hold ", "hold"),
        ):
            if part.casefold().startswith(prefix):
                values[key] = part[len(prefix) :].strip()
                break
        else:
            values["cost"] = part
    try:
        return _line(here, values, came, own=own)
    except BadInput as error:
        raise BadInput(f"{where}: {error}") from None


def _from_csv(here: Desk, path: Path, came: date, *, own: bool) -> Iterator["DeliveryLine"]:
    try:
        text = path.read_text(encoding="utf-8-sig")
    except OSError as error:
        raise BadInput(f"{path} cannot be read ({error.strerror}).") from None
    except UnicodeDecodeError:
        raise BadInput(f"{path} is not in UTF-8; save it as CSV UTF-8 and try again.") from None
    reader = csv.DictReader(text.splitlines())
    for place, name in enumerate(reader.fieldnames or (), 1):
        if name not in COLUMNS:
            raise BadInput(
                f"{path}, line 1, column {place}: '{name}' is not known; the columns are {', '.join(COLUMNS)}."
            )
    for needed in ("material", "quantity"):
        if needed not in (reader.fieldnames or ()):
            raise BadInput(f"{path}, line 1: the column '{needed}' is missing.")
    for row in reader:
        where = f"{path}, line {reader.line_num}"
        if None in row:
            raise BadInput(f"{where}: there are more values than columns; put quotes round one with a comma.")
        values = {key: (value or "").strip() for key, value in row.items()}
        try:
            yield _line(here, values, came, own=own)
        except BadInput as error:
            raise BadInput(f"{where}{_column(reader, values, str(error))}: {error}") from None


def _column(reader: "csv.DictReader[str]", values: dict[str, str], message: str) -> str:
    for place, name in enumerate(reader.fieldnames or (), 1):
        if values.get(name) and f"'{values[name]}'" in message:
            return f", column {place} ({name})"
    return ""


def _from_prompts(here: Desk, came: date, *, own: bool) -> Iterator["DeliveryLine"]:
    while True:
        material = ask("Material (Enter when the delivery is done)", default="")
        if not material:
            return
        values = {"material": material, "quantity": ask("  How much came")}
        values["lot"] = ask(
            "  Their lot number (or unknown)" if not own else "  Your mark for it",
            default="" if own else None,
        )
        values["cost"] = ask("  What it cost", default="0" if own else None)
        values["best_before"] = ask("  Best before (Enter for none)", default="")
        try:
            yield _line(here, values, came, own=own)
        except BadInput as error:
            warn(f"  {error} Type this line again.")
