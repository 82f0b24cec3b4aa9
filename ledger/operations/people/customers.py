"""Add a customer, or change what is known of one."""

from dataclasses import dataclass, field

from ledger.errors import BadInput
from ledger.rows.people import customer_by_code, customer_list
from ledger.storage.book import Book
from ledger.storage.personal import PersonDetails, remember_person
from ledger.storage.tables.customer import Customer, CustomerRevision
from ledger.units.shortcode import check_code, short_code
from ledger.units.signs import folded
from ledger.units.words import CustomerKind


@dataclass(frozen=True)
class CustomerDetails:
    """A shop by its trade name, or a person whose name stands in erasable details."""

    name: str
    contact: PersonDetails = field(default_factory=PersonDetails)
    note: str | None = None


def add_customer(book: Book, details: CustomerDetails, *, kind: CustomerKind, code: str | None) -> str:
    """Book a new customer ('shop' or 'person') and return the short name. Raises BadInput when taken.

    A person's short name is a running number, since it outlives an erasure.
    """
    with book.write("customer add") as tx:
        known = customer_list(tx.rows)
        taken = {one.code for one in known}
        if any(folded(one.name) == folded(details.name) for one in known):
            raise BadInput(f"There is a customer '{details.name}' already; see: soapledger customer list")
        proposal = details.name if kind == "shop" else f"person {len(known) + 1}"
        chosen = check_code(code, taken, noun="customer") if code else short_code(proposal, taken)
        customer = tx.add(Customer(code=chosen, kind=kind))
        assert customer.id is not None
        tx.add(_revision(customer.id, kind, details, remember_person(tx, _person(kind, details))))
        tx.say(f"Added customer {chosen}.")
    return chosen


def edit_customer(book: Book, code: str, details: CustomerDetails) -> None:
    """Write a new revision of a customer; earlier documents keep what stood then."""
    with book.write("customer edit") as tx:
        customer = customer_by_code(tx.rows, code)
        person = remember_person(tx, _person(customer.kind, details))
        tx.add(_revision(customer.id, customer.kind, details, person))
        tx.say(f"Changed customer {customer.code}.")


def _person(kind: CustomerKind, details: CustomerDetails) -> PersonDetails:
    contact = details.contact
    if kind == "shop":
        return contact
    return PersonDetails(details.name, contact.phone, contact.email, contact.address)


def _revision(
    customer_id: int, kind: CustomerKind, details: CustomerDetails, personal_id: int | None
) -> CustomerRevision:
    return CustomerRevision(
        customer_id=customer_id,
        name=details.name if kind == "shop" else None,
        personal_id=personal_id,
        note=details.note,
    )
