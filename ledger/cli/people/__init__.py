"""Suppliers and customers."""
