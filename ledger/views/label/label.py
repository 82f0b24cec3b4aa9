"""What is printed on the bars of one batch for one market."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from ledger.domain.label.declaration import DeclaredIngredient, Naming, declare, declared_line
from ledger.domain.label.durability import Durability, durability
from ledger.domain.label.market import AS_FIGURES, Lettering, Market, Rule
from ledger.domain.label.net_quantity import Net, net_of
from ledger.domain.label.panel import Front
from ledger.domain.label.run import is_draft
from ledger.domain.label.words import Words, batch_word, breaks_in, said, until, untranslated
from ledger.domain.recipe.recipe import TOGETHER, LabelWishes, Recipe
from ledger.errors import BadInput, Refused
from ledger.markets import market
from ledger.reference.label_words import label_words
from ledger.rows.batch import BatchRow, find_batch, infusions_among
from ledger.rows.movement import batches_in
from ledger.rows.opened import Rows
from ledger.rows.recipe import recipe_by_code, recipe_of
from ledger.rows.settings import settings
from ledger.units.dates import MONTHS
from ledger.units.seals import sha256_of
from ledger.views.label.allergens import Allergens, allergens_of, batch_holding, said_barred
from ledger.views.label.picture import LabelPicture, picture_of
from ledger.views.material.meant import number_words
from ledger.views.recipe.ingredients import declared_parts
from ledger.views.release.assessment import latest_assessment
from ledger.views.stock.made_of import Compositions

_HOURGLASS = "(hourglass)"


@dataclass(frozen=True)
class LabelText:
    """The particulars of one label, ready to be set; nothing here is a claim of compliance."""

    market: str  # its code
    product: str
    function: str  # what it is: "Soap"
    net_quantity: str  # as it is printed, e.g. "100 g" or "Net Wt 3.5 oz (99 g)"
    net_mg: int
    figure_height_mm: float | None  # the least height of its figures; None where the panel decides
    ingredients_heading: str
    ingredients: str  # one line, comma-separated; empty where the market asks for none
    batch_code: str
    best_before: str | None  # as printed; None where a period after opening stands in its place
    after_opening_months: int | None  # beside the mark of the open jar
    origin: str | None  # "Made in Ireland"
    code_text: str  # what a printed code holds: the batch code, or a GTIN
    responsible_name: str
    responsible_address: str
    precautions: tuple[str, ...]
    made_on: date
    status: str  # of the bars
    draft: bool  # not passed for packing: marked DRAFT
    policy: str  # as added or as saponified
    declared: tuple[DeclaredIngredient, ...]
    allergens: Allergens | None  # None where the market asks for none
    rules: tuple[Rule, ...]
    remains: tuple[str, ...]  # what a person or a licensed assessor still has to decide
    languages: str = ""  # of its words: "en fr"
    hourglass: bool = False  # stands before the date, where a language has no words for it
    batch_word: str = "Batch"  # before the batch code; empty for none
    untranslated: tuple[str, ...] = ()  # what a language has no words for
    words_from: tuple[str, ...] = ()  # where the words of durability stand, by language
    lettering: Lettering = AS_FIGURES  # how the net quantity and the rest are set
    business: str = ""  # the name she trades under
    line: str | None = None  # of her own
    use: str | None = None  # what it is for: "for hands and kitchen"
    web: str | None = None  # printed as a code
    price: str | None = None  # as it is printed
    colour: str | None = None  # of the product
    picture: LabelPicture | None = None
    breaks: tuple[str, ...] = ()  # words on it that may go on in the next line, with their joints: Haut-reizungen


def label_text(
    rows: Rows,
    code: str,
    market_code: str,
    *,
    on: date,
    net: Net | None = None,
    best_before_months: int | None = None,
    front: Front | None = None,
    words: Sequence[Words] | None = None,
    checking: bool = False,
    made_of: Compositions | None = None,
) -> LabelText:
    """The particulars of the bars of one batch for one market, supplied on a day, from the lots that really went in.

    `front` is the side of the pack that bears the front, by which some laws set heights; `words` are those of its
    languages (left out: those shipped for her own country).
    Raises BadInput for an unknown market, a market without a responsible person, a bar without a
    declared weight, or a material without an INCI name; Refused for a batch that gives no bars, or (unless `checking`,
    which says it beside the rest) one that holds what may not be in a bar of that market.
    """
    batch = find_batch(rows, code)
    if not batch.soap or batch.yielded_on is None:
        raise Refused(f"Batch {batch.code} is {batch.status}; labels are for bars that were cut.")
    law, own, recipe = market(market_code), settings(rows), recipe_of(rows, batch)
    responsible = own.addresses.get(law.address)
    if responsible is None:
        raise BadInput(
            f"There is no responsible person for {law.name} yet; give one with: "
            f"soapledger init --market '{law.address}=Name; street, town'"
        )
    net = net or (net_of(recipe) if recipe else None)
    if not net:
        raise BadInput(f"{batch.product} has no net weight per bar; add --net '100 g', or write it in the recipe.")
    wishes = recipe.label if recipe else LabelWishes()
    together = law.fragrance_word if wishes.fragrance == TOGETHER else None
    compositions = made_of or Compositions(rows, of=[batch.id])
    parts = declared_parts(rows, batch, wishes.declaration, compositions)
    declared = declare(parts, Naming(law.aqua, together, law.floats))
    listed = law.allergen_list(on)
    allergens = allergens_of(batch_holding(rows, batch, compositions), listed) if listed else None
    if not checking and allergens and allergens.refused:
        raise Refused(f"Batch {batch.code} gets no label: {said_barred(law, allergens)}.")
    made = batch.made_on or batch.planned_on
    kept = _durability(rows, batch, law, recipe, wishes, made, best_before_months, on)
    spoken = label_words(law.languages_in(own.country)) if words is None else words
    best_before, hourglass = _until(kept, spoken)
    function, precautions = said(spoken, wishes.function), tuple(said(spoken, one) for one in wishes.precautions)
    return LabelText(
        market=law.code,
        product=batch.product,
        function=function,
        net_quantity=law.net_words(net),
        net_mg=net.mg,
        figure_height_mm=law.figure_height(net.mg, front.cm2 if front else None),
        ingredients_heading=law.ingredients_heading,
        ingredients=declared_line(declared, allergens.declared if allergens else ())
        if law.declares_ingredients or wishes.list_ingredients
        else "",
        batch_code=batch.code,
        best_before=best_before,
        after_opening_months=kept.after_opening_months,
        origin=said(spoken, wishes.origin) if wishes.origin else None,
        code_text=wishes.gtin or batch.code,
        responsible_name=responsible.name,
        responsible_address=responsible.address,
        precautions=precautions,
        made_on=made,
        status=batch.status,
        draft=is_draft(batch.lot_status),
        policy=wishes.declaration,
        declared=declared,
        allergens=allergens,
        rules=tuple(rule for rule in law.rules if rule.holds(on)),
        remains=(*_own_remains(rows, batch, wishes, allergens), *law.remains),
        languages=" ".join(one.language for one in spoken),
        hourglass=hourglass,
        batch_word=batch_word(spoken),
        untranslated=untranslated(spoken, (wishes.function, wishes.origin or "", *wishes.precautions)),
        words_from=tuple(f"{one.called}, {one.source}" for one in spoken if one.source),
        lettering=law.lettering.on(front.cm2 if front else None),
        business=own.business,
        line=wishes.line or own.line,
        use=wishes.use,
        web=own.web,
        colour=wishes.colour,
        picture=picture_of(rows, batch.recipe_code, wishes.picture) if batch.recipe_code and wishes.picture else None,
        breaks=breaks_in(
            spoken, (batch.product, function, *precautions, wishes.line or own.line or "", wishes.use or "")
        ),
    )


def run_text(view: LabelText) -> str:
    """What one label says, as it is approved and kept with its run."""
    opened = f"{view.after_opening_months}M after opening" if view.after_opening_months else ""
    hers = (view.line, view.use, view.web, view.picture and f"{view.picture.name} {view.picture.sha256}")
    return "\n".join(
        (
            view.product,
            view.function,
            view.net_quantity,
            f"{view.ingredients_heading}: {view.ingredients}" if view.ingredients else "",
            f"{_HOURGLASS} {view.best_before}" if view.hourglass else view.best_before or opened,
            " ".join(view.precautions),
            f"{view.responsible_name}, {view.responsible_address}",
            view.origin or "",
            view.batch_code,
            *(one for one in hers if one),
        )
    )


def digest_of(text: str) -> str:
    """The SHA-256 by which a text is known again."""
    return sha256_of(text.encode())


def _durability(
    rows: Rows,
    batch: BatchRow,
    law: Market,
    recipe: Recipe | None,
    wishes: LabelWishes,
    made: date,
    months: int | None,
    on: date,
) -> Durability:
    """A date of month and year, or where the market asks for it the period after opening, within what was assessed."""
    months = months or (recipe.best_before_months if recipe else None)
    if months is None:
        return Durability(None, wishes.after_opening_months)
    assessed = None
    if batch.recipe_code and law.asks("assessment", on):
        found = latest_assessment(rows, recipe_by_code(rows, batch.recipe_code))
        assessed = found.durability_months if found else None
    dated = law.dated_months
    opened = wishes.after_opening_months if dated is not None and months > dated else None
    return durability(
        made,
        months,
        dated_months=dated,
        after_opening_months=opened,
        opening_matters=wishes.opening_matters,
        assessed_months=assessed,
    )


def _until(kept: Durability, spoken: Sequence[Words]) -> tuple[str | None, bool]:
    """The date in the words of its languages, and whether the hourglass stands before it."""
    if kept.month_and_year is None:
        return None, False
    month, year = kept.month_and_year.split()
    return until(spoken, MONTHS.index(month) + 1, int(year))


def _own_remains(rows: Rows, batch: BatchRow, wishes: LabelWishes, allergens: Allergens | None) -> tuple[str, ...]:
    """What this very batch leaves to a person, before what its market does."""
    found = [
        f"How a soap made of its fats is named: here {wishes.declaration}, by the recipe; no official text was found "
        "that settles it.",
        "The best-before date: months from the making as the recipe gives them, or 24 by default (no source).",
    ]
    if allergens:
        found += [
            f"What {one} holds: nobody stated it (soapledger material contains)." for one in allergens.no_statement
        ]
        found += allergens.doubts
        found += [
            f"What {one}, is: its name in the statement is not known here, neither as a label name nor as a synonym or "
            f"CAS number, so nothing was looked up for it. {number_words(name) or ''}".rstrip()
            + f' Say what it is: soapledger material means "{name}" --is ENTRY, or --no-entry.'
            for one in allergens.unknown
            for name in [one[1:].partition("',")[0]]
        ]
        found += [*allergens.said, *allergens.questions]
        found += [
            f"Whether {one} may be in a bar here: the EU prohibits it, and the rule of this market is not known here."
            for one in allergens.asked
        ]
    if infused := infusions_among(rows, batches_in(rows, batch.id)):
        found.append(
            f"Whether more of the plants strained out of {', '.join(infused)} was carried over than "
            "the recipe says, and is to be declared."
        )
    return tuple(found)
