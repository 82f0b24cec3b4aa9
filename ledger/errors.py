"""What can go wrong, each kind with its exit code; every message says what to do next."""


class LedgerError(Exception):
    """A message for the maker, in the words of her trade."""

    exit_code = 4


class Refused(LedgerError):
    """A rule of the trade or of the law says no; the message names the rule and the figures."""

    exit_code = 1


class Doubted(Refused):
    """A rule says no that a named person may decide about, with a reason."""


class BadInput(LedgerError):
    """What was typed cannot be read; the message says what was wrong, where, and what to type."""

    exit_code = 2


class NotShown(LedgerError):
    """What was done could not be shown to the end; the message says why, and the ledger is asked what stands."""

    exit_code = 5


class DamagedLedger(LedgerError):
    """The ledger file itself cannot be read or is not what it was."""

    exit_code = 3


class StrangeSchema(DamagedLedger):
    """The ledger file holds tables, views or guards that are not as a soapledger lays them."""
