"""The ledger itself."""
