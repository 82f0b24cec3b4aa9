"""Reads the lines of a delivery as they are typed: by flags, from a CSV file, or at the prompt."""

import csv
import io
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date
from itertools import zip_longest
from pathlib import Path

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.heard import hear
from ledger.cli.kit.measured import read_amount
from ledger.cli.kit.show import ask, warn
from ledger.cli.material.facts import read_purity, read_sap
from ledger.errors import BadInput
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.material import MaterialCard, materials_named
from ledger.units.dates import parse_best_before
from ledger.units.given import read_given_text
from ledger.units.money import parse_money
from ledger.units.names import match_name
from ledger.units.quantity import parse_pieces
from ledger.units.words import Units

COLUMNS = ("material", "quantity", "lot", "cost", "best_before", "sap", "purity", "certificate", "hold")
_WORDS = tuple(name.replace("_", " ") for name in COLUMNS[2:] if name != "cost")


@dataclass(frozen=True)
class Came:
    """What every line of one delivery is read with; the materials are looked up once for all of them."""

    material: Callable[[str], MaterialCard]
    on: date
    currency: str
    units: Units
    own: bool  # her own growing or making, which has no lot number of a supplier's


def came_on(here: Desk, day: date, *, own: bool) -> Came:
    """A delivery that came that day."""
    return Came(materials_named(here.rows()), day, here.settings.currency, here.settings.units, own)


@contextmanager
def _at(where: str) -> Iterator[None]:
    """Every error says where the figure stands."""
    try:
        yield
    except BadInput as error:
        raise BadInput(f"{where}{error}") from None


def _line(came: Came, values: Mapping[str, str], where: Callable[[str], str]) -> DeliveryLine:
    """One line from its words by column; `where` says in what place a column was written."""
    with _at(where("material")):
        card = came.material(values["material"])
    with _at(where("quantity")):
        if card.counted:
            quantity = parse_pieces(values["quantity"], what=f"the number of {card.name}")
        else:
            quantity = read_amount(values["quantity"], card, came.units, what=f"the weight of {card.name}")
    number = values.get("lot", "")
    if not number and not came.own:
        raise BadInput(
            f"{where('lot')}{card.name} has no lot number; copy it from the container, or write: lot unknown."
        )
    cost = best_before = sap = purity = purity_high = None
    if text := values.get("cost"):
        with _at(where("cost")):
            cost = parse_money(text, came.currency, what="the cost")
    if text := values.get("best_before"):
        with _at(where("best_before")):
            best_before = parse_best_before(text, today=came.on)
    if text := values.get("sap"):
        with _at(where("sap")):
            sap = read_sap(text)
    if text := values.get("purity"):
        with _at(where("purity")):
            purity, purity_high = read_purity(text)
    return DeliveryLine(
        material=card.code,
        quantity=quantity,
        supplier_number=None if number.casefold() in ("", "unknown") else number,
        cost_minor=cost,
        best_before=best_before,
        sap_mg_per_kg=sap,
        purity_ppm=purity,
        purity_high_ppm=purity_high,
        certificate=values.get("certificate") or None,
        hold_back=values.get("hold") or None,
    )


def from_text(came: Came, text: str) -> DeliveryLine:
    """One line as a flag gives it: 'olive oil; 5 kg; lot 4471/2; 32.50'. Raises BadInput quoting it."""
    where = f"--line '{text}': "
    words = [part.strip() for part in text.split(";") if part.strip()]
    if len(words) < 2:
        raise BadInput(f"{where}write it as 'olive oil; 5 kg; lot 4471/2; 32.50'.")
    values = {"material": words[0], "quantity": words[1]}
    for part in words[2:]:
        named = re.match(rf"({'|'.join(_WORDS)})(?:[\s:]+|$)", part, re.IGNORECASE)
        key, value = (named[1].casefold().replace(" ", "_"), part[named.end() :]) if named else ("cost", part)
        if key in values:
            raise BadInput(f"{where}'{part}' is a second {key.replace('_', ' ')}; leave one of them out.")
        values[key] = value
    return _line(came, values, lambda _: where)


