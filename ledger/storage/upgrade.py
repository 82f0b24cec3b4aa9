"""What an older ledger lacks for this program, written as rows of an ordinary entry; no old row is touched."""

import re
from collections.abc import Iterator
from typing import get_args

from ledger.domain.recipe.figures import FORMAT, NOT_UNDERSTOOD, figures_text
from ledger.domain.recipe.reader import read_recipe
from ledger.domain.recipe.recipe import CURE_DAYS, Recipe
from ledger.errors import BadInput, LedgerError
from ledger.fileformat import OLD_DECISIONS
from ledger.storage.tables.decision import DecisionDoubt
from ledger.storage.tables.recipe import RecipeFigures
from ledger.storage.transaction import Transaction
from ledger.units.toml_reader import TomlFile
from ledger.units.words import EVERY, LIKELY_NOTHING, Process, Subject, Verdict, known

_LACKING = """
SELECT v.id, v.source, r.code, b.process
FROM recipe_version v JOIN recipe r ON r.id = v.recipe_id
LEFT JOIN batch b ON b.id = (SELECT min(id) FROM batch WHERE recipe_version_id = v.id)
WHERE NOT EXISTS (SELECT 1 FROM recipe_figures f WHERE f.recipe_version_id = v.id) ORDER BY v.id
"""


def fill_in(tx: Transaction) -> None:
    """Keep the figures of every recipe version that has none, and what old decisions were about.

    A text that this program cannot read any more still gets its row, with its process and nothing else, so that its
    batches stay listed, cured and recalled.
    """
    decisions = tx.rows.execute(OLD_DECISIONS + " ORDER BY id").fetchall()
    for row in decisions:
        tx.add_all(
            DecisionDoubt(decision_id=row["id"], subject=subject, doubt=doubt)
            for subject, doubt in _decided(row["verdict"], row["reason"])
        )
    lacking = tx.rows.execute(_LACKING).fetchall()
    for row in lacking:
        tx.add(_understood(row["id"], row["source"], row["code"], row["process"]))
    kept = [f"the figures of {len(lacking)} recipe versions"] if lacking or not decisions else []
    kept += [f"what {len(decisions)} decisions were about"] if decisions else []
    tx.say(f"Kept {' and '.join(kept)} that an earlier soapledger wrote.")


def _decided(verdict: Verdict, reason: str) -> Iterator[tuple[Subject, str]]:
    """(subject, particular) of an old decision, so that it goes on counting as it did.

    To supply bars all the same was decided once for whatever an assessment did not cover, and to use labels that the
    day made unusable for each run as printed.
    """
    if verdict == "accepted":
        yield "superfat", LIKELY_NOTHING
        return
    if "not covered by what was assessed (" in reason:
        yield "prohibited", EVERY
        yield "assessment", EVERY
        yield "notification", EVERY
    labels = re.search(r"its labels are not usable any more \((run .*?)\); released all the same: ", reason)
    for why in labels[1].split("; ") if labels else ():
        yield "labels", why


def kept_figures(version_id: int, recipe: Recipe) -> RecipeFigures:
    """The row that keeps what one version says."""
    return RecipeFigures(
        recipe_version_id=version_id,
        process=recipe.process,
        cure_days=recipe.cure_days,
        usable_from_days=recipe.usable_from_days,
        format=FORMAT,
        figures=figures_text(recipe),
    )


def _understood(version_id: int, text: str, code: str, process: Process | None) -> RecipeFigures:
    try:
        return kept_figures(version_id, read_recipe(text, file=f"recipe {code}"))
    except LedgerError:
        return RecipeFigures(
            recipe_version_id=version_id,
            process=process or _process_written(text),
            cure_days=CURE_DAYS,
            format=NOT_UNDERSTOOD,
            figures="{}",
        )


def _process_written(text: str) -> Process:
    try:
        written = TomlFile(text, "").head.word("process")
    except BadInput:
        written = ""
    return known(written, get_args(Process)) or "cold"  # of which nothing was ever made
