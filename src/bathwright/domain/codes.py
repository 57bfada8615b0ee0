"""Closed lists of words. A code is a word of the trade; sentences are made at the edge."""

from typing import Literal

Mark = Literal["verified", "secondary", "memory", "own", "judgement", "common_practice"]
Strength = Literal["law", "advice", "danger", "maker", "good_practice"]
Consequence = Literal["kills", "harms", "ruins", "delays", "note"]
Effect = Literal["stops", "must_do", "tells"]
Status = Literal["open", "met", "unknown"]
Verdict = Literal["go", "not-yet", "no"]
Who = Literal["self", "firm", "neither"]
Basis = Literal["printed", "central", "p95", "upper_bound"]
Availability = Literal["have", "hire", "buy", "ask", "no"]
When = Literal["before_start", "during", "after"]

SubstrateCode = Literal[
    "enamelled_cast_iron", "enamelled_steel", "acrylic", "glass_fibre", "abs_backed_sheet", "cultured_marble",
    "vitreous_china", "ceramic_tile", "stainless_steel", "zinc_coated_steel", "aluminium", "copper", "laminate",
    "old_coating", "liner",
]  # fmt: skip
FixtureKind = Literal["bath", "basin", "shower_tray", "kitchen_sink", "wall_tile"]
MethodCode = Literal["brush", "roller", "spray", "aerosol", "pour"]
Role = Literal["coating", "primer", "filler", "cleaner", "etchant", "solvent", "stripper", "sealant"]
Chemistry = Literal[
    "bleach", "ammonia", "quat", "hydrochloric-acid", "vinegar", "descaler", "fluoride-acid", "peroxide", "alcohol",
    "acetone", "chlorinated-abrasive", "oxalic-acid", "dish-detergent", "trisodium-phosphate", "caustic",
    "dichloromethane", "benzyl-alcohol", "nmp", "epoxy-resin", "amine-hardener", "isocyanate-hardener",
    "lacquer-thinner", "mineral-spirits", "bare-steel", "water", "unknown-cleaner",
]  # fmt: skip
Trait = Literal["pregnant", "asthma", "sensitised", "heart", "bird", "fish", "dog", "cat", "other_pet"]
AgeBand = Literal["infant", "child_under_6", "child", "adult", "older_adult"]
Ignition = Literal["flame", "spark", "glowing", "none"]
EquipmentKind = Literal[
    "ceiling_fan", "window_fan", "box_fan", "box_fan_filter", "duct_fan", "half_mask_vapour", "full_mask_vapour",
    "dust_mask", "supplied_air", "heater", "thermometer", "hygrometer", "scale", "nitrile_gloves", "butyl_gloves",
    "goggles", "lamp", "roller", "brush", "hepa_vacuum", "ph_strips",
]  # fmt: skip
Part = Literal["floor", "walls", "rim", "apron", "face"]
Phase = Literal[
    "ready_room", "strip_down", "clean", "profile", "repair", "dry", "mask", "wipe", "mix", "coat", "cure", "unmask",
    "refit", "seal", "hand_over", "first_weeks",
]  # fmt: skip
Attendance = Literal["attended", "watched", "unattended"]
RoomState = Literal["free", "no_water", "first_water", "locked", "leave_home"]
ClockName = Literal["touch", "handle", "first_water", "full_bath", "care", "hard"]
WaitLaw = Literal["fixed", "dries", "cures", "warms", "purges", "moisture_cures"]

OBSERVATIONS: dict[str, tuple[str, ...]] = {
    # what was tested or seen -> the results that may be told
    "magnet": ("sticks", "does_not_stick"),
    "tap": ("dull", "ringing", "hollow", "dead"),
    "touch": ("cold", "cool", "warm"),
    "press": ("rigid", "drums", "gives"),
    "chip_shows": ("dark_iron", "bright_steel", "same_colour", "glass_strands", "white_filler", "clay"),
    "earlier_coat": ("none", "sound", "failing", "unsure"),
    "flush_edge_test": ("holds", "bare_patch_grows"),
    "cut_and_tape": ("holds", "lifts"),
    "chips": ("none", "few", "many"),
    "rust": ("none", "spot", "from_behind", "through"),
    "crack": ("none", "web", "structural"),
    "floor_flex": ("none", "flexes", "spongy"),
    "leak": ("none", "leaks"),
    "drip": ("none", "drips", "stopped"),
    "drain": ("runs", "slow"),
    "limescale": ("none", "some", "heavy"),
    "mould": ("none", "some"),
    "texture": ("smooth", "textured"),
    "lead_swab_on_glaze": ("negative", "positive"),
    "lead_xrf": ("none", "found"),
    "lead_wipe_lab": ("none", "found"),
    "lead_chip_lab_coat": ("none", "found"),
    "surface_temperature": ("measured",),
    "liner": ("none", "lined"),
}
