"""soapledger release."""

from collections.abc import Collection, Sequence
from dataclasses import replace
from datetime import date
from typing import Annotated

import typer

from ledger.cli.kit.desk import Desk, desk
from ledger.cli.kit.options import Batch, On
from ledger.cli.kit.show import ask, can_answer, count, say, say_marked, say_wrapped, warn
from ledger.cli.stock.first_supply import First, first_supplied
from ledger.domain.release.bars import said
from ledger.domain.release.releasing import Releasing, TooFewLabels
from ledger.domain.tools.bar_checks import FIGURES, FREE_ALKALI, Check, read_check
from ledger.errors import BadInput, Refused
from ledger.operations.label.labels import Counted, count_run
from ledger.operations.release.first_supply import FirstSupplied
from ledger.operations.release.release import release_bars
from ledger.operations.release.release_checks import keep_bad_checks, open_checks, refused_anyway
from ledger.rows.batch import BatchRow, find_batch
from ledger.rows.decision import deviations
from ledger.rows.label import runs
from ledger.rows.recipe import recipe_of
from ledger.units.codes import read_batch_code
from ledger.units.dates import parse_date
from ledger.units.quantity import parse_pieces
from ledger.units.signs import folded
from ledger.views.label.bare import bare_words

_LOOKED_AT = ("passed", "on hold", "rejected")


def command(
    ctx: typer.Context,
    code: Batch,
    retain: Annotated[str, typer.Option("--retain", help="Bars set aside as retained samples.")] = "0",
    kept_at: Annotated[
        str, typer.Option("--kept-at", help="Where the samples are kept.")
    ] = "the shelf of retained samples",
    keep_until: Annotated[
        str | None, typer.Option("--keep-until", help="Until when (a year after the best before).")
    ] = None,
    check: Annotated[
        list[str] | None,
        typer.Option("--check", help="One point: 'look=y; a little ash', 'pH=9.6', 'smell=n; rancid' (repeat)."),
    ] = None,
    reason: Annotated[
        str | None, typer.Option("--reason", help="Why bars on hold or rejected are released all the same.")
    ] = None,
    anyway: Annotated[
        str | None,
        typer.Option(
            "--anyway",
            help="Why bars not covered, not good, or whose labels lack what was stated since go all the same.",
        ),
    ] = None,
    bare: Annotated[
        str | None, typer.Option("--bare", help="Why bars without a label go, to where they are sold so alone.")
    ] = None,
    keep: Annotated[bool, typer.Option("--keep", help="Bars without a label stay; the others are released.")] = False,
    spoiled: Annotated[str | None, typer.Option("--spoiled", help="Labels spoiled, of a run not counted yet.")] = None,
    returned: Annotated[str | None, typer.Option("--returned", help="Labels unused, of a run not counted yet.")] = None,
    first: First = None,
    on: On = None,
) -> None:
    """Release packed bars, by name: only then may they leave, e.g. soapledger release 26-118-0 --retain 1."""
    here, code = desk(ctx), read_batch_code(code)
    by = here.decider
    said_first = first_supplied(here, first)
    kept = parse_pieces(retain, what="the number of samples")
    asked = Releasing(
        on=here.day(on),
        by=by,
        retain=kept,
        kept_at=kept_at,
        keep_until=parse_date(keep_until, today=here.today, what="the day to keep them until") if keep_until else None,
        reason=reason,
        anyway=anyway,
        bare=bare,
        keep=keep,
    )
    batch = find_batch(here.rows(), code)
    given = _given(here, batch, check or ())
    if not said(anyway):
        _keep_bad(here, code, given, asked.on)
    asked = _decided(here, batch, asked, said_first, counted=False)
    _count_labels(here, batch, spoiled, returned, asked.on)
    asked = _decided(here, batch, asked, said_first, counted=True)
    found = _asked_for(here, batch, {one.what for one in given})
    if (bad := _keep_bad(here, code, found, asked.on)) and said(anyway):  # which was said before that was found
        raise Refused(
            f"Batch {code} is not good in {'; '.join(bad)}, which --anyway does not cover; decide it: soapledger batch "
            f'decide {code} {len(deviations(here.rows(), batch.id))} accept --reason "…"'
        )
    left = release_bars(here.book(), code, replace(asked, checks=[*given, *found]), said_first)
    samples = f", {count(kept, 'bar')} set aside as samples" if kept else ""
    say_wrapped(f"Batch {code} is released by {by}: {count(left, 'bar')} may leave{samples}.")
    if bad := [f"{one.what}: {one.found}" for one in (*given, *found) if not one.good]:
        say_marked(f"Not good, and released all the same by {by}: {'; '.join(bad)}.")
    for words in bare_words(here.rows(), batch, on=asked.on):
        say_wrapped(words)


