"""What became of the bars that stood at a stall: came home, stolen, broken, and the rest was sold."""

from collections.abc import Sequence
from typing import Literal, NamedTuple, get_args

from ledger.domain.sell.assumed import Pairs, candidates, first_out
from ledger.errors import BadInput, Refused
from ledger.units.wording import count

Fate = Literal["home", "stolen", "broken"]
FATES: tuple[Fate, ...] = get_args(Fate)
COUNTED = "counted by product"  # beside a movement: which batches its bars were of was not looked at
_CAME = {"home": "come back", "stolen": "been stolen", "broken": "been broken"}


class Stood(NamedTuple):
    """Bars of one batch that stood at a stall."""

    lot_id: int
    code: str
    product_id: int
    product: str
    bars: int


class Told(NamedTuple):
    """How many met with a fate: of one batch (its lot), or of a product, whatever the batch."""

    fate: Fate
    bars: int
    lot_id: int | None = None
    product_id: int | None = None


class Outcome(NamedTuple):
    """What became of the bars of one batch, and which others those that went may as well be of."""

    lot_id: int
    home: int
    stolen: int
    broken: int
    sold: int
    may_be: frozenset[int]
    counted: bool  # several batches stood there, and nobody noted which of them went


def evening(stood: Sequence[Stood], told: Sequence[Told], pairs: Pairs) -> list[Outcome]:
    """What became of every bar, by batch; `stood` is in the order of age, the oldest first.

    Of bars counted by product the oldest are taken to be sold. Raises Refused where more is told than stood there,
    BadInput where nothing is told of a batch that did, or the same is told by batch and by product.
    """
    found = []
    pairs = list(pairs)
    for product in dict.fromkeys(one.product_id for one in stood):
        here = [one for one in stood if one.product_id == product]
        lots = {one.lot_id for one in here}
        by_lot = [one for one in told if one.lot_id in lots]
        by_product = [one for one in told if one.product_id == product]
        found += _of_product(here, by_lot, by_product, pairs)
    turn = {one.lot_id: at for at, one in enumerate(stood)}
    return sorted(found, key=lambda one: turn[one.lot_id])


def _of_product(
    here: Sequence[Stood], by_lot: Sequence[Told], by_product: Sequence[Told], pairs: Pairs
) -> list[Outcome]:
    _check_told(here, by_lot, by_product)
    fates = {fate: dict.fromkeys((one.lot_id for one in here), 0) for fate in FATES}
    left = {one.lot_id: one.bars for one in here}
    for one in by_lot:
        stand = next(stand for stand in here if stand.lot_id == one.lot_id)
        if one.bars > left[stand.lot_id]:
            raise Refused(_too_many(stand.bars, left[stand.lot_id], f"of batch {stand.code}", one))
        left[stand.lot_id] -= one.bars
        fates[one.fate][stand.lot_id] += one.bars
    pool = dict(left)
    for one in sorted(by_product, key=lambda told: FATES.index(told.fate)):
        if one.bars > sum(left.values()):
            raise Refused(_too_many(sum(s.bars for s in here), sum(left.values()), f"of {here[0].product}", one))
        for lot, number in first_out(one.bars, dict(reversed(left.items()))).items():  # the oldest were sold
            left[lot] -= number
            fates[one.fate][lot] += number
    ways = [sum(left.values()), *(sum(one.bars for one in by_product if one.fate == fate) for fate in FATES)]
    open_ = sum(1 for bars in ways if bars) > 1
    counted = open_ and sum(1 for bars in pool.values() if bars) > 1
    may_be = candidates(pool, pool, pairs, any_of_them=open_)
    home, stolen, broken = (fates[fate] for fate in FATES)
    return [
        Outcome(lot, home[lot], stolen[lot], broken[lot], left[lot], may_be[lot], counted)
        for lot in (one.lot_id for one in here)
    ]


def _too_many(stood: int, left: int, of: str, told: Told) -> str:
    less = "" if stood == left else f", and {stood - left} of them are told already"
    return f"{count(stood, 'bar')} {of} went out{less}, so {told.bars} cannot have {_CAME[told.fate]}."


def _check_told(here: Sequence[Stood], by_lot: Sequence[Told], by_product: Sequence[Told]) -> None:
    home = {one.lot_id for one in by_lot if one.fate == "home"}
    counted = any(one.fate == "home" for one in by_product)
    if counted and home:
        code = next(one.code for one in here if one.lot_id in home)
        raise BadInput(
            f"What came back of {here[0].product} stands by product and by batch ({code}); write it one way."
        )
    missing = [one.code for one in here if one.lot_id not in home]
    if missing and not counted:
        raise BadInput(f"How many of batch {', '.join(missing)} came back? Write {missing[0]}=0 if none did.")
