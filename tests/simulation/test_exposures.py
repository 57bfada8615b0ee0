"""Highest means, additive sums, which limit counts for whom, and when people may be back."""

import dataclasses
from datetime import UTC, datetime
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from air_cases import HOUR, TOLUENE, XYLENES, release, run, setup
from hypothesis import given
from hypothesis import strategies as st

from bathwright.domain.air import Exposure
from bathwright.domain.values import Band
from bathwright.knowledge import load
from bathwright.physics import vapour
from bathwright.simulation import exposures
from bathwright.simulation.air import CASES, AirRun
from bathwright.simulation.exposures import Presence, Readers

BOOK = load()
BEGIN = datetime(2026, 12, 8, 20, tzinfo=UTC)
T, X = "108-88-3", "1330-20-7"
HEAD = Band(low=0.2, central=0.5, high=0.8, kind="share", source="test", mark="own")


def course(edges: list[float], basin: Any, room: Any, home: Any, *cas: str) -> AirRun:
    """A run with given step means for the first case, 10 % more in each next one; the ends are the means."""
    zones = np.array([basin, room, home], dtype=float)
    per_case = np.stack([zones * (1 + 0.1 * n) for n in range(len(CASES))])
    means = np.repeat(per_case[:, None], len(cas), axis=1)
    made: Any = SimpleNamespace(edges_s=np.array(edges), means=means, ends=means.copy(), cas=tuple(cas))
    return made


def test_the_highest_mean_its_band_and_when_its_window_ends() -> None:
    got = course([0, 600, 1200, 1800, 7200], [0] * 4, [1.0, 4.0, 2.0, 0.0], [0] * 4, T)
    band, at = exposures.highest(got, got.means[:, 0, 1, :], "mean_15min")
    assert (band.low, band.central, band.high) == pytest.approx((10 / 3, 1.1 * 10 / 3, 1.3 * 10 / 3))
    assert at == pytest.approx(600 + 900)
    peak, when = exposures.highest(got, got.means[:, 0, 1, :], "peak")
    assert (peak.low, peak.high, when) == (4.0, pytest.approx(5.2), 600.0)
    hour, ends = exposures.highest(got, got.means[:, 0, 1, :], "mean_1h")
    assert hour.low == pytest.approx((600 * 7) / 3600)
    assert ends == 3600.0


@pytest.mark.parametrize(("measure", "window_h"), [("mean_8h", 8.0), ("mean_24h", 24.0)])
def test_a_long_mean_of_a_short_course_is_filled_with_clean_air(measure: str, window_h: float) -> None:
    got = course([0, 3600], [0], [2.4], [0], T)
    assert exposures.highest(got, got.means[:, 0, 1, :], measure)[0].low == pytest.approx(2.4 / window_h)


def test_the_painter_breathes_basin_and_room_while_there_and_the_home_else() -> None:
    got = course([0, 60, 120, 180, 240], [100] * 4, [10] * 4, [1] * 4, T)
    stays = (Presence(starts_s=60.0, ends_s=180.0, head=HEAD, step="coat-1"),)
    air = exposures.painter_means(got, stays)[:, 0, :]
    light, central, heavy, lingering = (air[n] / (1 + 0.1 * n) for n in range(4))
    assert light == pytest.approx([1, 0.2 * 100 + 0.8 * 10, 0.2 * 100 + 0.8 * 10, 1])
    assert central == pytest.approx([1, 55, 55, 1])
    assert heavy == pytest.approx([1, 82, 82, 1])
    assert lingering == pytest.approx([1, 82, 82, 1])


def test_the_strictest_published_value_is_advice_and_the_law_stands_beside_it_where_asked() -> None:
    plain = exposures.limits_for(T, ("mean_8h",), "worker", None, BOOK)["mean_8h"]
    lawful = exposures.limits_for(T, ("mean_8h",), "worker", "US", BOOK)["mean_8h"]
    every = [e for e in BOOK.limits if (e.cas, e.measure, e.for_whom) == (T, "mean_8h", "worker")]
    lowest = min(vapour.kg_m3_from_ppm(e.value.value * 1e6, 0.09214) for e in every if e.value.kind == "vapour_ppm")
    assert len(every) > 2
    assert [limit.kind for limit in plain] == ["advice"]
    assert plain[0].value_kg_m3 == pytest.approx(lowest, rel=1e-3)
    assert [limit.kind for limit in lawful] == ["advice", "law"]
    assert lawful[1].id == "osha-toluene-8h"
    assert lawful[1].law_in == ("US",)
    # cfr-1910-1000: 200 ppm of toluene [verified], at 25 °C
    assert lawful[1].value_kg_m3 == pytest.approx(200e-6 * 101325 * 0.09214 / (8.314463 * 298.15), rel=1e-3)


