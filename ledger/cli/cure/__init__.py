"""The cure rack."""
