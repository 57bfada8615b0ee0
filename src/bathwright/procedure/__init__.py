"""From sheets and survey to areas, materials, mixes and ordered steps."""
