"""Two parts mixed by volume or weight, what evaporates, how much is needed, published spreading rates."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from made_sheets import amount, part, ratio, sheet, span

from bathwright.knowledge import load
from bathwright.procedure.mixture import mixture, volatiles
from bathwright.procedure.quantities import Film, coat_film, coat_volume, coating_material, other_material

BOOK = load()
XYLENES, TOLUENE, ETHER, WATER = "1330-20-7", "108-88-3", "107-98-2", "7732-18-5"
GALLON, FOOT, MIL, LITRE = 231 * 0.0254**3, 0.3048, 25.4e-6, 1e-3
A = part("A", 1200.0, 0.70, 0.55, {XYLENES: (0.20, 0.30)})
B = part("B", 900.0, 0.50, 0.40, {XYLENES: (0.10, 0.20), TOLUENE: (0.30, 0.40)})


def test_parts_by_volume() -> None:
    mixed = mixture(sheet(ratio("volume", 4, 1), parts=(A, B)))
    assert [(p.name, p.value) for p in mixed.parts] == [("A", 0.8), ("B", 0.2)]
    assert mixed.density_kg_m3 == pytest.approx(0.8 * 1200 + 0.2 * 900)
    assert mixed.solids_by_volume == pytest.approx(0.8 * 0.55 + 0.2 * 0.40)
    weight_a = 0.8 * 1200 / 1140
    assert mixed.solids_by_weight == pytest.approx(weight_a * 0.70 + (1 - weight_a) * 0.50)
    shares = {share.cas: share for share in mixed.shares}
    assert shares[XYLENES].low == pytest.approx(weight_a * 0.20 + (1 - weight_a) * 0.10)
    assert shares[XYLENES].high == pytest.approx(weight_a * 0.30 + (1 - weight_a) * 0.20)
    assert shares[TOLUENE].central == pytest.approx((1 - weight_a) * 0.35)


def test_a_ratio_by_weight_is_turned_into_volumes_by_density() -> None:
    mixed = mixture(sheet(ratio("weight", 4, 1), parts=(A, B)))
    volume_a, volume_b = 4 / 1200, 1 / 900
    assert [p.value for p in mixed.parts] == pytest.approx(
        [volume_a / (volume_a + volume_b), volume_b / (volume_a + volume_b)]
    )
    assert mixed.density_kg_m3 == pytest.approx(5 / (volume_a + volume_b))
    # by weight 4 : 1 the solids are 4/5 of one and 1/5 of the other
    assert mixed.solids_by_weight == pytest.approx(0.8 * 0.70 + 0.2 * 0.50)


@given(st.floats(0.5, 10), st.floats(0.5, 10))
def test_the_same_mix_told_by_weight_or_by_volume_is_the_same_mix(a: float, b: float) -> None:
    by_volume = mixture(sheet(ratio("volume", a, b), parts=(A, B)))
    by_weight = mixture(sheet(ratio("weight", a * 1200, b * 900), parts=(A, B)))
    assert by_volume.density_kg_m3 == pytest.approx(by_weight.density_kg_m3)
    assert by_volume.solids_by_weight == pytest.approx(by_weight.solids_by_weight)
    assert [s.central for s in by_volume.shares] == pytest.approx([s.central for s in by_weight.shares])


def test_what_one_part_does_not_say_the_mixture_does_not_know() -> None:
    mixed = mixture(sheet(ratio("volume", 1, 1), parts=(A, part("B", None, None, 0.4))))
    assert (mixed.density_kg_m3, mixed.solids_by_weight) == (None, None)
    assert mixed.solids_by_volume == pytest.approx(0.475)
    assert not mixed.composition_told
    nothing = mixture(sheet())
    assert (nothing.parts, nothing.density_kg_m3, nothing.composition_told) == ((), None, False)


def test_two_parts_of_one_blend_have_its_voc() -> None:
    """Four parts of 380 g/L and one of 150 g/L, no exempt solvent: 334.0 g/L (own computation, own)."""
    parts = (part("A", 1000, 0.62, 0.5, {XYLENES: (0.38, 0.38)}), part("B", 1000, 0.85, 0.5, {XYLENES: (0.15, 0.15)}))
    made = sheet(ratio("volume", 4, 1), parts=parts)
    assert volatiles(made, mixture(made), BOOK).by_composition_kg == pytest.approx(334.0)


@pytest.mark.parametrize(
    ("voc", "solids", "shares", "largest"),
    [(420.0, 0.65, (0.20, 0.30), "voc"), (200.0, 0.55, (0.20, 0.30), "solids"), (200.0, 0.90, (0.40, 0.50), "list")],
)
def test_the_largest_of_three_ways_counts(voc: float, solids: float, shares: tuple[float, float], largest: str) -> None:
    made = sheet(amount("voc", voc), parts=(part("A", 1000.0, solids, 0.5, {XYLENES: shares}),))
    got = volatiles(made, mixture(made), BOOK)
    ways = {"voc": got.by_voc_kg, "solids": got.by_solids_kg, "list": got.by_composition_kg}
    assert ways == {"voc": voc, "solids": pytest.approx((1 - solids) * 1000), "list": pytest.approx(sum(shares) * 500)}
    assert got.used_kg == pytest.approx(max(value for value in ways.values() if value))
    assert max(ways, key=lambda way: ways[way] or 0.0) == largest
    assert sum(share.central for share in got.organic) * 1000 == pytest.approx(got.used_kg)


def test_water_is_left_out_of_what_evaporates_as_solvent() -> None:
    watery = part("A", 1250.0, 0.50, 0.4, {WATER: (0.40, 0.46), ETHER: (0.04, 0.06)})
    made = sheet(parts=(watery,))
    got = volatiles(made, mixture(made), BOOK)
    assert got.water_kg == pytest.approx(0.43 * 1250)
    assert got.by_solids_kg == pytest.approx((0.50 - 0.43) * 1250)
    assert got.used_kg == pytest.approx(0.07 * 1250)
    assert [share.cas for share in got.organic] == [ETHER]
    assert got.organic[0].central == pytest.approx(0.07)
    assert got.organic[0].high >= got.organic[0].central >= got.organic[0].low


def test_a_substance_that_nobody_knows_is_named_and_solids_never_evaporate() -> None:
    made = sheet(
        parts=(part("A", 1000.0, None, None, {"999-99-4": (0.1, 0.2), "13463-67-7": (0.2, 0.3), ETHER: (0.1, 0.1)}),)
    )
    got = volatiles(made, mixture(made), BOOK)
    assert got.unknown == ("999-99-4",)
    assert [share.cas for share in got.organic] == [ETHER]


@given(st.floats(0, 700), st.floats(0.2, 1.0), st.floats(0, 0.4), st.floats(0, 0.2), st.floats(0, 0.3))
def test_the_used_mass_is_never_less_than_any_way(
    voc: float, solids: float, low: float, more: float, water: float
) -> None:
    inside = {XYLENES: (low, low + more), WATER: (water, water)}
    made = sheet(amount("voc", voc), parts=(part("A", 1100.0, solids, 0.5, inside),))
    got = volatiles(made, mixture(made), BOOK)
    for way in (got.by_voc_kg, got.by_solids_kg, got.by_composition_kg):
        assert way is not None
        assert got.used_kg >= way - 1e-9
    assert all(share.low <= share.central <= share.high for share in got.organic)


def film(solids: float, dry_m: float, coats: int = 1) -> Film:
    return Film(
        coats=coats, dry_low_m=dry_m, dry_central_m=dry_m, dry_high_m=dry_m, wet_central_m=dry_m / solids,
        solids_by_volume=solids, told=True,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("solids", "dry_m", "rate_m2_m3"),
    [
        # spreading-rate-note: 65 %, 5.0 mil: 208.52 ft2/gal, and 65 %, 125 µm: 5.2 m2/L [verified]
        (0.65, 5.0 * MIL, 208.52 * FOOT**2 / GALLON),
        (0.65, 125e-6, 5.2 / LITRE),
        # ufc-3-190-06, 2.1.5: 100 %, 4 mil: 400 ft2/gal, 1604 rounded to 1600 [verified]
        (1.00, 4.0 * MIL, 400 * FOOT**2 / GALLON),
        # paintpro-5-4: 46 % at 2.5 mil: 294 ft2/gal, cut off [verified]
        (0.46, 2.5 * MIL, 294 * FOOT**2 / GALLON),
    ],
)
def test_a_coat_needs_what_the_published_spreading_rate_says(solids: float, dry_m: float, rate_m2_m3: float) -> None:
    needed = coat_volume(10.0, film(solids, dry_m), "roller", BOOK)
    loss = BOOK.band("coating_defaults.loss.roller")
    for volume, lost in ((needed.low, loss.low), (needed.central, loss.central), (needed.high, loss.high)):
        assert volume == pytest.approx(10.0 / rate_m2_m3 / (1 - lost), rel=0.005)


def test_spraying_loses_more_than_rolling_and_rolling_more_than_brushing() -> None:
    brush, roller, spray = (coat_volume(3.0, film(0.5, 5e-5), m, BOOK) for m in ("brush", "roller", "spray"))  # type: ignore[arg-type]
    assert brush.central < roller.central < spray.central


def test_the_film_is_the_sheets_dry_one_else_wet_times_solids_else_a_default() -> None:
    parts = (part("A", 1200.0, 0.6, 0.4),)
    dry = sheet(
        span("dry_film_per_coat", 40e-6, 60e-6), span("wet_film_per_coat", 1e-3, 2e-3), amount("coats", 2), parts=parts
    )
    wet = sheet(span("wet_film_per_coat", 100e-6, 150e-6), parts=parts)
    silent = sheet(parts=(part("A"),))
    made = [coat_film(one, mixture(one), BOOK) for one in (dry, wet, silent)]
    assert (made[0].dry_low_m, made[0].dry_high_m, made[0].coats, made[0].told) == (40e-6, 60e-6, 2, True)
    assert made[0].wet_central_m == pytest.approx(50e-6 / 0.4)
    assert (made[1].dry_low_m, made[1].dry_high_m, made[1].coats) == pytest.approx((40e-6, 60e-6, 1))
    assert made[1].wet_central_m == pytest.approx(125e-6)
    assert not made[2].told
    assert made[2].dry_low_m == BOOK.band("coating_defaults.film.dry_per_coat").low


@given(st.floats(0.3, 8.0), st.floats(1e-5, 1e-4), st.integers(1, 4), st.floats(2e-4, 4e-3))
def test_packs_hold_what_is_needed_and_no_whole_pack_too_many(area: float, dry: float, coats: int, pack: float) -> None:
    coat = film(0.5, dry, coats)
    one_coat = coat_volume(area, coat, "roller", BOOK)
    made = coating_material(sheet(amount("pack_volume", pack)), coat, one_coat, area)
    assert made.packs is not None
    assert made.left_over_m3 is not None
    assert made.needed_m3.central == pytest.approx(coats * one_coat.central)
    assert made.packs * pack >= made.needed_m3.central * (1 - 1e-6)
    assert (made.packs - 1) * pack < made.needed_m3.central
    assert made.left_over_m3 == pytest.approx(made.packs * pack - made.needed_m3.central)
    assert made.dry_film_m == pytest.approx(coats * dry)


def test_a_reach_of_the_sheet_may_ask_for_more_packs_and_never_for_fewer() -> None:
    coat = film(0.5, 5e-5, 2)
    one_coat = coat_volume(2.6, coat, "roller", BOOK)
    packs = [
        coating_material(sheet(amount("pack_volume", 1e-3), *reach), coat, one_coat, 2.6).packs
        for reach in ((), (amount("pack_reach", 8.0),), (amount("pack_reach", 5.0),), (amount("pack_reach", 2.0),))
    ]
    assert packs == [1, 1, 2, 3]


def test_a_product_beside_follows_its_rate_else_a_default_and_is_bought_whole() -> None:
    rated = other_material(
        sheet(amount("use_rate", 5e-5), amount("pack_volume", 5e-4), role="filler"), 3.0, "fill", BOOK
    )
    assert (rated.needed_m3.central, rated.packs, rated.section) == (pytest.approx(1.5e-4), 1, "repair")
    silent = other_material(sheet(role="sealant"), 3.0, "seal", BOOK)
    usual = BOOK.band("coating_defaults.use.sealant")
    assert (silent.needed_m3.low, silent.needed_m3.high) == pytest.approx((3 * usual.low, 3 * usual.high))
    assert (silent.packs, silent.section) == (None, "sealing")
