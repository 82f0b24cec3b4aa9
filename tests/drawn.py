"""Five finished views to draw, and a way to read a drawn page back."""

import io
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from math import ceil
from typing import Any

import pypdfium2

from ledger.documents.label.labels import RackText, TicketText
from ledger.domain.bench.mass_balance import MassBalance
from ledger.domain.bench.steps import steps
from ledger.domain.label.declaration import DeclaredIngredient
from ledger.domain.lye.composition import Composition, InTheSoap
from ledger.domain.lye.fatty_acids import ProfileLine
from ledger.domain.lye.uncertainty import Superfat
from ledger.markets import market
from ledger.rows.decision import RecordedDecision
from ledger.rows.kept import Attached
from ledger.rows.reading import FinishedLook
from ledger.rows.settings import PrintedFrom
from ledger.views.bench.worksheet import WeighLine, Worksheet
from ledger.views.label.label import LabelText
from ledger.views.label.lot_label import LotLabel
from ledger.views.recall.recall import (
    BarsAt,
    BulkAt,
    CannotBeExcluded,
    NamedLot,
    ReachedBatch,
    RecallAnswer,
    ToCall,
    Totals,
)
from ledger.views.recipe.composition import Stages
from ledger.views.recipe.recipe_page import LyePage, PageLine, RecipePage
from ledger.views.record.came_out import CameOut, Yielded
from ledger.views.record.complaints import Complaints
from ledger.views.record.cure import Cure
from ledger.views.record.decided import Decided
from ledger.views.record.head import Head
from ledger.views.record.labels import Labels, PrintedLabels
from ledger.views.record.look_first import LookFirst
from ledger.views.record.looked_at import LookedAt
from ledger.views.record.lye import Lye
from ledger.views.record.observed import Observed, RecordedReading
from ledger.views.record.outside import Outside
from ledger.views.record.papers import Papers
from ledger.views.record.record import BatchRecord
from ledger.views.record.went_in import UsedMaterial, WentIn
from ledger.views.record.where import Where, WhereBars
from ledger.views.record.worked import Worked

PRINTED = PrintedFrom(
    entry=214, recorded_at="2026-06-01T09:30:00Z", program="0.1.0", seal="214:7K3M-9HXA-45PT-CD2R-V8E"
)
BUSINESS = "Tidewrack Soaps"
MADE, CUT, READY = date(2026, 4, 1), date(2026, 4, 2), date(2026, 4, 30)
BATCH = "26-118-0"
MM = 72 / 25.4


@dataclass(frozen=True)
class Glyph:
    """One letter on a page: its ink box in mm from the page's left and top edge, and its type size in points."""

    sign: str
    left: float
    top: float
    right: float
    bottom: float
    size: float


class Read:
    """A PDF read back by another library than the one that drew it."""

    def __init__(self, data: bytes) -> None:
        self.pdf = pypdfium2.PdfDocument(io.BytesIO(data))
        self.pages = [page.get_textpage() for page in self.pdf]
        self._glyphs: dict[int, list[Glyph]] = {}

    def text(self, page: int | None = None) -> str:
        """The words of one page, or of all, on one line."""
        chosen = self.pages if page is None else [self.pages[page]]
        return re.sub(r"\s+", " ", " ".join(one.get_text_bounded() for one in chosen))

    def size_mm(self, page: int = 0) -> tuple[int, int]:
        """Width and height of a page in whole mm."""
        wide, high = self.pdf[page].get_size()
        return round(wide / MM), round(high / MM)

    def glyphs(self, page: int = 0) -> list[Glyph]:
        """Every letter of a page that has ink, but for the words of the ruler at its edge."""
        if page in self._glyphs:
            return list(self._glyphs[page])
        text, high = self.pages[page], self.pdf[page].get_size()[1]
        found = []
        for index in range(text.count_chars()):
            sign = chr(pypdfium2.raw.FPDFText_GetUnicode(text.raw, index))
            if not sign.strip():
                continue
            left, bottom, right, top = text.get_charbox(index)
            if right > left:
                size = pypdfium2.raw.FPDFText_GetFontSize(text.raw, index)
                found.append(
                    Glyph(sign, left / MM, (high - top) / MM, right / MM, (high - bottom) / MM, round(size, 2))
                )
        joined = "".join(one.sign for one in found)
        start = joined.find("Thislineis")
        end = joined.find("tothepage.", start) + len("tothepage.")
        self._glyphs[page] = found if start < 0 else [*found[:start], *found[end:]]
        return list(self._glyphs[page])

    def image(self, page: int = 0, scale: float = 4) -> Any:
        """A page as a picture, 72 dots an inch times the scale."""
        return self.pdf[page].render(scale=scale).to_pil()

    def part(self, area: Sequence[int], *, scale: float, page: int = 0) -> Any:
        """A part of the same picture in greys, left, top, right and bottom in its dots; no more is rendered."""
        wide, high = (ceil(side * scale) for side in self.pdf[page].get_size())
        left, top, right, bottom = area
        crop = [max(dots - 0.5, 0) / scale for dots in (left, high - bottom, wide - right, top)]
        return self.pdf[page].render(scale=scale, crop=crop).to_pil().convert("L")


