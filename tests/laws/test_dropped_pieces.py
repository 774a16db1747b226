"""Any piece that is left out of the field of any roof is missed by the audit, and named."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random

import pytest
from shapely import LineString, Polygon, box
from shapely.geometry.base import BaseGeometry

from roofing_core import Job, plan
from roofing_core.auditing.audit import audit
from roofing_core.auditing.finished import FinishedPlan, FinishedPlane, finished
from roofing_core.job.choices import Valleying
from tests.roof.plans import hip_roof, mixed_roof

#: No cap, no metal and no shingle that runs through a valley reaches further from its edge.
OUT_OF_REACH = 20.0


def field(plane: FinishedPlane) -> BaseGeometry:
    """Give the part of a plane that nothing but its own courses can cover."""
    ends = zip(plane.corners, (*plane.corners[1:], plane.corners[0]), plane.edges, strict=True)
    found: BaseGeometry = Polygon(plane.corners)
    for start, end, kind in ends:
        if kind != "eave":
            found = found.difference(LineString([start, end]).buffer(OUT_OF_REACH))
    return found


def shown(whole: FinishedPlan) -> Iterator[tuple[int, int]]:
    """Give the places of courses and pieces of which more than a hand's breadth shows there."""
    fields = {plane.name: field(plane) for plane in whole.planes}
    for k, course in enumerate(whole.courses):
        top = course.butt + course.exposure
        for n, piece in enumerate(course.laid):
            shows: BaseGeometry = box(piece.left, max(course.butt, 0.0), piece.right, top)
            if piece.corners:
                shows = shows.intersection(Polygon(piece.corners, piece.cutouts))
            if shows.intersection(fields[course.plane]).area > 10:
                yield k, n


@pytest.mark.parametrize("method", ["open", "closed_cut"])
@pytest.mark.parametrize("roof", [hip_roof(2), hip_roof(5), mixed_roof(4), mixed_roof(7)])
def test_any_piece_left_out_is_missed_and_named(roof, method):
    whole = finished(plan(Job(roof=roof, valleying=Valleying(method=method))))
    before = {one.question for one in audit(whole).breaches}
    assert "shingles.layers" not in before
    for k, n in Random(method).sample(list(shown(whole)), 6):
        course = whole.courses[k]
        laid = course.laid[:n] + course.laid[n + 1 :]
        courses = (*whole.courses[:k], replace(course, laid=laid), *whole.courses[k + 1 :])
        found = audit(replace(whole, courses=courses)).breaches
        places = [one.place for one in found if one.question == "shingles.layers"]
        assert places, (course.plane, course.number, n)
        assert {(place.plane, place.part) for place in places} == {(course.plane, "course")}
        assert course.number in {place.number for place in places}
