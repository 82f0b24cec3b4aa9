"""Check, undo, history, backup."""
