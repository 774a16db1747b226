"""Notes for a contractor's examination: roof area from a plan, with waste."""

from __future__ import annotations

import pytest

from roofing_core.measures.counting import whole_packs
from roofing_core.roof.pitch import slope_factor


def test_plan_of_1800_ft2_at_9_in_12():
    # Factor 1.25: 2,250 ft2; with 10 % waste 2,475; 24.75 squares, ordered as 25. All exact.
    area = 1800 * slope_factor(9 / 12)
    assert area == 2250
    assert area * 1.1 == pytest.approx(2475)
    assert area * 1.1 / 100 == pytest.approx(24.75)
    assert whole_packs(area * 1.1, 100) == 25
