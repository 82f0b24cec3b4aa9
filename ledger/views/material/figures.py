"""What the lye needs to know of a lot: its certificate's figures, else those of its material."""

from ledger.domain.lye.pot import Figures, typed_spread
from ledger.reference.tables import acid_value, fats
from ledger.rows.lot import LotRow
from ledger.rows.material import MaterialCard
from ledger.units.quantity import WHOLE_PPM
from ledger.units.words import AlkaliKind


def figures_of(card: MaterialCard, lot: LotRow | None = None) -> Figures:
    """The figures of a material, or of one lot of it."""
    own_sap = lot is not None and lot.sap_low_mg_per_kg is not None
    own_purity = lot is not None and lot.purity_ppm is not None
    assert lot is None or lot.material_id == card.id
    own = own_words(lot.code, worked_out=lot.batch_id is not None) if lot else None
    return Figures(
        name=card.name,
        sap_low_mg_per_kg=lot.sap_low_mg_per_kg if lot and own_sap else card.sap_low_mg_per_kg,
        sap_high_mg_per_kg=lot.sap_high_mg_per_kg if lot and own_sap else card.sap_high_mg_per_kg,
        alkali_kind=card.alkali_kind,
        purity_low_ppm=lot.purity_ppm if lot and own_purity else card.purity_ppm,
        purity_high_ppm=lot.purity_high_ppm if lot and own_purity else None,
        water_ppm=lot.water_ppm if lot and lot.water_ppm is not None else card.water_ppm,
        acid_koh_mg_per_kg=card.acid_koh_mg_per_kg,
        sap_open_mg_per_kg=0
        if own_sap
        else sap_open(card.sap_low_mg_per_kg, card.sap_high_mg_per_kg, card.reference_key),
        purity_open_ppm=0 if own_purity else purity_open(card.purity_ppm, card.alkali_kind),
        sap_of=own if own_sap else None,
        purity_of=own if own_purity else None,
        acid_value_mg_per_kg=acid_value(card.reference_key),
    )


def own_words(code: str, *, worked_out: bool) -> str:
    """Whose a lot's own figure is: its certificate's, or worked out from what went into it."""
    return f"lot {code}: {'worked out as' if worked_out else 'certificate'}"


def sap_open(low: int | None, high: int | None, reference_key: str | None) -> int:
    """What a material's saponification value leaves open either way, in mg KOH per kg; nothing where it is a range.

    One figure typed within the published range it started from says nothing new of a lot, which may still lie at the
    foot of that range, where the lye is too much; so it reaches down to it at least.
    """
    if low is None or low != high:
        return 0
    fat = fats().get(reference_key or "")
    foot = fat.sap_low_mg_per_kg if fat and fat.sap_low_mg_per_kg <= low <= fat.sap_high_mg_per_kg else low
    return max(typed_spread(low), low - foot)


def purity_open(ppm: int | None, alkali_kind: AlkaliKind | None) -> int:
    """What a material's purity or strength leaves open either way, in ppm; no alkali is purer than pure."""
    if ppm is None:
        return 0
    return min(typed_spread(ppm), WHOLE_PPM - ppm) if alkali_kind else typed_spread(ppm)
