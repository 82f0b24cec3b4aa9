"""soapledger equipment: scales, thermometers and pH meters, and what they are tried against."""

from datetime import date
from typing import TYPE_CHECKING, Annotated

import typer

from ledger.cli.desk import Desk, desk
from ledger.cli.show import count, out_json, say, say_wrapped, table, warn
from ledger.domain.words import EquipmentKind
from ledger.errors import BadInput

if TYPE_CHECKING:
    from ledger.views.equipment import EquipmentRow
    from ledger.views.equipment_doubts import Touched, TouchedBatch

app = typer.Typer(help="Scales, thermometers, pH meters: add, edit, list, show, check.")

Json = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]
Code = Annotated[str, typer.Argument(help="Its short name or name.")]
Every = Annotated[str | None, typer.Option("--every", help="It is tried every so many days.")]
Against = Annotated[str | None, typer.Option("--against", help="What it should show, e.g. '500 g', '0 C', '7.00'.")]
Tolerance = Annotated[str | None, typer.Option("--tolerance", help="How far it may be off, e.g. '1 g'.")]
Note = Annotated[str | None, typer.Option("--note")]
On = Annotated[str | None, typer.Option("--on", help="The day (today).")]


@app.command("add")
def add(
    ctx: typer.Context,
    kind: Annotated[str, typer.Argument(help="scale, thermometer or pH meter.")],
    name: Annotated[str, typer.Argument(help="What you call it.")],
    code: Annotated[str | None, typer.Option("--code", help="A short name of your choosing.")] = None,
    every: Every = None,
    against: Against = None,
    tolerance: Tolerance = None,
    note: Note = None,
) -> None:
    """Add an item, e.g. equipment add scale "bench scale" --every 30 --against "500 g" --tolerance "1 g"."""
    from ledger.domain.equipment import EXAMPLES, kind_meant
    from ledger.operations.equipment import EquipmentDetails, add_equipment

    here = desk(ctx)
    meant = kind_meant(kind)
    expected, off = _tried(meant, against, tolerance)
    details = EquipmentDetails(name, _days(every), expected, off, note)
    chosen = add_equipment(here.book(), meant, details, on=here.today, code=code)
    say(f"{name} is added as '{chosen}'.")
    say(f'Next: soapledger equipment check {chosen} "{EXAMPLES[meant]}"')


@app.command("edit")
def edit(
    ctx: typer.Context,
    which: Code,
    name: Annotated[str | None, typer.Option("--name")] = None,
    every: Every = None,
    against: Against = None,
    tolerance: Tolerance = None,
    note: Note = None,
    retired: Annotated[bool | None, typer.Option("--retired/--in-use", help="No longer used, or again.")] = None,
) -> None:
    """Change what is known of an item, or retire it; what you leave out stays as it was."""
    from ledger.operations.equipment import EquipmentDetails, revise_equipment
    from ledger.views.equipment import equipment_by_code

    here = desk(ctx)
    old = equipment_by_code(here.rows(), which, here.today)
    expected, off = _tried(old.kind, against, tolerance)
    details = EquipmentDetails(
        name or old.name,
        old.every_days if every is None else _days(every),
        old.expected if expected is None else expected,
        old.tolerance if off is None else off,
        note or old.note,
    )
    gone = old.retired if retired is None else retired
    revise_equipment(here.book(), old.code, details, on=here.today, retired=gone)
    say(f"{details.name} is {'retired' if gone else 'changed'}; its checks stay to be read.")


@app.command("list")
def list_(ctx: typer.Context, on: On = None, json: Json = False) -> None:
    """List the scales, thermometers and pH meters, those to be tried first."""
    from ledger.domain.dates import parse_date, show_date
    from ledger.views.equipment import equipment_list

    here = desk(ctx)
    moment = parse_date(on, today=here.today) if on else here.today
    items = sorted(equipment_list(here.rows(), moment), key=lambda one: (one.retired, one.why_due is None))
    if json:
        out_json(items)
        return
    if not items:
        say('Nothing is listed yet. Next: soapledger equipment add scale "bench scale" --against "500 g"')
        return
    waiting = [one for one in items if one.why_due]
    say(f"{count(len(items), 'item')}, {len(waiting) or 'none'} to be tried.")
    table(
        ("short name", "what", "name", "tried against", "last tried", "next", "state"),
        [
            (
                one.code,
                one.kind,
                one.name,
                _against(here, one),
                show_date(one.last.on) if one.last else "",
                show_date(one.next_on) if one.next_on and not one.retired else "",
                "retired" if one.retired else one.why_due or "in order",
            )
            for one in items
        ],
    )
    if waiting:
        say(f"Next: soapledger equipment check {waiting[0].code} FOUND")


