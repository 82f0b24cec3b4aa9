"""A label held against the rules of a market on a day, particular by particular; a person decides."""

import sqlite3
from dataclasses import dataclass
from datetime import date

from ledger.domain.dates import show_date
from ledger.domain.market import Rule
from ledger.domain.quantity import show_share
from ledger.views.batch import find_batch
from ledger.views.label import LabelText, digest_of, label_text, run_text
from ledger.views.label_runs import Run, approved_by, runs


@dataclass(frozen=True)
class Particular:
    """One particular: what the rule says, what was found, and how it stands."""

    particular: str
    found: str
    says: str
    source: str
    status: str
    stands: str  # found, missing, for a person


@dataclass(frozen=True)
class LabelCheck:
    """What was checked, against what, as of which day; never a claim of compliance."""

    on: date
    label: LabelText
    particulars: tuple[Particular, ...]
    approved: str | None  # by whom, on which day
    runs: tuple[Run, ...]
    remains: tuple[str, ...]


def label_check(
    rows: sqlite3.Connection,
    code: str,
    market_code: str,
    *,
    on: date,
    net_mg: int | None = None,
    best_before_months: int | None = None,
) -> LabelCheck:
    """Check the label of a batch for bars first supplied on a day; raises like `label_text`."""
    label = label_text(rows, code, market_code, on=on, net_mg=net_mg, best_before_months=best_before_months)
    lot_id = find_batch(rows, code).yield_lot_id
    assert lot_id is not None
    approval = approved_by(rows, lot_id, label.market, digest_of(run_text(label)))
    return LabelCheck(
        on,
        label,
        tuple(_particular(label, rule) for rule in label.rules),
        f"{approval[0]}, {show_date(approval[1])}" if approval else None,
        tuple(run for run in runs(rows, lot_id) if run.market == label.market),
        label.remains,
    )


def _particular(label: LabelText, rule: Rule) -> Particular:
    found, stands = _found(label, rule.particular)
    return Particular(rule.particular, found, rule.says, rule.source, rule.status, stands)


def _found(label: LabelText, particular: str) -> tuple[str, str]:
    """What the label has of one particular, and whether that is found, missing, or for a person."""
    height = f"{label.figure_height_mm:g} mm at least" if label.figure_height_mm else "by the panel of the layout"
    period = f"{label.after_opening_months}M, with the open jar" if label.after_opening_months else ""
    simple = {
        "responsible person": f"{label.responsible_name}, {label.responsible_address}",
        "net quantity": label.net_quantity,
        "figure height": f"{height}; the layout sets it",
        "durability": label.best_before or period,
        "batch code": label.batch_code,
        "function": label.function,
        "ingredients": f"{label.ingredients} ({label.policy})",
        "letters of the ingredients": "the layout's least height of small letters",
        "contact": label.responsible_address,
    }
    if particular in simple:
        return (simple[particular], "found") if simple[particular] else ("nothing", "missing")
    if particular == "allergens":
        return _allergens(label)
    if particular == "precautions":
        return (" ".join(label.precautions), "found") if label.precautions else ("none given", "for a person")
    if particular == "origin":
        return (label.origin, "found") if label.origin else ("none given; wanted if imported", "for a person")
    return "not to be read from the ledger", "for a person"


def _allergens(label: LabelText) -> tuple[str, str]:
    found = label.allergens
    if found is None:
        return "no list applies", "found"
    if found.no_statement:
        return f"no statement for {'; '.join(found.no_statement)}", "missing"
    names = ", ".join(found.declared) or "none exceeds the threshold"
    return f"{names} (over {show_share(found.threshold_ppm, 2)} of the bar at its driest; {found.list_name})", "found"
