"""The batch record on the screen."""

from datetime import datetime

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.show import say, say_wrapped, table
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, show_share
from ledger.views.record.batch_record import BatchRecord


def say_record(record: BatchRecord) -> None:
    """Say what is known of a batch: the answer first, then what went in, was read, decided and became of it."""
    units = record.units
    say(f"Batch {record.batch_code}, {record.product}: {record.status}.")
    if record.as_known:
        source = record.printed_from
        moment = datetime.fromisoformat(source.recorded_at)
        written = f"{show_date(moment.date())}, {moment:%H:%M} UTC"
        say(f"This is what was known at entry {source.entry}, written {written}.")
    facts = [
        ("recipe", f"{record.recipe_code}, version {record.recipe_version}" if record.recipe_code else ""),
        ("made", show_date(record.made_on) if record.made_on else ""),
        (
            "cut",
            f"{show_date(record.cut_on)}, {record.bars_cut} bars" if record.cut_on and record.bars_cut else "",
        ),
        ("ready", show_date(record.ready_on) if record.ready_on else ""),
        ("usable from", show_date(record.usable_from) if record.usable_from else ""),
        (
            "superfat",
            f"{show_share(record.superfat_nominal_ppm)} meant"
            + (
                f", {show_share(record.superfat_actual_ppm, 2)} as weighed"
                if record.superfat_actual_ppm is not None
                else ""
            )
            if record.superfat_nominal_ppm is not None
            else "",
        ),
        (
            "likely low",
            f"{show_share(record.superfat.likely_low_ppm, 2)}; all low {show_share(record.superfat.all_low_ppm, 2)}"
            if record.superfat
            else "",
        ),
        (
            "in the pot",
            f"superfat {show_share(record.before_addition.nominal_ppm, 2)} before the fat held back went in"
            if record.before_addition
            else "",
        ),
        ("lye", show_share(record.lye_concentration_ppm) if record.lye_concentration_ppm else ""),
        ("went in", show_mass(record.mass_in_mg, units) if record.mass_in_mg else ""),
        ("came out", show_mass(record.mass_out_mg, units) if record.mass_out_mg is not None else ""),
    ]
    for label, value in facts:
        if value:
            say(f"  {label:12} {value}")
    for warning in record.warnings:
        say_wrapped(warning, first="  ! ", indent="    ")
    if record.materials:
        say()
        table(
            ("line", "material", "lot", "their number", "target", "used"),
            [
                (
                    str(m.number or ""),
                    m.material,
                    m.lot_code,
                    m.supplier_lot or {"supplier": "unknown", "own": "own growing"}.get(m.origin, m.supplier or ""),
                    amount(m.target, m.pieces, units) if m.target is not None else "",
                    amount(m.used, m.pieces, units),
                )
                for m in record.materials
            ],
            right=(0, 4, 5),
        )
    for words in record.corrections:
        say_wrapped(words, first="  ", indent="    ")
    if record.readings:
        say()
        table(
            ("on", "read", "", "by"),
            [
                (show_date(r.on), r.what, f"{r.value} (corrected below)" if r.corrected else r.value, r.by)
                for r in record.readings
            ],
        )
    if record.deviations:
        say()
        for one in record.deviations:
            decided = "open" if one.open else f"{one.verdict} by {one.by}: {one.reason}"
            say_wrapped(f"Deviation {one.number}: {one.found}; {decided}.", first="  ", indent="    ")
    if record.checks:
        say()
        said = {True: "", False: " (not good)", None: " (whether good was not said)"}
        looked = ", ".join(f"{one.what}: {one.found}{said[one.good]}" for one in record.checks)
        say_wrapped(f"Looked at before the release: {looked}.", first="  ", indent="    ")
    if record.decisions:
        say()
        table(
            ("on", "decided", "by", "why"),
            [(show_date(d.on), f"{d.subject} {d.what}", d.by, d.reason or "") for d in record.decisions],
        )
    if record.whereabouts:
        say()
        table(
            ("bars", "where", "", "on"),
            [(str(w.count), w.where, w.detail, show_date(w.on) if w.on else "") for w in record.whereabouts],
            right=(0,),
        )
    for back in record.back_on_sale:
        say(f"  {back.words}.")
