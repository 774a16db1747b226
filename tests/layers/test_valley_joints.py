"""Joints near valleys: moved back from each, and never past one another."""

from __future__ import annotations

from itertools import pairwise

import pytest

from roofing_core.layers.coursing.nail_room import ValleyLine
from roofing_core.layers.coursing.valley_joints import moved_from_valleys
from roofing_core.roof.slicing import Region

# Two valleys, 40 in apart at the foot. No joint within 24 in of the middle of either: there is no
# such place, and each of two joints would go past the other.
BETWEEN = Region([[(0, 0), (40, 0), (60, 20), (-20, 20)]])
LEFT = ValleyLine(start=(-20, 20), end=(0, 0), clear=6, edge=3)
RIGHT = ValleyLine(start=(40, 0), end=(60, 20), clear=6, edge=1)


@pytest.mark.parametrize("joints", [(12, 30), (14, 26), (8, 21)])
def test_joints_between_two_valleys_never_pass_each_other(joints):
    moved = moved_from_valleys(
        joints,
        stretches=BETWEEN.between(0, 12),
        valleys=[LEFT, RIGHT],
        v=0,
        least=24,
        beside=(),
        clearance=4,
        long=60,
    )
    places = [moved.get(joint, joint) for joint in joints]
    assert all(one < other for one, other in pairwise(places))
    assert moved
