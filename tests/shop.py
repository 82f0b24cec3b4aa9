"""A small worked shop, written through the same operations that commands call."""

from dataclasses import dataclass
from datetime import UTC, date, datetime
from typing import Any
from unittest.mock import patch

from making import LOOKED_GOOD

from ledger.domain.release import releasing
from ledger.domain.release.bars import Passing
from ledger.domain.release.releasing import Releasing
from ledger.operations.bench.cut import cut_batch
from ledger.operations.bench.plan import PlanRequest, plan_batch
from ledger.operations.bench.readings import ReadingValue, log_readings
from ledger.operations.bench.weigh import Weighed, weigh
from ledger.operations.house.setup import Setup
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.people.customers import CustomerDetails, add_customer
from ledger.operations.people.erase import Erased, erase
from ledger.operations.people.suppliers import SupplierDetails, add_supplier
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.record.attach import attach
from ledger.operations.release.release import pass_bars, release_bars
from ledger.operations.sell.add_stall import add_stall
from ledger.operations.sell.stall_back import stall_back
from ledger.operations.sell.stall_out import stall_out
from ledger.operations.stock.receive import DeliveryLine, DeliveryNote, receive
from ledger.rows.batch import find_batch, plan_lines
from ledger.rows.opened import open_rows
from ledger.rows.settings import Responsible
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails, remember_person
from ledger.storage.tables.bench import PlanTarget, Work
from ledger.storage.tables.check import EquipmentCheck
from ledger.storage.tables.complaint import Complaint, ComplaintStep
from ledger.storage.tables.decision import DecisionDoubt
from ledger.storage.tables.house import CostRate
from ledger.storage.tables.label import FirstSupply, LabelApproval, LabelCount, LabelRun, LabelWords, SoldBare
from ledger.storage.tables.material import Constituent, NameMeant, Peroxide, SkinLimit
from ledger.storage.tables.reading import Deviation, DeviationDecision
from ledger.storage.tables.recall import Recall, RecallClose, RecallStep
from ledger.storage.tables.recipe import Assessment, AssessmentCovers
from ledger.storage.tables.release import FinishedCheck, RetainedSample
from ledger.storage.tables.sale import (
    CustomerOrder,
    CustomerTerms,
    Fee,
    Invoice,
    InvoiceSale,
    OrderEnd,
    OrderLine,
    Price,
    TaxRate,
)
from ledger.storage.tables.stock import AssumedBatch, AssumedTicked
from ledger.storage.tables.tools import Equipment, EquipmentRevision, Upkeep
from ledger.views.people.erasable import erasable_complaint, erasable_customer

NOW = datetime(2026, 6, 1, 9, 30, tzinfo=UTC)  # 10:30 in Dublin, a Monday
ADDRESS = Responsible("Nuala Quill", "Tidewrack Soaps, 3 Slip Lane, Port Emmer")
SETUP = Setup(
    business="Tidewrack Soaps",
    country="IE",
    currency="EUR",
    units="metric",
    time_zone="Europe/Dublin",
    addresses={"eu": ADDRESS, "gb": ADDRESS},
    labour_minor_per_hour=1500,
    maker="Nuala",
)
PLAIN_BAR = """
name = "Plain Bar"
code = "plain-bar"
process = "cold"
superfat = 5
fats_total = "1000 g"

[alkali]
material = "sodium hydroxide"
kind = "NaOH"

[water]
material = "water"
per_alkali = 2.0

[[fat]]
material = "olive oil"
percent = 60

[[fat]]
material = "coconut oil"
percent = 40

[mould]
name = "loaf"
bars = 10
net_weight = "100 g"
"""


@dataclass(frozen=True)
class Shop:
    """A small shop at work: one delivery, one batch of ten bars, released; the day is 1 Jun 2026."""

    book: Book
    olive: str  # 5 kg came on 2 Mar under their number 4471/2; 600 g went into the batch
    coconut: str  # 3 kg; 400 g went into the batch
    lye: str
    water: str
    batch: str  # made on 1 Apr, cut on 2 Apr, passed and released on 4 May

    def rows(self) -> Any:
        """A fresh read-only connection."""
        return open_rows(self.book.path)


def released_before(book: Book, code: str, asked: Releasing) -> int:
    """Released by a program that did not ask where bare bars go: its decision holds wherever they do."""
    with patch.object(releasing, "sold_bare", lambda found: found):
        return release_bars(book, code, asked)


