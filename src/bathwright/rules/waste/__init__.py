"""Rags and leftovers."""
