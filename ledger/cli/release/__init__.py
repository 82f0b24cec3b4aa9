"""Passing, release and what becomes of bars that are not."""
