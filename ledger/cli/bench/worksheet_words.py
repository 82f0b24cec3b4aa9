"""The worksheet on the screen: its cautions, its lines, what is read, and what stays with the batch."""

from ledger.cli.kit.amounts import amount
from ledger.cli.kit.show import say, say_marked, say_wrapped, table
from ledger.cli.recipe.page_words import say_stated, superfat_words
from ledger.reference.cautions import cautions
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, show_share
from ledger.views.bench.worksheet import Worksheet, acid_in_jug


def say_cautions(sheet: Worksheet) -> None:
    """The cautions, where lye is made or raw dough handled."""
    if not sheet.caustic:
        return
    care = cautions()
    say(care.first)
    unsaid = ("discard", "jar") if acid_in_jug(sheet.lines) else ("discard", "jar", "acid")
    for step, texts in care.by_step.items():
        for one in texts if step not in unsaid else ():
            say_marked(one)
    say()


def say_worksheet(sheet: Worksheet) -> None:
    """What its lye comes to, and its lines; of an infusion, when it is strained."""
    units = sheet.units
    if sheet.superfat_ppm is not None and sheet.lye_concentration_ppm is not None:
        say_wrapped(
            f"Superfat {show_share(sheet.superfat_ppm)}, lye concentration {show_share(sheet.lye_concentration_ppm)}, "
            f"{show_mass(sheet.dough_mg, units)} in the pot."
        )
    if sheet.superfat:
        if sheet.before_addition:
            say_wrapped(f"In the pot, before the fat held back goes in: {superfat_words(sheet.before_addition)}.")
        say_wrapped(f"From these lots: superfat {superfat_words(sheet.superfat)}.")
        say_stated(sheet.stated)
    table(
        ("line", "when", "material", "lot", "amount", "OK from", "to", "weighed"),
        [
            (
                str(line.number),
                line.stage,
                line.material,
                line.lot_code or "none yet",
                amount(line.target, line.pieces, units),
                "" if line.pieces else amount(line.low, False, units),
                "" if line.pieces else amount(line.high, False, units),
                "" if line.weighed is None else amount(line.weighed, line.pieces, units),
            )
            for line in sheet.lines
        ],
        right=(0, 4, 5, 6, 7),
    )
    if sheet.outlived:
        say_marked(
            f"The bars are to keep longer than what goes in is best before: {'; '.join(sheet.outlived)}. Take a later "
            "lot, or see whether the durability assessed counts on that."
        )
    for note in sheet.notes:
        say_marked(note)
    if sheet.strain_on:
        say(f"Strain on {show_date(sheet.strain_on)}: soapledger batch strain {sheet.batch_code} WEIGHT")


def say_again(sheet: Worksheet) -> None:
    """The worksheet of a batch that is planned, with what is ticked and read by its letter."""
    say_cautions(sheet)
    facts = f"{sheet.product}, version {sheet.recipe_version}, for {show_date(sheet.made_on)}"
    say(f"Worksheet of batch {sheet.batch_code}: {facts}.")
    say_worksheet(sheet)
    table(
        ("letter", "when", "to tick or read", "limit"),
        [
            (step.letter, step.when, step.label, (step.note or "") if step.own else sheet.limits.get(step.what, ""))
            for step in sheet.steps
        ],
    )
