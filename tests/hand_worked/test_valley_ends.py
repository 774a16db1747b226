"""How far the metal of a valley goes on past its ends: two pairs of planes worked out by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from roofing_core import Choices
from roofing_core.job.choices import Valleying
from roofing_core.job.valley_ends import valley_ends
from roofing_core.job.wiring import site_of
from roofing_core.roof.given_planes import GivenPlane, GivenPlanes

# Up from the valley's top, 48 in left of its foot and 152 in up, the plane goes on along a rake.
# Shingles stop 3 in short of the valley, so that the rake is bare for 3 / sin, and along the valley
# that is 3 / tan: tan is 48 / 152, and 3 * 152 / 48 = 9.5 in, over the 6 in that are the default.
# A lap of 6 in more makes 15.5 in.
UPPER = GivenPlane(
    name="upper",
    pitch=0.5,
    corners=((0, 0), (336, 0), (336, 200), (-48, 200), (-48, 152)),
    edges=("eave", "rake", "ridge", "rake", "valley"),
    beyond=("", "", "", "", "lower"),
)
# The valley leaves the eave of both planes at a slope of 152 in 48: a leg of 12 in comes to the
# eave after 12 * 48 / 152 = 3.8 in, less than the 12 in that are the default.
STEEP = GivenPlane(
    name="lower",
    pitch=0.5,
    corners=((0, 0), (120, 0), (168, 152), (0, 152)),
    edges=("eave", "valley", "ridge", "rake"),
    beyond=("", "upper", "", ""),
)
# At 48 in 152 it comes to the eave after 12 * 152 / 48 = 38 in.
FLAT = replace(STEEP, corners=((0, 0), (120, 0), (272, 48), (0, 48)))


def ends(lower: GivenPlane, **valleying: float) -> tuple[float, float]:
    """Give how far the metal goes on below the foot and over the top."""
    choices = Choices(valleying=Valleying(**valleying))  # type: ignore[arg-type]
    site = site_of(GivenPlanes(planes=(UPPER, lower)), choices)
    [valley] = [line for line in site.surfaces.lines if line.kind == "valley"]
    found = valley_ends(site, valley)
    return found.past_foot, found.over_top


def test_metal_goes_on_beside_a_rake_until_shingles_cover_it_and_a_lap_more():
    assert ends(STEEP) == pytest.approx((12, 15.5))
    assert ends(STEEP, exposed_width=8) == pytest.approx((12, 4 * 152 / 48 + 6))


def test_metal_of_a_flat_valley_starts_further_down():
    assert ends(FLAT) == pytest.approx((38, 15.5))


def test_what_was_chosen_is_the_least():
    assert ends(FLAT, past_eave=40, over_ridge=20) == (40, 20)
    # 10 in would be 1/2 in more than lies bare: too little under the shingles.
    assert ends(FLAT, past_eave=40, over_ridge=10) == pytest.approx((40, 15.5))
    assert ends(FLAT, past_eave=-1, over_ridge=-1) == (-1, -1)  # refused where metal is laid
