"""Weight on the deck and to carry, and the lifting guideline."""

from __future__ import annotations

from math import cos, pi, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.layers.weight import Load, lifting_limit, packed, weight, weights
from roofing_core.measures.faults import Refused

FT2 = 144.0  # in2


def refused(call, *args, **asked) -> list[str]:
    with pytest.raises(Refused) as caught:
        call(*args, **asked)
    return [fault.written() for fault in caught.value.faults]


# Published.

# Permit calculation to ASCE 7-05, dead load of a house roof, lb/ft2 to 0.1: two layers of
# shingles, felt, plywood, rafters 2 x 6 at 16 in, other; total 10.0, so the sum is exact to 0.05.
PERMIT = {"shingles": 5.0, "felt": 0.5, "plywood": 1.5, "rafters": 1.7, "other": 1.3}


def test_the_dead_load_of_a_permit_calculation():
    area = 350 * FT2
    loads = tuple(
        Load(name=name, on_deck=each * 350, to_carry=0, heaviest=0) for name, each in PERMIT.items()
    )
    assert weights(loads, slope_area=area, pitch=0).per_slope_area == pytest.approx(10.0, abs=0.05)


# Trade press: strips of three-tab weigh 200 lb a square, three bundles to the square; bundles
# weigh 60 to 80 lb. Printed to 10 lb, so the 2 lb/ft2 of ASCE 7's table is met to 0.05.
def test_three_bundles_a_square_weigh_two_pounds_a_foot():
    square = weight(
        100 * FT2, pitch=0, strips=80, strips_per_bundle=27, bundle_weight=200 / 3,
        underlayment_layers=0,
    )  # fmt: skip
    assert square.per_slope_area == pytest.approx(2.0, abs=0.05)
    assert square.heaviest == pytest.approx(66.7, abs=0.05)
    assert square.to_carry == pytest.approx(200)


# NIOSH 94-110: load constant 51 lb, 23 kg in the metric form, which is rounded: 51 lb is 23.13 kg.
def test_the_load_constant():
    assert lifting_limit() == 51
    assert lifting_limit() * 0.45359237 == pytest.approx(23, abs=0.5)


# NIOSH 94-110 as restated: the multiplier for height is 0.78 at the floor and 0.7 at 70 in, printed
# to 0.01 and 0.1; it is 1 at 30 in.
@pytest.mark.parametrize(
    ("height", "multiplier", "within"), [(0, 0.78, 0.006), (30, 1, 1e-12), (70, 0.7, 0.05)]
)
def test_multipliers_for_height(height, multiplier, within):
    assert lifting_limit(height=height) / lifting_limit() == pytest.approx(multiplier, abs=within)


# By hand.


def test_a_bundle_is_over_the_guideline_in_the_best_of_lifts():
    # 70 / 51 = 1.37
    assert weight(100 * FT2, pitch=0, strips=80).lifting_index == pytest.approx(1.37, abs=0.005)


def test_every_multiplier_by_hand():
    # 51 x 10/20 x (1 - 0.0075 x 20) x (0.82 + 1.8/40) x (1 - 0.0032 x 45)
    # = 51 x 0.5 x 0.85 x 0.865 x 0.856 = 16.049
    limit = lifting_limit(20, height=50, travel=40, turn=radians(45))
    assert limit == pytest.approx(16.049, abs=0.0005)


def test_within_10_in_reach_and_travel_count_as_10():
    assert lifting_limit(0, travel=0) == lifting_limit(10, travel=10) == 51
    assert lifting_limit(10.5) < 51
    assert lifting_limit(travel=10.5) < 51


def test_a_shed_by_hand():
    # 105 strips of 21 to a bundle of 70 lb: five bundles, 350 lb. Two layers of 0.115 lb/ft2 on
    # 130.6667 ft2: 30.0533 lb, one roll of 46 lb up. Metal 24 lb, all else 30 lb in three packs.
    # 434.0533 lb on 130.6667 ft2: 3.32 x 130.6667 is 433.8133, and the 0.24 left over 130.6667
    # 0.00184: 3.32184 lb/ft2. 3:12 makes that 1.0307764 times as much on the plan: 3.42407.
    up = weight(
        168 * 112, pitch=3 / 12, strips=105, underlayment_layers=2, rolls=1, metal_weight=24,
        other_weight=30, other_packs=3,
    )  # fmt: skip
    assert up.on_deck == pytest.approx(434.0533, abs=0.00005)
    assert up.per_slope_area == pytest.approx(3.32184, abs=0.000005)
    assert up.per_plan_area == pytest.approx(3.42407, abs=0.000005)
    assert up.to_carry == pytest.approx(450)
    assert (up.heaviest, up.heaviest_name) == (70, "shingles")
    assert [load.name for load in up.loads] == ["shingles", "underlayment", "metal", "other"]
    assert [load.heaviest for load in up.loads] == [70, 46, 24, 10]


def test_the_heaviest_carry_may_be_any_kind():
    assert weight(144, pitch=0, strips=1, rolls=1, roll_weight=90).heaviest_name == "underlayment"
    assert weight(144, pitch=0, strips=1, metal_weight=71).heaviest_name == "metal"
    assert weight(144, pitch=0, strips=0, rolls=0, roll_weight=90, other_weight=1).heaviest == 1


