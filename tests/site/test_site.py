"""Wind, ice barrier, ventilation and loads: what holds over all that can be asked, and refusals."""

from __future__ import annotations

from math import inf, nan
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core import (
    Refused,
    deck_load,
    ice_reach,
    roof_live_load,
    rules,
    slope_factor,
    stacked_load,
    ventilation,
    wind_class,
)
from roofing_core.ruling.on_places import UpliftClass
from roofing_core.ruling.rule import EDITIONS
from roofing_core.site.wind import FanClass, fan_classes, fastest_held, uplift_classes

SPEEDS = st.floats(1, 250)
PITCHES = st.floats(0, 3)


@given(SPEEDS, SPEEDS)
def test_more_wind_leaves_no_more_classes_and_no_fewer_nails(one, other):
    less, more = (wind_class(speed) for speed in sorted((one, other)))
    assert set(more.uplift_classes) <= set(less.uplift_classes)
    assert set(more.fan_classes) <= set(less.fan_classes)
    assert more.nails_per_strip >= less.nails_per_strip
    assert more.nominal_speed >= less.nominal_speed
    assert more.closer_cap_nails >= less.closer_cap_nails


@given(SPEEDS)
def test_a_class_is_given_where_its_fastest_speed_is_not_passed(speed):
    for uplift in get_args(UpliftClass):
        assert (uplift in uplift_classes(speed)) == (speed <= fastest_held(uplift, "unknown"))
    for fan in get_args(FanClass):
        assert (fan in fan_classes(speed)) == (speed <= fastest_held("unknown", fan))


def test_steep_roofs_take_six_nails_in_any_wind():
    assert wind_class(90, pitch=21 / 12).nails_per_strip == 4
    assert wind_class(90, pitch=22 / 12).nails_per_strip == 6


def test_every_answer_leaves_to_others_what_is_theirs():
    answers = (
        wind_class(130), ventilation(1000 * 144), deck_load(0.5), stacked_load(2, pitch=0.5),
    )  # fmt: skip
    for answer in answers:
        said = " ".join(one.written() for one in answer.limits)
        assert "Local code governs" in said
        assert "licensed designer" in said or "local authority" in said
    said = " ".join(ice_reach(12, pitch=0.5).limits)
    assert "Local code governs" in said
    assert "local authority" in said


@given(
    area=st.floats(100, 1e7), ratio=st.sampled_from(["1/150", "1/300"]),
    high=st.floats(1, 500), low=st.floats(1, 500),
)  # fmt: skip
def test_whole_vents_give_what_is_needed_and_no_vent_too_many(area, ratio, high, low):
    found = ventilation(area, ratio=ratio, high_vent=high, low_vent=low)
    assert found.needed == pytest.approx(area / (150 if ratio == "1/150" else 300))
    assert found.high_area + found.low_area >= found.needed * (1 - 1e-9)
    assert found.low_area >= found.high_area * (1 - 1e-9)
    rest = max(found.needed - found.high_area, found.high_area)
    assert (found.low_vents - 1) * low < rest + 1e-6
    if ratio == "1/300":
        assert found.high_area <= found.high_most * (1 + 1e-9)
        assert found.fits == (found.high_share >= 40 - 1e-6)
        assert (found.high_vents + 1) * high > found.high_most - 1e-6
    else:
        assert found.fits
        assert (found.high_vents - 1) * high < found.needed / 2 + 1e-6


# References of the reach: 12 in of overhang at 4:12 37.95 in, two rows of 36 in; at 5:12 39.00;
# none at 4:12 25.30 in, one row.
@pytest.mark.parametrize(
    ("overhang", "rise", "reach", "rows"), [(12, 4, 37.95, 2), (12, 5, 39.0, 2), (0, 4, 25.30, 1)]
)
def test_reach_and_rows_of_an_ice_barrier(overhang, rise, reach, rows):
    found = ice_reach(overhang, pitch=rise / 12)
    assert found.reach == pytest.approx(reach, abs=0.005)
    assert (found.rows, found.by_the_pitch) == (rows, 0)
    assert found.reach == found.by_the_wall