def read() -> Callable[[bytes], Read]:
    """Read a drawn document back."""
    return Read


def _line(number: int, role: str, material: str, lot: str, supplier: str, theirs: str | None, target: int, stage: str):
    slack = max(target // 100, 100)
    return WeighLine(
        number=number,
        role=role,
        material=material,
        inci=None,
        lot_code=lot,
        supplier=supplier,
        supplier_lot=theirs,
        best_before=date(2027, 8, 31),
        target=target,
        low=target - slack,
        high=target + slack,
        stage=stage,
        pieces=role == "packaging",
    )


LINES = (
    _line(1, "fat", "olive oil infused with calendula petals", "L57-1", "own making", None, 600_000, "in the fats"),
    _line(2, "fat", "coconut oil", "L42-5", "Tarnlow Oils", "CN-0919", 300_000, "in the fats"),
    _line(3, "fat", "shea butter", "L48-X", "Skerrow Butters", "SB/26/0087-A", 100_000, "in the fats"),
    _line(4, "liquid", "water", "L44-1", "Tarnlow Oils", None, 284_200, "with the lye"),
    _line(5, "alkali", "sodium hydroxide", "L43-3", "Tarnlow Oils", "SH 88 A", 142_100, "with the lye"),
    _line(6, "botanical", "calendula petals", "L51-2", "the garden", None, 4_500, "at trace"),
    _line(7, "fragrance", "lavender essential oil", "L52-0", "Fenwick & Daughters", "LAV-3391", 30_000, "at trace"),
    _line(8, "packaging", "paper band", "L60-1", "Port Emmer Print", "PB-12", 10, "packing"),
)


def sheet() -> Worksheet:
    """A cold process batch of 1 kg of fats in eight lines."""
    return Worksheet(
        business=BUSINESS,
        units="metric",
        batch_code=BATCH,
        product="Calendula & Lavender",
        recipe_code="calendula",
        recipe_version=3,
        process="cold",
        gives_bars=True,
        made_on=MADE,
        lines=LINES,
        steps=steps("hot", makes_lye=True, gives_bars=True),
        limits={"fragrance temperature": "at most 80.0 °C"},
        fats_mg=1_000_000,
        alkali_mg=142_100,
        water_mg=284_200,
        dough_mg=1_460_800,
        superfat_ppm=50_000,
        superfat=None,
        before_addition=None,
        lye_concentration_ppm=333_333,
        water_per_alkali_thousandths=2000,
        mould="loaf, birch",
        bars_planned=10,
        net_weight_mg=100_000,
        ready_days=28,
        notes=(),
        printed_from=PRINTED,
    )


def _used(line: WeighLine, inci: str, origin: str, certificate: str | None) -> UsedMaterial:
    return UsedMaterial(
        number=line.number,
        role=line.role,
        material=line.material,
        inci=inci,
        lot_code=line.lot_code or "",
        supplier=line.supplier,
        supplier_lot=line.supplier_lot,
        origin=origin,
        lot_status="accepted",
        certificate=certificate,
        target=line.target,
        used=line.target + (0 if line.pieces else 200),
        low=line.low,
        high=line.high,
        pieces=line.pieces,
        weighed_by="Nuala Quill",
        weighed_at="2026-04-01T12:41:00Z",
        unread=None,
        read_as=None,
    )


def record() -> BatchRecord:
    """The record of that batch, released and mostly sold."""
    names = (
        ("Olea Europaea Fruit Oil", "batch", "190.0 mg KOH/g, midpoint of CXS 33-1981"),
        ("Cocos Nucifera Oil", "supplier", "257.0 mg KOH/g, the lot's certificate"),
        ("Butyrospermum Parkii Butter", "supplier", "182.0 mg KOH/g, midpoint of CXS 325R-2017"),
        ("Aqua", "supplier", None),
        ("Sodium Hydroxide", "supplier", "taken as 100 % pure, no certificate"),
        ("Calendula Officinalis Flower", "own", None),
        ("Lavandula Angustifolia Oil", "supplier", None),
        ("", "supplier", None),
    )
    readings = (
        (MADE, "13:10", "lye temperature", "42.0 °C"),
        (MADE, "13:12", "fats temperature", "41.5 °C"),
        (MADE, "13:31", "trace", "12 min"),
        (MADE, "13:40", "poured", "13:40"),
        (
            MADE,
            None,
            "observation",
            "A little slow to trace; stirred by hand for the last three minutes, no false trace.",
        ),
        (date(2026, 4, 29), None, "pH", "9.6"),
    )
    read = tuple(RecordedReading(*one, by="Nuala Quill", entry=188 + i) for i, one in enumerate(readings))
    materials = tuple(_used(line, *more) for line, more in zip(LINES, names, strict=True))
    return BatchRecord(
        head=Head(
            business=BUSINESS,
            units="metric",
            batch_code=BATCH,
            product="Calendula & Lavender",
            recipe_code="calendula",
            recipe_version=3,
            process="cold",
            status="released",
            draft=False,
            as_known=False,
            planned_on=date(2026, 3, 31),
            made_on=MADE,
            cut_on=CUT,
            ready_on=READY,
            usable_from=None,
            bars_planned=10,
            bars_cut=10,
            printed_from=PRINTED,
        ),
        look_first=LookFirst(("water, lot L44-1: the supplier's lot number is unknown.",)),
        went_in=WentIn(materials, ()),
        lye=Lye(
            fats_mg=1_000_600,
            alkali_mg=142_300,
            water_mg=284_400,
            alkali_kind="NaOH",
            alkali_purity_ppm=1_000_000,
            superfat_nominal_ppm=50_000,
            superfat_actual_ppm=49_200,
            superfat=Superfat(49_200, 28_100, 17_300, ()),
            before_addition=None,
            lye_concentration_ppm=333_500,
            figures=tuple((one.lot_code, one.material, one.certificate) for one in materials if one.certificate),
        ),
        observed=Observed(
            read,
            ("Emulsion after",),
        ),
        worked=Worked({"making": 90, "wrapping": 45}),
        outside=Outside(()),
        came_out=CameOut(
            mass_in_mg=1_462_200,
            mass_out_mg=1_418_000,
            net_weight_mg=100_000,
            balance=MassBalance(1_462_200, out_mg=1_354_000, offcuts_mg=64_000),
            loss_limit_ppm=100_000,
            yields=(
                Yielded(BATCH, "Calendula & Lavender", 10, True, 1_380_000, "workshop 2, retained 1", CUT, "released"),
                Yielded("L61-8", "offcuts", 38_000, False, 38_000, "workshop 38 g", CUT, "accepted"),
            ),
        ),
        cure=Cure((), None, None, None),
        decided=Decided(
            (
                RecordedDecision(READY, "passed for packing", "bars", "Nuala Quill", None, 203, True),
                RecordedDecision(
                    date(2026, 5, 4), "released", "bars", "Nuala Quill", "labels checked, weights hold", 206, False
                ),
            )
        ),
        looked_at=LookedAt((FinishedLook(READY, "look", "even", True, "Nuala Quill"),), ()),
        labels=Labels(
            (
                PrintedLabels(
                    date(2026, 5, 2),
                    "belly band",
                    "eu",
                    10,
                    "9f" * 32,
                    "Nuala Quill",
                    3,
                    9,
                    1,
                    0,
                    "Nuala Quill, 2 May 2026",
                ),
            )
        ),
        where=Where(
            (
                WhereBars("on hand", "workshop", None, 2, False),
                WhereBars("retained", "retained", None, 1, False),
                WhereBars("sold", "Saturday market, Port Emmer", date(2026, 5, 9), 4, True),
                WhereBars("dispatched", "The Tern Hall", date(2026, 5, 12), 3, True),
            )
        ),
        complaints=Complaints(()),
        papers=Papers(
            (
                Attached("tarnlow-coconut-CN-0919.pdf", "CoA", "3a" * 32, "L42-5"),
                Attached("loaf-in-mould.jpg", "photo", "c4" * 32, "this batch"),
            )
        ),
    )


def label() -> LabelText:
    """The EU label of a bar of 100 g with a list of ordinary length."""
    return LabelText(
        market="eu",
        product="Calendula & Lavender",
        function="Soap",
        net_quantity="100 g",
        net_mg=100_000,
        figure_height_mm=3,
        ingredients_heading="Ingredients",
        ingredients="OLEA EUROPAEA FRUIT OIL, COCOS NUCIFERA OIL, AQUA, SODIUM HYDROXIDE, BUTYROSPERMUM PARKII BUTTER, "
        "LAVANDULA ANGUSTIFOLIA OIL, CALENDULA OFFICINALIS FLOWER",
        batch_code=BATCH,
        best_before="Best used before the end of April 2028",
        after_opening_months=None,
        origin=None,
        code_text="26-118-0",
        responsible_name="Nuala Quill",
        responsible_address="Tidewrack Soaps, 3 Slip Lane, Port Emmer",
        precautions=(),
        made_on=MADE,
        draft=False,
        status="passed for packing",
        policy="as added",
        allergens=None,
        declared=(DeclaredIngredient("AQUA", 284_400, 194_000, ("L44-1",)),),
        rules=(),
        remains=(),
        lettering=market("eu").lettering,
    )


def ticket() -> TicketText:
    """The price ticket of the same bars."""
    return TicketText("Calendula & Lavender", "100 g", "€6.50", "€6.50 per 100 g", batch_code=BATCH)


def rack() -> RackText:
    """The card of the same batch on the curing rack."""
    return RackText("Calendula & Lavender", BATCH, MADE, READY, BATCH)


def jar() -> LotLabel:
    """The label of a jar of lye, the fullest there is."""
    caution = "LYE burns skin and blinds eyes. The safety sheet comes first."
    maker, came, until = "Quillmarsh Chemicals, lot QM 24 0091", date(2026, 3, 2), date(2028, 12, 14)
    return LotLabel("L41-5", "sodium hydroxide", maker, True, came, until, "accepted", date(2026, 6, 1), caution)


def answer() -> RecallAnswer:
    """The answer for one lot of olive oil that reached four batches, one of them through an infusion."""
    shop = "Róisín Ward, 020 910 0177, orders@ternhall.example"
    return RecallAnswer(
        business=BUSINESS,
        units="metric",
        asked=("4471/2",),
        lots=(
            NamedLot(
                "L41-5",
                "olive oil",
                "Tarnlow Oils",
                "4471/2",
                date(2026, 3, 2),
                25_000_000,
                18_220_000,
                False,
                "on hold",
            ),
        ),
        batches=(
            ReachedBatch(
                "26-109-7",
                "olive oil infused with calendula",
                date(2026, 3, 4),
                "strained",
                "L41-5",
                "L41-5",
                1,
                2_000_000,
                False,
                0,
                False,
            ),
            ReachedBatch(
                "26-112-X", "Plain Bar", date(2026, 3, 12), "released", "L41-5", "L41-5", 1, 600_000, False, 10, True
            ),
            ReachedBatch(
                BATCH,
                "Calendula & Lavender",
                MADE,
                "released",
                "L41-5",
                "L57-1",
                3,
                600_200,
                False,
                10,
                True,
            ),
            ReachedBatch(
                "26-121-4",
                "Confetti",
                date(2026, 4, 20),
                "curing",
                "L41-5",
                "L61-8",
                5,
                38_000,
                False,
                9,
                True,
            ),
        ),
        bars=(
            BarsAt("26-112-X", "Plain Bar", "on hand", "workshop", None, 3, False, None),
            BarsAt("26-112-X", "Plain Bar", "sold", "Saturday market, Port Emmer", date(2026, 5, 9), 7, True, None),
            BarsAt(BATCH, "Calendula & Lavender", "on hand", "workshop", None, 2, False, None),
            BarsAt(BATCH, "Calendula & Lavender", "retained", "retained", None, 1, False, None),
            BarsAt(
                BATCH, "Calendula & Lavender", "sold", "Saturday market, Port Emmer", date(2026, 5, 9), 4, True, None
            ),
            BarsAt(BATCH, "Calendula & Lavender", "dispatched", "The Tern Hall", date(2026, 5, 12), 3, True, shop),
            BarsAt("26-121-4", "Confetti", "on hand", "workshop", None, 9, False, None),
        ),
        bulk=(BulkAt("L57-1", "olive oil infused with calendula", "workshop", 1_210_000, False, "on hold"),),
        call=(
            ToCall(
                "The Tern Hall (Róisín Ward)",
                "020 910 0177",
                "orders@ternhall.example",
                "12 Mill Street, Carrow",
                3,
                (BATCH,),
                date(2026, 5, 12),
            ),
        ),
        totals=Totals(
            made=29,
            on_hand=14,
            at_stall=0,
            retained=1,
            returned=0,
            sold=11,
            dispatched=3,
            given=0,
            wasted=0,
            reworked=0,
            unexplained=0,
        ),
        cannot_exclude=(
            CannotBeExcluded(
                "lot L39-9, olive oil from Tarnlow Oils, received 2026-01-19",
                "their lot number is unknown; it went into 26-103-8",
            ),
        ),
        exercise=False,
        held=True,
        printed_from=PRINTED,
    )


def page_line(
    when: str, role: str, material: str, quantity: int, *, portion: str | None = None, figure: str | None = None
) -> PageLine:
    """A line of a recipe on 1 kg of fats."""
    counted = role == "packaging"
    return PageLine(
        when=when,
        role=role,
        material=material,
        quantity=quantity,
        counted=counted,
        of_fats_ppm=None if counted else quantity,
        portion=portion,
        note="sieved" if material == "oat flour" else None,
        caustic=role == "alkali",
        figure=figure,
    )


def _stage(name: str, **masses: int) -> Composition:
    return Composition(name, tuple(InTheSoap(what, what, mass) for what, mass in masses.items()))


_CODEX = "mg KOH/g (CXS 210-1999 Table 2; Codex CXS 210-1999 Tables 1 and 2, read in an oil-by-oil copy (read))"
_ACIDS = (
    ("caproic", 0, 1_750),
    ("caprylic", 11_500, 25_000),
    ("capric", 12_500, 20_000),
    ("lauric", 112_750, 133_000),
    ("myristic", 42_000, 52_800),
    ("palmitic", 65_750, 156_500),
    ("palmitoleic", 1_800, 21_000),
    ("stearic", 33_000, 91_250),
    ("oleic", 375_750, 588_000),
    ("ricinoleic", 42_500, 46_000),
    ("linoleic", 25_750, 146_750),
    ("linolenic", 0, 7_000),
    ("arachidic", 0, 7_600),
    ("gondoic", 0, 3_400),
    ("behenic", 0, 1_200),
)


def recipe() -> RecipePage:
    """A cold process recipe of 1 kg of fats in nine lines, with fifteen fatty acids."""
    return RecipePage(
        business=BUSINESS,
        units="metric",
        name="Calendula Morning",
        code="calendula",
        version=3,
        process="cold",
        superfat_meant_ppm=60_000,
        fats_mg=1_000_000,
        lines=(
            page_line("in the fats", "fat", "olive oil", 600_000, figure=f"saponification value 184 to 196 {_CODEX}"),
            page_line("in the fats", "fat", "coconut oil", 250_000, figure=f"saponification value 248 to 265 {_CODEX}"),
            page_line("in the fats", "fat", "shea butter", 100_000, figure=f"saponification value 160 to 195 {_CODEX}"),
            page_line("in the fats", "fat", "castor oil", 50_000, figure=f"saponification value 176 to 182 {_CODEX}"),
            page_line("with the lye", "liquid", "distilled water", 274_512),
            page_line("with the lye", "alkali", "sodium hydroxide", 137_256, figure="purity 99.2 %"),
            page_line("at trace", "additive", "oat flour", 10_000),
            page_line("at trace", "fragrance", "sweet orange essential oil", 20_000),
            page_line("packing", "packaging", "paper band", 12),
        ),
        lye=LyePage(
            alkali_mg=137_256,
            water_mg=274_512,
            concentration_ppm=333_333,
            water_per_alkali_thousandths=2000,
            water_of_fats_ppm=274_512,
            superfat=Superfat(60_001, 42_330, 22_471, ()),
            before_addition=None,
            fat_left_mg=60_001,
        ),
        dough_mg=1_441_768,
        dough_ul=1_394_907,
        density_mg_per_ml=None,
        mould="beech loaf (30 x 8 x 7 cm)",
        mould_ul=1_680_000,
        bars=12,
        net_weight_mg=95_000,
        cure_days=28,
        usable_from_days=None,
        stages=Stages(
            before=_stage(
                "as weighed", fat=1_000_000, alkali=137_256, additive=10_000, fragrance=20_000, water=274_512
            ),
            cut=_stage(
                "at the cut",
                soap=971_910,
                glycerol=105_345,
                fat=60_001,
                additive=10_000,
                fragrance=20_000,
                water=274_512,
            ),
            cured=_stage(
                "after the cure",
                soap=971_910,
                glycerol=105_345,
                fat=60_001,
                additive=10_000,
                fragrance=20_000,
                water=129_695,
            ),
            driest=_stage(
                "at its driest",
                soap=971_910,
                glycerol=105_345,
                fat=60_001,
                additive=10_000,
                fragrance=20_000,
                water=101_501,
            ),
            cook_loss="none: it is not cooked",
        ),
        profile=tuple(ProfileLine(name, name, low, high) for name, low, high in _ACIDS),
        no_profile=("beeswax",),
        skin=(),
        warnings=("sweet orange essential oil, 1.576 % of the bar at its driest: no certificate says how much.",),
        printed_from=PRINTED,
    )
