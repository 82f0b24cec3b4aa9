"""The record of a batch, and papers."""
