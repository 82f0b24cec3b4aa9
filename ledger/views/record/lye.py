"""The lye and the superfat of a batch, as its record shows them."""

from dataclasses import dataclass, field

from ledger.domain.lye.saponification import lye_concentration
from ledger.domain.lye.uncertainty import Superfat
from ledger.units.quantity import show_mass, show_share
from ledger.views.record.head import Head, Section
from ledger.views.record.pieces import Column, Facts, Pieces, grid
from ledger.views.record.sources import Sources
from ledger.views.record.went_in import WentIn


@dataclass(frozen=True)
class Lye(Section):
    """The fats, the alkali and the water as weighed, and the superfat they give."""

    title = "Lye and superfat"
    fats_mg: int
    alkali_mg: int
    water_mg: int
    alkali_kind: str | None
    alkali_purity_ppm: int | None
    superfat_nominal_ppm: int | None
    superfat_actual_ppm: int | None
    superfat: Superfat | None  # as weighed, with how low it may lie
    before_addition: Superfat | None  # hot process: of the pot, before a fat held back goes in
    lye_concentration_ppm: int | None
    figures: tuple[tuple[str, str, str], ...] = field(metadata={"inner": True})  # lot, material, figure with its source

    def paper(self, head: Head) -> Pieces:
        """What was meant, what was weighed, and the figures it was reckoned with, lot by lot."""
        facts = Facts((("lye", "none: no fats are saponified in this batch"),))
        if self.superfat_nominal_ppm is not None:
            facts = self._facts(head, self.superfat_nominal_ppm)
        table = grid(
            self.figures,
            Column("lot", lambda one: one[0], 0.09, bold=True),
            Column("material", lambda one: one[1], 0.25),
            Column("figure used, and its source", lambda one: one[2], 0.66),
        )
        return (facts, table) if self.figures else (facts,)

    def _facts(self, head: Head, meant_ppm: int) -> Facts:
        actual, before, units = self.superfat_actual_ppm, self.before_addition, head.units
        purity = f", purity {show_share(self.alkali_purity_ppm)}" if self.alkali_purity_ppm else ""
        alkali = f"{show_mass(self.alkali_mg, units)} of {self.alkali_kind}{purity}" if self.alkali_kind else ""
        pot = f"{show_share(before.nominal_ppm, 2)}; {_low(before)}" if before else ""
        return Facts(
            (
                ("superfat meant", f"{show_share(meant_ppm)} of the fats' alkali demand"),
                (
                    "superfat as weighed",
                    show_share(actual, 2) if actual is not None else "not everything is weighed yet",
                ),
                ("likely low, all low", _low(self.superfat)),
                ("before the addition", pot),
                ("lye concentration", show_share(self.lye_concentration_ppm) if self.lye_concentration_ppm else ""),
                ("fats", show_mass(self.fats_mg, units)),
                ("alkali", alkali or "not weighed yet"),
                ("water, other liquids", show_mass(self.water_mg, units)),
            )
        )

    def screen(self, _: Head) -> Pieces:
        """The superfat and how low it may lie."""
        nominal, actual, found = self.superfat_nominal_ppm, self.superfat_actual_ppm, self.superfat
        weighed = f", {show_share(actual, 2)} as weighed" if actual is not None else ""
        low = f"{show_share(found.likely_low_ppm, 2)}; all low {show_share(found.all_low_ppm, 2)}" if found else ""
        pot = ""
        if self.before_addition:
            share = show_share(self.before_addition.nominal_ppm, 2)
            pot = f"superfat {share} before the fat held back went in"
        return (
            Facts(
                (
                    ("superfat", f"{show_share(nominal)} meant{weighed}" if nominal is not None else ""),
                    ("likely low", low),
                    ("in the pot", pot),
                    ("lye", show_share(self.lye_concentration_ppm) if self.lye_concentration_ppm else ""),
                )
            ),
        )


def lye(read: Sources, inputs: WentIn) -> Lye:
    """The lye as weighed; a portion's is in the record of its dough."""
    check, recipe = read.check, read.recipe
    return Lye(
        fats_mg=check.fats_mg,
        alkali_mg=check.alkali_mg,
        water_mg=check.water_mg,
        alkali_kind=check.alkali_kind,
        alkali_purity_ppm=check.purity_ppm,
        superfat_nominal_ppm=recipe.superfat_ppm if recipe and read.batch.part_of is None else None,
        superfat_actual_ppm=check.superfat_ppm,
        superfat=check.superfat,
        before_addition=check.before_addition,
        lye_concentration_ppm=lye_concentration(check.water_mg, check.alkali_mg)
        if check.alkali_mg and check.water_mg
        else None,
        figures=tuple(
            dict.fromkeys((one.lot_code, one.material, one.certificate) for one in inputs.materials if one.certificate)
        ),
    )


def _low(found: Superfat | None) -> str:
    return f"{show_share(found.likely_low_ppm, 2)}, {show_share(found.all_low_ppm, 2)}" if found else ""
