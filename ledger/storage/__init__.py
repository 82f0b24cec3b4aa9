"""The writing side of the ledger file."""
