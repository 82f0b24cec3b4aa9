"""Passing and release."""
