"""What the ledger holds of a person."""
