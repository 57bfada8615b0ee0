"""Views on a sheet's bag of facts: the strictest row, contradictions, scope, windows, words of closed lists."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bathwright.domain import views
from bathwright.domain.sheet import (
    FACT_KINDS,
    Amount,
    Choice,
    Conditions,
    Fact,
    FactValue,
    Instruction,
    Paper,
    Range,
    Ratio,
    Scope,
    Sheet,
)

HOUR = 3600.0


def sheet(*facts: Fact) -> Sheet:
    return Sheet(
        format="bathwright-sheet/1",
        id="s",
        product="Invented",
        family="epoxy",
        role="coating",
        papers=(Paper(id="data", kind="data", revision="1"),),
        facts=facts,
    )


def fact(name: str, kind: str, value: FactValue, at_k: float | None = None, scope: Scope | None = None) -> Fact:
    return Fact(id=name, kind=kind, value=value, at=Conditions(temperature=at_k), scope=scope or Scope())


def hours(name: str, kind: str, value: float, at_k: float | None = None, scope: Scope | None = None) -> Fact:
    return fact(name, kind, Amount(value=value * HOUR, kind="time"), at_k, scope)


BATHS = sheet(hours("warm", "full_bath", 72, 296.0), hours("cold", "full_bath", 120, 288.0))
POTS = sheet(hours("warm", "pot_life", 1.5, 296.0), hours("cold", "pot_life", 3, 288.0))


@pytest.mark.parametrize(
    ("at_k", "row"),
    [
        (None, "cold"),
        (280.0, "cold"),
        (288.0, "cold"),
        (292.0, "cold"),
        (295.9, "cold"),
        (296.0, "warm"),
        (310.0, "warm"),
    ],
)
def test_a_least_wait_takes_the_row_at_or_below(at_k: float | None, row: str) -> None:
    found = views.strictest(BATHS, "full_bath", temperature_k=at_k)
    assert found is not None
    assert found.fact.id == row
    assert [other.id for other in found.others] == [name for name in ("warm", "cold") if name != row]
    assert found.contradictions == ()


@pytest.mark.parametrize(
    ("at_k", "row"),
    [(None, "warm"), (280.0, "cold"), (288.0, "cold"), (288.1, "warm"), (296.0, "warm"), (310.0, "warm")],
)
def test_a_most_wait_takes_the_row_at_or_above(at_k: float | None, row: str) -> None:
    found = views.strictest(POTS, "pot_life", temperature_k=at_k)
    assert found is not None
    assert found.fact.id == row


def test_facts_of_one_row_that_differ_contradict_and_the_strict_one_wins() -> None:
    least = sheet(
        hours("paper", "full_bath", 72, 296.0),
        hours("label", "full_bath", 96, 296.0),
        hours("x", "full_bath", 72, 296.0),
    )
    found = views.strictest(least, "full_bath", temperature_k=296.0)
    assert found is not None
    assert (found.fact.id, found.value) == ("label", 96 * HOUR)
    assert [other.id for other in found.contradictions] == ["paper", "x"]
    most = sheet(hours("paper", "pot_life", 4), hours("label", "pot_life", 3))
    found = views.strictest(most, "pot_life")
    assert found is not None
    assert (found.fact.id, [other.id for other in found.contradictions]) == ("label", ["paper"])


def test_facts_that_agree_do_not_contradict() -> None:
    found = views.strictest(sheet(hours("a", "hard", 168), hours("b", "hard", 168)), "hard")
    assert found is not None
    assert found.contradictions == ()
    assert [other.id for other in found.others] == ["b"]


def test_a_silent_sheet_gives_none() -> None:
    assert views.strictest(BATHS, "pot_life") is None
    assert views.ratio(BATHS) is None
    assert views.instruction(BATHS, "abrasive") is None
    assert views.bounds(BATHS, "humidity") == (None, None, ())
    assert views.choice(BATHS, "surface", "acrylic") is None
    assert views.allowed(BATHS, "method") == ()


def test_scope_of_method_substrate_and_coat() -> None:
    scoped = sheet(
        hours("any", "touch", 2),
        hours("roller", "touch", 4, scope=Scope(method="roller")),
        hours("spray", "touch", 9, scope=Scope(method="spray")),
        hours("acrylic", "touch", 6, scope=Scope(substrate="acrylic")),
        hours("second", "touch", 8, scope=Scope(coat=2)),
    )

    def winner(**what: object) -> str:
        found = views.strictest(scoped, "touch", **what)  # type: ignore[arg-type]
        assert found is not None
        return found.fact.id

    assert winner(method="roller", substrate="enamelled_steel", coat=1) == "roller"
    assert winner(method="spray", substrate="enamelled_steel", coat=1) == "spray"
    assert winner(method="brush", substrate="enamelled_steel", coat=1) == "any"
    assert winner(method="roller", substrate="acrylic", coat=1) == "acrylic"
    assert winner(method="roller", substrate="acrylic", coat=2) == "second"
    assert winner() == "second"  # what is not known is taken at its strictest; another method's fact never counts


def test_a_range_gives_its_low_end_or_its_high_end_when_low_is_open() -> None:
    recoat = sheet(fact("r", "recoat", Range(low=1.0, high=9.0, kind="time")))
    found = views.strictest(recoat, "recoat")
    assert found is not None
    assert found.value == 1.0
    only_high = sheet(fact("h", "humidity", Range(low=None, high=0.8, kind="humidity")))
    found = views.strictest(only_high, "humidity")
    assert found is not None
    assert found.value == 0.8
    with pytest.raises(ValueError, match="holds no number"):
        views.strict_end(fact("i", "abrasive", Instruction(act="wet_sand")))


def test_the_table_sorts_and_keeps_the_strict_value_of_each_row() -> None:
    twice = sheet(
        hours("a", "full_bath", 72, 296.0),
        hours("b", "full_bath", 80, 296.0),
        hours("c", "full_bath", 120, 288.0),
        hours("d", "full_bath", 500),
    )
    assert views.table(twice, "full_bath") == ((288.0, 120 * HOUR), (296.0, 80 * HOUR))
    assert views.table(POTS, "pot_life") == ((288.0, 3 * HOUR), (296.0, 1.5 * HOUR))


def test_windows_are_cut_to_the_tightest() -> None:
    two = sheet(
        fact("data", "air_temperature", Range(low=283.0, high=303.0, kind="temperature")),
        fact("label", "air_temperature", Range(low=285.0, high=None, kind="temperature")),
        fact("guide", "air_temperature", Range(low=None, high=300.0, kind="temperature")),
    )
    assert views.bounds(two, "air_temperature") == (285.0, 300.0, ("data", "label", "guide"))


def test_a_no_beats_a_yes() -> None:
    words = sheet(
        fact("a", "surface", Choice(code="acrylic")),
        fact("b", "surface", Choice(code="acrylic", allowed=False)),
        fact("c", "surface", Choice(code="ceramic_tile")),
    )
    assert views.choice(words, "surface", "acrylic") is False
    assert views.choice(words, "surface", "ceramic_tile") is True
    assert views.allowed(words, "surface") == ("ceramic_tile",)


def test_the_ratio_by_volume_is_preferred() -> None:
    both = sheet(
        fact("w", "mix_ratio", Ratio(by="weight", numbers=(5.0, 1.0))),
        fact("v", "mix_ratio", Ratio(by="volume", numbers=(4.0, 1.0))),
    )
    found = views.ratio(both)
    assert found is not None
    assert found.by == "volume"
    assert views.ratio(sheet(both.facts[0])) == both.facts[0].value


rows = st.lists(st.tuples(st.sampled_from([None, 283.0, 288.0, 293.0]), st.floats(1.0, 1e6)), min_size=1, max_size=6)


@given(rows=rows, at_k=st.sampled_from([None, 278.0, 285.0, 293.0, 300.0]), kind=st.sampled_from(["hard", "pot_life"]))
def test_no_fact_of_the_same_row_is_stricter_than_the_one_chosen(
    rows: list[tuple[float | None, float]], at_k: float | None, kind: str
) -> None:
    made = sheet(*(fact(f"f{i}", kind, Amount(value=v, kind="time"), row) for i, (row, v) in enumerate(rows)))
    found = views.strictest(made, kind, temperature_k=at_k)
    assert found is not None
    same = [f for f in made.facts if f.at.temperature == found.fact.at.temperature]
    ends = [views.strict_end(f) for f in same]
    assert found.value == (min(ends) if FACT_KINDS[kind][2] == "most" else max(ends))
    assert {found.fact.id} | {f.id for f in found.others} == {f.id for f in made.facts}
    assert set(found.contradictions) <= set(found.others)


def test_a_fact_without_a_temperature_holds_at_any() -> None:
    told = sheet(hours("row", "full_bath", 72, 294.0), hours("any", "full_bath", 168))
    found = views.strictest(told, "full_bath", temperature_k=294.0)
    assert found is not None
    assert found.fact.id == "any"
