"""A slope from any two of its measurements: all agree, and what cannot be is refused in words."""

from __future__ import annotations

from dataclasses import asdict
from itertools import combinations
from math import inf, nan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roofing_core.measures.faults import Refused
from roofing_core.roof.slopes import SLOPE_MEASURES, roof_area, slope

PAIRS = list(combinations(SLOPE_MEASURES, 2))

#: Where a leg comes from the slope length and the other leg, rounding grows as the slope flattens.
ROUNDING = 1e-9

RUNS = st.floats(1, 1200)
PITCHES = st.floats(0.05, 3)


def test_all_pairs_are_meant():
    assert PAIRS == [
        ("slope_length", "run"), ("slope_length", "rise"), ("slope_length", "pitch"),
        ("run", "rise"), ("run", "pitch"), ("rise", "pitch"),
    ]  # fmt: skip


@settings(max_examples=500)
@given(RUNS, PITCHES)
def test_any_two_give_the_others(run, pitch):
    whole = asdict(slope(run=run, pitch=pitch))
    assert whole["rise"] == pytest.approx(run * pitch, rel=1e-15)
    assert whole["slope_length"] ** 2 == pytest.approx(run**2 + (run * pitch) ** 2, rel=1e-14)
    for pair in PAIRS:
        again = asdict(slope(**{name: whole[name] for name in pair}))
        for name in SLOPE_MEASURES:
            assert again[name] == pytest.approx(whole[name], rel=ROUNDING), (pair, name)
        for name in pair:
            assert again[name] == whole[name]  # what was given comes back as it came


# 9 ft of run and 3 ft 9 in of rise, 5:12: 9 ft 9 in up the slope.
@pytest.mark.parametrize("pair", PAIRS)
def test_a_5_12_13_slope_is_exact_from_any_pair(pair):
    exact = {"slope_length": 117.0, "run": 108.0, "rise": 45.0, "pitch": 45 / 108}
    found = asdict(slope(**{name: exact[name] for name in pair}))
    assert found == pytest.approx(exact, rel=1e-15)


@given(RUNS, PITCHES, st.floats(0.1, 10))
def test_a_slope_scales(run, pitch, times):
    one, other = slope(run=run, pitch=pitch), slope(run=run * times, pitch=pitch)
    assert other.slope_length == pytest.approx(times * one.slope_length, rel=1e-14)
    assert other.rise == pytest.approx(times * one.rise, rel=1e-14)


@given(RUNS, PITCHES)
def test_two_halves_of_a_slope_make_the_whole(run, pitch):
    half, whole = slope(run=run / 2, pitch=pitch), slope(run=run, pitch=pitch)
    assert 2 * half.slope_length == pytest.approx(whole.slope_length, rel=1e-15)
    assert 2 * half.rise == pytest.approx(whole.rise, rel=1e-15)


def test_a_flat_slope():
    flat = slope(run=100, pitch=0)
    assert (flat.slope_length, flat.rise) == (100, 0)
    assert slope(slope_length=100, pitch=0).run == 100
    assert slope(slope_length=100, rise=0).run == 100
    assert slope(run=100, rise=0).slope_length == 100


EXACTLY_TWO = "exactly two of slope_length, run, rise and pitch"


