"""What the lye needs to know of a lot: its certificate's figures, else those of its material."""

from ledger.domain.pot import Figures
from ledger.views.lots import LotRow
from ledger.views.material import MaterialCard


def figures_of(card: MaterialCard, lot: LotRow | None = None) -> Figures:
    """The figures of a material, or of one lot of it."""
    own_sap = lot is not None and lot.sap_low_mg_per_kg is not None
    own_purity = lot is not None and lot.purity_ppm is not None
    assert lot is None or lot.material_id == card.id
    return Figures(
        name=card.name,
        sap_low_mg_per_kg=lot.sap_low_mg_per_kg if lot and own_sap else card.sap_low_mg_per_kg,
        sap_high_mg_per_kg=lot.sap_high_mg_per_kg if lot and own_sap else card.sap_high_mg_per_kg,
        alkali_kind=card.alkali_kind,
        purity_low_ppm=lot.purity_ppm if lot and own_purity else card.purity_ppm,
        purity_high_ppm=lot.purity_high_ppm if lot and own_purity else None,
        water_ppm=lot.water_ppm if lot and lot.water_ppm is not None else card.water_ppm,
        acid_koh_mg_per_kg=card.acid_koh_mg_per_kg,
    )
