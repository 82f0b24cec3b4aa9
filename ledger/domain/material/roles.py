"""Which kind of material may stand where in a recipe, so that nothing that bears on the lye slips past it."""

from typing import Literal

from ledger.errors import BadInput
from ledger.units.words import MaterialKind, Role

_WEIGHED = ("fat", "liquid", "additive", "fragrance", "botanical", "colourant", "intermediate")
_FITS = {
    "fat": ("fat", "intermediate"),
    "alkali": ("alkali",),
    "liquid": ("liquid",),
    "additive": ("additive", "botanical", "colourant", "liquid", "fragrance"),
    "fragrance": ("fragrance",),
    "part": _WEIGHED,
    "blend": (*_WEIGHED, "alkali"),
    "rework": ("rework",),
    "packaging": ("packaging",),
}
_PART = {"liquid": "[water]", "alkali": "[alkali]", "blend": "[[part]]"}


def check_role(role: Role | Literal["blend"], kind: MaterialKind, material: str, *, where: str) -> None:
    """Raise BadInput for a material where its kind does not belong.

    An alkali outside [alkali] and a fat outside [[fat]] would not be in the reckoning of the lye.
    """
    if kind in _FITS[role]:
        return
    part = _PART.get(role, f"[[{role}]]")
    if kind == "alkali":
        mend = "an alkali stands in [alkali] alone, where the lye is reckoned"
    elif kind == "fat":
        mend = "a fat stands under [[fat]], so that the lye counts it"
    else:
        mend = f"{part} takes the kind {' or '.join(_FITS[role])}"
    raise BadInput(f"{where}: {material} is of the kind {kind} and cannot stand under {part}; {mend}.")