def test_there_is_no_law_of_a_place_without_one_and_no_limit_of_an_unlisted_measure() -> None:
    nowhere = exposures.limits_for(T, ("mean_8h",), "worker", "none", BOOK)["mean_8h"]
    assert [limit.kind for limit in nowhere] == ["advice"]
    assert exposures.limits_for(T, ("mean_24h",), "worker", "US", BOOK) == {}


def test_everybody_has_the_public_value_and_the_day_value_serves_for_the_hour() -> None:
    both = exposures.public_limit(X, BOOK)
    assert both is not None
    assert (both["mean_1h"].id, both["mean_24h"].id) == ("minnesota-xylenes-1h", "minnesota-xylenes-24h")
    # Minnesota 2023, acute and sub-chronic: 22 000 and 400 µg/m3 [verified]
    assert (both["mean_1h"].value_kg_m3, both["mean_24h"].value_kg_m3) == pytest.approx((22e-6, 0.4e-6))
    day = exposures.public_limit("108-10-1", BOOK)
    assert day is not None
    assert day["mean_1h"].id == day["mean_24h"].id == "uba-mibk-24h"
    assert not any(limit.surrogate for limit in (*both.values(), *day.values()))


def test_a_made_up_public_value_is_a_hundredth_of_the_workplace_and_says_so() -> None:
    made = exposures.public_limit("123-86-4", BOOK)  # n-butyl acetate: no public value known
    worker = exposures.limits_for("123-86-4", ("mean_8h", "mean_15min"), "worker", None, BOOK)
    assert made is not None
    lowest = min(limit.value_kg_m3 for limits in worker.values() for limit in limits)
    for limit in made.values():
        assert limit.surrogate
        assert (limit.mark, limit.source, limit.kind, limit.for_whom) == (
            "judgement",
            "own-judgement",
            "advice",
            "public",
        )
        assert limit.value_kg_m3 == pytest.approx(lowest / 100)


def book_without(*cas: str) -> Any:
    left = {of: entries for of, entries in BOOK.limits_of.items() if of not in cas}
    return SimpleNamespace(substances=BOOK.substances, limits_of=left)


def test_a_substance_without_any_limit_lets_nobody_back() -> None:
    got = course([0, 3600, 7200], [0, 0], [0, 0], [0, 0], T, X)
    assert exposures.public_limit(T, book_without(T)) is None
    assert exposures.back_at_s(got, 1, book_without(T), 600.0) is None
    assert exposures.back_at_s(got, 1, BOOK, 600.0) == 600.0


def test_water_needs_no_limit() -> None:
    got = course([0, 3600], [0], [0.02], [0.02], "7732-18-5")
    assert exposures.back_at_s(got, 1, BOOK, 60.0) == 60.0


def test_back_is_the_last_time_the_shares_come_below_one() -> None:
    limit = 3e-6  # the stricter public value of toluene: 3 mg/m3 a day
    room = np.array([9, 0.5, 0.9, 2.0, 0.5, 0.2]) * limit
    got = course([0, 60, 120, 180, 3780, 10980, 18180], room * 0, room, room * 0, T)
    # the fourth step is the last that ends above the limit; the fifth begins above it and only ends below it
    assert exposures.back_at_s(got, 1, BOOK, 0.0) == 10980.0
    assert exposures.back_at_s(got, 1, BOOK, 20000.0) == 20000.0
    assert exposures.back_at_s(got, 2, BOOK, 0.0) == 0.0


def test_the_worst_case_decides_and_a_course_that_never_falls_has_no_return() -> None:
    limit = 3e-6
    got = course([0, 60, 120], [0, 0], [0.8 * limit] * 2, [0, 0], T)  # 1.04 in the worst of the cases
    assert exposures.back_at_s(got, 1, BOOK, 0.0) is None


