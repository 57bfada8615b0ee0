"""A full plan written by hand, for the tests of the report. Invented: home, products and numbers; no advice."""

import dataclasses
from datetime import UTC, datetime

from sample_air import air, courses, exposures
from sample_said import FINDINGS, MEASURES, OPEN_FINDINGS, OPEN_MEASURES, QUESTIONS, STOPPING
from sample_steps import COATING, H, after, clocks, steps, timetable

from bathwright.domain.plan import (
    Alternative,
    AreaPart,
    Assumption,
    CareRule,
    ClimatePlan,
    Emergency,
    MadeFor,
    MadeWith,
    Material,
    Mix,
    Options,
    Plan,
    SheetUsed,
    System,
    Traced,
    WasteRule,
)
from bathwright.domain.survey import Building, Equipment, Fixture, Person, Place, ShownIn, Sizes, Space, Survey, Work
from bathwright.domain.values import Band, Value

SURVEY = Survey(
    format="bathwright-survey/1",
    id="sample-home",
    invented=True,
    note="Invented for the tests.",
    place=Place(country="US", time_zone="America/New_York", region="NY"),
    building=Building(year=1957, tenure="owner"),
    work=Work(who="self", paid=False, outside_helper=True, clean_shaven=True),
    fixtures=(Fixture(id="bath", kind="bath", material="enamelled_cast_iron", year=1957, sizes=Sizes(length=1.52)),),
    spaces=(Space(id="bathroom-1", kind="bathroom", volume=10.5),),
    people=(Person(id="quillon-7", age_band="child_under_6", traits=("bird", "sensitised")),),
    equipment=(Equipment(id="fan-1", kind="duct_fan", rating=0.1, discharges="outdoors", inlet="basin"),),
    clean_tap="kitchen",
    shown_in=ShownIn(units="us", language="en-US"),
)

_SHEETS = tuple(
    SheetUsed(id=name, product=product, role=role, revision="2026-01", digest="0" * 12, invented=True)
    for name, product, role in (
        (COATING, "Sample Epoxy White", "coating"),
        ("sample-wipe", "Sample Wipe", "solvent"),
        ("sample-descaler", "Sample Descaler", "cleaner"),
        ("sample-joint", "Sample Joint", "sealant"),
    )
)


def _liquid(low: float, central: float, high: float) -> Band:
    return Band(low=low, central=central, high=high, kind="liquid", source="own-computation", mark="own")


def _material(sheet: str, product: str, section: str, need: float, pack: float, reason: str, have: bool) -> Material:
    coating = section == "coating" and sheet == COATING
    return Material(
        sheet=sheet,
        product=product,
        needed_m3=_liquid(need * 0.85, need, need * 1.25),
        pack_m3=pack,
        packs=1,
        left_over_m3=max(pack - need, 0.0),
        dry_film_m=6e-5 if coating else None,
        wet_film_m=1.15e-4 if coating else None,
        have=have,
        reason=reason,
        section=section,  # type: ignore[arg-type]
    )


MATERIALS = (
    _material(COATING, "Sample Epoxy White", "coating", 6.2e-4, 9.46e-4, "coat", False),
    _material("sample-wipe", "Sample Wipe", "coating", 1.2e-4, 9.46e-4, "wipe", False),
    _material("sample-descaler", "Sample Descaler", "cleaning", 2e-4, 5e-4, "descale", True),
    _material("sample-joint", "Sample Joint", "sealing", 1e-4, 3e-4, "seal", False),
)

MIXES = tuple(
    Mix(
        id=f"mix-{number}",
        step=f"mix-{number}",
        sheet=COATING,
        volume_m3=3.1e-4,
        parts=(Value(name="base", value=2.48e-4, kind="liquid"), Value(name="hardener", value=0.62e-4, kind="liquid")),
        stir_s=180.0,
        stand_s=600.0,
        pot_life_s=80 * 60.0,
        printed_pot_life_s=90 * 60.0,
        use_s=55 * 60.0,
    )
    for number in (1, 2)
)

ALTERNATIVES = (
    Alternative(
        kind="system",
        system="sample-water",
        product="Sample Water Epoxy",
        verdict="go",
        because=("painter-vapour-limit",),
        vapour_kg=0.031,
        full_bath=after(320),
    ),
    Alternative(kind="local_repair", because=("return-not-reached",)),
    Alternative(kind="leave_as_it_is"),
)

