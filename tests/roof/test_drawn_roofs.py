"""Roofs read from drawings are the roofs that were drawn."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

import pytest

from roofing_core.measures.faults import Refused
from roofing_core.roof.footprints import Footprint, Side
from roofing_core.roof.forms import Gable, Gambrel, Hip, Pyramid, Saltbox
from roofing_core.roof.given_planes import given_surfaces
from roofing_core.roof.measuring import AnyRoof
from roofing_core.roof.outlines import EdgeKind, RoofPlane, Surfaces
from roofing_core.roof.reading_cityjson import planes_from_cityjson
from roofing_core.roof.reading_geojson import planes_from_geojson
from roofing_core.roof.whole_roof import surfaces
from tests.roof.drawings import TURNS, city_model, plan_drawing
from tests.roof.plans import hip_roof, mixed_roof, stepped_roof

ROUNDING = 1e-9

#: Positions are worked out two ways, which differ by up to 1e-4 in on 100 ft.
ON_THE_EARTH = 1e-6

ELL = ((0, 0), (360, 0), (360, 180), (120, 180), (120, 300), (0, 300))
FORMS: Mapping[str, AnyRoof] = {
    "gable": Gable(length=480, width=288, pitch=0.5),
    "unequal gable": Gable(length=480, width=288, pitch=0.5, back_pitch=0.75),
    "saltbox": Saltbox(length=480, width=288, pitch=0.5, ridge_run=100),
    "gambrel": Gambrel(length=480, width=288, pitch=2, upper_pitch=0.5, break_run=60),
    "hip": Hip(length=432, width=288, pitch=0.5, end_pitch=0.75),
    "pyramid": Pyramid(length=480, width=288, rise=90),
    "ell": Footprint(corners=ELL, pitch=0.5),
    "ell with gables": Footprint(
        corners=ELL, pitch=0.5,
        sides=tuple(Side(end="gable") if k in {1, 4} else Side() for k in range(6)),
    ),
}  # fmt: skip


# A wall stands where no plane of the roof tells of it: in a model without walls it is a rake.
UNSEEN: Mapping[EdgeKind, EdgeKind] = {"sidewall": "rake", "headwall": "ridge"}


def same_lines(found: Surfaces, drawn: Surfaces, *, rel: float, walls: bool = True) -> None:
    unseen = {} if walls else UNSEEN
    lines, before = (
        sorted(
            (unseen.get(line.kind, line.kind), tuple(sorted(line.planes)), line.length)
            for line in roof.lines
        )
        for roof in (found, drawn)
    )
    assert [line[:2] for line in lines] == [line[:2] for line in before]
    lengths = [length for *_, length in before]
    assert [length for *_, length in lines] == pytest.approx(lengths, rel=rel, abs=500 * rel)


def same_planes(found: Surfaces, drawn: Surfaces, *, rel: float) -> None:
    assert found.area == pytest.approx(drawn.area, rel=rel)
    assert found.plan_area == pytest.approx(drawn.plan_area, rel=rel)
    for plane, before in zip(found.planes, drawn.planes, strict=True):
        assert (plane.name, plane.edges, plane.beyond) == (before.name, before.edges, before.beyond)
        assert plane.pitch == pytest.approx(before.pitch, rel=rel)
        for corner, was in zip(plane.corners, before.corners, strict=True):
            assert corner == pytest.approx(was, rel=rel, abs=500 * rel)
    same_lines(found, drawn, rel=rel)


@pytest.mark.parametrize("turn", TURNS)
@pytest.mark.parametrize("form", FORMS.values(), ids=FORMS)
def test_a_form_modelled_in_space_is_read_as_itself(form, turn):
    drawn = surfaces(form)
    found = given_surfaces(planes_from_cityjson(city_model(drawn.planes, turn=turn)))
    same_planes(found, drawn, rel=ROUNDING)


@pytest.mark.parametrize("turn", TURNS)
@pytest.mark.parametrize("form", FORMS.values(), ids=FORMS)
def test_a_form_drawn_in_plan_is_read_as_itself(form, turn):
    drawn = surfaces(form)
    found = given_surfaces(planes_from_geojson(plan_drawing(drawn, turn=turn)))
    same_planes(found, drawn, rel=ON_THE_EARTH)


@pytest.mark.parametrize("place", [(0, 0), (-179.99999, -60), (151.2, -33.9), (25, 78)])
def test_the_place_on_earth_does_not_matter(place):
    drawn = surfaces(FORMS["ell"])
    longitude, latitude = place
    document = plan_drawing(drawn, turn=0.7, longitude=longitude, latitude=latitude)
    for feature in document["features"]:
        for corner in feature["geometry"]["coordinates"][0]:
            corner[0] = (corner[0] + 180) % 360 - 180  # on both sides of the 180th meridian
    same_planes(given_surfaces(planes_from_geojson(document)), drawn, rel=ON_THE_EARTH)


@pytest.mark.parametrize("form", FORMS.values(), ids=FORMS)
def test_a_whole_degree_of_the_fall_picks_the_eave(form):
    drawn = surfaces(form)
    found = given_surfaces(planes_from_geojson(plan_drawing(drawn, turn=0.7, fall=True)))
    same_planes(found, drawn, rel=ON_THE_EARTH)


# One digit at the end of a degree is 7/16 in at the seventh, 1/16 in at the eighth: the corners of
# an eave 20 ft long lie that far apart.
DIGITS: Mapping[int, float] = {7: 4e-3, 8: 4e-4, 9: 4e-5}


@pytest.mark.parametrize(("digits", "rel"), DIGITS.items())
@pytest.mark.parametrize("form", FORMS.values(), ids=FORMS)
def test_rounded_positions_are_the_same_roof_with_other_lengths(form, digits, rel):
    drawn = surfaces(form)
    found = given_surfaces(planes_from_geojson(plan_drawing(drawn, turn=0.7, digits=digits)))
    assert [plane.edges for plane in found.planes] == [plane.edges for plane in drawn.planes]
    assert [plane.beyond for plane in found.planes] == [plane.beyond for plane in drawn.planes]
    assert found.area == pytest.approx(drawn.area, rel=rel)


@pytest.mark.parametrize("form", FORMS.values(), ids=FORMS)
def test_a_model_in_millimetres_is_the_same_roof(form):
    drawn = surfaces(form)
    found = given_surfaces(planes_from_cityjson(city_model(drawn.planes, turn=2.0, step=0.001)))
    assert [plane.edges for plane in found.planes] == [plane.edges for plane in drawn.planes]
    assert found.area == pytest.approx(drawn.area, rel=1e-3)


def sides(plane: RoofPlane) -> list[tuple[complex, complex]]:
    corners = [complex(*corner) for corner in plane.corners]
    return list(pairwise([*corners, corners[0]]))


def turns_off(plane: RoofPlane) -> list[float]:
    """Give how far each corner lies off the line between its neighbours."""
    return [
        abs(((b - a).conjugate() * (c - b)).imag / (c - a))
        for (a, b), (_, c) in pairwise([*sides(plane), sides(plane)[0]])
    ]


def clearly_drawn(roof: Surfaces) -> bool:
    """Tell whether every side is clearly level or not, and every corner clearly one or not."""
    pitches = {plane.name: plane.pitch for plane in roof.planes}
    breaks = [line.planes for line in roof.lines if line.kind == "pitch_break"]
    rises = [abs((b - a).imag) for plane in roof.planes for a, b in sides(plane)]
    offs = [off for plane in roof.planes for off in turns_off(plane)]
    return (
        all(pitches[one] != pitches[other] for one, other in breaks)
        and not any(1e-9 < rise <= 1 for rise in rises)
        and not any(1e-9 < off <= 1 for off in offs)
        and min(line.length for line in roof.lines) > 1
    )


def generated(draw, seeds: int) -> list[Surfaces]:
    found = []
    for seed in range(seeds):
        try:
            drawn = surfaces(draw(seed))
        except Refused:
            continue
        if clearly_drawn(drawn):
            found.append(drawn)
    return found


@pytest.mark.parametrize(
    ("draw", "seeds", "least"), [(hip_roof, 60, 50), (mixed_roof, 60, 50), (stepped_roof, 150, 50)]
)
def test_roofs_of_any_outline_modelled_in_space(draw, seeds, least):
    drawn = generated(draw, seeds)
    assert len(drawn) >= least
    for seed, roof in enumerate(drawn):
        found = given_surfaces(planes_from_cityjson(city_model(roof.planes, turn=seed)))
        assert found.area == pytest.approx(roof.area, rel=ROUNDING)
        same_lines(found, roof, rel=ROUNDING, walls=False)


@pytest.mark.parametrize(
    ("draw", "seeds", "least"), [(hip_roof, 60, 50), (mixed_roof, 60, 50), (stepped_roof, 150, 50)]
)
def test_roofs_of_any_outline_drawn_in_plan(draw, seeds, least):
    drawn = generated(draw, seeds)
    assert len(drawn) >= least
    for seed, roof in enumerate(drawn):
        found = given_surfaces(planes_from_geojson(plan_drawing(roof, turn=seed)))
        same_planes(found, roof, rel=ON_THE_EARTH)
