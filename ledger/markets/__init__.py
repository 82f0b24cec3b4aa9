"""The law as data: one file per market."""
