"""Words that promise more than a soap may are questioned wherever they stand, and nothing is ever passed."""

import re
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ledger.domain.label.claims import CLAIMS, question

ALWAYS = """
    heal, heals, healed, healing, cure, cures, cured, curing, treat, treats, treating, treatment, therapeutic,
    antibacterial, anti-bacterial, antiseptic, antifungal, anti fungal, antimicrobial, kills germs, disinfects,
    eczema, psoriasis, acne, rosacea, hypoallergenic, hypo-allergenic, dermatologically tested, dermatologist,
    clinically, clinical, organic, organically, natural, naturally, all-natural, chemical-free, chemical free,
    free of chemicals,
    no harsh chemicals, toxin-free, toxin free, without toxins, non-toxic, nontoxic, detox, detoxifying, safe, safer,
    safely, cruelty-free, cruelty free, not tested on animals, vegan, compliant, complies, compliance, certified,
    certificate, approved, approval, approx., approx, approximately, about 100 g, about 3.5 oz, about net wt 100 g,
    around 100 grams, ca. 100 g, ~100 g, ≈ 100 g, e-mark, 100 g e, e 100 g, ℮, jumbo, when packed,
    minimum 100 g, 100 g min
"""
ON_US_SOAP = """
    moisturising, moisturizing, moisturises, moisturizer, hydrating, deodorising, deodorizing, deodorant, scented,
    perfumed
"""


def listed(words: str) -> list[str]:
    """The wordings of a list, which has a comma before each space."""
    return [word.strip() for word in re.split(r",\s", words.strip())]


def finds(text: str, word: str, *, soap: bool = False) -> bool:
    """Whether what is questioned holds the word."""
    return any(word.casefold() in one.words.casefold() for one in question(text, market_is_soap=soap))


@pytest.mark.parametrize("how", [str, str.upper, str.capitalize])
def test_each_is_questioned_in_any_case(how: Callable[[str], str]) -> None:
    for word in listed(ALWAYS):
        of_the_mark = word.endswith(" e") or word.startswith("e ")  # its e is a small one
        text = word if of_the_mark else how(word)
        assert finds(text, word)
        assert finds(f"Our *{text}*, soap", word)


def test_what_makes_a_us_soap_a_cosmetic_is_questioned_there_alone() -> None:
    for word in listed(ON_US_SOAP):
        assert finds(f"A {word} bar", word, soap=True)
        assert question(f"A {word} bar", market_is_soap=False) == ()


@pytest.mark.parametrize(
    "text",
    [
        "",
        "Handmade soap with lavender oil, 100 g",
        "Hand made in Ireland. Rinse off with water; avoid contact with the eyes.",
        "Secure in a dish that drains",  # holds cure
        "Healthy hens, theatre, retreat, entreaty",  # hold heal and treat
        "A soap about the sea, and around midsummer",  # no weight behind it
        "Net Wt 3.5 oz (99 g)",
        "Vitamin E, olive oil e cocoa butter",
        "Unscented",
        "Supernatural, inorganic, unsafe",
    ],
)
def test_other_words_are_not_questioned(text: str) -> None:
    assert question(text, market_is_soap=True) == ()


# A hard space, a soft hyphen, a hyphen of another kind, a full-width letter, a line break, a fraction,
# underlines, a space of no width, an i with and without its dot as Turkish capitals have it, a long s.
@pytest.mark.parametrize(
    "text",
    [
        "chemical\u00a0free", "anti\u00adbacterial", "anti\u2011bacterial", "\uff28ealing", "dermatologically\ntested",
        "about ½ lb", "_healing_", "healing\u200bsoap",
        "ORGAN\u0130C", "organ\u0131c", "\u017fafe",
    ],
)  # fmt: skip
def test_a_word_is_found_however_it_is_set(text: str) -> None:
    assert len(question(text, market_is_soap=False)) == 1


def test_each_wording_is_named_once_in_the_order_it_stands() -> None:
    found = question("Vegan. Natural, NATURAL and naturally healing for eczema.", market_is_soap=False)
    assert [one.words for one in found] == ["Vegan", "Natural", "naturally", "healing", "eczema"]


def test_the_longest_wording_stands_for_its_parts() -> None:
    assert [one.words for one in question("Net Wt approx. 100 g", market_is_soap=True)] == ["approx."]
    assert [one.words for one in question("free of all toxins", market_is_soap=True)] == ["free of all toxins"]


def test_every_claim_has_one_sentence_and_says_where_it_stands() -> None:
    for claim in CLAIMS:
        assert re.fullmatch(r"[A-Z][^.]*\.", claim.reason)
        assert claim.source
        assert claim.status in ("read", "read in a secondary text", "memory")


@given(
    before=st.text(),
    after=st.text(),
    word=st.sampled_from(listed(ALWAYS)),
    apart=st.sampled_from([" ", ". ", " (", "\n"]),
    soap=st.booleans(),
)
def test_a_questioned_word_added_anywhere_is_found(before: str, after: str, word: str, apart: str, soap: bool) -> None:
    assert finds(f"{before}{apart}{word} {after}", word, soap=soap)


@given(
    words=st.lists(st.sampled_from([*listed(ALWAYS), "soap", "of", "no", "e", "about", "100", "g", "free"]), max_size=6)
)
def test_other_words_beside_it_hide_none(words: list[str]) -> None:
    for word in set(words) & set(listed(ALWAYS)):
        assert finds(" ".join(words), word)
