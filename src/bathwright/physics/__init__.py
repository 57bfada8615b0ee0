"""Published models as plain functions: one module per phenomenon.

SI floats or numpy arrays go in and come out. This package knows no record, file, unit library or clock.
Each module has `VALIDITY`: for a function, the range in which its source holds. A function that has no
entry there has an unknown range; it never means "everywhere".
"""
