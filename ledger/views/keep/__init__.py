"""The ledger told whole: page by page, and table by table."""