_CARE = (
    CareRule(code="no_hot_water_before", until=after(241)),
    CareRule(code="wipe_dry_first_weeks", until=after(720)),
    *(CareRule(code=code) for code in ("soft_cloth_mild_soap", "no_abrasives", "no_bleach_acid_solvent")),
    *(CareRule(code=code) for code in ("no_suction_mat", "no_standing_bottles", "mend_drips", "report_chips")),
)
_WASTE = (
    WasteRule(code="solvent_rags_outdoors", about="sample-wipe"),
    WasteRule(code="hardened_leftovers", about=COATING),
    *(WasteRule(code=code) for code in ("liquid_leftovers_collection", "sanding_slurry_bagged", "empty_cans")),
    WasteRule(code="masking_after_cure"),
)

GO = Plan(
    format="bathwright-plan/1",
    id="3f9a" * 16,
    made_for=MadeFor(
        survey_id="sample-home", system=COATING, at=datetime(2026, 12, 1, 17, 0, tzinfo=UTC), options=Options()
    ),
    survey=SURVEY,
    private=("people",),
    system=System(id=COATING, product="Sample Epoxy White", family="2k-epoxy", method="roller", sheets=_SHEETS),
    verdict="go",
    who="self",
    findings=FINDINGS,
    measures=MEASURES,
    questions=(),
    assumptions=(
        Assumption(code="home-volume", value=220.0, kind="volume", source="own-judgement", mark="judgement"),
        Assumption(code="size-depth", value=0.33, kind="length", source="home-pages-fixtures", mark="secondary"),
        Assumption(code="indoor_humidity", value=0.55, kind="humidity", source="own-judgement", mark="judgement"),
    ),
    alternatives=ALTERNATIVES,
    area=(
        AreaPart(fixture="bath", part="floor", area_m2=0.62, how="rounded tapered box", mark="own"),
        AreaPart(fixture="bath", part="walls", area_m2=1.31, how="rounded tapered box", mark="own"),
        AreaPart(fixture="bath", part="rim", area_m2=0.27, how="outer rectangle less opening", mark="own"),
    ),
    materials=MATERIALS,
    mixes=MIXES,
    steps=steps(),
    timetable=timetable(),
    air=air(),
    climate=ClimatePlan(
        kind="typed_day",
        low_k=291.65,
        high_k=295.15,
        humidity=0.55,
        surface_offset_k=1.5,
        told=True,
        cure_model="equivalent age",
        activation_energy_j_mol=55e3,
    ),
    courses=courses(),
    exposures=exposures(),
    clocks=clocks(),
    care=_CARE,
    waste=_WASTE,
    cost=(),
    emergency=Emergency(
        country="US",
        emergency="911",
        poison="1-800-222-1222",
        clean_tap="kitchen",
        source="emergency-numbers",
        mark="secondary",
    ),
    traces=(
        Traced(
            path="materials[1].needed_m3",
            formula="coats · area · dry film / (solids by volume · (1 − loss))",
            inputs=(Value(name="area", value=2.2, kind="area"), Value(name="coats", value=2.0, kind="count")),
            sources=("ufc-3-190-06",),
            mark="own",
        ),
    ),
    sources=("cdc-mmwr-1991-40-36", "cfr-1910-1000", "emergency-numbers", "iso-8502-4-2017", "own-judgement"),
    made_with=MadeWith(
        version="0.1.0",
        knowledge_version="abc123abc123",
        python="3.11",
        numpy="2.1",
        engine="1",
        tzdata="2025.2",
        seed=0,
        scenarios=4,
    ),
)

NOT_YET = dataclasses.replace(
    GO,
    verdict="not-yet",
    findings=(*OPEN_FINDINGS, *FINDINGS),
    measures=(*OPEN_MEASURES, *MEASURES),
    questions=QUESTIONS,
)

NO = dataclasses.replace(
    GO,
    verdict="no",
    who="firm",
    system=None,
    findings=STOPPING,
    measures=(),
    materials=(),
    mixes=(),
    steps=(),
    timetable=None,
    air=None,
    climate=None,
    courses=(),
    exposures=(),
    clocks=(),
    care=(),
    waste=(),
    traces=(),
    alternatives=(Alternative(kind="firm_with_supplied_air", because=("painter-vapour-limit",)), *ALTERNATIVES[1:]),
)

BRITISH = dataclasses.replace(
    NOT_YET,
    survey=dataclasses.replace(
        SURVEY,
        place=Place(country="GB", time_zone="Europe/London", region="England"),
        shown_in=ShownIn(units="si", language="en-GB"),
    ),
    emergency=Emergency(
        country="GB", emergency="999", poison="NHS 111", clean_tap=None, source="emergency-numbers", mark="secondary"
    ),
)

ALL = {"go": GO, "not-yet": NOT_YET, "no": NO, "british": BRITISH}
HOURS = H
