"""Wood shingles to a square, in three building treatises of about 1900.

Two print one table for shingles 4 and 6 in wide (one of them with 206 for 208, a misprint); a
handbook of construction superintendence, section 130, prints one for random widths taken as 4 in.
Shingles are shingles: what an exposure and a width leave showing is the same for strips of asphalt.
"""

from __future__ import annotations

from math import ceil, floor

import pytest

from roofing_core.layers.coursing.pieces import shingle_count
from roofing_core.layers.fasteners import fasteners

SQUARE = 14_400  # in2


def _per_square(width: float, exposure: float) -> float:
    """Count strips to a square through the nails, one nail to each strip."""
    return fasteners(1, nails_per_strip=1, shingle_length=width, exposure=exposure).nails_per_square


# Printed in whole shingles and square feet, rounded to the nearest; 291 for 291.67 is cut off.
HALF_A_SHINGLE = 0.5
A_SQUARE_FOOT = 0.7

#: Exposure: shingles to a square, 4 in and 6 in wide; square feet covered by 1,000 of each.
TABLE = {
    4: ((900, 600), (111, 167)),
    5: ((720, 480), (139, 208)),
    6: ((600, 400), (167, 250)),
    7: ((514, 343), (194, 291)),
    8: ((450, 300), (222, 333)),
}


@pytest.mark.parametrize(("exposure", "printed"), TABLE.items())
@pytest.mark.parametrize(("column", "width"), [(0, 4), (1, 6)])
def test_the_table_of_two_treatises(exposure, printed, column, width):
    per_square, covered = printed[0][column], printed[1][column]
    assert _per_square(width, exposure) == pytest.approx(per_square, abs=HALF_A_SHINGLE)
    area = 1000 / _per_square(width, exposure) * 100
    assert area == pytest.approx(covered, abs=A_SQUARE_FOOT)


@pytest.mark.parametrize(("exposure", "printed"), TABLE.items())
@pytest.mark.parametrize(("column", "width"), [(0, 4), (1, 6)])
def test_whole_shingles_for_a_square(exposure, printed, column, width):
    # Bought whole: the printed count, or one more where the treatise rounded down.
    count = shingle_count(
        1, course_lengths=1, slope_area=SQUARE, shingle_length=width, exposure=exposure
    ).least_by_area
    assert 0 <= count - printed[0][column] <= 1
    assert (count - 1) * width * exposure < SQUARE <= count * width * exposure


def test_the_worked_example():
    # 18 x 4 in: exposed (18 - 3) / 3 = 5 in, 20 in2 each, 720 to the square.
    assert _per_square(4, (18 - 3) / 3) == 720


#: Exposure: square feet covered by 1,000, and shingles to a square, both cut off.
SUPERINTENDENCE = {
    4.25: (118, 847), 4.5: (125, 800), 4.75: (131, 758), 5: (138, 720), 6: (166, 600),
}  # fmt: skip


@pytest.mark.parametrize(("exposure", "printed"), SUPERINTENDENCE.items())
def test_the_table_of_the_handbook(exposure, printed):
    each = _per_square(4, exposure)
    assert floor(1000 / each * 100) == printed[0]
    assert floor(each) <= printed[1] <= ceil(each)
