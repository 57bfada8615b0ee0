"""Coatings with an isocyanate hardener."""
