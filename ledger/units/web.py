"""A web address as she writes it."""

import re

from ledger.errors import BadInput


def read_web(text: str) -> str:
    """An address that a telephone opens from a printed code: with https:// before it. Raises BadInput."""
    address = text.strip()
    if not re.match(r"https?://", address):
        address = f"https://{address}"
    if not re.fullmatch(r"https?://[\w-]+(\.[\w-]+)+(:\d+)?(/\S*)?", address):
        raise BadInput(
            f"'{text}' is not a web address; write it like www.myname.example or https://myname.example/soap."
        )
    return address