def work_a_shop(book: Book) -> Shop:
    """One delivery, one batch, its release."""
    add_supplier(book, SupplierDetails("Tarnlow Oils", PersonDetails(phone="020 910 0142")), own=False, code="tarnlow")
    for facts, kind in (
        (MaterialFacts("olive oil", "Olea Europaea Fruit Oil", None, 190_000, 190_000, "certificate"), "fat"),
        (MaterialFacts("coconut oil", "Cocos Nucifera Oil", None, 257_000, 257_000, "certificate"), "fat"),
        (MaterialFacts("sodium hydroxide", "Sodium Hydroxide", alkali_kind="NaOH"), "alkali"),
        (MaterialFacts("water", "Aqua"), "liquid"),
    ):
        add_material(book, facts, kind=kind, code=None)
    add_recipe(book, PLAIN_BAR, file="plain-bar.toml")
    lines = (
        DeliveryLine("olive oil", 5_000_000, "4471/2", 3250, best_before=date(2027, 8, 31)),
        DeliveryLine("coconut oil", 3_000_000, "CN-0919", 1800, best_before=date(2027, 3, 31)),
        DeliveryLine("sodium hydroxide", 1_000_000, "SH 88 A", 900),
        DeliveryLine("water", 5_000_000, None, 100),
    )
    note = DeliveryNote("tarnlow", date(2026, 3, 2), lines, note_number="D-118", accepted_by="Nuala")
    olive, coconut, lye, water = (lot.code for lot in receive(book, note))
    made, cut, packed = date(2026, 4, 1), date(2026, 4, 2), date(2026, 5, 4)
    batch = plan_batch(book, PlanRequest("plain-bar", made))
    rows = open_rows(book.path)
    targets = {line.number: [Weighed(line.target)] for line in plan_lines(rows, find_batch(rows, batch).id)}
    weigh(book, batch, targets, on=made, by="Nuala")
    log_readings(book, batch, (ReadingValue("poured", at="14:05"),), on=made)
    cut_batch(book, batch, bars=10, on=cut, by="Nuala", bars_mg=1_320_000)
    pass_bars(book, batch, Passing(on=packed, by="Nuala"))
    released_before(book, batch, Releasing(on=packed, by="Nuala", anyway="a trial", bare="a trial", checks=LOOKED_GOOD))
    rows.close()
    return Shop(book, olive, coconut, lye, water, batch)


def erase_customer(book: Book, text: str, *, reason: str) -> Erased:
    """Erase a customer, as the command does."""
    return erase(book, lambda rows: erasable_customer(rows, text), reason=reason)


def erase_complaint(book: Book, number: int, *, reason: str) -> Erased:
    """Erase who reported a complaint, as the command does."""
    return erase(book, lambda rows: erasable_complaint(rows, number), reason=reason)


