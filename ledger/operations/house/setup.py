"""Start a ledger, or change who she is and how the ledger speaks."""

from collections.abc import Mapping
from dataclasses import dataclass
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from ledger.errors import BadInput, Refused
from ledger.rows.codes import lot_codes_given
from ledger.rows.settings import Responsible, Settings, settings_if_any
from ledger.storage.book import Book
from ledger.storage.tables.house import MarketAddress, SettingsRevision
from ledger.storage.tables.material import Material, MaterialRevision
from ledger.storage.tables.stock import Place
from ledger.storage.transaction import Transaction
from ledger.units.money import currency_digits
from ledger.units.quantity import SCALE_STEP_MG
from ledger.units.words import PlaceKind, RejectedBars, Units

PLACES: tuple[tuple[str, str, PlaceKind], ...] = (
    ("workshop", "workshop", "workshop"),
    ("retained", "retained samples", "retained"),
    ("returns", "returns shelf", "returns"),
)
OFFCUTS = "offcuts"


@dataclass(frozen=True)
class Setup:
    """Who she is: business, money, units, clock, and the responsible person for each market."""

    business: str
    country: str
    currency: str
    units: Units
    time_zone: str
    addresses: Mapping[str, Responsible]
    phone: str | None = None
    labour_minor_per_hour: int | None = None
    scale_step_mg: int | None = None  # None: a scale that reads 0.1 g
    maker: str | None = None  # her own name, who decides where nobody else is named
    web: str | None = None  # her address there, printed as a code
    line: str | None = None  # of her own, on labels
    rejected_bars: RejectedBars | None = None  # None: they load the good ones


def set_up(book: Book, setup: Setup) -> None:
    """Write the settings as a new revision; the first also makes the places every ledger has.

    Raises BadInput for a missing name, or a country, currency, unit system or time zone that is not known;
    Refused for another currency once something was received.
    """
    _check(setup)
    with book.write("init") as tx:
        before = settings_if_any(tx.rows)
        first = before is None
        if before and before.currency != setup.currency and lot_codes_given(tx.rows):
            raise Refused(
                f"This ledger reckons in {before.currency}, and what was booked stays so; "
                "for another currency start another ledger."
            )
        write_settings(tx, _revised(setup, before))
        if first:
            tx.add_all(Place(code=code, name=name, kind=kind) for code, name, kind in PLACES)
            offcuts = tx.add(Material(code=OFFCUTS, kind="rework"))
            assert offcuts.id is not None
            tx.add(MaterialRevision(material_id=offcuts.id, name=OFFCUTS))
        tx.say(f"{'Started the ledger of' if first else 'Changed the settings of'} {setup.business}.")


def _revised(setup: Setup, before: Settings | None) -> Settings:
    """The settings that a setup means; what it does not ask about stays."""
    changed = {
        "scale_step_mg": setup.scale_step_mg or SCALE_STEP_MG,
        "tax_number": before.tax_number if before else None,
        "rejected_bars": setup.rejected_bars or (before.rejected_bars if before else None),
    }
    return Settings(**vars(setup) | changed)


def write_settings(tx: Transaction, new: Settings) -> None:
    """Write a revision of the settings with its addresses."""
    revision = tx.add(SettingsRevision(**{key: value for key, value in new._asdict().items() if key != "addresses"}))
    assert revision.id is not None
    tx.add_all(
        MarketAddress(settings_revision_id=revision.id, market=market, name=one.name, address=one.address)
        for market, one in sorted(new.addresses.items())
    )


def _check(setup: Setup) -> None:
    if not setup.business.strip():
        raise BadInput("A ledger needs the name you trade under; write it with --business NAME.")
    if not (len(setup.country) == 2 and setup.country.isascii() and setup.country.isalpha()):
        raise BadInput(f"'{setup.country}' is not a country's two letters; write them like IE or GB.")
    currency_digits(setup.currency)
    if setup.scale_step_mg is not None and not 1 <= setup.scale_step_mg <= 10_000:
        raise BadInput("A bench scale shows steps between 0.001 g and 10 g; write --scale-step '0.1 g'.")
    try:
        ZoneInfo(setup.time_zone)
    except (ZoneInfoNotFoundError, ValueError):
        raise BadInput(
            f"'{setup.time_zone}' is not a time zone; write it like Europe/Dublin or America/Chicago."
        ) from None
