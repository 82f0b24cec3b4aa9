"""Trace and recall."""
