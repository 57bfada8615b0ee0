"""The only room that converts units: kinds of quantity, reading of typed text, showing of values."""

from bathwright.units.kinds import KINDS, Kind, kind_of, rounded
from bathwright.units.read import QuantityError, read_quantity
from bathwright.units.show import show, show_both

__all__ = ["KINDS", "Kind", "QuantityError", "kind_of", "read_quantity", "rounded", "show", "show_both"]
