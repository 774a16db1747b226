"""A Canadian trade association's roofing reference manual, 9.4.5, Ridges."""

from __future__ import annotations

from roofing_core.layers.caps import caps
from roofing_core.materials import Shingle, material


def test_strips_cut_in_thirds():
    # "Strip shingles cut in thirds", so that a cap reaches as far down both sides.
    strip = material(Shingle, "inch_three_tab")
    laid = caps(120, line="hip", cap_width=strip.length / 3)
    assert laid.stock.shingles == laid.count / 3
    assert laid.half_width == strip.length / 6


def test_hips_start_at_the_eaves_and_ridges_away_from_the_prevailing_wind():
    assert caps(120, line="hip").laid_from == "start"  # its lower end
    assert caps(120, line="ridge", wind_from="start").laid_from == "end"
    assert caps(120, line="ridge", wind_from="end").laid_from == "start"


def test_no_nail_is_left_exposed_but_the_last_two():
    laid = caps(120, line="ridge")
    under = sum(
        nail > over for nail, over in zip(laid.nail_positions, laid.butts[1:], strict=False)
    )
    assert 2 * under + laid.exposed_nails == laid.nails
