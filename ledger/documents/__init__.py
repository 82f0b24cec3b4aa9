"""Draws a view on paper; no queries, no rules."""
