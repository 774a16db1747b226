"""A trade rule, as restated: caps cut from a bundle of three-tab shingles.

Three a shingle, 5 in exposed, "about 35 ft a bundle". Bundles of 27 (Navy manual) and of 29 strips
(trade press) make 33.75 and 36.25 ft, worked out from the rule.
"""

from __future__ import annotations

import pytest

from roofing_core.layers.caps import caps

A_HAIR = 1 / 16  # in


@pytest.mark.parametrize(("strips", "feet"), [(27, 33.75), (29, 36.25)])
def test_a_bundle_caps_so_many_feet_and_no_more(strips, feet):
    full = caps(feet * 12, line="hip", per_pack=strips).stock
    assert (full.shingles, full.packs, full.left_over) == (strips, 1, 0)
    assert caps(feet * 12 + A_HAIR, line="hip", per_pack=strips).stock.packs == 2


def test_about_35_ft_a_bundle():
    # Between the two bundles, to the foot or two that "about" allows.
    bundles = [caps(35 * 12, line="ridge", per_pack=strips).stock.packs for strips in (27, 29)]
    assert bundles == [2, 1]
