"""What the ledger must hold to."""
