"""Lots and what is on hand."""
