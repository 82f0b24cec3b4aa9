"""What a question means here: the lots and batches that it begins with, and how it is said."""

from collections.abc import Callable, Iterable, Mapping
from datetime import date
from typing import NamedTuple

from ledger.domain.recall.question import Kind, Question
from ledger.errors import BadInput, Refused
from ledger.rows.batch import BatchRow, batches_by_id, find_batch
from ledger.rows.complaint import complaint
from ledger.rows.label import Run, run_by_number
from ledger.rows.material import MaterialCard, material_by_code, material_list
from ledger.rows.opened import Rows
from ledger.rows.people import supplier_by_code
from ledger.rows.reached import batches_made_as
from ledger.units.dates import show_date
from ledger.units.names import match_name
from ledger.units.quantity import parse_pieces
from ledger.units.signs import folded
from ledger.units.wording import count
from ledger.views.recall.reach import Starts
from ledger.views.recall.recall import CannotBeExcluded
from ledger.views.recall.recall_search import Notice, bars_called, batches_meant, lots_meant


class Asked(NamedTuple):
    """What a question begins with, in words, and what of it could not be told for certain."""

    starts: Starts
    words: tuple[str, ...]
    doubts: tuple[CannotBeExcluded, ...] = ()
    ours: tuple[str, ...] = ()  # numbers that a batch of ours has as well


class Meant(NamedTuple):
    batches: list[BatchRow]
    words: str
    doubts: tuple[CannotBeExcluded, ...] = ()


MeantBy = Callable[[Rows, str, Question, date], Meant]


def asked_about(rows: Rows, question: Question, *, on: date, others: Mapping[Kind, MeantBy] = {}) -> Asked:
    """The starts of a question; of other kinds than lots, bars, labels, products and complaints as `others` tell.

    Raises BadInput or Refused where something of it matches nothing."""
    question.check()
    supplier = supplier_by_code(rows, question.supplier) if question.supplier else None
    material = material_by_code(rows, question.material) if question.material else None
    numbers = question.of("number")
    ids = (supplier.id if supplier else None, material.id if material else None)
    notice = Notice(numbers, *ids, question.first, question.last)
    called, from_bars = bars_called(rows, notice)
    codes = (*question.of("bar"), *from_bars)
    words = [number for number in numbers if number not in from_bars]
    notice = notice._replace(numbers=tuple(words))
    lots = lots_meant(rows, notice, every=question.every) if words or question.of_a_delivery else ()
    if question.of_a_delivery and supplier and material:
        words.append(f"{material.name} from {supplier.name}{between(question, 'received')}")
    batches = {batch.id: batch for batch in batches_meant(rows, codes)}
    words += [batch.code for batch in batches.values()]
    doubts: list[CannotBeExcluded] = []
    for kind, meant in {**MEANT, **others}.items():
        for what in question.of(kind):
            found = meant(rows, what, question, on)
            words.append(found.words)
            doubts += [*found.doubts, *_not_cut(found.batches)]
            batches.update({batch.id: batch for batch in found.batches if batch.yield_lot_id is not None})
    printed = [_run(rows, number) for number in question.of("labels")]
    labelled = [find_batch(rows, run.batch_code) for run in printed]
    doubts += [one for run, batch in zip(printed, labelled, strict=True) for one in _which_bars(run, batch)]
    words += [f"the labels of run {number}" for number in question.of("labels")]
    round_it = {batch.id: batch for batch in labelled if batch.id not in batches}
    starts = Starts(lots, tuple(batches.values()), tuple(round_it.values()))
    return Asked(starts, tuple(words), tuple(doubts), tuple(code for code in called if code not in from_bars))


def between(question: Question, word: str) -> str:
    days = (("from", question.first), ("up to", question.last))
    span = "".join(f" {which} {show_date(day)}" for which, day in days if day)
    return f", {word}{span}" if span else ""


def _not_cut(batches: Iterable[BatchRow]) -> list[CannotBeExcluded]:
    return [
        CannotBeExcluded(f"batch {one.code}, {one.product}", f"{one.status}, and nothing came of it yet")
        for one in batches
        if one.yield_lot_id is None and one.made_on is not None
    ]


def in_order(batches: Iterable[BatchRow]) -> list[BatchRow]:
    return sorted(batches, key=lambda batch: (batch.on, batch.id))


def within(batch: BatchRow, question: Question) -> bool:
    """Whether it was made, or cut, on one of the days; the first and the last are among them."""
    days = [day for day in (batch.made_on, batch.yielded_on) if day]
    return any((question.first or day) <= day <= (question.last or day) for day in days)


def _product(rows: Rows, what: str, question: Question, _on: date) -> Meant:
    card = _soap(rows, what)
    found = batches_by_id(rows, batches_made_as(rows, material_id=card.id)).values()
    made = in_order(one for one in found if one.soap and within(one, question))
    if not any(one.made for one in made):
        raise BadInput(f"No bars of {card.name} were made{between(question, '')[1:]}; widen it.")
    return Meant(made, f"{card.name}{between(question, 'made')}")


def _soap(rows: Rows, what: str) -> MaterialCard:
    """The soap of a name. Raises BadInput for what is none."""
    cards = material_list(rows)
    others = [one for one in cards if one.kind != "soap" and folded(what) in (folded(one.code), folded(one.name))]
    soaps = {one.code: one for one in cards if one.kind == "soap"}
    if others and not any(folded(what) in (folded(one.code), folded(one.name)) for one in soaps.values()):
        raise BadInput(
            f"{others[0].name} is no soap but a material; for its lots name their numbers, or --supplier with "
            "--material."
        )
    names = [(one.code, one.name) for one in soaps.values()]
    return soaps[match_name(what, names, noun="soap", add="soapledger recipe add FILE")]


def _complaint(rows: Rows, what: str, _question: Question, _on: date) -> Meant:
    card = complaint(rows, parse_pieces(what, what="the number of the complaint"))
    if card.batch_code is None:
        raise Refused(
            f"Complaint {card.number} does not say which batch; those it could be: "
            f"soapledger complaint show {card.number}"
        )
    return Meant([find_batch(rows, card.batch_code)], f"complaint {card.number}")


def _run(rows: Rows, what: str) -> Run:
    return run_by_number(rows, parse_pieces(what, what="the number of the print run"))


def _which_bars(run: Run, batch: BatchRow) -> list[CannotBeExcluded]:
    """Where fewer labels of a run are on bars than the batch has: nobody knows on which of them."""
    if run.used is None or run.used >= batch.made:
        return []
    on = f"{count(run.used, 'label')} of run {run.number} {'is' if run.used == 1 else 'are'} on bars"
    why = f"{on}; on which of the {batch.made} is not known, so all of them are in the answer"
    return [CannotBeExcluded(f"batch {batch.code}, {batch.product}", why)]


MEANT: Mapping[Kind, MeantBy] = {"product": _product, "complaint": _complaint}
