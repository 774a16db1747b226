"""The roof as measured: walls and overhangs, the plane, areas, and both unit systems."""

from __future__ import annotations

from dataclasses import replace
from math import cos, nan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from roofing_core.measures.faults import Refused
from roofing_core.measures.reading import read_length
from roofing_core.measures.units import convert
from roofing_core.roof.pitch import pitch_angle
from roofing_core.roof.planes import SingleSlope, measure, planes

LENGTHS = st.floats(12, 1200)
PITCHES = st.floats(0, 3)
OVERHANGS = st.floats(0, 36)


def test_walls_and_overhangs_by_hand():
    # Walls 12 ft x 8 ft, 5:12; overhangs 12 in at the eave, 6 in at the top, 9 in at each rake.
    # Run 96 + 12 + 6 = 114, slope 114 x 13/12 = 123.5, rise 114 x 5/12 = 47.5, eave 144 + 18 = 162.
    roof = measure(
        SingleSlope(
            eave_length=144,
            run=96,
            pitch=5 / 12,
            measured="walls",
            eave_overhang=12,
            ridge_overhang=6,
            rake_overhang=9,
        )
    )
    assert roof.run == 114
    assert roof.slope_length == pytest.approx(123.5, rel=1e-15)
    assert roof.rise == pytest.approx(47.5, rel=1e-15)
    assert roof.eave_length == 162
    assert roof.slope_factor == 13 / 12
    assert roof.area == pytest.approx(162 * 123.5, rel=1e-15)  # 20,007 in2
    assert roof.squares == pytest.approx(1.389375, rel=1e-15)
    assert roof.plan_area == 162 * 114
    assert roof.eave_overhang == 12


def test_walls_measured_up_the_slope_by_hand():
    # 65 in up the slope at 5:12 is 60 in of run; 6 in more make 66, and 71.5 in up the slope.
    roof = measure(
        SingleSlope(
            eave_length=100, slope_length=65, pitch=5 / 12, measured="walls", eave_overhang=6
        )
    )
    assert roof.run == pytest.approx(66, rel=1e-15)
    assert roof.slope_length == pytest.approx(71.5, rel=1e-15)


def test_a_measured_deck_already_has_its_overhangs():
    deck = SingleSlope(eave_length=144, run=96, pitch=5 / 12)
    hung = replace(deck, eave_overhang=12, ridge_overhang=6, rake_overhang=9)
    assert replace(measure(hung), eave_overhang=0.0) == measure(deck)
    assert measure(hung).eave_overhang == 12  # an ice barrier is measured from there


@settings(max_examples=300)
@given(LENGTHS, LENGTHS, PITCHES, st.tuples(OVERHANGS, OVERHANGS, OVERHANGS))
def test_overhangs_make_the_deck_of_walls(eave, run, pitch, overhangs):
    low, high, side = overhangs
    walls = SingleSlope(
        eave_length=eave,
        run=run,
        pitch=pitch,
        measured="walls",
        eave_overhang=low,
        ridge_overhang=high,
        rake_overhang=side,
    )
    deck = SingleSlope(
        eave_length=eave + 2 * side, run=run + low + high, pitch=pitch, eave_overhang=low
    )
    assert measure(walls) == measure(deck)


@settings(max_examples=300)
@given(LENGTHS, LENGTHS, PITCHES, st.floats(0.25, 4))
def test_areas_scale_and_lie_over_their_plan(eave, run, pitch, times):
    roof = measure(SingleSlope(eave_length=eave, run=run, pitch=pitch))
    larger = measure(SingleSlope(eave_length=eave * times, run=run * times, pitch=pitch))
    assert larger.area == pytest.approx(times**2 * roof.area, rel=1e-14)
    assert larger.plan_area == pytest.approx(times**2 * roof.plan_area, rel=1e-14)
    assert roof.area * cos(pitch_angle(pitch)) == pytest.approx(roof.plan_area, rel=1e-12)
    assert roof.area == pytest.approx(roof.plan_area * roof.slope_factor, rel=1e-14)
    assert roof.squares * 100 == pytest.approx(convert(roof.area, "in2"), rel=1e-14)
    assert roof.area >= roof.plan_area


