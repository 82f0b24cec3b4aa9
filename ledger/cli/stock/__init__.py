"""Deliveries, lots and what is on hand."""
