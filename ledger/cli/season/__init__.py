"""The sample season."""
