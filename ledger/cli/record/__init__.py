"""The record of a batch, and the papers kept."""
