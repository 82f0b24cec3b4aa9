"""Recipes."""
