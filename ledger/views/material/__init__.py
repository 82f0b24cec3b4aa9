"""Materials."""
