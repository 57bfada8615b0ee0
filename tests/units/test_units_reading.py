"""Reading typed quantities: what is accepted, what is refused and in which words; showing; rounding."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bathwright.units import KINDS, QuantityError, read_quantity, rounded, show, show_both

CALM = settings(derandomize=True, deadline=None, max_examples=60)

ACCEPTED = [
    ("60 in", "length", 1.524),
    ("60in", "length", 1.524),
    ("1,52 m", "length", 1.52),
    ("1 520 mm", "length", 1.52),
    ("5 ft 3 in", "length", 1.6002),
    ("5'3\"", "length", 1.6002),
    ("5′ 3 1/2″", "length", 1.6129),
    ("1 1/2 in", "length", 0.0381),
    ("1½ in", "length", 0.0381),
    ("½ in", "length", 0.0127),
    (".5 m", "length", 0.5),
    ("2.4 mil", "film", 60.96e-6),
    ("60 µm", "film", 60e-6),
    ("60 μm", "film", 60e-6),  # the Greek letter instead of the micro sign
    ("68 °F", "temperature", 293.15),
    ("68F", "temperature", 293.15),
    ("20º C", "temperature", 293.15),  # the ordinal sign instead of the degree sign
    ("−5 °C", "temperature", 268.15),
    ("-1 1/2 °C", "temperature", 271.65),
    ("-40 °F", "temperature", 233.15),
    ("5 °F", "temperature_step", 25 / 9),
    ("90 min", "time", 5400.0),
    ("1.5 hrs.", "time", 5400.0),
    ("7 days", "time", 604800.0),
    ("1 US qt", "liquid", 0.946352946e-3),
    ("32 US fl. oz.", "liquid", 0.946352946e-3),
    ("1 UK gal", "volume", 4.54609e-3),
    ("270 cfm", "flow", 0.1274258),
    ("6 ACH", "rate", 6 / 3600),
    ("0.4 1/h", "rate", 0.4 / 3600),
    ("55 %", "humidity", 0.55),
    ("50 % RH", "humidity", 0.5),
    ("3.5 lb/US gal", "concentration", 419.3925),
    ("206 g/L", "concentration", 206.0),
    ("2", "count", 2.0),
    ("1e-3 m", "length", 0.001),
]
REFUSED = [
    ("60", "length", "no unit"),
    ("", "length", "not a length"),
    ("60 lb", "length", "no unit for a length"),
    ("12 furlongs", "length", "no unit for a length"),
    ("1,520 mm", "length", "may be a decimal or a thousand"),
    ("1,520.5 mm", "length", "mixes comma and point"),
    ("1.2.3 m", "length", "no number"),
    ("1/0 in", "length", "divides by zero"),
    ("-3 m", "length", "negative"),
    ("1e999 m", "length", "finite"),
    ("nan m", "length", "not a length"),
    ("inf m", "length", "not a length"),
    ("sixty in", "length", "not a length"),
    ("60-90 F", "temperature", "not a temperature"),
    ("-300 °C", "temperature", "absolute zero"),
    ("-1 K", "temperature", "absolute zero"),
    ("3 m", "time", "min (minutes) or h (hours)"),
    ("1 gal", "liquid", "US gal or UK gal"),
    ("2 gallons", "volume", "US gal or UK gal"),
    ("1 quart", "liquid", "US qt"),
    ("3 oz", "liquid", "a volume, not a weight"),
    ("3.5 lb/gal", "concentration", "lb/US gal"),
    ("10 lb/gal", "density", "lb/US gal"),
    ("50 ppm", "concentration", "needs a substance"),
    ("70 °F", "humidity", "no unit"),
    ("5 mm", "area", "no unit"),
    ("9" * 70 + " m", "length", "too long"),
]


@pytest.mark.parametrize(("text", "kind", "si"), ACCEPTED)
def test_accepted(text: str, kind: str, si: float) -> None:
    assert read_quantity(text, kind) == pytest.approx(si, rel=1e-5)


@pytest.mark.parametrize(("text", "kind", "words"), REFUSED)
def test_refused_in_one_line_that_helps(text: str, kind: str, words: str) -> None:
    with pytest.raises(QuantityError) as caught:
        read_quantity(text, kind)
    assert words in str(caught.value)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    ("kind", "spelling", "advice"),
    [(kind.name, word, advice) for kind in KINDS.values() for word, advice in kind.refused.items()],
)
def test_an_ambiguous_spelling_is_never_accepted(kind: str, spelling: str, advice: str) -> None:
    assert spelling not in KINDS[kind].units
    with pytest.raises(QuantityError, match="ambiguous"):
        read_quantity(f"2 {spelling}", kind)


@pytest.mark.parametrize("kind", list(KINDS))
def test_the_examples_of_a_kind_can_be_read(kind: str) -> None:
    first, second = (read_quantity(text, kind) for text in KINDS[kind].examples)
    assert first > 0
    assert second > 0


def _value(kind: str) -> st.SearchStrategy[float]:
    low, high = {"temperature": (200.0, 500.0), "temperature_step": (-50.0, 50.0)}.get(kind, (0.0, 2000.0))
    scale = next(iter(KINDS[kind].units.values()))[0] if kind not in ("temperature", "temperature_step") else 1.0
    return st.floats(low * scale, high * scale)


@given(data=st.data(), kind=st.sampled_from(sorted(KINDS)), system=st.sampled_from(["si", "us"]))
@settings(derandomize=True, deadline=None, max_examples=300)
def test_what_is_shown_reads_back_within_its_rounding(data: st.DataObject, kind: str, system: str) -> None:
    value = data.draw(_value(kind))
    text = show(value, kind, system)
    unit = KINDS[kind].shown[system][0]
    factor, _ = KINDS[kind].units[unit.lower().replace(" ", "")]
    decimals = len(text.split()[0].partition(".")[2])
    half_a_step = 0.5 * 10.0**-decimals * factor
    assert abs(read_quantity(text, kind) - value) <= half_a_step * (1 + 1e-9) + 1e-9 * abs(value)


@given(
    kind=st.sampled_from(["length", "time", "liquid", "temperature", "share"]),
    one=st.floats(0, 1e6),
    other=st.floats(0, 1e6),
)
@CALM
def test_reading_and_rounding_keep_the_order(kind: str, one: float, other: float) -> None:
    low, high = sorted((one, other))
    unit = KINDS[kind].examples[0].split()[1]
    assert read_quantity(f"{low:f} {unit}", kind) <= read_quantity(f"{high:f} {unit}", kind)
    assert rounded(low, kind) <= rounded(high, kind)


@given(value=st.floats(-1e9, 1e9), kind=st.sampled_from(sorted(KINDS)))
@CALM
def test_rounding_is_stable_and_near(value: float, kind: str) -> None:
    once = rounded(value, kind)
    assert rounded(once, kind) == once
    assert abs(once - value) <= 0.5 * 10.0 ** -KINDS[kind].decimals + 1e-6
    assert math.copysign(1.0, rounded(-0.0, kind)) == 1.0


@given(text=st.text(max_size=70), kind=st.sampled_from(sorted(KINDS)))
@settings(derandomize=True, deadline=None, max_examples=400)
def test_any_text_is_read_or_refused(text: str, kind: str) -> None:
    try:
        assert math.isfinite(read_quantity(text, kind))
    except QuantityError as error:
        assert str(error)


PIECES = [
    "1",
    "1/2",
    " ",
    "\t",
    "½",
    "-",
    "−",
    "+",
    ",",
    ".",
    "e5",
    "ft",
    "in",
    "'",
    '"',
    "°C",
    "%",
    "US",
    "gal",
    "/",
    "0",
]


@given(
    pieces=st.lists(st.sampled_from(PIECES), max_size=9),
    kind=st.sampled_from(["length", "temperature", "liquid", "rate", "humidity"]),
)
@settings(derandomize=True, deadline=None, max_examples=400)
def test_any_order_of_known_pieces_is_read_or_refused(pieces: list[str], kind: str) -> None:
    try:
        assert math.isfinite(read_quantity("".join(pieces), kind))
    except QuantityError as error:
        assert str(error)


def test_showing_both_systems() -> None:
    assert show_both(294.261111, "temperature") == "21.1 °C (70 °F)"
    assert show_both(294.261111, "temperature", "us") == "70 °F (21.1 °C)"
    assert show_both(0.5, "humidity") == "50 %"
    assert show(0.0000005, "liquid") == "0.50 mL"
    assert show(-0.01, "temperature_step") == "0.0 K"
    assert show(1.524, "length", "us", 0) == "60 in"
