"""Words in a text of hers that a person questions before it is printed; nothing is ever passed."""

import re
import unicodedata
from functools import cache
from typing import NamedTuple

from ledger.domain.label.claim import Claim
from ledger.domain.label.claim_words import MORE_CLAIMS


class Questioned(NamedTuple):
    """Words as she typed them, and why a person looks at them first."""

    words: str
    reason: str
    source: str
    status: str


_JOINT = r"[\s\-\u2010-\u2015]"
_APART = r"(?<![^\W_])(?:{})(?![^\W_])"  # whole words; an underline is no letter
# Soft hyphens and signs of no width, which hide a word from a search and not from a reader; one of them is a space.
_UNSEEN = {**dict.fromkeys((0x00AD, 0x200C, 0x200D, 0x2060, 0xFEFF)), 0x200B: " "}
_BEGINS = re.compile(r"[a-z]+(?![?*{])")  # the letters that every text of a form holds: vegan of vegans?
_UNIT = r"(?:mg|gr?|gms?|kgs?|oz|lbs?|grams?|grammes?|kilos?|kilogram(?:me)?s?|ounces?|pounds?)"
_WEIGHT = rf"(?:[0-9][0-9.,/⁄]*|[.,][0-9]+)\s*{_UNIT}"
_NET = r"\s*(?:net\s*(?:wt|weight)?[.:]?\s*)?"

_COSMETIC = "Regulation (EU) No 655/2013, common criteria for claims"
CLAIMS = (
    Claim(
        (r"heal(?:s|ed|er|ers|ing)?", r"remed(?:y|ies)", r"therap(?:y|ies|eutic)", r"medicinal(?:ly)?", r"medicated"),
        "A claim to heal makes the soap a medicine.",
        "Directive 2001/83/EC; US Food, Drug, and Cosmetic Act, what is a drug", "memory",
    ),
    Claim(
        (r"cur(?:e|es|ed|ing|ative)", r"treat(?:s|ed|ing|ment|ments)?"),
        "Said of an illness it makes the soap a medicine; said of bars on the rack, or of a present, it may stand.",
        "Directive 2001/83/EC; US Food, Drug, and Cosmetic Act, what is a drug", "memory",
    ),
    Claim(
        (
            r"eczemas?", r"eczematous", r"psoriasis", r"psoriatic", r"acne", r"rosacea", r"dermatitis",
        ),
        "To name an illness of the skin is to say that the soap does something about it, as a medicine would.",
        "Directive 2001/83/EC; US Food, Drug, and Cosmetic Act, what is a drug", "memory",
    ),
    Claim(
        (
            r"anti~bacterials?", r"anti~septics?", r"anti~fungals?", r"anti~microbials?", r"anti~virals?",
            r"disinfect(?:s|ed|ing|ant|ants)?", r"germicid(?:e|es|al)", r"kills? germs?",
        ),
        "A claim against germs makes the soap a biocide or a medicine, which needs a permission of its own.",
        "Regulation (EU) No 528/2012; US rules for antiseptic drugs", "memory",
    ),
    Claim(
        (r"hypo~allergenic", r"non~allergenic", r"allergy~free", r"allergen~free"),
        "That it causes few allergies must be shown by a study, and soap with a scent or an essential oil seldom can.",
        _COSMETIC, "memory",
    ),
    Claim(
        (
            r"(?:dermatological(?:ly)?|dermatologists?|clinical(?:ly)?)"
            r"(?: tested| tests?| proven| approved| recommended)?",
        ),
        "A test must have been made, on this very soap, and its report be in the product information file.",
        f"Regulation (EC) 1223/2009, article 11, proof of claims; {_COSMETIC}", "memory",
    ),
    Claim(
        (r"organic(?:s|ally)?",),
        "It is a claim about how every plant was grown, which a certificate has to bear out for each lot that went in.",
        "US National Organic Program; private standards elsewhere", "memory",
    ),
    Claim(
        (r"(?:all )?natural(?:s|ly|ness)?",),
        "No law says what is natural, and soap is made with an alkali that is not; a reader may take it otherwise.",
        _COSMETIC, "memory",
    ),
    Claim(
        (r"chemical~free", r"(?:free (?:of|from)|no|without) (?:\w+ )?chemicals?"),
        "Everything is a chemical, lye and soap among it, so it cannot be true.",
        _COSMETIC, "memory",
    ),
    Claim(
        (
            r"toxins?~free", r"(?:free (?:of|from)|no|without) (?:\w+ )?toxins?", r"non~toxic", r"not toxic",
            r"toxic~free", r"de~tox(?:es|ed|ing|ify|ifies|ified|ifying|ification)?",
        ),
        "It runs down what others sell, and nothing that may be sold is toxic as it is used.",
        _COSMETIC, "memory",
    ),
    Claim(
        (r"safe(?:r|st|ly|ty)?",),
        "Only the assessor says whether a soap is safe, in the safety report and not on the bar.",
        "Regulation (EC) 1223/2009, article 10", "read",
    ),
    Claim(
        (r"cruelty~free", r"(?:not|never) tested on animals?", r"no animal testing"),
        "Nobody may test a cosmetic on animals in the EU, so it claims as a merit what the law asks of all.",
        f"Regulation (EC) 1223/2009, articles 18 and 20; {_COSMETIC}", "memory",
    ),
    Claim(
        (r"vegans?",),
        "It must be true of every lot: beeswax, honey, milk, silk, lanolin and tallow are not vegan.",
        _COSMETIC, "memory",
    ),
    Claim(
        (
            r"complian(?:t|ce)", r"compl(?:y|ies|ied|ying)", r"certif(?:y|ies|ied|ying|icate|icates|ication|ications)",
            r"approv(?:e|es|ed|ing|al|als)",
        ),
        "No authority approves or certifies soap before it is sold, so a reader would take from it what is not so.",
        _COSMETIC, "memory",
    ),
    Claim(
        (r"approx\.?", r"approximate(?:ly)?", rf"(?:about|around|circa|ca|roughly|nearly|almost)\.?{_NET}{_WEIGHT}"),
        "A net quantity is declared outright and holds; a word that loosens it has no place beside it.",
        "16 CFR 500.6-500.21 (2015 edition); Directive 76/211/EEC", "memory", signs=(rf"[\x7e≈±]{_NET}{_WEIGHT}",),
    ),
    Claim(
        (
            r"jumbo", r"when packed",
            rf"(?:min|minimum|at least|not less than)\.?{_NET}{_WEIGHT}", rf"{_WEIGHT},?\s*(?:min|minimum)",
        ),
        "No 'when packed', 'minimum', 'jumbo' or the like stands with a net quantity in the United States.",
        "16 CFR 500.6-500.21 (2015 edition)", "read",
    ),
    Claim(
        (r"e~mark(?:s|ed)?", rf"(?-i:e)\s*{_WEIGHT}", rf"{_WEIGHT}\s*(?-i:e)"),
        "The e-mark claims the whole average system with its records, and is a packer's own choice.",
        "Directive 76/211/EEC", "read", signs=("\N{ESTIMATED SYMBOL}",),
    ),
    Claim(
        (r"moisturi[sz](?:e|es|ed|er|ers|ing)", r"hydrat(?:e|es|ed|ing|ion)"),
        "In the United States a claim to moisturise can turn soap into a cosmetic.",
        "21 CFR 701.20 (2015 edition); the Consumer Product Safety Commission on it", "read", on_us_soap_only=True,
    ),
    Claim(
        (r"deodori[sz](?:e|es|ed|er|ers|ing)", r"deodorants?", r"perfum(?:e|es|ed|ing)", r"scent(?:s|ed|ing)?"),
        "In the United States a claim to deodorise or to scent the skin can turn soap into a cosmetic.",
        "21 CFR 701.20 (2015 edition); the Consumer Product Safety Commission on it", "read", on_us_soap_only=True,
    ),
)  # fmt: skip


