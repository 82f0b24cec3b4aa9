"""Equipment and upkeep."""
