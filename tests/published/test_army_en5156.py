"""Army subcourse EN5156 (from FM 5-426), table method 1: a rafter from the table on the square."""

from __future__ import annotations

import pytest

from roofing_core.measures.sentences import write_length
from roofing_core.roof.pitch import hip_valley_factor, slope_factor

# 17.69 in per foot is printed to 1/100, and is multiplied by 10 1/3.
TEN_FEET_AND_A_THIRD = 10.34 * 0.005  # in


@pytest.mark.parametrize(
    "per_foot",
    # The page does not say the rise: 17.69 is a common rafter's at 13 in and a hip's at 5 in, and
    # 12 ** 2 + 13 ** 2 = 2 x 12 ** 2 + 5 ** 2.
    [12 * slope_factor(13 / 12), 12 * hip_valley_factor(5 / 12)],
    ids=["common at 13 in", "hip at 5 in"],
)
def test_line_length_of_a_run_of_10_ft_4_in(per_foot):
    # 17.69 x 10.333 = 182.79 in, "15 feet 3 inches": to the inch, by twelfths of a foot.
    length = per_foot * (10 + 1 / 3)
    assert length == pytest.approx(182.79, abs=TEN_FEET_AND_A_THIRD)
    assert write_length(round(length)) == "15 ft 3 in"
