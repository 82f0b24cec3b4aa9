"""Plan a batch: lots chosen, lye reckoned for exactly those lots, numbered lines for the bench."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from ledger import __version__
from ledger.domain.bench.superfat import likely_low_refusal, superfat_doubt
from ledger.domain.bench.worksheet import Filled, Taken, lines_of_batch
from ledger.domain.lye.saponification import check_dissolves
from ledger.domain.recipe.formulate import Charge, Formulation, formulate, scaled_bars, targets
from ledger.domain.recipe.recipe import WITH_THE_LYE, Recipe, RecipeLine
from ledger.errors import Refused
from ledger.operations.bench.portions import book_lines, plan_portions
from ledger.operations.bench.superfat_guard import keep_or_refuse
from ledger.operations.material.skin import over_the_limit
from ledger.operations.recipe.recipes import dough_code
from ledger.operations.stock.allocate import FreeStock, Take, chosen_lots
from ledger.operations.stock.combine import next_batch_code
from ledger.rows.batch import find_batch, portions_of
from ledger.rows.material import MaterialCard, material_id
from ledger.rows.recipe import RecipeCard, recipe_by_code
from ledger.rows.settings import settings
from ledger.storage.book import Book
from ledger.storage.tables.bench import Batch
from ledger.storage.transaction import Transaction
from ledger.views.bench.worksheet import Worksheet, worksheet
from ledger.views.material.figures import figures_of
from ledger.views.recipe.recipe import materials_named, order_of_work, recipe_version
from ledger.views.recipe.skin import batch_skin_checks

_BEFORE = "superfat likely nothing: "  # before the reason of a decision taken at the plan


@dataclass(frozen=True)
class PlanRequest:
    """What to make, how much fat (None: the recipe's own size), when, and lots chosen by hand."""

    recipe: str
    on: date
    fats_mg: int | None = None
    bars: int | None = None  # None: as many as the recipe gives at that size
    using: Mapping[str, str] | None = None  # material -> lot code
    version: int | None = None  # None: the latest
    anyway: str | None = None  # the reason to plan although the superfat is likely to be nothing


def plan_batch(book: Book, request: PlanRequest, draw: Callable[[Worksheet], None] | None = None) -> str:
    """Plan a batch from the lots in hand and return its code; `draw` takes its worksheet before it is committed.

    Lots are taken first to expire first out; a line that one lot cannot fill is split over the next.
    The alkali follows the saponification value of each lot (its certificate's, else its material's)
    and the purity of the alkali in hand. Raises Refused for too little in stock, a lot out of date,
    too little water, a fragrance over its limit on the skin, or a superfat likely to be nothing (unless
    `anyway` gives a reason, which is kept as a decision); BadInput for an unknown recipe, material or lot.
    """
    with book.write("batch plan") as tx:
        card = recipe_by_code(tx.rows, request.recipe)
        version_id, number, recipe = recipe_version(tx.rows, card, request.version)
        named = materials_named(tx.rows, recipe, file=f"recipe {card.code}")
        chosen, named = chosen_lots(tx.rows, request.using or {}, recipe, named, request.on)
        stock = FreeStock(tx.rows, request.on, chosen)
        scale = settings(tx.rows).scale
        lots, formulation = _fill(stock, recipe, named, request, scale.step_mg)
        filled = _taken(lots)
        batch = _book_batch(tx, card, version_id, recipe, request)
        assert batch.id is not None
        if formulation and (refusal := likely_low_refusal(formulation, card.name)):
            doubt = superfat_doubt(refusal, formulation.pot.lowest())
            keep_or_refuse(tx, batch.id, doubt, anyway=request.anyway, on=request.on, by=book.who, before=_BEFORE)
        book_lines(tx, batch, lines_of_batch(recipe, filled, scale=scale))
        plan_portions(tx, batch, recipe, filled, scale=scale)
        for one in (batch.code, *(child.code for child in portions_of(tx.rows, batch.id))):
            if over := over_the_limit(batch_skin_checks(tx.rows, find_batch(tx.rows, one))):
                raise Refused(f"{recipe.name} is not planned: {over}")
        tx.say(f"Planned batch {batch.code}, {recipe.name} version {number}.")
        if draw:
            tx.last = lambda: draw(worksheet(tx.rows, batch.code, program=__version__))
    return batch.code


def _book_batch(tx: Transaction, card: RecipeCard, version_id: int, recipe: Recipe, request: PlanRequest) -> Batch:
    return tx.add(
        Batch(
            code=next_batch_code(tx, request.on),
            process=recipe.process,
            recipe_version_id=version_id,
            material_id=material_id(tx.rows, dough_code(recipe.code)) if recipe.portions else card.material_id,
            on=request.on,
            bars_planned=request.bars or scaled_bars(recipe, request.fats_mg),
        )
    )


Lots = list[tuple[RecipeLine, Sequence[Take]]]


def _taken(filled: Lots) -> Filled:
    return [
        (line, [Taken(one.card.id, one.card.kind, one.lot.id if one.lot else None, one.quantity) for one in takes])
        for line, takes in filled
    ]


def _fill(
    stock: FreeStock, recipe: Recipe, named: Mapping[str, MaterialCard], request: PlanRequest, step: int
) -> tuple[Lots, Formulation | None]:
    """Every line with the lots it is filled from, in the order of work; the lye follows from the fats."""
    amounts = {one.line: one.target for one in targets(recipe, fats_total_mg=request.fats_mg, bars=request.bars)}
    filled: dict[RecipeLine, Sequence[Take]] = {}
    for line, target in amounts.items():
        card = named[line.material]
        filled[line] = stock.wrap(card, target) if line.role == "packaging" else stock.take(card, target)
    if not recipe.soap:
        return _lye_into_water(list(filled.items()), named), None
    charges = [
        Charge(line, take.quantity, figures_of(take.card, take.lot))
        for line, takes in filled.items()
        for take in takes
        if line.role != "packaging"
    ]
    alkalis, first = stock.alkalis(recipe, charges, named)
    fill = next(line for line in recipe.lines if line.fills_up)
    worked = formulate(recipe, charges, alkalis=alkalis, fill=figures_of(named[fill.material]), scale_step_mg=step)
    if worked.lye.fill_mg:
        filled[fill] = stock.take(named[fill.material], worked.lye.fill_mg)
    weigh = {need.kind: need.weigh_mg for need in worked.lye.alkalis}
    for line in recipe.of_role("alkali"):
        assert line.kind
        filled[line] = stock.take(named[line.material], weigh[line.kind], first=first.get(line.kind))
    return [(line, filled[line]) for line in order_of_work(recipe, named) if line in filled], worked


def _lye_into_water(filled: Lots, named: Mapping[str, MaterialCard]) -> Lots:
    """A stock lye: the water stands first, and both with the cautions for lye. Raises Refused for too little water."""
    kinds = {line: named[line.material].kind for line, _ in filled}
    if "alkali" not in kinds.values():
        return filled
    masses: dict[str, int] = {
        kind: sum(take.quantity for line, takes in filled for take in takes if kinds[line] == kind)
        for kind in ("liquid", "alkali")
    }
    liquids = (take for line, takes in filled for take in takes if kinds[line] == "liquid")
    water = sum((figures_of(take.card, take.lot).water_mg(take.quantity) for take in liquids), Fraction(0))
    check_dissolves(round(water), masses["alkali"])
    return [
        (line._replace(stage=WITH_THE_LYE) if kinds[line] in masses else line, takes)
        for line, takes in sorted(filled, key=lambda one: kinds[one[0]] != "liquid")
    ]