@pytest.mark.parametrize(
    ("given_", "said"),
    [
        ({}, f"slope_length came as none of them: {EXACTLY_TWO}"),
        ({"run": 100}, f"slope_length came as run: {EXACTLY_TWO}"),
        (
            {"slope_length": 1, "run": 1, "pitch": 1},
            f"slope_length came as slope_length, run, pitch: {EXACTLY_TWO}",
        ),
        (
            {"slope_length": 100, "run": 120},
            "run came as 10 ft: less than the slope length, 8 ft 4 in",
        ),
        (
            {"slope_length": 100, "run": 100},
            "run came as 8 ft 4 in: less than the slope length, 8 ft 4 in",
        ),
        (
            {"slope_length": 40, "rise": 41},
            "rise came as 41 in: less than the slope length, 40 in",
        ),
        ({"run": 0, "pitch": 0.5}, "run came as 0 in: more than zero and at most 100000 ft"),
        (
            {"slope_length": nan, "pitch": 0.5},
            "slope_length came as nan: more than zero and at most 100000 ft",
        ),
        ({"run": 10, "rise": -1}, "rise came as -1 in: zero or more and at most 100000 ft"),
        ({"rise": 0, "pitch": 0.5}, "rise came as 0 in: more than zero and at most 100000 ft"),
        ({"rise": 10, "pitch": 0}, "pitch came as 0:12: over 0:12 where only the rise is known"),
        ({"run": 10, "pitch": -0.5}, "pitch came as -6:12: 0:12 or more and at most 1000:12"),
        ({"run": 10, "pitch": inf}, "pitch came as inf: 0:12 or more and at most 1000:12"),
        ({"run": 1, "rise": 100}, "pitch came as 1200:12: 0:12 or more and at most 1000:12"),
    ],
)
def test_what_is_no_slope(given_, said):
    with pytest.raises(Refused) as refused:
        slope(**given_)
    assert str(refused.value) == said


def test_both_of_two_bad_measurements_are_told():
    with pytest.raises(Refused) as refused:
        slope(run=-1, pitch=-1)
    assert [one.at for one in refused.value.faults] == [("run",), ("pitch",)]


def test_a_slope_too_long_for_any_roof_is_refused():
    # 12 in of rise at a millionth of a millionth; and a hair over the limit.
    assert slope(slope_length=120_000, pitch=0).run == 120_000
    for given_ in ({"rise": 12, "pitch": 1e-12}, {"slope_length": 120_001, "pitch": 0}):
        with pytest.raises(Refused, match=r"^slope_length came as .+: at most 10000 ft$"):
            slope(**given_)


@given(st.floats(1, 1200), RUNS, PITCHES)
def test_area_is_the_same_whatever_was_measured(eave, run, pitch):
    whole = asdict(slope(run=run, pitch=pitch))
    alone = roof_area(eave, slope_length=whole["slope_length"])
    assert alone.area == pytest.approx(eave * whole["slope_length"], rel=1e-15)
    for pair in PAIRS:
        one = roof_area(eave, **{name: whole[name] for name in pair})
        assert one.area == pytest.approx(alone.area, rel=ROUNDING)
        assert one.squares == pytest.approx(one.area / 14_400, rel=1e-15)
        assert one.eave_length == eave


@pytest.mark.parametrize(
    ("asked", "places"),
    [
        ({"eave_length": 0, "slope_length": -1}, [("eave_length",), ("slope_length",)]),
        ({"eave_length": nan}, [("eave_length",), ("slope_length",)]),
        ({"eave_length": -1, "run": 10, "pitch": -1}, [("eave_length",), ("pitch",)]),
        ({"eave_length": 1, "slope_length": 10, "run": 12}, [("run",)]),
    ],
)
def test_an_area_of_nothing_is_refused_with_all_its_faults(asked, places):
    with pytest.raises(Refused) as refused:
        roof_area(**asked)
    assert [one.at for one in refused.value.faults] == places


@pytest.mark.parametrize(
    ("asked", "came"),
    [
        ({}, "none of them"),
        ({"run": 120}, "run"),
        ({"pitch": 0.25}, "pitch"),
        ({"slope_length": 117, "run": 108, "rise": 45}, "slope_length, run, rise"),
    ],
)
def test_an_area_says_that_a_slope_length_is_enough(asked, came):
    with pytest.raises(Refused) as refused:
        roof_area(168, **asked)
    assert str(refused.value) == (
        f"slope_length came as {came}: slope_length alone, or two of slope_length, run, rise and"
        " pitch"
    )
