"""Promises to customers, bars on sale or return, notes and invoices."""
