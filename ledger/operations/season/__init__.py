"""The sample season, played."""
