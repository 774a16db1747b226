"""Notes on the geometry of irregular roofs: a hip between 8:12 and 10:12, eaves at 120 degrees."""

from __future__ import annotations

from math import degrees, radians, tan

import pytest

from roofing_core.roof.hips import hip_line

# Angles printed to five places, but worked out from rounded tangents, so that the fourth is
# already off by one: the first is 70.89340 by atan(sin 120 / (8/10 + cos 120)).
FOUR_PLACES = 0.00012  # deg
# Printed to five places for a run of 12, and off by two in the last: 4.15692 is 12 x 0.3 / sin 120.
LAST_PLACES = 0.00003  # in


def _line():
    return hip_line(8 / 12, pitch_2=10 / 12, corner=radians(120))


def test_angles_in_plan():
    line = _line()
    assert degrees(line.plan_angle_1) == pytest.approx(70.89351, abs=FOUR_PLACES)
    assert degrees(line.plan_angle_2) == pytest.approx(49.10649, abs=FOUR_PLACES)


def test_run_along_the_eave():
    # Along the 8:12 eave 4.15690 for a common run of 12.
    assert 12 / tan(_line().plan_angle_1) == pytest.approx(4.15690, abs=LAST_PLACES)
