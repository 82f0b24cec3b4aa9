"""Bands from a printer, from their delivery to bars that stand in them with a sticker."""

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from making import deliver, planned, weighed
from once import once
from pypdf import PdfReader
from shop import PLAIN_BAR

from ledger.domain.release.bars import Passing
from ledger.operations.bench.cut import cut_batch
from ledger.operations.material.materials import MaterialFacts, add_material
from ledger.operations.recipe.recipes import add_recipe
from ledger.operations.release.release import pass_bars
from ledger.operations.stock.receive import DeliveryLine
from ledger.rows.lot import find_lot

pytestmark = pytest.mark.usefixtures("frozen")
ON_IT = """Banded Bar
Soap
Ingredients: {names}
Nuala Quill, Tidewrack Soaps, 3 Slip Lane, Port Emmer
"""


@pytest.fixture
def banded(shop: Any, run: Any) -> tuple[str, str, str]:
    """A batch of ten bars passed in ten of twelve bands; its code, the lot of bands, and its list of ingredients."""
    batch, (bands,), names = in_bands(shop, run, 12)
    return batch, bands, names


def in_bands(shop: Any, run: Any, *delivered: int) -> tuple[str, list[str], str]:
    """The same with bands of so many deliveries."""
    batch, bands = passed_in_bands(shop, *delivered)
    names = json.loads(run("label", "check", batch, "--market", "eu", "--json").stdout)["label"]["ingredients"]
    return batch, bands, names


@once
def passed_in_bands(shop: Any, *delivered: int) -> tuple[str, list[str]]:
    """The batch, and the lots of bands."""
    add_material(shop.book, MaterialFacts("printed band"), kind="packaging", code=None)
    recipe = PLAIN_BAR.replace('"plain-bar"', '"banded"').replace('"Plain Bar"', '"Banded Bar"')
    add_recipe(shop.book, f'{recipe}\n[[packaging]]\nmaterial = "printed band"\n', file="banded.toml")
    bands = [deliver(shop.book, DeliveryLine("printed band", many, f"PB-{many}", 1200)) for many in delivered]
    made = date(2026, 4, 1)
    batch = weighed(shop.book, planned(shop.book, "banded", on=made), on=made)
    cut_batch(shop.book, batch, bars=10, on=date(2026, 4, 2), by="Nuala", bars_mg=1_320_000)
    pass_bars(shop.book, batch, Passing(on=date(2026, 5, 4), by="Nuala"))
    return batch, bands


def approve(run: Any, bands: str, text: str, code: int = 0) -> Any:
    Path("band.txt").write_text(text, encoding="utf-8")
    return run("label", "band", bands, "band.txt", "--market", "eu", code=code)


def stickers(run: Any, batch: str, code: int = 0) -> Any:
    words = ("label", "print", batch, "--market", "eu", "--layout", "sticker-small", "-o", "stickers.pdf", "--force")
    return run(*words, code=code)


def test_stickers_are_printed_for_bars_in_bands_that_were_approved_once(banded: Any, shop: Any, run: Any) -> None:
    batch, bands, names = banded
    refused = stickers(run, batch, code=1).stderr
    assert "Nobody approved what this label says yet" in refused
    said = approve(run, bands, ON_IT.format(names=names)).stdout
    assert f"what stands on the bands of lot {bands}" in said
    assert stickers(run, batch).stdout.startswith(
        f"11 labels for batch {batch} (eu) in stickers.pdf."
    )  # one is the specimen
    page = PdfReader("stickers.pdf").pages[0].extract_text().replace("\xa0", " ")
    assert page.count(f"Batch {batch}") == 11
    assert page.count("100 g") == 11
    assert "OLEA" not in page.upper()
    record = json.loads(run("batch", "show", batch, "--json").stdout)
    assert record["labels"][0]["approved"] == f"Nuala, 1 Jun 2026, on the band {bands}"
    assert find_lot(shop.rows(), bands).on_hand == 2  # of twelve, ten bars are in one each


def test_a_band_that_says_otherwise_is_refused_with_the_difference(banded: Any, run: Any) -> None:
    batch, bands, names = banded
    approve(run, bands, ON_IT.format(names=names.replace("COCOS NUCIFERA OIL", "PALM OIL")))
    refused = " ".join(stickers(run, batch, code=1).stderr.split())
    assert f"The band of lot {bands} does not say what the bars of batch {batch} have to for eu" in refused
    assert "COCOS NUCIFERA OIL is in the batch and not on it; PALM OIL is on it and not in the batch" in refused
    assert not Path("stickers.pdf").exists()
    approve(run, bands, ON_IT.format(names=names))  # the last approval counts
    stickers(run, batch)


def test_bars_in_bands_of_two_lots_need_both_approved(shop: Any, run: Any) -> None:
    """Ten bars in seven bands of one lot and three of another."""
    batch, (first, second), names = in_bands(shop, run, 7, 5)
    approve(run, first, ON_IT.format(names=names))
    assert f"in bands of lot {second}, whose text nobody approved yet" in stickers(run, batch, code=1).stderr
    approve(run, second, ON_IT.format(names=names))
    stickers(run, batch)


def test_an_approval_is_for_packaging_and_once(banded: Any, run: Any, shop: Any) -> None:
    _, bands, names = banded
    approve(run, bands, ON_IT.format(names=names))
    assert "That text was approved already, by Nuala" in approve(run, bands, ON_IT.format(names=names), code=1).stderr
    assert "no packaging" in approve(run, shop.olive, ON_IT.format(names=names), code=1).stderr
    assert "is empty" in approve(run, bands, " \n", code=2).stderr


def test_approved_bands_do_not_approve_a_whole_label(banded: Any, run: Any) -> None:
    batch, bands, names = banded
    approve(run, bands, ON_IT.format(names=names))
    refused = run("label", "print", batch, "--market", "eu", "-o", "labels.pdf", code=1).stderr
    assert "Nobody approved what this label says yet" in refused
