"""What is in the pot that bears on the lye, and the superfat it has before and after a fat held back goes in."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ledger.domain.saponification import MG_PER_KG, WHOLE_PPM, AlkaliCharge, FatCharge
from ledger.domain.uncertainty import Superfat, superfat_range
from ledger.errors import BadInput


@dataclass(frozen=True)
class Figures:
    """What the lye needs to know of the lot, or else the material, that supplies a line; None where it has none."""

    name: str
    sap_low_mg_per_kg: int | None = None
    sap_high_mg_per_kg: int | None = None
    alkali_kind: str | None = None
    purity_low_ppm: int | None = None  # of an alkali, the strength of a stock lye, or that of an acid
    purity_high_ppm: int | None = None
    water_ppm: int | None = None  # of a liquid, or of a stock lye
    acid_koh_mg_per_kg: int | None = None

    def fat(self, mass_mg: int) -> FatCharge:
        """So much of it as a fat. Raises BadInput for one without a saponification value."""
        if self.sap_low_mg_per_kg is None or self.sap_high_mg_per_kg is None:
            raise BadInput(
                f"{self.name} has no saponification value, so the lye cannot be reckoned; give it one: "
                f'soapledger material edit "{self.name}" --sap 188-192'
            )
        return FatCharge(self.name, mass_mg, self.sap_low_mg_per_kg, self.sap_high_mg_per_kg)

    def alkali(self, mass_mg: int) -> AlkaliCharge:
        """So much of it as an alkali; NaOH without a certificate is reckoned as pure, which errs towards superfat.

        Raises BadInput for KOH without a purity.
        """
        assert self.alkali_kind
        low, high = self.purity_low_ppm, self.purity_high_ppm
        if low is None:
            if self.alkali_kind == "KOH":
                raise BadInput(
                    f"{self.name} needs its purity, which its certificate states; give it to the lot when it comes "
                    f'(purity 90), or: soapledger material edit "{self.name}" --purity 90'
                )
            low = high = WHOLE_PPM
        return AlkaliCharge(self.name, self.alkali_kind, mass_mg, low, low if high is None else high)

    def acid_koh_mg(self, mass_mg: int) -> Fraction:
        """The KOH that so much of it uses up, in mg; nothing for what is no acid."""
        if self.acid_koh_mg_per_kg is None:
            return Fraction(0)
        strength = WHOLE_PPM if self.purity_low_ppm is None else self.purity_low_ppm
        return Fraction(mass_mg * strength * self.acid_koh_mg_per_kg, WHOLE_PPM * MG_PER_KG)

    def certified(self) -> "Figures":
        """The same with one figure in the middle of each range, as a certificate would give."""
        sap = self.fat(0).sap_mg_per_kg if self.sap_low_mg_per_kg is not None else None
        purity = self.alkali(0).purity_ppm if self.alkali_kind else None
        return replace(
            self,
            sap_low_mg_per_kg=None if sap is None else round(sap),
            sap_high_mg_per_kg=None if sap is None else round(sap),
            purity_low_ppm=self.purity_low_ppm if purity is None else round(purity),
            purity_high_ppm=self.purity_high_ppm if purity is None else round(purity),
        )

    def water_mg(self, mass_mg: int) -> Fraction:
        """The water in so much of it, in mg: a liquid without a figure is water, as is the rest of a weak acid."""
        if self.acid_koh_mg_per_kg is not None:
            return mass_mg * Fraction(WHOLE_PPM - (self.purity_low_ppm or WHOLE_PPM), WHOLE_PPM)
        return mass_mg * Fraction(WHOLE_PPM if self.water_ppm is None else self.water_ppm, WHOLE_PPM)


@dataclass(frozen=True)
class Pot:
    """Everything that bears on the lye of one batch."""

    process: str
    fats: tuple[FatCharge, ...]
    held: tuple[FatCharge, ...]  # fats held back until later
    alkalis: tuple[AlkaliCharge, ...]
    acids_koh_mg: Fraction
    scale_step_mg: int

    def superfat(self) -> Superfat:
        """The superfat over all the fats, held back or not: what is left once everything has met."""
        return self._range((*self.fats, *self.held))

    def before_addition(self) -> Superfat | None:
        """Hot process: the superfat of the pot while it cooks, before a fat held back goes in.

        None where nothing is held back, and for cold process, where free alkali meets all fats alike.
        """
        return self.cooking() if self.held else None

    def cooking(self) -> Superfat | None:
        """Hot process: the superfat of what is in the pot while it cooks; None for cold process."""
        return self._range(self.fats) if self.process == "hot" else None

    def lowest(self) -> Superfat:
        """Whichever of the two leaves less."""
        before = self.before_addition()
        return self.superfat() if before is None else before

    def _range(self, fats: Sequence[FatCharge]) -> Superfat:
        return superfat_range(fats, self.alkalis, scale_step_mg=self.scale_step_mg, acids_koh_mg=self.acids_koh_mg)
