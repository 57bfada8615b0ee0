"""Lead in glaze and old coats."""
