"""The papers and pictures that are kept, and what each vouches for."""

from dataclasses import dataclass

from ledger.rows.batch import find_batch
from ledger.rows.kept import KeptPaper, papers
from ledger.rows.lot import find_lot
from ledger.rows.material import material_list
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_cards
from ledger.units.codes import looks_like_batch_code, looks_like_lot_code
from ledger.units.names import match_name


@dataclass(frozen=True)
class Subject:
    """What a paper may vouch for: one lot, batch, recipe or material."""

    noun: str
    id: int
    code: str


def subject_meant(rows: Rows, text: str) -> Subject:
    """The lot, batch, recipe or material meant by a code or a name.

    A soap has its recipe's short name, and the recipe is meant. Raises Refused for a batch code that is
    mistyped or unknown, BadInput for any other unknown word.
    """
    if looks_like_batch_code(text):
        batch = find_batch(rows, text)
        return Subject("batch", batch.id, batch.code)
    if looks_like_lot_code(text):
        lot = find_lot(rows, text)
        return Subject("lot", lot.id, lot.code)
    known = {one.code: (one.name, Subject("material", one.id, one.code)) for one in material_list(rows)}
    known |= {one.code: (one.name, Subject("recipe", one.id, one.code)) for one in recipe_cards(rows)}
    code = match_name(
        text,
        [(code, name) for code, (name, _) in known.items()],
        noun="recipe or material",
        add="soapledger material add NAME --kind KIND",
    )
    return known[code][1]


def attachments(rows: Rows, subject: Subject | None = None) -> tuple[KeptPaper, ...]:
    """Every paper kept, or those of one subject, in the order they came."""
    found = papers(rows)
    if subject is None:
        return found
    return tuple(one for one in found if (one.noun, one.code) == (subject.noun, subject.code))
