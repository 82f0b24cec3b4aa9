"""The lye."""