@app.command("show")
def show(ctx: typer.Context, which: Code, json: Json = False) -> None:
    """Show one item with its checks, and the batches each failed check throws doubt on."""
    from ledger.domain.dates import show_date
    from ledger.domain.equipment import show_difference, show_value
    from ledger.views.equipment import checks_of, equipment_by_code
    from ledger.views.equipment_doubts import touched_since_last_good

    here = desk(ctx)
    item = equipment_by_code(here.rows(), which, here.today)
    checks = checks_of(here.rows(), item.id)
    doubts = [touched_since_last_good(here.rows(), item, one) for one in checks if not one.passed]
    if json:
        out_json({"item": item, "checks": checks, "touched": doubts})
        return
    units = here.settings.units
    state = "retired" if item.retired else item.why_due or "in order"
    say(f"{item.name} ({item.code}), {item.kind}: {state}.")
    for label, value in (
        ("tried against", _against(here, item)),
        ("every", count(item.every_days, "day") if item.every_days else ""),
        ("next", show_date(item.next_on) if item.next_on else ""),
        ("note", item.note),
    ):
        if value:
            say(f"  {label:14} {value}")
    if checks:
        table(
            ("on", "by", "should show", "showed", "may be off by", "", "note"),
            [
                (
                    show_date(one.on),
                    one.by,
                    show_value(item.kind, one.expected, units),
                    show_value(item.kind, one.found, units),
                    show_difference(item.kind, one.tolerance, units),
                    "passed" if one.passed else "failed",
                    one.note or "",
                )
                for one in checks
            ],
        )
    for touched in doubts:
        _say_touched(touched)
        _say_where(here, touched)


@app.command("check", context_settings={"ignore_unknown_options": True})  # so that -0.3 C can be typed
def check(
    ctx: typer.Context,
    which: Code,
    found: Annotated[str, typer.Argument(help="What it showed, with its unit.")],
    against: Against = None,
    tolerance: Tolerance = None,
    on: On = None,
    note: Note = None,
    json: Json = False,
) -> None:
    """Book what an item showed against something known, e.g. equipment check bench-scale "500.4 g"."""
    from ledger.domain.equipment import parse_value, show_difference, show_value
    from ledger.operations.equipment import check_equipment
    from ledger.views.equipment import checks_of, equipment_by_code
    from ledger.views.equipment_doubts import touched_since_last_good

    here = desk(ctx)
    day = here.day(on)
    item = equipment_by_code(here.rows(), which, day)
    expected, off = _tried(item.kind, against, tolerance)
    showed = parse_value(item.kind, found, what="what it showed")
    passed = check_equipment(
        here.book(), item.code, showed, on=day, by=here.who, expected=expected, tolerance=off, note=note
    )
    done = max(checks_of(here.rows(), item.id), key=lambda one: one.id)
    touched = None if passed else touched_since_last_good(here.rows(), item, done)
    if json:
        out_json({"check": done, "touched": touched})
        return
    units = here.settings.units
    say(
        f"{item.name} showed {show_value(item.kind, done.found, units)} against "
        f"{show_value(item.kind, done.expected, units)}; it may be off by "
        f"{show_difference(item.kind, done.tolerance, units)}: {'passed' if passed else 'failed'}."
    )
    if touched:
        _say_touched(touched)
        _say_where(here, touched)
        say(f"Do not use it until it passes, or retire it: soapledger equipment edit {item.code} --retired")


def _say_touched(touched: "Touched") -> None:
    from ledger.domain.dates import show_date

    until = show_date(touched.check.on)
    span = f"after the good check of {show_date(touched.since)}" if touched.since else "ever, for want of a good check"
    if not touched.batches and not touched.unsaid:
        say_wrapped(f"Failed on {until}: no batch was measured with it {span}.")
        return
    for words, found in (
        (f"Failed on {until}: measured with it {span}:", touched.batches),
        (f"Failed on {until}: not said with which, cannot be excluded, {span}:", touched.unsaid),
    ):
        if not found:
            continue
        say_wrapped(words)
        table(
            ("batch", "product", "from", "to", "what"),
            [(one.code, one.product, show_date(one.first_on), show_date(one.last_on), _measured(one)) for one in found],
        )


def _say_where(here: Desk, touched: "Touched") -> None:
    """How to ask where the bars are of the batches that were measured with it."""
    from ledger.views.batch import find_batch

    known = (find_batch(here.rows(), one.code) for one in touched.batches)
    if codes := [batch.code for batch in known if batch.soap and batch.made]:
        say(f"Where their bars are, and whom to call: soapledger recall bar {' '.join(codes)}")


def _measured(one: "TouchedBatch") -> str:
    lines = [f"weighed line {', '.join(map(str, one.lines))}"] if one.lines else []
    return "; ".join([*lines, *one.readings])


def _against(here: Desk, item: "EquipmentRow") -> str:
    from ledger.domain.equipment import show_difference, show_value

    if item.expected is None:
        return ""
    units = here.settings.units
    off = f", off by {show_difference(item.kind, item.tolerance, units)}" if item.tolerance is not None else ""
    return show_value(item.kind, item.expected, units) + off


def _tried(kind: EquipmentKind, against: str | None, tolerance: str | None) -> tuple[int | None, int | None]:
    from ledger.domain.equipment import parse_tolerance, parse_value

    expected = parse_value(kind, against, what="what it should show") if against is not None else None
    return expected, parse_tolerance(kind, tolerance) if tolerance is not None else None


def _days(text: str | None) -> int | None:
    from ledger.domain.quantity import parse_pieces

    if text is None:
        return None
    days = parse_pieces(text, what="the number of days")
    if days > 3660:
        raise BadInput(f"{days} days are more than ten years; look at --every.")
    return days


def warn_failed(here: Desk, on: date) -> None:
    """Say at the bench which tools failed their last check."""
    from ledger.views.equipment import due

    for one in due(here.rows(), on):
        if one.last and not one.last.passed:
            warn(f"{one.name} failed its last check; what it touched: soapledger equipment show {one.code}")
