"""The check of a label on the screen."""

from ledger.cli.kit.show import say, say_wrapped, table
from ledger.units.dates import show_date
from ledger.units.quantity import show_mass, show_share
from ledger.units.words import Units
from ledger.views.label.allergens import AllergenLine, Allergens
from ledger.views.label.label_check import LabelCheck


def say_check(check: LabelCheck, units: Units) -> None:
    """What was found of each particular, against which rule, and what remains for a person."""
    label = check.label
    open_ = [one for one in check.particulars if one.stands != "found"]
    missing = sum(one.stands == "missing" for one in open_)
    say_wrapped(
        f"{label.product}, batch {label.batch_code}, for {label.market}, first supplied on {show_date(check.on)}: "
        f"{len(check.particulars)} particulars looked at, {missing} missing, {len(open_) - missing} for a person. "
        f"Its bars are {label.status}."
    )
    for one in check.particulars:
        mark = {"found": " ", "missing": "!", "for a person": "?"}[one.stands]
        say_wrapped(f"{one.particular}: {one.found}", first=f"  {mark} ", indent="      ")
        say_wrapped(f"{one.says} [{one.source}; {one.status}]", first="      ", indent="      ")
    if label.declared:
        say(f"{label.ingredients_heading}, {label.policy}, by weight:")
        table(
            ("name", "amount", "share", "any order", "from"),
            [
                (
                    one.inci,
                    show_mass(one.mass_mg, units),
                    show_share(one.share_ppm, 2),
                    "yes" if one.floats else "",
                    ", ".join(one.lots),
                )
                for one in label.declared
            ],
            right=(1, 2),
        )
    if label.allergens and label.allergens.lines:
        found = label.allergens
        say_wrapped(
            f"Fragrance allergens, of the bar at its driest ({show_mass(found.driest_mg or 0, units)} in all), by "
            f"{found.list_name} [{found.source}]:"
        )
        table(
            ("name", "share", "declared", "from"),
            [
                (one.name, f"{one.share_ppb / 10_000_000:.4f} %", _declared(one, found), ", ".join(one.lots))
                for one in found.lines
            ],
            right=(1,),
        )
    say("Net quantity, as weighed:")
    for words in check.net:
        say_wrapped(words, first="  - ", indent="    ")
    if check.gs1:
        say(f"As a GS1 code: {check.gs1}")
    if check.claims:
        say("Words to question before they are printed; nothing here passes them:")
        for words in check.claims:
            say_wrapped(words, first="    " if check.stand else "  ? ", indent="    ")
        if check.stand:
            let = f"{check.stand.by} let these words stand on {show_date(check.stand.on)}: {check.stand.reason}"
            say_wrapped(let, first="    ", indent="    ")
    say(f"Approved: {check.approved or 'not this text, for this market'}.")
    for run in check.runs:
        became = run.became.replace(" + ", ", ")
        say_wrapped(f"Run {run.number}, {show_date(run.on)}: {run.count} issued on {run.layout}; {became}.")
    for words in (*check.bare, *check.supplied):
        say_wrapped(words)
    say("What remains for you or a licensed assessor:")
    for words in check.remains:
        say_wrapped(words, first="  - ", indent="    ")
    if open_ or (check.claims and not check.stand):
        say("Signs: ! is missing, ? is for a person to decide, no sign was found.")


def _declared(one: AllergenLine, found: Allergens) -> str:
    if one.over:
        return "NOT ALLOWED"
    if one.prohibited and found.barred:
        return "PROHIBITED"
    return "yes" if one.declared else ""