def test_shares_are_added_over_the_substances() -> None:
    alone = course([0, 60, 120, 180], [0] * 3, [0.7 * 0.4e-6, 0, 0], [0] * 3, X)
    assert exposures.back_at_s(alone, 1, BOOK, 0.0) == 0.0
    both = course([0, 60, 120, 180], [0] * 3, [0.7 * 0.4e-6, 0, 0], [0] * 3, X, "141-78-6")
    # ethyl acetate, 0.7 µg/m3 of its 700: 0.28/0.4·1.3 + 0.28/0.7·1.3 = 1.43
    assert exposures.back_at_s(both, 1, BOOK, 0.0) == 120.0


@given(st.floats(0.005, 0.3), st.sampled_from(["room", "basin"]), st.integers(2, 30))
def test_at_the_time_of_return_and_ever_after_the_room_is_below_one(kg: float, inlet: Any, hours: int) -> None:
    made = setup(inlet=inlet)
    got = run(made, (TOLUENE,), ((release(TOLUENE, kg), 0.0, 1800.0),), hours=480.0, fan_off_s=hours * HOUR)
    back = exposures.back_at_s(got, 1, BOOK, 1800.0)
    assert back is not None
    assert back >= 1800.0
    shares = got.ends[:, 0, 1, :].max(axis=0) / 3e-6
    at_edges = np.concatenate(([0.0], shares))
    assert (at_edges[got.edges_s >= back] <= 1.0).all()
    before = got.edges_s[(got.edges_s < back) & (got.edges_s > 1800.0)]
    if before.size:
        assert at_edges[got.edges_s == before[-1]] > 1.0


def found(entries: tuple[Exposure, ...], who: str, cas: str, measure: str) -> Exposure:
    return next(
        e
        for e in entries
        if (e.who, e.substance, e.measure) == (who, cas, measure) and (not e.limit or e.limit.kind == "advice")
    )


def test_sums_are_the_sum_of_the_parts_and_nothing_is_masked() -> None:
    edges = [0.0, 1800.0, 86400.0]
    got = course(edges, [4e-4, 0], [4e-4, 0], [4e-6, 0], T, X)
    stays = (Presence(starts_s=0.0, ends_s=1800.0, head=HEAD, step="coat-1"),)
    readers = Readers(start=BEGIN, law_of="US", stays=stays)
    lower = {T: dataclasses.replace(TOLUENE, lower_limit=0.01), X: dataclasses.replace(XYLENES, lower_limit=0.009)}
    every = exposures.exposures(got, tuple(lower.values()), readers, BOOK, 0.1)
    for who, measure in (
        ("painter", "mean_15min"),
        ("painter", "mean_8h"),
        ("others", "mean_1h"),
        ("others", "mean_24h"),
    ):
        parts = [found(every, who, cas, measure) for cas in (T, X)]
        total = found(every, who, "mixture", measure)
        assert total.outside.central == pytest.approx(sum(part.share_central for part in parts))
        assert total.share_upper == pytest.approx(sum(part.share_upper for part in parts))
        assert (total.limit, total.limit_value) == (None, 1.0)
    assert all(e.inside == e.outside and e.protection == "none" for e in every)
    assert all(e.outside.low <= e.outside.central <= e.outside.high for e in every)
    assert all(e.share_upper == pytest.approx(e.outside.high / e.limit_value) for e in every)
    assert all(e.at is None or e.at >= BEGIN for e in every)
    laws = {e.limit.id for e in every if e.limit and e.limit.kind == "law"}
    assert laws == {"osha-toluene-8h", "osha-toluene-ceiling", "osha-xylenes-8h"}
    # Le Chatelier on air: the sum of concentration over lower limit
    room = next(e for e in every if e.measure == "explosive_share" and e.who == "room")
    by_hand = sum(
        4e-4 / (share * 101325 * molar / (8.314463 * 298.15)) for share, molar in ((0.01, 0.09214), (0.009, 0.10617))
    )
    assert room.outside.low == pytest.approx(by_hand, rel=1e-3)
    assert room.limit_value == 0.1


def test_the_painter_at_home_is_not_counted_as_in_the_bathroom() -> None:
    got = course([0.0, 1800.0, 86400.0], [1.0, 0], [1.0, 0], [1e-9, 0], T)
    away = exposures.exposures(got, (TOLUENE,), Readers(start=BEGIN, law_of=None, stays=()), BOOK, 0.1)
    assert found(away, "painter", T, "mean_15min").share_upper < 1e-3
