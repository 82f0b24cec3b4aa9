"""The net quantity of a label beside what the bars weighed last."""

from fractions import Fraction

from ledger.domain.label.declarable import AT_PACKING, Suggestion, highest_to_declare
from ledger.domain.label.market import Market
from ledger.domain.label.packers import System, grams
from ledger.errors import BadInput
from ledger.markets import market
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.opened import Rows
from ledger.rows.settings import settings
from ledger.units.dates import show_date
from ledger.units.quantity import WHOLE_PPM
from ledger.units.wording import count
from ledger.views.cure.weighings import Weighings, last_weighings
from ledger.views.label.label import LabelText


def net_stands(rows: Rows, batch: BatchRow, label: LabelText, law: Market) -> tuple[str, str]:
    """The net quantity with what its weighings leave open, and whether a person looks at it first."""
    weighed, declared = last_weighings(rows, batch), label.net_quantity
    if weighed is None:
        return f"{declared}; no bar was weighed yet; {_weigh(batch)}", "for a person"
    if weighed.moment != AT_PACKING:
        return f"{declared}; bars were weighed {weighed.moment} alone; {_weigh(batch)}", "for a person"
    judged = [one.judge(label.net_mg, weighed.weights_mg).holds for one in law.packers_rules(settings(rows).country)]
    if any(judged):
        return declared, "found"
    why = "no packers' rule held" if judged else "the packers' rules are not known here"
    return f"{declared}; {why}, see the net quantity as weighed below", "for a person"


def _weigh(batch: BatchRow) -> str:
    return f"weigh some at packing: soapledger batch log {batch.code} --reading 'bar weight=98.2 g'"


def net_words(rows: Rows, batch: BatchRow, label: LabelText, law: Market) -> tuple[str, ...]:
    """The bars weighed last against the packers' rules, and the highest weight that could be declared."""
    weighed = last_weighings(rows, batch)
    if weighed is None:
        return (f"No bar was weighed yet; {_weigh(batch)}",)
    found = [f"{count(len(weighed.weights_mg), 'bar')} weighed on {show_date(weighed.on)}, {weighed.moment}."]
    if weighed.moment != AT_PACKING:
        found.append(
            "The packers' rules are for bars as they are packed, so what follows is not yet their answer; "
            f"{_weigh(batch)}"
        )
    systems = law.packers_rules(settings(rows).country)
    if not systems:
        found.append(_no_rules(label, law))
    for system in systems:
        found += system.judge(label.net_mg, weighed.weights_mg).words
        if weighed.left is not None:
            try:
                found.append(_highest(weighed, weighed.left, system).why)
            except BadInput as error:
                found.append(str(error))
    if weighed.left is None:
        found.append(f"The highest weight to declare is not known here: {weighed.when}.")
    else:
        end = Fraction(sum(weighed.weights_mg), len(weighed.weights_mg)) * weighed.left
        found.append(f"The least that is known of the mean is {grams(end)}, {weighed.when}.")
    return tuple(found)


def _no_rules(label: LabelText, law: Market) -> str:
    return f"The packers' rules of {law.name} are not known here; whether {grams(label.net_mg)} holds is for a person."


def _highest(weighed: Weighings, left: Fraction, system: System) -> Suggestion:
    return highest_to_declare(
        weighed.weights_mg, left * WHOLE_PPM, system=system, when=weighed.when, weighed=weighed.moment
    )


def net_doubts(rows: Rows, label: LabelText) -> tuple[str, ...]:
    """Why the declared weight may not hold until the bars have dried, a sentence for each; a person decides."""
    weighed = last_weighings(rows, find_batch(rows, label.batch_code))
    if weighed is None:
        return (f"No bar was weighed yet, so whether {grams(label.net_mg)} holds is not known here.",)
    if weighed.left is None:
        return (f"Whether {grams(label.net_mg)} holds as the bars dry is not known here: {weighed.when}.",)
    law = market(label.market)
    systems = law.packers_rules(settings(rows).country)
    found = [] if systems else [_no_rules(label, law)]
    for system in systems:
        try:
            most = _highest(weighed, weighed.left, system)
        except BadInput as error:
            found.append(str(error))
        else:
            if label.net_mg > most.nominal_mg:
                found.append(f"{grams(label.net_mg)} is declared: {most.why}")
    return tuple(dict.fromkeys(found))
