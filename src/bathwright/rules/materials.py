"""What the told tests say about the material of a fixture."""

from bathwright.domain.codes import FixtureKind, SubstrateCode

_IRON: tuple[SubstrateCode, ...] = ("enamelled_cast_iron", "enamelled_steel")
_PLASTIC: tuple[SubstrateCode, ...] = ("acrylic", "glass_fibre", "abs_backed_sheet")
_FIRED: tuple[SubstrateCode, ...] = ("vitreous_china", "ceramic_tile")
USUAL: dict[FixtureKind, tuple[SubstrateCode, ...]] = {
    "bath": (*_IRON, *_PLASTIC, "cultured_marble"),
    "basin": ("vitreous_china", *_IRON, "acrylic", "cultured_marble"),
    "shower_tray": ("enamelled_steel", *_PLASTIC, "cultured_marble", "vitreous_china"),
    "kitchen_sink": (*_IRON, "stainless_steel", "vitreous_china"),
    "wall_tile": ("ceramic_tile",),
}
LEAVES: dict[tuple[str, str], tuple[SubstrateCode, ...]] = {
    ("magnet", "sticks"): (*_IRON, "stainless_steel"),
    ("magnet", "does_not_stick"): (*_PLASTIC, *_FIRED, "cultured_marble", "stainless_steel"),
    ("tap", "dull"): (*_IRON, *_FIRED),
    ("tap", "ringing"): (*_IRON, *_FIRED, "stainless_steel"),
    ("tap", "hollow"): _PLASTIC,
    ("tap", "dead"): ("cultured_marble",),
    ("touch", "cold"): (*_IRON, *_FIRED, "stainless_steel"),
    ("touch", "warm"): _PLASTIC,
    ("press", "rigid"): (*_IRON, *_FIRED, "cultured_marble", "stainless_steel"),
    ("press", "drums"): ("enamelled_steel", "stainless_steel"),
    ("press", "gives"): _PLASTIC,
    ("chip_shows", "dark_iron"): ("enamelled_cast_iron",),
    ("chip_shows", "bright_steel"): ("enamelled_steel", "stainless_steel"),
    ("chip_shows", "same_colour"): ("acrylic", "abs_backed_sheet"),
    ("chip_shows", "glass_strands"): ("glass_fibre", "acrylic"),
    ("chip_shows", "white_filler"): ("cultured_marble",),
    ("chip_shows", "clay"): _FIRED,
}
