"""What a recipe is scaled to, as typed, and what it then comes to."""

from ledger.cli.kit.desk import Desk
from ledger.cli.kit.show import say
from ledger.cli.recipe.page_words import say_page
from ledger.domain.recipe.mould import parse_mould
from ledger.domain.recipe.scaling import bars_of, fats_for_bars, fats_for_stock, fats_for_volume
from ledger.errors import BadInput, Refused
from ledger.rows.lot import available
from ledger.rows.material import material_by_code
from ledger.rows.recipe import recipe_by_code
from ledger.units.quantity import parse_mass, parse_pieces, show_mass
from ledger.views.recipe.composition import recipe_stages
from ledger.views.recipe.density import own_density
from ledger.views.recipe.recipe import RecipeSheet, recipe_sheet
from ledger.views.recipe.recipe_page import RecipePage, dough_of

_WAYS = (
    "Scale it to one thing: --mould '21 x 7 x 6.5 cm', --bars 12 --size '80 x 55 x 25 mm', "
    "--bars 12 --net-weight '100 g', or --stock 'olive oil'."
)


def scaled_fats(
    here: Desk,
    which: str,
    version: int | None,
    *,
    mould: str | None,
    bars: str | None,
    size: str | None,
    net_weight: str | None,
    stock: str | None,
) -> int:
    """The fats, in mg, that what was asked for takes. Raises BadInput unless it is one thing; Refused for no stock."""
    ways = [bool(mould), bool(bars and size and not net_weight), bool(bars and net_weight and not size), bool(stock)]
    given = [bool(mould), bool(bars or size or net_weight), bool(stock)]
    if sum(ways) != 1 or sum(given) != 1:
        raise BadInput(_WAYS)
    card = recipe_by_code(here.rows(), which)
    sheet = recipe_sheet(here.rows(), card, version=version)
    dough, stages = dough_of(sheet), recipe_stages(sheet)
    if dough is None or stages is None:
        raise BadInput(f"{card.name} has no fats to scale by; it is made at the size it is written.")
    density = own_density(here.rows(), card.code)
    if mould:
        return fats_for_volume(dough, parse_mould(mould).volume_ul, density_mg_per_ml=density)
    if stock:
        return _fats_of_stock(here, sheet, stock)
    number = parse_pieces(bars or "", what="the number of bars")
    if size:
        return fats_for_volume(dough, bars_of(parse_mould(size), number), density_mg_per_ml=density)
    weight = parse_mass(net_weight or "", what="the net weight")
    return fats_for_bars(dough, stages.cured.mass_mg, bars=number, net_weight_mg=weight)


def _fats_of_stock(here: Desk, sheet: RecipeSheet, word: str) -> int:
    card = material_by_code(here.rows(), word)
    mine = sum(
        one.target
        for one in sheet.targets
        if one.line.role == "fat" and sheet.materials[one.line.material].id == card.id
    )
    if not mine:
        fats = ", ".join(dict.fromkeys(sheet.materials[line.material].name for line in sheet.recipe.of_role("fat")))
        raise BadInput(f"{card.name} is no fat of {sheet.recipe.name}; its fats are {fats}.")
    free = sum(max(one.free, 0) for one in available(here.rows(), card.id, on=here.today))
    if free <= 0:
        raise Refused(f"Nothing of {card.name} is free; see: soapledger stock")
    return fats_for_stock(sheet.fats_mg, mine, free)


def say_scaled(here: Desk, page: RecipePage) -> None:
    """The page at its new size, and how to plan it."""
    say_page(page)
    fats = show_mass(page.fats_mg, here.settings.units)
    exact = f"{page.fats_mg / 1000:.3f}".rstrip("0").rstrip(".")
    say(f"For {fats} of fats. Next:")
    bars = f" --bars {page.bars}" if page.bars else ""
    say(f"  soapledger batch plan {page.code} --fats '{exact} g'{bars}")
