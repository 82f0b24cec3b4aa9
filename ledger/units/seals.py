"""Digests of what is kept, and seals: the number of an entry and 80 bits of its digest, to type from a paper."""

import re
from typing import NamedTuple

try:  # the one of hashlib, without the 3 ms in which that loads OpenSSL
    from _sha256 import sha256  # type: ignore[import-not-found]
except ImportError:  # Python 3.12 gave it another name
    from hashlib import sha256

from ledger.errors import BadInput

# No two of these are alike on paper or in a hand: at most one of 0 O Q D, of 1 I L, 2 Z, 5 S, 6 G, 8 B and U V W Y.
# Their number is a prime, which the check character needs to catch every wrong sign and every swap of neighbours.
SIGNS = "23456789ACDEFHJKMNPRTVX"
_OF_DIGEST = 18  # 23 ** 18 > 2 ** 80
_GROUP = re.compile("(....)(?=.)")


def sha256_of(content: bytes) -> str:
    """The SHA-256 by which a text or a paper is known again, in 64 hexadecimal figures."""
    return str(sha256(content).hexdigest())


class Seal(NamedTuple):
    """What a seal stands for: an entry, and with it every entry before; `text` is its one spelling."""

    entry: int
    text: str


def seal_of(entry: int, digest: str) -> Seal:
    """The seal of an entry with a digest of 64 hexadecimal figures: 41:7K3M-9HXA-45PT-CD2R-V8E."""
    sound = re.fullmatch("[0-9a-f]{64}", digest) is not None  # else someone wrote over it, and it seals nothing
    rest, signs = int(digest[:20], 16) if sound else 0, ""
    for _ in range(_OF_DIGEST):
        rest, value = divmod(rest, len(SIGNS))
        signs = SIGNS[value] + signs
    return _spelled(entry, signs)


def _spelled(entry: int, signs: str) -> Seal:
    grouped = _GROUP.sub(r"\1-", signs + _check_character(entry, signs))
    return Seal(entry, f"{entry}:{grouped}")


def _check_character(entry: int, signs: str) -> str:
    """Of the number and the signs: the pure system of ISO/IEC 7064 with radix 2 and as many signs as there are.

    By hand, since the library that has it loads ssl, which a record on the screen need not wait for.
    """
    check = 0
    for value in (*map(int, str(entry)), *map(SIGNS.index, signs)):
        check = (check + value) * 2 % len(SIGNS)
    return SIGNS[(1 - check) % len(SIGNS)]


def read_seal(text: str) -> Seal:
    """A seal as typed, capitals, dashes and spaces apart. Raises BadInput for one that is mistyped."""
    number, _, rest = text.partition(":")
    signs = re.sub(r"[\s\-\u2010-\u2015−]+", "", rest).upper()
    if not (number.strip().isascii() and number.strip().isdigit() and signs):
        example = seal_of(41, "7" * 64).text
        raise BadInput(f"'{text}' is not a seal; one looks like {example}, as it stands at the foot of a paper.")
    if strange := [sign for sign in signs if sign not in SIGNS]:
        raise BadInput(f"'{text}' is mistyped: no seal holds '{strange[0]}', only {SIGNS}. Read it again.")
    if len(signs) != _OF_DIGEST + 1:
        raise BadInput(
            f"'{text}' is mistyped: {len(signs)} signs follow the colon, not {_OF_DIGEST + 1}. Read it again."
        )
    seal = _spelled(int(number), signs[:-1])
    if not seal.text.endswith(signs[-1]):
        raise BadInput(f"'{text}' is mistyped: its last sign does not fit the rest. Read it again.")
    return seal
