"""Constants of nature and exact unit factors that the published correlations need."""

from typing import Final

GAS_CONSTANT_J_MOL_K: Final = 8.314462618
"""Molar gas constant (exact in the SI of 2019). Source: codata-2018, memory."""

STANDARD_PRESSURE_PA: Final = 101325.0
"""Standard atmosphere, exact by definition."""

ZERO_CELSIUS_K: Final = 273.15
"""0 °C, exact by definition."""

ROOM_TEMPERATURE_K: Final = 298.15
"""25 °C: the temperature at which occupational limits turn ppm into mass."""

TORR_PA: Final = STANDARD_PRESSURE_PA / 760.0
"""1 torr, exact by definition; 1 mmHg differs from it by 1 part in 7 million."""

HOUR_S: Final = 3600.0
"""One hour."""
