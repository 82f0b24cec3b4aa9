"""Labels."""
