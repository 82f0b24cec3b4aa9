"""Labels and the law on them."""
