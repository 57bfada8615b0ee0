"""Products that must not meet."""
