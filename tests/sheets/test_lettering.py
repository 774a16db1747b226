"""Boxes of texts against a geometry package, and what a crowd of them says is free."""

from __future__ import annotations

from math import pi

from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Polygon

from roofing_core.sheets.drawings.crowd import Crowd
from roofing_core.sheets.drawings.heights import every
from roofing_core.sheets.drawings.lettering import Box, turned_box
from roofing_core.sheets.drawings.paper import Paper, Words
from tests.sheets.reading import texts_of

PLACE = st.floats(-60, 60)
SIZE = st.floats(0.5, 40)

#: Nearer than this, touching and not touching are one: float dust.
DUST = 1e-6


@st.composite
def boxes(draw) -> Box:
    at = (draw(PLACE), draw(PLACE))
    turn = draw(st.one_of(st.sampled_from([0.0, -pi / 2]), st.floats(-pi, pi)))
    return turned_box(at, -draw(SIZE), -draw(SIZE), draw(SIZE), draw(SIZE), turn=turn)


@given(boxes(), boxes())
def test_boxes_touch_where_a_geometry_package_says_so(one, other):
    first, second = Polygon(one.corners), Polygon(other.corners)
    shared = first.intersection(second).area
    if shared > DUST:
        assert one.touches(other)
        assert other.touches(one)
    elif first.distance(second) > DUST:
        assert not one.touches(other)


@given(boxes(), st.tuples(PLACE, PLACE), st.tuples(PLACE, PLACE))
def test_lines_cross_boxes_where_a_geometry_package_says_so(box, start, end):
    shape, line = Polygon(box.corners), LineString([start, end])
    if shape.intersection(line).length > DUST:
        assert box.crosses(start, end)
    elif shape.distance(line) > DUST:
        assert not box.crosses(start, end)


@given(st.lists(boxes(), max_size=12), boxes())
def test_a_crowd_says_what_each_of_it_would(crowd_of, box):
    crowd = Crowd()
    for other in crowd_of:
        crowd.add_box(other)
    assert crowd.is_clear(box) == (not any(box.touches(other) for other in crowd_of))


def test_a_text_goes_to_the_first_place_that_is_free():
    paper = Paper("upright", "Title", "beneath")
    taken = Words("taken", (20, 50))
    paper.write(taken)
    paper.keep_clear([(20, 60), (60, 60)])
    places = [
        Words("new", (22, 50)),  # on the other text
        Words("new", (30, 61)),  # on the line
        Words("new", (175, 70)),  # over the edge of the paper
        Words("new", (30, 90)),
        Words("new", (30, 100)),
    ]
    assert paper.write_first(places)
    (found,) = [
        text for text in texts_of(paper.done(name="any", says="").svg) if text.text == "new"
    ]
    assert round(found.corners[0][0]) == 30
    assert 87 < found.corners[0][1] < 90
    assert not paper.write_first(places[:3])


def test_every_so_many_lines_keep_their_distance():
    for gap in (0.01, 0.3, 0.9, 2.7, 2.8, 40):
        many = every(gap, 2.8)
        assert many * gap >= 2.8 or many == 1000
