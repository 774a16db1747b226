"""A roofing journal, April 2008, on open valleys of asphalt shingles.

It restates an asphalt shingle makers' manual (2006): metal 24 in wide or more, open 6 in at the top
and 1/8 in more for each foot down, shingles lapping it 6 in or more on each side.
"""

from __future__ import annotations

import pytest

from roofing_core.layers.coursing.outline import ValleyWay
from roofing_core.materials import Metal, material


def test_metal_of_24_in():
    metal = material(Metal, "valley_metal")
    assert metal.deck_leg + metal.face_leg >= 24


def test_open_6_in_at_the_top_and_an_eighth_more_to_the_foot():
    way = ValleyWay()
    assert way.exposed_width == 6
    assert 12 * way.widening == 1 / 8


@pytest.mark.parametrize("feet", [8, 24, 48])
def test_shingles_lap_the_metal_6_in_on_each_side(feet):
    # At the foot, where least of it is covered; a valley of more than 48 ft would need wider metal.
    way, metal = ValleyWay(), material(Metal, "valley_metal")
    open_at_the_foot = way.exposed_width + way.widening * feet * 12
    assert metal.deck_leg - open_at_the_foot / 2 >= 6
