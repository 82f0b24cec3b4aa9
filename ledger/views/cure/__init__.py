"""The rack."""
