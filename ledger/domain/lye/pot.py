"""What is in the pot that bears on the lye, and the superfat it has before and after a fat held back goes in."""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import NamedTuple

from ledger.domain.lye.saponification import MG_PER_KG, AlkaliCharge, FatCharge
from ledger.domain.lye.uncertainty import STATED_PURITY_SPREAD, STATED_SAP_SPREAD, Superfat, superfat_range
from ledger.errors import BadInput
from ledger.units.quantity import WHOLE_PPM
from ledger.units.words import AlkaliKind, Process

# One figure typed for a material speaks of a kind of goods: each lot of it may lie so far to either side, as a share
# of the figure. Common practice, no source.
TYPED_SPREAD_PPM = 30_000


def typed_spread(value: int) -> int:
    """What one figure typed for a material leaves open, either way, in the figure's own unit; rounded up."""
    return -(-value * TYPED_SPREAD_PPM // WHOLE_PPM)


class Figures(NamedTuple):
    """What the lye needs to know of the lot, or else the material, that supplies a line; None where it has none."""

    name: str
    sap_low_mg_per_kg: int | None = None
    sap_high_mg_per_kg: int | None = None
    alkali_kind: AlkaliKind | None = None
    purity_low_ppm: int | None = None  # of an alkali, the strength of a stock lye, or that of an acid
    purity_high_ppm: int | None = None
    water_ppm: int | None = None  # of a liquid, or of a stock lye
    acid_koh_mg_per_kg: int | None = None
    sap_open_mg_per_kg: int = 0  # what one figure typed for the material leaves open, either way
    purity_open_ppm: int = 0  # likewise
    sap_of: str | None = None  # whose own figure it is, such as "lot L3-6: certificate"; None: the material's
    purity_of: str | None = None  # likewise
    acid_value_mg_per_kg: int | None = None  # of wax esters or sterols: what surely takes up alkali in cold process

    def fat(self, mass_mg: int, process: Process | None = None) -> FatCharge:
        """So much of it as a fat. Raises BadInput for one without a saponification value.

        In cold process wax esters and sterols take anything between their acid value and all of their value.
        """
        if self.sap_low_mg_per_kg is None or self.sap_high_mg_per_kg is None:
            raise BadInput(
                f"{self.name} has no saponification value, so the lye cannot be reckoned; give it one: "
                f'soapledger material edit "{self.name}" --sap 188-192'
            )
        low, high = self.sap_low_mg_per_kg - self.sap_open_mg_per_kg, self.sap_high_mg_per_kg + self.sap_open_mg_per_kg
        if process == "cold" and self.acid_value_mg_per_kg is not None:
            return FatCharge(self.name, mass_mg, min(self.acid_value_mg_per_kg, low), high, slow=True)
        return FatCharge(self.name, mass_mg, low, high)

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
        room = self.purity_open_ppm
        return AlkaliCharge(self.name, self.alkali_kind, mass_mg, low - room, (low if high is None else high) + room)

    def acid_koh_mg(self, mass_mg: int) -> Fraction:
        """The KOH that so much of it uses up, in mg; nothing for what is no acid."""
        if self.acid_koh_mg_per_kg is None:
            return Fraction(0)
        strength = WHOLE_PPM if self.purity_low_ppm is None else self.purity_low_ppm
        return Fraction(mass_mg * strength * self.acid_koh_mg_per_kg, WHOLE_PPM * MG_PER_KG)

    def acid_open_koh_mg(self, mass_mg: int) -> Fraction:
        """How much less KOH so much of an acid may use up than `acid_koh_mg`, in mg: it may be weaker than typed."""
        if self.acid_koh_mg_per_kg is None:
            return Fraction(0)
        room = STATED_PURITY_SPREAD if self.purity_of else self.purity_open_ppm
        return Fraction(mass_mg * room * self.acid_koh_mg_per_kg, WHOLE_PPM * MG_PER_KG)

    def sap_words(self) -> str:
        """The saponification value in mg KOH per g: a range, a lot's own figure, or one typed for the material."""
        low, high = self.sap_low_mg_per_kg or 0, self.sap_high_mg_per_kg or 0
        if low != high:
            return f"{low / 1000:g} to {high / 1000:g}"
        if self.sap_of:
            return f"{low / 1000:g} ± {STATED_SAP_SPREAD / 1000:g}"
        room = self.sap_open_mg_per_kg
        return f"{low / 1000:g} typed for the material, taken as {(low - room) / 1000:.1f} to {(low + room) / 1000:.1f}"

    def purity_words(self) -> str:
        """The purity or strength in percent, likewise; of one typed only the side that leaves lye over is counted."""
        low = self.purity_low_ppm or 0
        high = low if self.purity_high_ppm is None else self.purity_high_ppm
        if low != high:
            return f"{low / 10_000:g} to {high / 10_000:g} %"
        shown = f"{low / 10_000:g} %"
        if self.purity_of:
            return f"{shown} ± {STATED_PURITY_SPREAD / 10_000:g}"
        if not self.purity_open_ppm:
            return f"{shown} for the material"
        if self.alkali_kind:
            return f"{shown} typed for the material, taken as up to {(low + self.purity_open_ppm) / 10_000:.4g} %"
        return f"{shown} for the material, taken as down to {(low - self.purity_open_ppm) / 10_000:.4g} %"

    def slow_words(self, process: Process | None) -> str:
        """How wax esters or sterols are counted in cold process; empty for anything else."""
        if self.sap_low_mg_per_kg is None or not (fat := self.fat(0, process)).slow:
            return ""
        return f", in cold process taken as {fat.sap_low_mg_per_kg / 1000:g} to {fat.sap_high_mg_per_kg / 1000:g}"

    def stated(self, process: Process | None = None) -> str | None:
        """Whose the one figure is that the lye goes by, and how far it is trusted; None for a range or no figure.

        Of wax esters in cold process the range is said too.
        """
        if slow := self.slow_words(process):
            return self._said(self.sap_of, self.sap_words()) + slow
        if self.sap_low_mg_per_kg is not None and self.sap_low_mg_per_kg == self.sap_high_mg_per_kg:
            return self._said(self.sap_of, self.sap_words())
        one = self.purity_low_ppm is not None and self.purity_high_ppm in (None, self.purity_low_ppm)
        return self._said(self.purity_of, self.purity_words()) if one else None

    def _said(self, of: str | None, words: str) -> str:
        return f"{self.name}, {of} {words}" if of else f"{self.name}: {words}"

    def certified(self) -> "Figures":
        """The same with one figure in the middle of each range, as a certificate would give."""
        sap = self.fat(0).sap_mg_per_kg if self.sap_low_mg_per_kg is not None else None
        purity = self.alkali(0).purity_ppm if self.alkali_kind else None
        return self._replace(
            sap_low_mg_per_kg=None if sap is None else round(sap),
            sap_high_mg_per_kg=None if sap is None else round(sap),
            purity_low_ppm=self.purity_low_ppm if purity is None else round(purity),
            purity_high_ppm=self.purity_high_ppm if purity is None else round(purity),
            sap_open_mg_per_kg=0,
            purity_open_ppm=0,
        )

    def water_mg(self, mass_mg: int) -> Fraction:
        """The water in so much of it, in mg: a liquid without a figure is water, as is the rest of a weak acid."""
        if self.acid_koh_mg_per_kg is not None and self.water_ppm is None:
            return mass_mg * Fraction(WHOLE_PPM - (self.purity_low_ppm or WHOLE_PPM), WHOLE_PPM)
        return mass_mg * Fraction(WHOLE_PPM if self.water_ppm is None else self.water_ppm, WHOLE_PPM)


def stated(found: Iterable[Figures], process: Process | None = None) -> tuple[str, ...]:
    """What is to be said of the single figures among them, each once."""
    return tuple(dict.fromkeys(words for one in found if (words := one.stated(process))))


def open_acids(charges: Iterable[tuple[Figures, int]]) -> tuple[tuple[str, Fraction], ...]:
    """Of so many mg of each, the acids of which it is not known how much KOH they use up, with how much less."""
    found = ((figures.name, figures.acid_open_koh_mg(mass)) for figures, mass in charges)
    return tuple((name, koh_mg) for name, koh_mg in found if koh_mg)


class Pot(NamedTuple):
    """Everything that bears on the lye of one batch."""

    process: Process
    fats: tuple[FatCharge, ...]
    held: tuple[FatCharge, ...]  # fats held back until after the cook
    alkalis: tuple[AlkaliCharge, ...]
    acids_koh_mg: Fraction
    scale_step_mg: int
    acids_open: tuple[tuple[str, Fraction], ...] = ()  # by name, how much less KOH an acid may use up, in mg

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
        return superfat_range(
            fats,
            self.alkalis,
            scale_step_mg=self.scale_step_mg,
            acids_koh_mg=self.acids_koh_mg,
            acids_open=self.acids_open,
        )
