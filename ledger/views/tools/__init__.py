"""Instruments, what is read with them, upkeep."""
