"""A sealant supplier's page on yield, and the coating trade's rule of 1,604.

The page: what cartridges hold in cubic inches, and feet of joint from 18 in3: "divide 18 by the
section times 12". The rule: 1,604 ft2 to the gallon at a thickness of one mil (1/1000 in).
"""

from __future__ import annotations

import pytest

from roofing_core.layers.sealant import sealant
from roofing_core.measures.reading import read

HALF_A_TENTH = 0.05  # in3


@pytest.mark.parametrize(
    ("text", "printed"), [("600 mL", 36.6), ("27 fl oz", 48.7), ("30 fl oz", 54.1)]
)
def test_what_a_pack_holds(text, printed):
    # The 20 ounce sausage of 36.6 in3 holds 600 mL.
    assert read(text, "in3") == pytest.approx(printed, abs=HALF_A_TENTH)


def test_what_a_small_cartridge_holds():
    # "A standard 10.1 oz cartridge contains 18.3 cubic inches": that is 300 mL, which is 10.14 oz.
    assert read("300 mL", "in3") == pytest.approx(18.3, abs=HALF_A_TENTH)
    assert read("10.1 fl oz", "in3") == pytest.approx(18.3, abs=2 * HALF_A_TENTH)


def test_feet_from_18_cubic_inches():
    # A joint 1/4 x 1/4 in takes 3/4 in3 a foot: 24 ft.
    assert sealant(bead_section="square", bead_size=0.25, cartridge=18).bead_reach == 24 * 12


# 1,604 is rounded to the whole square foot: 231 in3 at 1/1000 in are 1604.17.
HALF_A_FOOT_IN_1604 = 0.5 / 1604
A_HUNDREDTH = 0.01  # ft2, the chart's last place, cut off or rounded


@pytest.mark.parametrize(
    ("mils", "printed"),
    [(1, 1604), (3, 534.67), (5, 320.8), (10, 160.4), (12, 133.67), (16, 100.25), (20, 80.2),
     (30, 53.47), (40, 40.1), (50, 32.08), (100, 16.04)],
)  # fmt: skip
def test_spread_of_a_gallon(mils, printed):
    spread = sealant(can=read("1 gal", "in3"), bedding_thickness=mils / 1000).spread / 144
    assert spread == pytest.approx(printed, rel=HALF_A_FOOT_IN_1604, abs=A_HUNDREDTH)
