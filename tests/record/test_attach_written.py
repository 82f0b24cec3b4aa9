"""A paper is kept once, beside whatever it vouches for."""

import hashlib
from typing import Any

import pytest

from ledger.errors import BadInput, Refused
from ledger.operations.keep.undo import undo
from ledger.operations.record.attach import attach
from ledger.rows.kept import content_of
from ledger.views.record.attachments import attachments, subject_meant

PAPER = b"certificate of analysis"


def keep(shop: Any, to: str, content: bytes = PAPER) -> str:
    return attach(shop.book, content, name="coa.pdf", kind="CoA", to=to).sha256


def test_the_digest_is_sha_256_of_the_content(shop: Any) -> None:
    assert keep(shop, shop.olive) == hashlib.sha256(PAPER).hexdigest()
    assert content_of(shop.rows(), hashlib.sha256(PAPER).hexdigest()[:12]).content == PAPER


def test_a_lot_a_batch_a_recipe_and_a_material_may_each_have_papers(shop: Any) -> None:
    for to in (shop.olive, shop.batch, "plain", "olive oil"):
        keep(shop, to)
    rows = shop.rows()
    found = [(one.noun, one.code) for one in attachments(rows)]
    assert found == [("lot", shop.olive), ("batch", shop.batch), ("recipe", "plain-bar"), ("material", "olive-oil")]
    assert [one.noun for one in attachments(rows, subject_meant(rows, shop.batch))] == ["batch"]


def test_the_same_content_is_kept_once(shop: Any) -> None:
    keep(shop, shop.olive)
    keep(shop, "olive oil")
    assert shop.rows().execute("SELECT count(*) FROM attached_content").fetchone()[0] == 1


def test_the_same_content_with_the_same_lot_is_refused(shop: Any) -> None:
    keep(shop, shop.olive)
    with pytest.raises(Refused, match=f"kept with lot {shop.olive} already, as coa.pdf"):
        keep(shop, shop.olive.replace("-", " "))


def test_one_taken_back_is_no_longer_shown_and_may_be_attached_again(shop: Any) -> None:
    digest = keep(shop, shop.olive)
    undo(shop.book, shop.rows().execute("SELECT max(id) FROM entry").fetchone()[0])
    assert attachments(shop.rows()) == ()
    with pytest.raises(BadInput, match="No paper kept here"):
        content_of(shop.rows(), digest)
    assert keep(shop, shop.olive) == digest


def test_an_empty_file_and_an_unknown_word_are_bad_input(shop: Any) -> None:
    with pytest.raises(BadInput, match="empty"):
        keep(shop, shop.olive, b"")
    with pytest.raises(BadInput, match="Did you mean"):
        keep(shop, "olve oil")
    assert attachments(shop.rows()) == ()


def test_too_little_of_a_digest_is_bad_input(shop: Any) -> None:
    with pytest.raises(BadInput, match="too short"):
        content_of(shop.rows(), keep(shop, shop.olive)[:5])


@pytest.mark.parametrize(
    ("typed", "kind"),
    [("coa", "CoA"), ("photo", "photograph"), ("Safety sheet", "safety sheet"), ("ifra", "IFRA certificate")],
)
def test_the_kind_is_known_by_its_start_in_any_letters(shop: Any, typed: str, kind: str) -> None:
    attach(shop.book, PAPER, name="coa.pdf", kind=typed, to=shop.olive)
    assert [one.kind for one in attachments(shop.rows())] == [kind]


def test_an_unknown_kind_is_bad_input(shop: Any) -> None:
    with pytest.raises(BadInput, match="Did you mean photograph"):
        attach(shop.book, PAPER, name="coa.pdf", kind="photogaph", to=shop.olive)
    with pytest.raises(BadInput, match="not a kind of paper"):
        attach(shop.book, PAPER, name="coa.pdf", kind="", to=shop.olive)
