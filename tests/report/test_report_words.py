"""The message catalogue is complete, and each language keeps to its words."""

import re
from pathlib import Path
from typing import get_args

import pytest

import bathwright
from bathwright.domain import air, codes
from bathwright.domain.plan import Alternative
from bathwright.domain.sheet import FACT_KINDS
from bathwright.report.fill import fill, holes
from bathwright.report.words import LANGUAGES, Language, Words, catalogue

ACTS = [
    "empty_room",
    "stop_drip",
    "set_up_air",
    "warm_room",
    "remove_fittings",
    "cut_caulk",
    "wash_detergent",
    "rinse",
    "treat_mould",
    "flush_and_check",
    "descale",
    "scrape_old_coat",
    "wet_sand",
    "fill_chips",
    "sand_filler",
    "dry_bath",
    "mask_room",
    "solvent_wipe",
    "tack_wipe",
    "mix_batch",
    "coat",
    "abrade_and_wipe",
    "cure",
    "unmask",
    "refit_fittings",
    "seal",
    "inspect",
]
FINDINGS = [
    "material-unknown",
    "substrate-not-listed",
    "substrate-refused",
    "structural-crack",
    "floor-flexes",
    "leak-not-mended",
    "rust-through",
    "already-lined",
    "drip-not-stopped",
    "old-coat-fails",
    "lead-renovation-covered",
    "lead-unpaid-owner",
    "lead-glaze-not-covered",
    "lead-dust-control",
    "lead-kit-on-enamel",
    "chlorine-from-acid",
    "bleach-with-solvent",
    "chloramine-from-ammonia",
    "dichloromethane-kills",
    "dichloromethane-us",
    "dichloromethane-eu-gb",
    "dichloromethane-no-cartridge",
    "flame-near-vapour",
    "isocyanate-sprayed",
    "dust-mask-no-vapour",
    "lone-work",
    "air-temperature-outside-window",
    "surface-temperature-outside-window",
    "humidity-outside-window",
    "dew-point-spread-too-small",
    "people-kept-away",
    "rags-solvent",
    "rags-drying-oil",
    "painter-vapour-limit",
    "painter-above-immediately-dangerous",
    "others-vapour-limit",
    "explosive-share",
    "return-not-reached",
    "no-air-path",
    "limit-unknown",
    "volatile-mass-disagrees",
    "sheet-silent",
    "sheet-contradicts-itself",
    "coat-window-missed",
    "wanted-back-missed",
    "pot-life-too-short",
    "pack-too-small",
    "law-not-looked-at",
    "model-outside-range",
    "household-cannot-leave",
]
MEASURES = [
    "wear_mask",
    "wear_gloves_goggles",
    "leave_home",
    "stay_out_of_room",
    "flames_off",
    "fan_on",
    "helper_outside",
    "mend_drip",
    "mend_leak",
    "buy_product",
    "hire_item",
    "test_lead",
    "certified_firm",
    "work_wet",
    "measure_surface_temperature",
    "heat_room",
    "leave_out_product",
    "rinse_and_wait",
    "spread_rags",
    "take_air_from_home",
    "abrade_and_wipe",
    "children_bathe_elsewhere",
    "seal_waste",
    "identify_material",
    "give_fan_rating",
]
QUESTIONS = [
    "material",
    "earlier_coat",
    "year",
    "paid",
    "outside_helper",
    "room_volume",
    "fan_rating",
    "appliances",
    "people",
    "can_leave",
    "lead",
    "indoor_climate",
    "used_lately",
    "drip",
    "leak",
    "floor_flex",
    "crack",
    "rust",
    "clean_shaven",
    "other_bath",
    "can_be_off",
    "wanted_back",
    "outside_wall",
    "sizes",
    "liner",
    "limescale",
]
CARE = [
    "soft_cloth_mild_soap",
    "no_abrasives",
    "no_bleach_acid_solvent",
    "no_suction_mat",
    "no_standing_bottles",
    "mend_drips",
    "report_chips",
    "no_hot_water_before",
    "wipe_dry_first_weeks",
]
WASTE = [
    "solvent_rags_outdoors",
    "hardened_leftovers",
    "liquid_leftovers_collection",
    "sanding_slurry_bagged",
    "empty_cans",
    "masking_after_cure",
]
WAYS = get_args(Alternative.__annotations__["kind"])
CODED = {
    "steps": (ACTS, ("title", "do", "why")),
    "findings": (FINDINGS, ("title", "what", "relax")),
    "measures": (MEASURES, ("do", "short")),
    "questions": (QUESTIONS, ("ask", "why", "test", "worse")),
    "alternatives": (WAYS, ("name", "do")),
    "care": (CARE, ("do",)),
    "waste": (WASTE, ("do",)),
}
LISTED = {
    "mark": codes.Mark,
    "strength": codes.Strength,
    "consequence": codes.Consequence,
    "effect": codes.Effect,
    "status": codes.Status,
    "who": codes.Who,
    "basis": codes.Basis,
    "feasible": codes.Availability,
    "when": codes.When,
    "phase": codes.Phase,
    "attendance": codes.Attendance,
    "state": codes.RoomState,
    "state_room": codes.RoomState,
    "state_home": codes.RoomState,
    "clock": codes.ClockName,
    "clock_means": codes.ClockName,
    "answer": codes.Verdict,
    "measured": air.Measured,
}
VALUES = (
    codes.SubstrateCode, codes.FixtureKind, codes.MethodCode, codes.Role, codes.Chemistry, codes.EquipmentKind,
    codes.Part,
)  # fmt: skip
EACH = pytest.mark.parametrize("language", LANGUAGES)


