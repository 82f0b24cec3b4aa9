"""What went into a batch against what came out of it, step by step."""

from typing import NamedTuple

from ledger.units.quantity import WHOLE_PPM


class MassBalance(NamedTuple):
    """Masses in mg; None where nobody weighed it."""

    put_in_mg: int
    cooked_off_mg: int | None = None  # water lost in the cook: the pot before it less the pot after
    poured_mg: int | None = None
    unmoulded_mg: int | None = None
    out_mg: int | None = None  # the bars together, or the bulk
    offcuts_mg: int = 0
    waste_mg: int = 0

    @property
    def loss_mg(self) -> int | None:
        """What is not accounted for: mass in, less the water lost in the cook and all that was weighed out."""
        if self.out_mg is None:
            return None
        return self.put_in_mg - (self.cooked_off_mg or 0) - self.out_mg - self.offcuts_mg - self.waste_mg

    @property
    def loss_ppm(self) -> int | None:
        """The same as a share of the mass in."""
        if self.loss_mg is None or not self.put_in_mg:
            return None
        return round(self.loss_mg * WHOLE_PPM / self.put_in_mg)

    def lines(self) -> tuple[tuple[str, int | None], ...]:
        """Each mass with its name, from the pot to the rack."""
        return (
            ("weighed in", self.put_in_mg),
            ("water lost in the cook", self.cooked_off_mg),
            ("poured into the mould", self.poured_mg),
            ("unmoulded", self.unmoulded_mg),
            ("came out", self.out_mg),
            ("end slices and offcuts", self.offcuts_mg),
            ("waste", self.waste_mg),
            ("not accounted for", self.loss_mg),
        )
