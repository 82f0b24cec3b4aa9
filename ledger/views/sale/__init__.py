"""Prices, taxes, and what changed hands."""
