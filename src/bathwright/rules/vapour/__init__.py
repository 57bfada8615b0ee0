"""Vapour: fire, and what people breathe."""
