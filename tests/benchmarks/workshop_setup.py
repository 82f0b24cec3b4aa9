"""What an invented workshop begins with: who it is, who supplies and buys, what it takes and makes."""

from dataclasses import dataclass, replace
from datetime import date

from ledger.domain.material.skin_limits import Limit
from ledger.operations.house.setup import Setup, set_up
from ledger.operations.material.materials import MaterialFacts, add_material, started_from
from ledger.operations.material.skin import state_contents, state_limit
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.assess import assess_recipe
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.tools.equipment import EquipmentDetails, add_equipment
from ledger.reference.find import find_reference
from ledger.rows.settings import Responsible
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails

MAKER = "Elspet Marrow"


@dataclass(frozen=True)
class Scale:
    """How busy the workshop is; every batch of soap gives 30 bars."""

    batches_a_week: int
    stalls: int  # visited every Saturday
    shops: int


@dataclass(frozen=True)
class Stuff:
    """One material: its kind, what it is like, its INCI name, who brings it (None: it is made here)."""

    name: str
    kind: str
    supplier: str | None
    like: str | None = None
    inci: str | None = None
    minor_per_kg: int = 0  # or per hundred pieces


STUFF = {
    "olive-oil": Stuff("olive oil", "fat", "tarnside", "olive", minor_per_kg=690),
    "coconut-oil": Stuff("coconut oil", "fat", "tarnside", "coconut", minor_per_kg=580),
    "castor-oil": Stuff("castor oil", "fat", "tarnside", "castor", minor_per_kg=1150),
    "shea-butter": Stuff("shea butter", "fat", "tarnside", "shea", minor_per_kg=990),
    "marigold-olive": Stuff("olive oil with marigold", "fat", None, "olive"),
    "lye": Stuff("sodium hydroxide", "alkali", "gritstone", "sodium hydroxide", minor_per_kg=820),
    "half-lye": Stuff("half lye", "alkali", None),
    "water": Stuff("distilled water", "liquid", "gritstone", "water", minor_per_kg=90),
    "oat-flour": Stuff("oat flour", "additive", "gritstone", inci="AVENA SATIVA KERNEL FLOUR", minor_per_kg=640),
    "charcoal": Stuff("charcoal", "additive", "gritstone", inci="CHARCOAL POWDER", minor_per_kg=2900),
    "marigold-petals": Stuff("marigold petals", "botanical", "plot", inci="CALENDULA OFFICINALIS FLOWER"),
    "lavender-eo": Stuff(
        "lavender essential oil", "fragrance", "still", inci="LAVANDULA ANGUSTIFOLIA OIL", minor_per_kg=14_000
    ),
    "orange-eo": Stuff(
        "orange essential oil", "fragrance", "still", inci="CITRUS AURANTIUM DULCIS PEEL OIL", minor_per_kg=5200
    ),
    "band": Stuff("paper band", "packaging", "foldyard", minor_per_kg=1400),
    "box": Stuff("small box", "packaging", "foldyard", minor_per_kg=3100),
}
SUPPLIERS = (
    ("tarnside", "Tarnside Pressings", False),
    ("gritstone", "Gritstone Stores", False),
    ("still", "The Copper Still", False),
    ("foldyard", "Foldyard Paper", False),
    ("plot", "The plot behind the house", True),
)
STALLS = ("Harbour market", "Mill yard", "Chapel green", "Old tram shed")
SHOPS = ("Saltbox Larder", "The Tern Hall", "Corner Lamp", "Pinnock and Vane", "Tideline Gifts", "Ash and Reed")
_SOAP = """
name = "{name}"
code = "{code}"
process = "{process}"
superfat = 6
fats_total = "3000 g"
[alkali]
material = "lye"
kind = "NaOH"
[water]
material = "water"
per_alkali = {water}
{lines}
[cure]
days = {days}
[mould]
name = "three long moulds"
bars = 30
net_weight = "95 g"
[work]
minutes = 120
[[packaging]]
material = "{wrap}"
"""


def _lines(role: str, shares: dict[str, float], word: str, more: str = "") -> str:
    return "".join(f'[[{role}]]\nmaterial = "{what}"\n{word} = {share}\n{more}' for what, share in shares.items())


def _soap(code: str, name: str, process: str, fats: dict[str, float], rest: str, wrap: str = "band") -> str:
    hot = process == "hot"
    lines = _lines("fat", fats, "percent") + rest
    days = "21\nusable_from_days = 10" if hot else "28"
    return _SOAP.format(
        name=name, code=code, process=process, water=2.4 if hot else 2, lines=lines, days=days, wrap=wrap
    )