def fill(book: Book, shop: Shop) -> None:
    """A row in every table that the worked shop left empty."""
    add_stall(book, "Quay market")
    stall_out(book, "Quay market", {shop.batch: 4}, on=date(2026, 5, 9))
    stall_back(book, "Quay market", {shop.batch: 1}, on=date(2026, 5, 9), takings_minor=1650)
    details = PersonDetails(phone="020 910 0177", address="2 Weir Row, Port Emmer")
    add_customer(book, CustomerDetails("Orla Fenn", details), kind="person", code=None)
    add_customer(book, CustomerDetails("Tomas Reed", details, note="met at the fair"), kind="person", code=None)
    erase_customer(book, "person-2", reason="asked for it by letter")
    attach(book, b"certificate of analysis", name="coa-4471.txt", kind="CoA", to=shop.olive)
    with book.write("label print") as tx:
        lot = tx.rows.execute("SELECT id FROM lot WHERE code = ?", (shop.batch,)).fetchone()[0]
        day = date(2026, 5, 5)
        tx.add(
            LabelRun(lot_id=lot, on=day, layout="band", market="eu", count=10, text="Plain Bar", text_digest="0" * 64)
        )
        tx.add(LabelApproval(lot_id=lot, market="eu", on=day, by="Nuala", text="Plain Bar", text_digest="0" * 64))
        tx.add(LabelCount(label_run_id=1, on=day, used=9, spoiled=1, returned=0))
        words = LabelWords(
            market="eu", digest="0" * 64, questioned="natural", reason="of the herb", by="Nuala", on=date(2026, 5, 5)
        )
        tx.add(words)
        tx.add(
            FirstSupply(lot_id=lot, on=day, bars=1, back=0, supplied_on=date(2026, 5, 9), whom="the fair", by="Nuala")
        )
        tx.add(
            SoldBare(
                recipe_id=1,
                place_id=tx.rows.execute("SELECT id FROM place WHERE kind = 'stall'").fetchone()[0],
                on=day,
                bare=1,
                notice="notice-shelf",
                code_on="tray",
                reason="sold from the tray",
                by="Nuala",
            )
        )
        tx.say("Printed 10 labels.")
    with book.write("recipe assess") as tx:
        tx.add(Assessment(recipe_id=1, source='assessor = "R. Lund"'))
        tx.add(AssessmentCovers(assessment_id=1, inci="KAOLIN", named="WHITE CLAY"))
        tx.add(Constituent(material_id=1, name="Linalool", share_ppm=1000, source="statement of 2 Mar 2026"))
        tx.add(SkinLimit(material_id=1, limit_ppm=30_000, certificate="OO-1", category="9", dated=date(2026, 3, 2)))
        tx.add(NameMeant(material_id=1, name="linaloolo", meant=None, on=day, by="Nuala", reason="their letter"))
        tx.add(Peroxide(material_id=1, umol_per_l=8000, source="certificate 114"))
        tx.add(DecisionDoubt(decision_id=1, subject="assessment", doubt="no assessment is kept"))
        tx.add(PlanTarget(plan_line_id=1, target=600_000, low=594_000, high=606_000))
        tx.say("Noted papers.")
    with book.write("equipment add") as tx:
        tx.add(Equipment(code="scale", kind="scale"))
        tx.add(EquipmentRevision(equipment_id=1, name="kitchen scale", expected=500_000, tolerance=1000))
        tx.add(
            EquipmentCheck(
                equipment_id=1, on=day, by="Nuala", expected=500_000, found=500_000, tolerance=1000, passed=1
            )
        )
        tx.add(Upkeep(kind="cleaning", on=day, by="Nuala", what="moulds and pots"))
        tx.add(Deviation(batch_id=1, on=day, subject="seen", found="soda ash"))
        tx.add(DeviationDecision(deviation_id=1, verdict="accepted", on=day, by="Nuala", reason="only on top"))
        tx.add(FinishedCheck(lot_id=lot, on=day, by="Nuala", what="look", found="even", good=1))
        tx.add(RetainedSample(lot_id=lot, on=day, bars=1, kept_at="shelf 2", keep_until=date(2029, 5, 5)))
        tx.say("Noted the upkeep.")
    with book.write("complaint add") as tx:
        person = remember_person(tx, PersonDetails(name="Ida Marsh", health="a rash on both hands"))
        tx.add(Complaint(on=date(2026, 5, 20), lot_id=lot, what="a rash", serious=0, personal_id=person))
        tx.add(ComplaintStep(complaint_id=1, on=date(2026, 5, 21), by="Nuala", action="rang her"))
        asked = '{"format": 1, "starts": [["complaint", "1"]]}'
        tx.add(Recall(on=date(2026, 5, 21), by="Nuala", question=asked, asked_at=24, reason="a rash"))
        tx.add(RecallStep(recall_id=1, on=date(2026, 5, 21), by="Nuala", kind="notice", whom="Quay market"))
        tx.add(RecallClose(recall_id=1, on=date(2026, 5, 22), by="Nuala", conclusion="not the soap", unexplained=0))
        tx.say("Noted a complaint.")
    _sell(book)


def _sell(book: Book) -> None:
    """A row in each table of what is agreed, promised, priced, charged, assumed and worked."""
    day = date(2026, 5, 9)
    with book.write("sale") as tx:
        movement = tx.rows.execute("SELECT id FROM movement WHERE kind = 'sold'").fetchone()[0]
        for row in (
            CustomerTerms(customer_id=1, on=day, pay_days=30),
            Price(recipe_id=1, on=day, price_minor=650),
            TaxRate(on=day, rate_ppm=230_000, name="VAT"),
            CustomerOrder(customer_id=1, on=day, due_on=date(2026, 5, 20)),
            OrderLine(order_id=1, recipe_id=1, bars=3),
            OrderEnd(order_id=1, on=day, by="Nuala", reason="she thought better of it"),
            Fee(place_id=1, on=day, kind="pitch", amount_minor=1500),
            Invoice(number=1, kind="invoice", on=day, customer_id=1),
            InvoiceSale(invoice_id=1, sale_id=1),
            AssumedBatch(movement_id=movement, lot_id=1),
            AssumedTicked(movement_id=movement, on=day, by="Nuala"),
            Work(batch_id=1, on=day, stage="making", minutes=45, by="Nuala"),
            CostRate(on=day, kind="hour", minor=1500),
        ):
            tx.add(row)
        tx.say("Noted what was sold.")