def test_an_opened_bundle_is_carried_whole():
    load = packed("shingles", 100 / 21, pack_weight=70)
    assert load.on_deck == pytest.approx(333.33, abs=0.005)
    assert (load.to_carry, load.heaviest) == (350, 70)
    assert packed("shingles", sum([0.1] * 30), pack_weight=70).to_carry == 210  # float dust
    assert packed("shingles", 0, pack_weight=70).heaviest == 0


# Laws.

pounds = st.floats(0, 1e4)
kinds = st.builds(Load, name=st.text(max_size=8), on_deck=pounds, to_carry=pounds, heaviest=pounds)
several = st.lists(kinds, min_size=1, max_size=6).map(tuple)
areas = st.floats(FT2, 1e4 * FT2)
degrees = st.floats(0, 80)


@given(several, areas, degrees)
def test_the_weight_on_the_plan_is_that_on_the_slope_over_the_cosine(loads, area, angle):
    pitch = (1 - cos(radians(angle)) ** 2) ** 0.5 / cos(radians(angle))
    summed = weights(loads, slope_area=area, pitch=pitch)
    assert summed.per_slope_area * area / FT2 == pytest.approx(summed.on_deck)
    assert summed.per_plan_area * area * cos(radians(angle)) / FT2 == pytest.approx(summed.on_deck)


@given(several, several, areas)
def test_two_roofs_together_weigh_what_each_weighs(some, others, area):
    first, second = (weights(loads, slope_area=area, pitch=0) for loads in (some, others))
    both = weights(some + others, slope_area=area, pitch=0)
    assert both.on_deck == pytest.approx(first.on_deck + second.on_deck)
    assert both.to_carry == pytest.approx(first.to_carry + second.to_carry)
    assert both.heaviest == max(first.heaviest, second.heaviest)
    assert (both.heaviest_name, both.heaviest) in [(x.name, x.heaviest) for x in some + others]
    assert both.loads == some + others


@given(areas, st.integers(0, 5000), st.integers(1, 40), st.floats(1, 100), st.integers(0, 3))
def test_what_is_carried_covers_what_is_laid(area, strips, to_a_bundle, bundle, layers):
    up = weight(
        area, pitch=0.5, strips=strips, strips_per_bundle=to_a_bundle, bundle_weight=bundle,
        underlayment_layers=layers, underlayment_weight=0.2,
    )  # fmt: skip
    shingles, felt = up.loads[:2]
    bundles = 0
    while bundles * to_a_bundle < strips:
        bundles += 1
    assert shingles.to_carry == pytest.approx(bundles * bundle)
    assert shingles.on_deck == pytest.approx(bundle * strips / to_a_bundle)
    assert felt.on_deck == pytest.approx(layers * 0.2 * area / FT2)


@given(st.floats(10, 25), st.floats(0, 70), st.floats(10, 70), st.floats(0, 0.75 * pi))
def test_no_lift_is_better_than_the_best(reach, height, travel, turn):
    limit = lifting_limit(reach, height=height, travel=travel, turn=turn)
    assert 0 < limit <= 51
    assert limit <= lifting_limit(reach, height=30, travel=travel, turn=0)
    assert limit * reach == pytest.approx(
        10 * lifting_limit(height=height, travel=travel, turn=turn)
    )


# Refusals.


def test_every_bad_field_is_named_at_once():
    sentences = refused(
        weight, 0.0, pitch=-1.0, strips=-1, strips_per_bundle=0, bundle_weight=-1.0,
        underlayment_layers=-1, underlayment_weight=float("nan"), rolls=-1, roll_weight=-1.0,
        metal_weight=float("inf"), other_weight=-1.0, other_packs=0,
    )  # fmt: skip
    assert [sentence.split(" came as ")[0] for sentence in sentences] == [
        "area", "pitch", "strips", "strips_per_bundle", "bundle_weight", "underlayment_layers",
        "underlayment_weight", "rolls", "roll_weight", "metal_weight", "other_weight",
        "other_packs",
    ]  # fmt: skip
    assert sentences[1] == "pitch came as -12:12: 0:12 or more and at most 1000:12"
    assert sentences[4] == "bundle_weight came as -1 lb: zero or more and at most 10000000000 lb"


def test_loads_that_cannot_be():
    bad = Load(name="felt", on_deck=-1, to_carry=float("nan"), heaviest=-2)
    assert refused(weights, (), slope_area=144, pitch=0) == [
        "loads came as none: one or more loads"
    ]
    assert [
        sentence.split(" came as ")[0]
        for sentence in refused(weights, (bad,), slope_area=0, pitch=float("nan"))
    ] == ["loads.0.on_deck", "loads.0.to_carry", "loads.0.heaviest", "slope_area", "pitch"]
    assert len(refused(packed, "felt", -1, pack_weight=-1)) == 2


def test_a_lift_past_the_equation():
    assert refused(lifting_limit, 26, height=71, travel=71, turn=pi) == [
        "reach came as 26 in: zero or more and at most 25 in",
        "height came as 5 ft 11 in: zero or more and at most 5 ft 10 in",
        "travel came as 5 ft 11 in: zero or more and at most 5 ft 10 in",
        "turn came as 180 deg: zero or more and at most 135 deg",
    ]
    assert lifting_limit(25, height=70, travel=70, turn=0.75 * pi) > 0
