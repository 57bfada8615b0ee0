"""The rules: one small file per rule, its code in words. Facts in; findings, measures, questions out.

They alone compare values with limits. They never decide the verdict, and none imports another.
"""

from typing import Protocol

from bathwright.domain.findings import Finding, Said
from bathwright.rules import merging
from bathwright.rules.chemistry import (
    bleach_with_solvent,
    chloramine_from_ammonia,
    chlorine_from_acid,
    never_in_a_home,
    other_dangerous_pairs,
)
from bathwright.rules.climate import (
    air_temperature_outside_window,
    dew_point_spread_too_small,
    humidity_outside_window,
    surface_temperature_outside_window,
)
from bathwright.rules.facts import Facts
from bathwright.rules.fit import (
    already_lined,
    material_contradicts,
    material_unknown,
    mould_washed,
    old_coat_fails,
    substrate_not_listed,
    substrate_refused,
    wish_refused,
)
from bathwright.rules.isocyanate import (
    isocyanate_rolled,
    isocyanate_sprayed,
    isocyanate_training,
    spray_mist,
)
from bathwright.rules.lead import (
    lead_dust_control,
    lead_glaze_not_covered,
    lead_kit_on_enamel,
    lead_renovation_covered,
    lead_unpaid_owner,
)
from bathwright.rules.pages import page_text
from bathwright.rules.people import (
    household_cannot_leave,
    lone_work,
    people_kept_away,
)
from bathwright.rules.protection import maker_respirator, skin_and_eyes
from bathwright.rules.sheet import (
    pack_too_small,
    pot_life_too_short,
    sheet_contradicts_itself,
    sheet_silent,
    substance_unknown,
    volatile_mass_disagrees,
)
from bathwright.rules.strippers import (
    dichloromethane_eu_gb,
    dichloromethane_kills,
    dichloromethane_no_cartridge,
    dichloromethane_us,
    nmp_stripper,
)
from bathwright.rules.structure import (
    drain_slow,
    drip_not_stopped,
    floor_flexes,
    leak_not_mended,
    rust_through,
    structural_crack,
)
from bathwright.rules.time import (
    coat_window_missed,
    law_not_looked_at,
    no_timetable,
    products_missing,
    room_closed,
    wanted_back_missed,
)
from bathwright.rules.vapour import (
    backdraught,
    dust_mask_no_vapour,
    explosive_share,
    fan_kept_on,
    flame_near_vapour,
    limit_unknown,
    model_outside_range,
    no_air_path,
    others_vapour_limit,
    painter_above_immediately_dangerous,
    painter_vapour_limit,
    return_not_reached,
    room_volume_unknown,
)
from bathwright.rules.waste import (
    rags_drying_oil,
    rags_solvent,
)


class Rule(Protocol):
    """What a rule's module holds."""

    @property
    def CODE(self) -> str:  # noqa: N802
        """The code in words."""
        ...

    @property
    def SOURCES(self) -> tuple[str, ...]:  # noqa: N802
        """Ids of the sources that it cites."""
        ...

    def check(self, facts: Facts) -> tuple[Said, ...]:
        """What the rule says about the facts."""
        ...


# in the order of telling: what kills, people, lead, fire in the bin, fit, sound, weather, papers, clock
RULES: tuple[Rule, ...] = (
    dichloromethane_kills,
    dichloromethane_no_cartridge,
    dichloromethane_us,
    dichloromethane_eu_gb,
    nmp_stripper,
    never_in_a_home,
    chlorine_from_acid,
    chloramine_from_ammonia,
    bleach_with_solvent,
    other_dangerous_pairs,
    isocyanate_sprayed,
    isocyanate_rolled,
    spray_mist,
    isocyanate_training,
    flame_near_vapour,
    backdraught,
    explosive_share,
    painter_above_immediately_dangerous,
    painter_vapour_limit,
    others_vapour_limit,
    return_not_reached,
    no_air_path,
    fan_kept_on,
    dust_mask_no_vapour,
    limit_unknown,
    model_outside_range,
    room_volume_unknown,
    people_kept_away,
    household_cannot_leave,
    lone_work,
    lead_renovation_covered,
    lead_unpaid_owner,
    lead_glaze_not_covered,
    lead_dust_control,
    lead_kit_on_enamel,
    maker_respirator,
    skin_and_eyes,
    rags_drying_oil,
    rags_solvent,
    material_unknown,
    material_contradicts,
    substrate_refused,
    substrate_not_listed,
    already_lined,
    old_coat_fails,
    structural_crack,
    floor_flexes,
    rust_through,
    leak_not_mended,
    drip_not_stopped,
    drain_slow,
    mould_washed,
    air_temperature_outside_window,
    surface_temperature_outside_window,
    humidity_outside_window,
    dew_point_spread_too_small,
    sheet_silent,
    substance_unknown,
    sheet_contradicts_itself,
    volatile_mass_disagrees,
    pot_life_too_short,
    pack_too_small,
    no_timetable,
    coat_window_missed,
    wanted_back_missed,
    room_closed,
    products_missing,
    wish_refused,
    law_not_looked_at,
)
BY_CODE: dict[str, Rule] = {rule.CODE: rule for rule in RULES}


def run_all(facts: Facts) -> tuple[Said, ...]:
    """What all rules say, in the order of telling; each measure and each question once."""
    said: list[Said] = []
    for rule in RULES:
        said += [
            merging.cited(entry, rule.SOURCES) if isinstance(entry, Finding) else entry for entry in rule.check(facts)
        ]
    return merging.merged(said)


def codes() -> tuple[tuple[str, str], ...]:
    """Code and first line of every rule, in the order of telling."""
    return tuple((rule.CODE, (rule.__doc__ or "").splitlines()[0]) for rule in RULES)


def page(code: str) -> str | None:
    """The manual page of a rule as Markdown, from its module's docstring; None for an unknown code."""
    rule = BY_CODE.get(code)
    return page_text(code, rule.__doc__ or "", rule.SOURCES) if rule else None
