"""The ledger kept as pages and sheets."""
