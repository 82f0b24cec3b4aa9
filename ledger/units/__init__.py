"""Plain values as people type and read them."""
