"""What a recipe sheet says in words: the key facts, the superfat, the notes and the sources of the figures."""

from ledger.domain.lye.uncertainty import Superfat
from ledger.units.quantity import show_mass, show_share, show_volume, whole
from ledger.units.words import Units
from ledger.views.recipe.recipe_page import LyePage, PageLine, RecipePage

_SAP, _PER = "saponification value ", " mg KOH/g"  # said once for all fats, where the view says it for each


def process_words(view: RecipePage) -> str:
    """The process as a phrase."""
    return f"{view.process} process" if view.process in ("cold", "hot") else view.process


def lye_facts(view: RecipePage) -> list[tuple[str, str]]:
    """The fats, the superfat with how low it may lie, and the lye each way it is stated."""
    lye = view.lye
    found = [("fats", show_mass(view.fats_mg, view.units) if view.fats_mg else "")]
    if lye is None:
        return found
    ratio = f"{lye.water_per_alkali_thousandths / 1000:.2f} to 1 of alkali"
    return [
        *found,
        ("superfat", _meant(lye, view.superfat_meant_ppm)),
        ("lye", f"concentration {show_share(lye.concentration_ppm)}"),
        ("water", f"{ratio}, {show_share(lye.water_of_fats_ppm)} of the fats"),
    ]


def pot_facts(view: RecipePage) -> list[tuple[str, str]]:
    """What is in the pot, the mould and how full it gets, the bars and their cure."""
    units = view.units
    pot = show_mass(view.dough_mg, units)
    if view.dough_ul:
        pot += f", about {show_volume(view.dough_ul, units)}"
    mould = view.mould or ""
    if view.mould_ul and view.dough_ul:
        filled = show_share(round(view.dough_ul * 1_000_000 / view.mould_ul), 0)
        mould += f", {whole(f'{filled} full')}"
    bars = f"{view.bars} bars" if view.bars else ""
    net = f"{show_mass(view.net_weight_mg, units)} each, net" if view.net_weight_mg else ""
    usable = f", usable from {view.usable_from_days} days" if view.usable_from_days else ""
    cured = view.process in ("cold", "hot", "rebatch")
    return [
        ("in the pot", pot),
        ("mould", mould),
        ("bars", ", ".join(word for word in (bars, net) if word)),
        ("cure", f"{view.cure_days} days{usable}" if cured else ""),
    ]


def _meant(lye: LyePage, meant_ppm: int | None) -> str:
    """The superfat meant, the one reckoned where it is another, and how low it may lie."""
    found = lye.superfat
    if meant_ppm is None:
        return superfat_words(found)
    same = show_share(found.nominal_ppm, 2) == show_share(meant_ppm, 2)
    return f"{show_share(meant_ppm)} meant, {_low(found) if same else superfat_words(found)}"


def superfat_words(found: Superfat) -> str:
    """The three figures of a superfat."""
    return f"{show_share(found.nominal_ppm, 2)} as reckoned, {_low(found)}"


def _low(found: Superfat) -> str:
    return (
        whole(f"likely low {show_share(found.likely_low_ppm, 2)}")
        + ", "
        + whole(f"all low {show_share(found.all_low_ppm, 2)}")
    )


def amount_words(line: PageLine, units: Units) -> str:
    """How much of it, or how many."""
    return whole(f"{line.quantity} pcs" if line.counted else show_mass(line.quantity, units))


def note_words(view: RecipePage) -> list[str]:
    """Her notes on the lines, and how the figures of the sheet are to be read."""
    found = [f"{line.material}: {line.note.rstrip('.')}." for line in view.lines if line.note]
    if view.lye:
        found.append(
            "The figures are those of the materials; a batch is reckoned from the lots in hand. Likely low: what is "
            "not known of fats, alkali and scale, combined; all low: each of them at its limit together."
        )
    if view.stages and view.process == "hot":
        found.append(f"Water lost in the cook: {view.stages.cook_loss}.")
    if not view.profile and view.no_profile:
        found.append(f"No fatty acids are published here for {', '.join(view.no_profile)}.")
    if view.process in ("cold", "hot", "rebatch"):
        early = " When first usable it is not yet steady in weight." if view.usable_from_days else ""
        found.append(f"Cure: the maker's own figure (common practice, no source).{early}")
    return found


def source_words(view: RecipePage) -> list[str]:
    """Each figure the lye is reckoned with once, with the materials it stands for; saponification values first."""
    if view.lye is None:
        return []
    names: dict[str, list[str]] = {}
    for line in view.lines:
        if line.figure and line.material not in names.setdefault(line.figure, []):
            names[line.figure].append(line.material)
    values = [f"{', '.join(names[one])} {one.removeprefix(_SAP).replace(_PER, '', 1)}" for one in names if _SAP in one]
    others = [f"{', '.join(names[one])}: {one}." for one in names if _SAP not in one]
    return ([f"Saponification values in{_PER}: {'; '.join(values)}."] if values else []) + others
