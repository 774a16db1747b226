"""The rafter table on a framing square, as printed on the blade.

First line of the table, "length common rafters per foot run": all of it, 2 in to 18 in of rise,
read from a square's own blade. Second line, "length hip or valley per foot run", and the third,
"difference in length of jacks": two figures read from the square, and the whole lines as a
carpenter's web site reprints them ("Rafter table").
"""

from __future__ import annotations

import pytest

from roofing_core.roof.hips import hip_line, jack_difference
from roofing_core.roof.pitch import hip_valley_factor, slope_factor

# Printed to 1/100 in per foot of run, so half of that is all that can be asked of it.
HALF_A_HUNDREDTH = 0.005  # in

COMMON = {
    2: 12.17, 3: 12.37, 4: 12.65, 5: 13.00, 6: 13.42, 7: 13.89, 8: 14.42, 9: 15.00, 10: 15.62,
    11: 16.28, 12: 16.97, 13: 17.69, 14: 18.44, 15: 19.21, 16: 20.00, 17: 20.81, 18: 21.63,
}  # fmt: skip


@pytest.mark.parametrize(("rise", "printed"), COMMON.items())
def test_slope_factor_is_the_first_line(rise, printed):
    assert 12 * slope_factor(rise / 12) == pytest.approx(printed, abs=HALF_A_HUNDREDTH)


# 8 in and 9 in read from the square; the others from the reprint, which leaves out 9 in.
HIP = {
    2: 17.09, 3: 17.23, 4: 17.44, 5: 17.69, 6: 18.00, 7: 18.36, 8: 18.76, 9: 19.21, 10: 19.70,
    11: 20.22, 12: 20.78,
}  # fmt: skip


@pytest.mark.parametrize(("rise", "printed"), HIP.items())
def test_hip_valley_factor_is_the_second_line(rise, printed):
    assert 12 * hip_valley_factor(rise / 12) == pytest.approx(printed, abs=HALF_A_HUNDREDTH)


@pytest.mark.parametrize(("rise", "printed"), HIP.items())
def test_the_general_hip_gives_the_second_line_for_equal_pitches(rise, printed):
    line = hip_line(rise / 12, pitch_2=rise / 12)
    assert 12 * line.factor == pytest.approx(printed, abs=HALF_A_HUNDREDTH)


# Jacks 16 in and 24 in apart, reprinted to the eighth or sixteenth of an inch, some rounded up:
# 27 7/8 stands for 27.785. A misprint is left out: 25 3/16 at 24 in for 4 in of rise (25.298).
AN_EIGHTH = 0.125  # in
JACKS_16 = {
    2: 16 + 1 / 4, 3: 16 + 1 / 2, 4: 16 + 7 / 8, 5: 17 + 5 / 16, 6: 17 + 7 / 8, 7: 18 + 1 / 2,
    8: 19 + 1 / 4, 10: 20 + 7 / 8, 11: 21 + 3 / 4, 12: 22 + 5 / 8,
}  # fmt: skip
JACKS_24 = {
    2: 24 + 5 / 16, 3: 24 + 3 / 4, 5: 26, 6: 26 + 7 / 8, 7: 27 + 7 / 8, 8: 28 + 7 / 8,
    10: 31 + 1 / 4, 11: 32 + 5 / 8, 12: 34,
}  # fmt: skip


@pytest.mark.parametrize(
    ("spacing", "rise", "printed"),
    [(16, *row) for row in JACKS_16.items()] + [(24, *row) for row in JACKS_24.items()],
)
def test_jack_difference_is_the_third_line(spacing, rise, printed):
    difference = jack_difference(spacing, pitch_1=rise / 12, pitch_2=rise / 12)
    assert difference == pytest.approx(printed, abs=AN_EIGHTH)