@given(
    overhang=st.floats(0, 60), pitch=PITCHES, width=st.floats(12, 60), lap=st.floats(0, 11),
    past=st.floats(0, 3), edition=st.sampled_from(EDITIONS),
)  # fmt: skip
def test_the_rows_reach_and_one_less_does_not(*, overhang, pitch, width, lap, past, edition):
    found = ice_reach(
        overhang, pitch=pitch, roll_width=width, head_lap=lap, past_metal=past, edition=edition
    )
    by_the_wall = (overhang + 24) * slope_factor(pitch)
    steep = 36 if edition != "2024" and pitch >= 8 / 12 - 1e-9 else 0
    assert found.reach == pytest.approx(max(by_the_wall, steep))
    assert found.covered >= found.reach - 1e-6
    assert found.rows == 1 or found.covered - (width - lap) < found.reach + 1e-6
    assert found.source == rules(edition, rule="ice_barrier.inside_wall").rules[0].cited


@given(pitch=PITCHES, layers=st.integers(0, 5), each=st.floats(0, 10), other=st.floats(0, 20))
def test_dead_loads_add_up_and_grow_with_the_slope(pitch, layers, each, other):
    found = deck_load(pitch, layers=layers, shingles=each, other=other)
    assert found.per_slope_area == pytest.approx(
        found.covering + found.underlayment + found.panels + found.other
    )
    assert found.covering == pytest.approx(layers * each)
    assert found.per_plan_area == pytest.approx(found.per_slope_area * slope_factor(pitch))


@given(
    bundles=st.integers(0, 20), pitch=PITCHES, weight=st.floats(30, 100),
    long=st.floats(12, 200), wide=st.floats(12, 200),
)  # fmt: skip
def test_as_many_bundles_as_a_patch_takes_are_within_the_live_load(
    bundles, pitch, weight, long, wide
):
    patch = {"pitch": pitch, "bundle_weight": weight, "patch_length": long, "patch_width": wide}
    found = stacked_load(bundles, **patch)
    assert found.live_load == roof_live_load(pitch)
    assert stacked_load(found.most_bundles, **patch).within_live_load
    assert not stacked_load(found.most_bundles + 1, **patch).within_live_load
    assert found.within_live_load == (found.area_to_spread <= found.patch_area * (1 + 1e-9))


@pytest.mark.parametrize(
    ("call", "asked", "names"),
    [
        (wind_class, {"design_speed": 0}, ["design_speed"]),
        (wind_class, {"design_speed": 400.1}, ["design_speed"]),
        (wind_class, {"design_speed": nan, "exposure": "E", "roof_height": -1, "edition": "2012"},
         ["design_speed", "exposure", "roof_height", "edition"]),
        (ice_reach, {"eave_overhang": -1, "pitch": inf, "head_lap": 36},
         ["eave_overhang", "pitch", "head_lap"]),
        (ventilation, {"vented_area": 0, "ratio": "1/200", "high_vent": 0, "low_vent": -1},
         ["vented_area", "ratio", "high_vent", "low_vent"]),
        (ventilation, {"vented_area": 1e9, "high_vent": 1e-11}, ["high_vent"]),
        (deck_load, {"pitch": -1, "layers": -1, "shingles": inf}, ["pitch", "layers", "shingles"]),
        (stacked_load, {"bundles": -1, "pitch": 0, "bundle_weight": 0, "patch_length": 0},
         ["bundles", "bundle_weight", "patch_length"]),
        (stacked_load, {"bundles": 1, "pitch": 0, "bundle_weight": 1e-12, "patch_length": 1e6,
                        "patch_width": 1e6}, ["bundle_weight"]),
        (roof_live_load, {"pitch": 0, "tributary_area": 0, "by": "ibc"},
         ["tributary_area", "by"]),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_together_by_its_names(call, asked, names):
    with pytest.raises(Refused) as refusal:
        call(**asked)
    assert [fault.at[0] for fault in refusal.value.faults] == names
    assert all(fault.written("metric") for fault in refusal.value.faults)