RECIPES = {
    "harbour": _soap(
        "harbour",
        "Harbour Lavender",
        "cold",
        {"olive-oil": 60, "coconut-oil": 30, "castor-oil": 10},
        _lines("fragrance", {"lavender-eo": 3}, "percent_of_fats"),
    ),
    "fen-gold": _soap(
        "fen-gold",
        "Fen Gold",
        "cold",
        {"marigold-olive": 40, "olive-oil": 30, "coconut-oil": 25, "castor-oil": 5},
        _lines("fragrance", {"orange-eo": 2}, "percent_of_fats"),
    ),
    "hearth": _soap(
        "hearth",
        "Hearth Oat",
        "hot",
        {"olive-oil": 65, "coconut-oil": 25, "shea-butter": 10},
        _lines("additive", {"oat-flour": 2}, "percent_of_fats"),
        wrap="box",
    ),
    "two-shores": _soap(
        "two-shores",
        "Two Shores",
        "cold",
        {"olive-oil": 68, "coconut-oil": 26, "castor-oil": 6},
        '[[portion]]\nname = "pale"\npercent = 66\nbars = 20\n[[portion]]\nname = "dark"\npercent = 34\nbars = 10\n'
        + _lines("additive", {"charcoal": 1}, "percent_of_fats", 'portion = "dark"\n')
        + _lines("fragrance", {"lavender-eo": 1.5}, "percent_of_fats", 'portion = "pale"\n'),
    ),
    "second-turn": """
name = "Second Turn"
code = "second-turn"
process = "rebatch"
[[rework]]
material = "offcuts"
grams = 1500
[water]
material = "water"
grams = 150
[cure]
days = 21
[mould]
name = "twelve small rounds"
bars = 12
net_weight = "95 g"
[[packaging]]
material = "band"
""",
    "marigold-oil": """
name = "Marigold oil"
code = "marigold-oil"
process = "infusion"
[infusion]
yields = "marigold-olive"
days = 27
[[part]]
material = "olive-oil"
grams = 1400
[[part]]
material = "marigold-petals"
grams = 120
""",
    "half-lye-jug": """
name = "Half lye in a jug"
code = "half-lye-jug"
process = "blend"
[blend]
yields = "half-lye"
[[part]]
material = "lye"
grams = 1000
[[part]]
material = "water"
grams = 1000
""",
}
_ASSESSED = (
    "OLEA EUROPAEA FRUIT OIL",
    "COCOS NUCIFERA OIL",
    "RICINUS COMMUNIS SEED OIL",
    "BUTYROSPERMUM PARKII BUTTER",
    "AQUA",
    "SODIUM HYDROXIDE",
)
_ASSESSED_TOO = {"additive": "ingredient", "botanical": "ingredient", "fragrance": "fragrance"}  # each kind's table


def assessment(process: str, on: date) -> str:
    """What an invented assessor's report supports, with no end: nothing leaves that it does not name."""
    head = (
        f'assessor = "Corin Vale"\nreference = "CV-{process}"\non = {on}\nprocess = ["{process}"]\n'
        'markets = ["eu"]\nsuperfat = [1, 15]\ndurability_months = 24\n'
    )
    lines = "".join(f'[[ingredient]]\ninci = "{inci}"\nhighest_percent = 70\n' for inci in _ASSESSED)
    lines += "".join(
        f'[[{_ASSESSED_TOO[stuff.kind]}]]\ninci = "{stuff.inci}"\nhighest_percent = 10\n'
        for stuff in STUFF.values()
        if stuff.kind in _ASSESSED_TOO
    )
    return head + lines + f'[[notification]]\nmarket = "eu"\nreference = "N-{process}"\non = {on}\n'


def begin(book: Book, scale: Scale, on: date) -> None:
    """Everything that stands before the first delivery."""
    here = Responsible(MAKER, "Marrow Soaps, 4 Kiln Row, Tarnmouth")
    set_up(book, Setup("Marrow Soaps", "IE", "EUR", "metric", "Europe/Dublin", {"eu": here}, "020 910 0100", 1500))
    for number, (code, name, own) in enumerate(SUPPLIERS):
        person = PersonDetails() if own else PersonDetails(phone=f"020 910 01{number + 10}")
        add_supplier(book, SupplierDetails(name, person), own=own, code=code)
    for name in STALLS[: scale.stalls]:
        add_stall(book, name)
    for number, name in enumerate(SHOPS[: scale.shops]):
        details = CustomerDetails(name, PersonDetails(phone=f"020 910 02{number + 10}"))
        add_customer(book, details, kind="shop", code=None)
    for code, stuff in STUFF.items():
        facts = MaterialFacts(stuff.name, inci=stuff.inci)
        if stuff.like:
            facts = started_from(facts, find_reference(stuff.like))
        if code == "half-lye":
            facts = replace(facts, alkali_kind="NaOH", purity_ppm=500_000, water_ppm=500_000)
        add_material(book, facts, kind=stuff.kind, code=code)
    state_contents(book, "lavender-eo", {"linalool": 330_000, "limonene": 5_000}, source="statement CS-1")
    state_contents(book, "orange-eo", {"limonene": 940_000}, source="statement CS-2")
    state_limit(book, Limit(50_000, "CS-L1", None, "9", on), material="lavender-eo")
    for code, text in RECIPES.items():
        add_recipe(book, text, file=f"{code}.toml")
    for code, process in (("harbour", "cold"), ("fen-gold", "cold"), ("hearth", "hot"), ("two-shores", "cold")):
        assess_recipe(book, code, assessment(process, on), file=f"{code}.toml")
    assess_recipe(book, "second-turn", assessment("rebatch", on), file="second-turn.toml")
    add_equipment(book, "scale", EquipmentDetails("bench scale", 30, 500_000, 1_000), on=on)
    add_equipment(book, "thermometer", EquipmentDetails("probe", 90, 0, 500), on=on)
    add_equipment(book, "pH meter", EquipmentDetails("pH pen", 30, 7_000, 100), on=on)
