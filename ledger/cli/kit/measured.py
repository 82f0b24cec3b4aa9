"""How an amount of something is read, a volume by its density."""

from ledger.cli.kit.show import warn
from ledger.errors import BadInput
from ledger.reference.densities import published_density
from ledger.rows.material import MaterialCard
from ledger.units.quantity import is_volume, parse_amount, show_mass
from ledger.units.words import Units


def read_amount(text: str, card: MaterialCard, units: Units, *, what: str = "the amount") -> int:
    """A weight, or a volume by the material's own density, else the published one, in mg; says what it comes to.

    Raises BadInput for what cannot be read, a volume whose density is not known, and one of a dry alkali.
    """
    if not is_volume(text):
        return parse_amount(text, what=what)
    if card.kind == "alkali" and not (card.dissolved and card.density_mg_per_ml):
        raise BadInput(f"{text.strip()}: {card.name} is weighed, never measured by volume; write {what} in g or oz.")
    own, found = card.density_mg_per_ml, None
    if own is None:
        found = published_density(card.name, card.kind, card.reference_key)
    density = own or (found.middle if found else None)
    if density is None:
        raise BadInput(
            f"{text.strip()} is a volume, and the density of {card.name} is not known; write the weight, or: "
            f'soapledger material edit "{card.name}" --density G_PER_ML'
        )
    mass = parse_amount(text, density_mg_per_ml=density, what=what)
    by = found.words if found else f"{density / 1000:.3f} g/mL, its own density"
    warn(f"{text.strip()} of {card.name} is {show_mass(mass, units)}, at {by}.")
    return mass