def _all_texts(language: Language) -> list[tuple[str, str]]:
    return [
        (f"{section}: {name}", text) for section, texts in catalogue(language).items() for name, text in texts.items()
    ]


@EACH
@pytest.mark.parametrize("kind", CODED)
def test_every_code_has_words(language: Language, kind: str) -> None:
    known, (wanted, fields) = catalogue(language), CODED[kind]
    lacking = [
        f"{code}: {field}" for code in wanted for field in fields if not known.get(f"{kind}.{code}", {}).get(field)
    ]
    assert lacking == []


@EACH
@pytest.mark.parametrize("section", LISTED)
def test_every_word_of_a_closed_list_has_words(language: Language, section: str) -> None:
    texts = catalogue(language)[section]
    assert [code for code in get_args(LISTED[section]) if not texts.get(code)] == []


@EACH
def test_every_value_of_a_closed_list_has_words(language: Language) -> None:
    texts = catalogue(language)["value"]
    wanted = [code for codes_of in VALUES for code in get_args(codes_of)] + [*FACT_KINDS]
    assert [code for code in wanted if not texts.get(code)] == []


@EACH
def test_texts_are_whole_sentences_in_balanced_brackets(language: Language) -> None:
    for name, text in _all_texts(language):
        assert text.count("[") == text.count("]"), name
        assert text.count("{") == text.count("}"), name
        assert not re.search(r"\[[^\]]*\[|\{[^}]*\{", text), name
        filled, missing = fill(text, dict.fromkeys(holes(text), "X"))
        assert missing == ()
        assert not re.search(r"[{}\[\]]|  | [.,;:?!](?: |$)", filled), name


@EACH
@pytest.mark.parametrize("kind", CODED)
def test_a_text_reads_well_without_any_value(language: Language, kind: str) -> None:
    """What the record does not bring falls away; only labels may need a value."""
    for code in CODED[kind][0]:
        for field, text in catalogue(language)[f"{kind}.{code}"].items():
            filled, missing = fill(text, {})
            assert missing == () or kind == "findings", f"{code}: {field}"
            assert filled or not text, f"{code}: {field}"
            assert not filled.startswith((",", ".", ";")), f"{code}: {field}"


@EACH
def test_nothing_is_called_safe(language: Language) -> None:
    assert [name for name, text in _all_texts(language) if re.search(r"\bsafe(?:ly)?\b", text, re.IGNORECASE)] == []


def test_british_texts_have_no_american_words() -> None:
    wrong = re.compile(
        r"\b(?:tubs?|bathtub|faucets?|caulk|vapors?|mold|colors?|odors?|gray|GFCI|trash)\b", re.IGNORECASE
    )
    assert [name for name, text in _all_texts("en-GB") if wrong.search(text)] == []


def test_american_texts_have_no_british_words() -> None:
    wrong = re.compile(
        r"(?<!\{)\b(?:vapours?|moulds?|colours?|odours?|grey|litres?|fibre|neighbours?|sealant|RCD)\b", re.I
    )
    outside = [(name, re.sub(r"\{[^}|]*", "", text)) for name, text in _all_texts("en-US")]
    assert [name for name, text in outside if wrong.search(text)] == []


def test_code_in_plain_words_speaks_the_language() -> None:
    assert Words("en-GB").plain("cut_caulk-at_tub") == "cut sealant at bath"
    assert Words("en-US").plain("cut_caulk") == "cut caulk"


def test_words_that_are_lacking_are_shown_plainly_and_kept_in_mind() -> None:
    words = Words("en-US")
    assert words.get("label", "no_such_label") == "no such label"
    assert words.of_code("steps", "polish_up", "do", {}) == "Polish up"
    assert words.get("label", "step") == "step"
    assert words.word("odd-thing", "phase") == "odd thing"
    assert len(words.missed) == 4


def test_a_value_is_never_read_again_as_a_text_with_holes() -> None:
    assert fill("A {a} and {b|none}[ and {c}].", {"a": "{b}[x]"}) == ("A {b}[x] and none.", ())
    assert fill("Needs {a}.", {}) == ("Needs.", ("a",))


def test_severity_and_strength_are_words_without_letters_and_digits_codes() -> None:
    for section in ("consequence", "strength", "effect", "status"):
        for text in catalogue("en-US")[section].values():
            assert re.fullmatch(r"[a-z ']+", text)


SOURCE = Path(bathwright.__file__).parent
LITERALS = {
    "findings": ("rules", r'^CODE = "([a-z-]+)"'),
    "measures": ("rules", r'\bact="([a-z_]+)"'),
    "questions": ("rules", r'\bquestion\(\s*"([a-z_]+)"'),
    "care": ("planning", r'CareRule\(code="([a-z_]+)"'),
    "waste": ("planning", r'WasteRule\(code="([a-z_]+)"'),
    "alternatives": ("planning", r'Alternative\(kind="([a-z_]+)"'),
}


@pytest.mark.parametrize("kind", LITERALS)
def test_every_code_that_stands_in_the_program_has_words(kind: str) -> None:
    room, pattern = LITERALS[kind]
    texts = [path.read_text(encoding="utf-8") for path in sorted((SOURCE / room).rglob("*.py"))]
    found = {code for text in texts for code in re.findall(pattern, text, re.MULTILINE)}
    assert found
    assert [code for code in sorted(found) if f"{kind}.{code}" not in catalogue("en-US")] == []


def test_everything_to_look_for_has_words() -> None:
    text = (SOURCE / "procedure" / "steps.py").read_text(encoding="utf-8")
    found = re.findall(r'Look\(what="(\w+)"', text) + re.findall(r'if_not="(\w+)"', text)
    assert found
    assert [code for code in found if code not in catalogue("en-US")["look"]] == []