def from_csv(came: Came, path: Path) -> list[DeliveryLine]:
    """Every line of a CSV file, by comma or semicolon. Raises BadInput naming file, line and column."""
    text = hear(read_given_text(path))
    # a spreadsheet writes semicolons where the comma stands before decimals
    first = text.partition("\n")[0]
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=";" if ";" in first and "," not in first else ",")
    heads: list[str] = []
    lines = []
    try:
        for row in reader:
            cells = [" ".join(cell.split()) for cell in row]
            if not any(cells):
                continue
            if not heads:
                heads = _heads(path, [cell.casefold() for cell in cells])
                continue
            if len(cells) > len(heads):
                raise BadInput(
                    f"{path}, line {reader.line_num}: there are more values than columns; put quotes round one "
                    "that has a comma in it."
                )
            lines.append(_from_row(came, dict(zip_longest(heads, cells, fillvalue="")), path, reader.line_num))
    except csv.Error as error:
        raise BadInput(f"{path}, line {reader.line_num}: it cannot be read as CSV ({error}).") from None
    return lines


def _heads(path: Path, heads: list[str]) -> list[str]:
    for place, name in enumerate(heads, 1):
        if name not in COLUMNS:
            raise BadInput(
                f"{path}, line 1, column {place}: '{name}' is not known; the columns are {', '.join(COLUMNS)}."
            )
        if heads.index(name) + 1 < place:
            raise BadInput(f"{path}, line 1, column {place}: '{name}' stands there twice; leave one out.")
    for needed in ("material", "quantity"):
        if needed not in heads:
            raise BadInput(f"{path}, line 1: the column '{needed}' is missing.")
    return heads


def _from_row(came: Came, values: dict[str, str], path: Path, number: int) -> DeliveryLine:
    heads = list(values)

    def where(key: str) -> str:
        place = f", column {heads.index(key) + 1} ({key})" if key in heads else ""
        return f"{path}, line {number}{place}: "

    return _line(came, values, where)


def from_prompts(here: Desk, day: date, *, own: bool) -> Iterator[DeliveryLine]:
    """Line after line as she types them; a line that cannot be read is asked for again."""
    while True:
        word = ask("Material (Enter when the delivery is done)", default="")
        if not word:
            return
        try:
            came = came_on(here, day, own=own)  # anew, since she may add a material meanwhile
            card = came.material(word)
            values = {"material": card.code, "quantity": ask(f"  How much {card.name} came")}
            lot = "  Your mark for it (Enter for none)" if own else "  Their lot number (or unknown)"
            values["lot"] = ask(lot, default="" if own else None)
            values["cost"] = ask("  What it cost (Enter if not known)", default="")
            values["best_before"] = ask("  Best before, a day or a month such as Mar 2027 (Enter for none)", default="")
            if card.kind == "fat":
                values["sap"] = ask("  Saponification value on its certificate (Enter for none)", default="")
            if card.kind == "alkali":
                values["purity"] = ask("  Purity on its certificate, percent (Enter for none)", default="")
            yield _line(came, values, lambda _: "")
        except BadInput as error:
            warn(f"  {error} Type this line again.")


def with_exceptions(here: Desk, lines: Sequence[DeliveryLine], exceptions: Sequence[str]) -> tuple[DeliveryLine, ...]:
    """The lines, those excepted kept back with their reason: '2=drum dented', or 'olive oil=drum dented'."""
    done, material = list(lines), materials_named(here.rows())
    for text in exceptions:
        which, _, reason = (part.strip() for part in text.partition("="))
        if not which or not reason:
            raise BadInput(f"--except '{text}': write the line and the reason, such as '2=drum dented'.")
        if which.isdecimal():
            fits = [int(which) - 1] if 0 < int(which) <= len(done) else []
        else:
            names = {one.material: material(one.material).name for one in done}
            with _at(f"--except '{text}': "):
                code = match_name(which, list(names.items()), noun="line", add="give it by --line")
            fits = [place for place, one in enumerate(done) if one.material == code]
        if len(fits) != 1:
            raise BadInput(f"--except '{text}': give the number of one line, 1 to {len(done)}.")
        done[fits[0]] = replace(done[fits[0]], hold_back=reason)
    return tuple(done)