def _decided(here: Desk, batch: BatchRow, asked: Releasing, first: FirstSupplied | None, *, counted: bool) -> Releasing:
    """The same with what becomes of bars without a label, as is answered. Raises what the release is refused with."""
    try:
        refused_anyway(here.rows(), batch, asked, first, counted=counted)
    except TooFewLabels as refused:
        if not can_answer():
            raise
        warn(f"Batch {batch.code}: {refused.found}.")
        ways = ("label", "bare", *(("keep",) if refused.some else ()))
        way = ""
        while way not in ways:
            try:
                way = ask(f"label them, sell them bare{', or keep them here' * refused.some} ({', '.join(ways)})")
            except typer.Abort:
                raise refused from None
            if way not in ways:
                warn(f"  '{way}' is not what becomes of them; write {' or '.join(ways)}.")
        if way == "label":
            raise
        if way == "keep":
            asked = replace(asked, keep=True)
        else:
            asked = replace(asked, bare=ask("why they are sold without a label"))
        refused_anyway(here.rows(), batch, asked, first, counted=counted)
    return asked


def _count_labels(here: Desk, batch: BatchRow, spoiled: str | None, returned: str | None, on: date) -> None:
    """Count the runs of labels that nobody counted yet: by the flags, else as is answered. Raises BadInput."""
    open_ = [one.number for one in runs(here.rows(), batch.yield_lot_id) if one.counted is None]
    given = (spoiled, returned) != (None, None)
    if given and len(open_) != 1:
        left = (
            f"{count(len(open_), 'run')} of labels of batch {batch.code} {'is' if len(open_) == 1 else 'are'} uncounted"
        )
        raise BadInput(f"{left}, so --spoiled and --returned say nothing; count each: soapledger label count RUN")
    for number in open_:
        back = [spoiled or "0", returned or "0"]
        if not given:
            warn(
                f"Run {number} of labels for batch {batch.code} is not counted yet: soapledger label count {number} "
                "--spoiled 0 --returned 0"
            )
            back = [
                ask(f"how many labels of run {number} {what}", default="0") for what in ("were spoiled", "are unused")
            ]
        counted = Counted(*(parse_pieces(one, what="the number of labels") for one in back))
        done = count_run(here.book(), number, counted, on=on)
        say(f"Run {done.number}: {done.count} issued = {done.became}.")


def _keep_bad(here: Desk, code: str, found: Sequence[Check], on: date) -> list[str]:
    """Keep what is not good as a deviation, and say so."""
    if kept := keep_bad_checks(here.book(), code, found, on=on):
        warn("What is not good is kept as a deviation.")
    return kept


def _given(here: Desk, batch: BatchRow, texts: Sequence[str]) -> list[Check]:
    """The --check options. Raises BadInput."""
    recipe = recipe_of(here.rows(), batch)
    if recipe is None or batch.lot_status not in _LOOKED_AT:
        return []
    found = []
    names = {folded(one): one for one in (*recipe.release_checks, FREE_ALKALI)}
    for text in texts:
        what, separator, typed = (part.strip() for part in text.partition("="))
        if not separator:
            raise BadInput(f"'{text}' is not a point with what was found; write it like 'look=y'.")
        name = names.get(folded(what), what)
        found.append(read_check(name, typed, ph=recipe.limits.ph, net_mg=recipe.net_weight_mg))
    return found


def _asked_for(here: Desk, batch: BatchRow, given: Collection[str]) -> list[Check]:
    """What was found at those points of the recipe's checklist that no reading and no option answers."""
    recipe = recipe_of(here.rows(), batch)
    if recipe is None or batch.lot_status not in _LOOKED_AT:
        return []
    found = list[Check]()
    for what in open_checks(here.rows(), batch):
        while what not in given and what not in (one.what for one in found):
            asked = "the figure; how it was measured" if what in FIGURES else "y or n; a note"
            typed = ask(f"{what} ({asked})", default="")
            try:
                found.append(read_check(what, typed, ph=recipe.limits.ph, net_mg=recipe.net_weight_mg))
            except BadInput as error:
                warn(f"  {error}")
    return found
