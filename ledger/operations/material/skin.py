"""Book what an oil contains and how much of it a certificate allows on the skin; refuse a bar that goes beyond."""

from collections.abc import Mapping

from ledger.domain.material.skin_limits import SOAP_CATEGORY, Limit
from ledger.errors import BadInput
from ledger.rows.lot import find_lot
from ledger.rows.material import MaterialCard, material_by_code
from ledger.storage.book import Book
from ledger.storage.tables.material import Constituent, SkinLimit
from ledger.units.quantity import WHOLE_PPM, show_share
from ledger.views.recipe.skin import SkinCheck, is_scent


def state_contents(
    book: Book,
    material: str,
    shares_ppm: Mapping[str, int],
    *,
    source: str,
    lot: str | None = None,
    written: Mapping[str, str] | None = None,
) -> MaterialCard:
    """Book what a material contains, by name, or what one lot of it does; a later statement stands in its place.

    A share of nothing says that it holds none; `written` has those that are no plain percentage, as they are stated.
    Raises BadInput for a material that is neither fragrance nor oil, a lot of another material, no source, or
    shares over 100 %.
    """
    with book.write("material contains") as tx:
        card = material_by_code(tx.rows, material)
        if card.kind in ("alkali", "packaging", "soap", "rework"):
            raise BadInput(f"{card.name} is of the kind {card.kind}; contents are stated for oils and fragrances.")
        if not source.strip():
            raise BadInput("Where does it stand? Add --source, such as 'allergen statement of 2 Mar 2026'.")
        if not shares_ppm:
            raise BadInput("Name what it contains, with percent: linalool=32 limonene=0.8.")
        if (total := sum(shares_ppm.values())) > WHOLE_PPM:
            raise BadInput(f"The contents of {card.name} add up to {show_share(total)}; look at the statement again.")
        mine = find_lot(tx.rows, lot) if lot else None
        if mine and mine.material_id != card.id:
            raise BadInput(f"Lot {mine.code} is {mine.material}, not {card.name}; look at --lot.")
        for name, share in shares_ppm.items():
            if share < 0:
                raise BadInput(f"{name} is stated as less than nothing; write how much, or 0 for none.")
            tx.add(
                Constituent(
                    material_id=card.id,
                    lot_id=mine.id if mine else None,
                    name=" ".join(name.split()),
                    share_ppm=share,
                    source=source.strip(),
                    stated=(written or {}).get(name),
                )
            )
        where = f"lot {mine.code} of {card.name}" if mine else card.name
        held = [name for name, share in shares_ppm.items() if share]
        tx.say(f"Stated what {where} contains: {', '.join(held) or 'nothing of what was asked'}.")
    return card


def state_limit(book: Book, facts: Limit, *, material: str | None = None, constituent: str | None = None) -> str:
    """Book the highest share that a certificate allows, of one fragrance or of a constituent; returns its name.

    What it allows in a product that is not soap is kept and does not count. Raises BadInput for a limit that cannot
    be, no certificate or category, or a material that is no fragrance.
    """
    if not 0 < facts.limit_ppm <= WHOLE_PPM:
        raise BadInput("A limit is a share of the finished product above 0, up to 100 %.")
    if not facts.certificate.strip():
        raise BadInput("Name the certificate and the category it is for: --certificate NUMBER --category 9.")
    if not facts.category.strip():
        raise BadInput(
            f"For which kind of product does certificate {facts.certificate.strip()} allow "
            f"{facts.most}? It has a figure for each; soap is category {SOAP_CATEGORY}: add "
            f"--category {SOAP_CATEGORY} with the figure of that line."
        )
    with book.write("material limit") as tx:
        name, card = " ".join((constituent or "").split()), None
        if material is None and not name:
            raise BadInput("Which constituent? Write its name, as a statement of contents does: linalool.")
        if material is not None:
            card = material_by_code(tx.rows, material)
            name = card.name
            if not is_scent(card.kind, card.inci):
                raise BadInput(
                    f"{card.name} is of the kind {card.kind}; such limits are for fragrances and essential oils."
                )
        tx.add(
            SkinLimit(
                material_id=card.id if card else None,
                constituent=None if card else name,
                limit_ppm=facts.limit_ppm,
                certificate=facts.certificate.strip(),
                amendment=facts.amendment,
                category=facts.category.strip(),
                dated=facts.dated,
            )
        )
        tx.say(f"{name}: at most {facts.most} by certificate {facts.certificate.strip()}.")
    return name


def over_the_limit(checks: tuple[SkinCheck, ...]) -> str | None:
    """Why fragrances are not planned or booked, with the figures; None where none is over its limit."""
    over = [one.words for one in checks if one.verdict == "over"]
    return f"{' '.join(over)} Use less of it." if over else None
