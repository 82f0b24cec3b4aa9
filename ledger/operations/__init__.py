"""One use case per file: one function, one transaction, one entry."""
