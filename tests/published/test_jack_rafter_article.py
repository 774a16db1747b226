"""An article on jack rafters ("Calculating jack rafters and the common difference").

By a roof-framing teacher: differences for square corners of equal pitch, to 1/100 in.
"""

from __future__ import annotations

import pytest

from roofing_core.roof.hips import jack_difference

# One figure is cut off and not rounded: 19.22 for 19.2296.
A_HUNDREDTH = 0.01  # in


@pytest.mark.parametrize(
    ("spacing", "rise", "printed"),
    [
        (16, 7, 18.52),
        (16, 8, 19.22),
        (16, 9, 20),
        (16, 12, 22.63),
        (24, 7, 27.79),
        (24, 8, 28.84),
        (24, 9, 30),
        (24, 12, 33.94),
    ],
)
def test_common_difference(spacing, rise, printed):
    difference = jack_difference(spacing, pitch_1=rise / 12, pitch_2=rise / 12)
    assert difference == pytest.approx(printed, abs=A_HUNDREDTH)
