"""Dead and live loads of roofs: a permit sheet, an ASCE 7 example, the residential code's table."""

from __future__ import annotations

from math import inf

import pytest

from roofing_core import deck_load, roof_live_load, stacked_load
from roofing_core.ruling.listing import RULES

FOOT = 144.0


def test_permit_sheet_of_two_layers():
    # Two layers of shingles 5.0, felt 0.5, plywood 1.5, rafters 1.7, other 1.3: 10.0 psf.
    found = deck_load(0, layers=2, other=1.7 + 1.3)
    assert (found.covering, found.underlayment, found.panels) == (5.0, 0.5, 1.5)
    assert found.per_slope_area == pytest.approx(10.0, abs=0.05)


def test_live_load_at_5_in_12_by_asce_7():
    # ASCE 7-05 eq. 4-2 in a permit calculation: R1 = 1, R2 = 1.2 - 0.05 x 5 = 0.95; 19 psf.
    assert roof_live_load(5 / 12, tributary_area=200 * FOOT, by="asce_7") == pytest.approx(19)


# IRC Table R301.6, 2018, as restated with its examples: rafters on slopes under 4:12 20 psf; a
# ridge beam at 8:12 of over 200 ft2 14; one at 12:12 of over 600 ft2 12; a state's digest has 20,
# 16 and 12 for the least areas.
@pytest.mark.parametrize(
    ("rise", "feet", "printed"),
    [(3.99, 27, 20), (8, 400, 14), (12, 700, 12), (2, 200, 20), (4, 200, 16), (11.9, 200, 16),
     (12, 200, 12)],
)  # fmt: skip
def test_live_load_by_the_residential_code(rise, feet, printed):
    assert roof_live_load(rise / 12, tributary_area=feet * FOOT) == printed


def test_both_live_loads_fall_with_pitch_and_area_between_20_and_12():
    for by in ("irc", "asce_7"):
        before = inf
        for rise in (0, 4, 6, 12, 24):
            loads = [
                roof_live_load(rise / 12, tributary_area=feet * FOOT, by=by)
                for feet in (1, 200, 201, 600, 601, 5000)
            ]
            assert loads == sorted(loads, reverse=True)
            assert 12 <= min(loads) <= max(loads) <= 20
            assert loads[0] <= before
            before = loads[0]


# IRC R908.3.1.1, as restated: not over two layers or more.
@pytest.mark.parametrize(("layers", "allowed"), [(1, True), (2, True), (3, False)])
def test_two_layers_at_most(layers, allowed):
    found = deck_load(5 / 12, layers=layers)
    assert found.layers_allowed is allowed
    assert any("old ones come off" in one.written() for one in found.limits) is not allowed
    assert RULES["load.layers"].limit == 2


# Component makers' guide B4, as restated by building inspectors: asphalt shingles two bundles high,
# for a week at most.
@pytest.mark.parametrize(("bundles", "kept"), [(1, True), (2, True), (3, False)])
def test_two_bundles_high_at_most(bundles, kept):
    assert stacked_load(bundles, pitch=0.25).height_kept is kept


def test_a_stack_spread_over_the_area_that_would_do_is_the_live_load():
    stack = stacked_load(4, pitch=5 / 12, bundle_weight=70)
    assert (stack.weight, stack.live_load, stack.within_live_load) == (280, 16, False)
    side = stack.area_to_spread**0.5
    spread = stacked_load(
        4, pitch=5 / 12, bundle_weight=70, patch_length=side, patch_width=side
    )  # fmt: skip
    assert spread.load == pytest.approx(16)
    assert spread.within_live_load
    assert spread.most_bundles == 4
