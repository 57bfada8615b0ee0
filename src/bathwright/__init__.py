"""bathwright: advise a household on refinishing a worn bath."""

__version__ = "0.1.0"
