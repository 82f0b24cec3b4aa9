"""A portion of a lot as received, which is what every declaration comes down to."""

from typing import NamedTuple

from ledger.errors import BadInput
from ledger.rows.lot import LotRow


class Base(NamedTuple):
    """So much of a lot as received, in mg; or a herb carried over, which no lot of its own stands for."""

    lot: LotRow
    mass_mg: int
    held_back: bool  # a fat that went in after the cook
    carried: str | None = None  # the INCI name declared of a herb that was strained out

    @property
    def inci(self) -> str:
        """The name it is declared by. Raises BadInput for a material without an INCI name."""
        if self.carried:
            return self.carried
        if self.lot.inci is None:
            raise BadInput(
                f"{self.lot.material} has no INCI name, and a label needs one: "
                f"soapledger material edit {self.lot.material_code} --inci NAME"
            )
        return " ".join(self.lot.inci.upper().split())