def _pattern(form: str) -> str:
    return _APART.format(form.replace(" ", f"{_JOINT}+").replace("~", f"{_JOINT}*"))


@cache
def _compiled(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern, re.IGNORECASE)


def _found(claim: Claim, seen: str) -> list[tuple[int, int]]:
    """Where forms of a claim stand. A form is compiled only for a text that holds the letters or a figure it needs.

    All of them together take longer than the rest of a label.
    """
    letters = seen.casefold().replace("\u0131", "i").replace("\u0307", "")  # a dotless i is an i, whatever its capital
    figure = any("0" <= sign <= "9" for sign in seen)
    spans = []
    for form in (*claim.forms, *claim.signs):
        needs = _BEGINS.match(form)
        if (needs is None or needs[0] in letters) and (figure or _WEIGHT not in form):
            pattern = form if form in claim.signs else _pattern(form)
            spans += [match.span() for match in _compiled(pattern).finditer(seen)]
    return spans


def question(text: str, *, market_is_soap: bool) -> tuple[Questioned, ...]:
    """What to question in a text, in the order it stands, each wording once.

    `market_is_soap`: sold in the United States as soap and nothing but soap (21 CFR 701.20), where claims of a cosmetic
    are questioned too. An empty answer passes nothing: only these words are known, and a person decides.
    """
    seen = unicodedata.normalize("NFKC", text.translate(_UNSEEN))
    found: dict[tuple[str, str], tuple[int, Questioned]] = {}
    for claim in (*CLAIMS, *MORE_CLAIMS):
        if claim.on_us_soap_only and not market_is_soap:
            continue
        spans = _found(claim, seen)
        for start, end in spans:
            if any(a <= start and end <= b and (a, b) != (start, end) for a, b in spans):
                continue  # part of a longer wording of the same claim
            words = " ".join(seen[start:end].split())
            one = Questioned(words, claim.reason, claim.source, claim.status)
            found.setdefault((claim.reason, words.casefold()), (start, one))
    return tuple(one for _, one in sorted(found.values(), key=lambda each: each[0]))
