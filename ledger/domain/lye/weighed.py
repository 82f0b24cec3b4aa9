"""The lye of a batch as weighed: its superfat, its water, and which figures they were reckoned with."""

from collections.abc import Collection, Iterable, Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.lye.pot import Figures, Pot, open_acids, stated
from ledger.domain.lye.uncertainty import Superfat
from ledger.units.words import MaterialKind, Process, Role, Stage


class LyeCheck(NamedTuple):
    """The lye of one batch as weighed; the superfat is None until all fats and the alkali are weighed."""

    fats_mg: int
    alkali_mg: int  # as sold, without the water of a stock lye
    water_mg: int  # in all the liquids, acids and a stock lye together
    alkali_kind: str | None  # NaOH, KOH, or both
    purity_ppm: int | None  # of all the alkali together
    superfat: Superfat | None
    before_addition: Superfat | None  # hot process: of the pot, before a fat held back goes in
    figures: dict[int, str]  # by lot: the saponification value or purity used, and where it stands
    stated: tuple[str, ...]  # whose each single figure is, and how far it is trusted
    as_meant: Superfat | None = None  # while a fat is still to come at trace: with it at its target

    @property
    def superfat_ppm(self) -> int | None:
        """The superfat as reckoned."""
        return self.superfat.nominal_ppm if self.superfat else None


def role_of(kind: MaterialKind, figures: Figures) -> Role:
    """As what something counts that went in on the line of another material: by what it is."""
    if figures.sap_low_mg_per_kg is not None:
        return "fat"
    return kind if kind in ("alkali", "liquid", "fragrance") else "additive"


class Weighed(NamedTuple):
    """So much of one lot that was weighed on lines of one role, and what was known of it then."""

    role: Role
    stage: Stage
    material_id: int
    lot_id: int
    mass_mg: int
    figures: Figures
    source: str

    @property
    def held_back(self) -> bool:
        """Whether it is a fat that goes in later than the others."""
        return self.role == "fat" and self.stage != "in the fats"

    @property
    def after_cook(self) -> bool:
        """Whether it is a fat that is not in the pot while it cooks."""
        return self.role == "fat" and self.stage == "after the cook"


def checked(
    weighed: Sequence[Weighed],
    still: Sequence[Weighed],
    process: Process,
    scale_step_mg: int,
    *,
    in_demand: Collection[tuple[int, Stage]] = (),
) -> LyeCheck:
    """The lye of what was weighed; `still` is what is open, at its target.

    The superfat is known once all fats and the alkali are weighed, and that of the pot once all but the fats held back
    are; a fat still to come at trace counts in the pot at its target, for then it is too late to weigh the lye again.
    An acid still open counts where it is `in_demand` at its time: alkali was weighed for it, and it goes in later.
    """
    alkalis = [one for one in weighed if one.role == "alkali"]
    total = sum(one.mass_mg for one in alkalis)
    pure = sum((one.mass_mg * one.figures.alkali(one.mass_mg).purity_ppm for one in alkalis), Fraction(0))
    superfat = before = meant = None
    fats = [one for one in weighed if one.role == "fat"]
    waiting = [one for one in still if one.role in ("fat", "alkali")]
    if fats and alkalis and all(one.held_back for one in waiting):
        to_come = [one for one in still if one.role == "additive" and (one.material_id, one.stage) in in_demand]
        traced = [one for one in waiting if not one.after_cook]
        pot = pot_as_weighed((*weighed, *to_come, *traced), process, scale_step_mg)
        superfat = None if waiting else pot.superfat()
        before = pot.cooking() if pot.held or len(waiting) > len(traced) else None
        meant = pot.superfat() if traced and before is None else None
    return LyeCheck(
        fats_mg=sum(one.mass_mg for one in fats),
        alkali_mg=dry_alkali(weighed),
        water_mg=water_of(weighed),
        alkali_kind=" and ".join(dict.fromkeys(one.figures.alkali_kind or "" for one in alkalis)) or None,
        purity_ppm=round(pure / total) if total else None,
        superfat=superfat,
        before_addition=before,
        figures={one.lot_id: words for one in weighed if (words := _words(one, process))},
        stated=stated((one.figures for one in weighed), process),
        as_meant=meant,
    )


def pot_as_weighed(weighed: Iterable[Weighed], process: Process, scale_step_mg: int) -> Pot:
    """What of it bears on the lye."""
    found = list(weighed)
    fats = [one for one in found if one.role == "fat"]
    return Pot(
        process,
        tuple(one.figures.fat(one.mass_mg, process) for one in fats if not one.after_cook),
        tuple(one.figures.fat(one.mass_mg, process) for one in fats if one.after_cook),
        tuple(one.figures.alkali(one.mass_mg) for one in found if one.role == "alkali"),
        sum((one.figures.acid_koh_mg(one.mass_mg) for one in found), Fraction(0)),
        scale_step_mg,
        open_acids((one.figures, one.mass_mg) for one in found),
    )


def dry_alkali(weighed: Iterable[Weighed]) -> int:
    """The alkali as sold, without the water of a stock lye, in mg."""
    return round(sum((one.mass_mg - _water(one) for one in weighed if one.role == "alkali"), Fraction(0)))


def water_of(weighed: Iterable[Weighed]) -> int:
    """The water in all the liquids and acids, and in a stock lye, in mg."""
    wet = (one for one in weighed if one.role in ("alkali", "liquid") or one.figures.acid_koh_mg_per_kg is not None)
    return round(sum((_water(one) for one in wet), Fraction(0)))


def _water(one: Weighed) -> Fraction:
    """The water it brings: that of a liquid, of a weak acid, or of a stock lye."""
    if one.role == "alkali" and one.figures.water_ppm is None:
        return Fraction(0)
    return one.figures.water_mg(one.mass_mg)


def _words(one: Weighed, process: Process) -> str:
    """The figure the lye was reckoned with, and where it stands."""
    figures = one.figures
    if one.role == "fat":
        return f"saponification value {figures.sap_words()} mg KOH/g{figures.slow_words(process)} ({one.source})"
    if one.role == "alkali":
        if figures.purity_low_ppm is None:
            return "no certificate, reckoned as pure"
        word = "strength" if figures.water_ppm is not None else "purity"
        own = f" ({one.source})" if figures.purity_of else ""
        return f"{word} {figures.purity_words()}{own}"
    if figures.acid_koh_mg_per_kg is not None:
        used = f"uses up {figures.acid_koh_mg_per_kg / 1_000_000:.4g} g KOH per g of pure acid"
        return f"{used}; strength {figures.purity_words()}" if figures.purity_low_ppm is not None else used
    return ""