@given(LENGTHS, LENGTHS, PITCHES)
def test_two_halves_make_the_whole(eave, run, pitch):
    whole = measure(SingleSlope(eave_length=eave, run=run, pitch=pitch))
    side = measure(SingleSlope(eave_length=eave / 2, run=run, pitch=pitch))
    lower = measure(SingleSlope(eave_length=eave, run=run / 2, pitch=pitch))
    assert 2 * side.area == pytest.approx(whole.area, rel=1e-15)
    assert 2 * lower.area == pytest.approx(whole.area, rel=1e-15)


@given(st.integers(300, 30_000), st.integers(300, 30_000))
def test_metric_measurements_make_the_same_roof(eave, slope):
    # A roof of whole millimetres: its area in m2 is theirs, its squares are 9.290304 m2 each.
    roof = measure(
        SingleSlope(
            eave_length=read_length(f"{eave} mm"),
            slope_length=read_length(f"{slope} mm"),
            pitch=0.25,
        )
    )
    square_metres = eave * slope / 1e6
    assert convert(roof.area, "in2", "metric") == pytest.approx(square_metres, rel=1e-14)
    assert roof.squares == pytest.approx(square_metres / 9.290304, rel=1e-14)
    assert convert(roof.eave_length, "in", "metric") == pytest.approx(eave, rel=1e-15)


@given(LENGTHS, LENGTHS, PITCHES)
def test_the_plane_is_the_deck(eave, slope_length, pitch):
    roof = measure(SingleSlope(eave_length=eave, slope_length=slope_length, pitch=pitch))
    (plane,) = planes(roof)
    outline = Polygon(plane.corners)
    assert outline.is_valid
    assert outline.exterior.is_ccw  # from the left end of the eave round by the right
    assert outline.area == pytest.approx(plane.area, rel=1e-14)
    assert outline.bounds == (0, 0, eave, slope_length)
    assert plane.area == roof.area
    assert plane.pitch == pitch


def test_the_edges_of_the_plane_are_named_from_the_first_corner_on():
    (plane,) = planes(measure(SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    named = list(zip(plane.edges, plane.corners, strict=True))
    assert named == [
        ("eave", (0, 0)), ("rake", (168, 0)), ("ridge", (168, 112)), ("rake", (0, 112)),
    ]  # fmt: skip


def test_everything_wrong_with_a_roof_is_told_at_once():
    with pytest.raises(Refused) as refused:
        measure(
            SingleSlope(eave_length=-1, run=nan, pitch=0.25, eave_overhang=-1, rake_overhang=-2)
        )
    assert [one.at for one in refused.value.faults] == [
        ("eave_length",),
        ("eave_overhang",),
        ("rake_overhang",),
        ("run",),
    ]


def test_a_roof_of_which_only_the_eave_is_known():
    with pytest.raises(Refused, match="exactly two of slope_length, run, rise and pitch"):
        measure(SingleSlope(eave_length=168))


@pytest.mark.parametrize(
    ("overhangs", "said"),
    [
        (
            {"rake_overhang": 108_000},  # 9,000 ft at each rake, and 14 ft
            "rake_overhang came as 9000 ft: less: the deck would come to 18014 ft, and at most"
            " 10000 ft",
        ),
        (
            {"eave_overhang": 120_000, "ridge_overhang": 12},  # 10,009 ft level, times sqrt(17) / 4
            "eave_overhang came as 10000 ft: less: the deck would come to 10317 ft 1/2 in, and at"
            " most 10000 ft",
        ),
        (
            {"ridge_overhang": 1_200_000},
            "ridge_overhang came as 100000 ft: less: the deck would come to 103085 ft 10 5/8 in,"
            " and at most 10000 ft",
        ),
    ],
)
def test_an_overhang_that_no_roof_has_is_told_by_its_own_name(overhangs, said):
    roof = SingleSlope(eave_length=168, run=96, pitch=0.25, measured="walls", **overhangs)
    with pytest.raises(Refused) as refused:
        measure(roof)
    assert str(refused.value) == said


def test_all_overhangs_that_no_roof_has_are_told_at_once():
    roof = SingleSlope(
        eave_length=168, run=96, pitch=0.25, measured="walls", eave_overhang=1e6, rake_overhang=1e6
    )
    with pytest.raises(Refused) as refused:
        measure(roof)
    assert [one.at for one in refused.value.faults] == [("rake_overhang",), ("eave_overhang",)]
