"""Feet from a cartridge, dabs from a cartridge, area from a gallon: worked out from definitions.

A cartridge of 10.1 fl oz is 10.1 x 231/128 = 18.227 in3. A bead of size s has a section of
pi/4 s2 (round), pi/8 s2 (half round), s2 (square) or s2/2 (fillet).
"""

from __future__ import annotations

import pytest

from roofing_core.layers.sealant import dab_volume, sealant
from roofing_core.measures.reading import read
from roofing_core.measures.units import convert

HALF_A_TENTH = 0.05  # ft, the table's last place

#: Size: feet of round, half round, square and fillet.
REACH = {
    1 / 8: (123.8, 247.5, 97.2, 194.4),
    3 / 16: (55.0, 110.0, 43.2, 86.4),
    1 / 4: (30.9, 61.9, 24.3, 48.6),
    5 / 16: (19.8, 39.6, 15.6, 31.1),
    3 / 8: (13.8, 27.5, 10.8, 21.6),
    1 / 2: (7.7, 15.5, 6.1, 12.2),
}


@pytest.mark.parametrize(("size", "feet"), REACH.items())
@pytest.mark.parametrize(
    ("column", "section"), [(0, "round"), (1, "half_round"), (2, "square"), (3, "fillet")]
)
def test_feet_from_a_cartridge(size, feet, column, section):
    reach = sealant(bead_size=size, bead_section=section).bead_reach / 12
    assert reach == pytest.approx(feet[column], abs=HALF_A_TENTH)


@pytest.mark.parametrize(
    ("thickness", "volume", "dabs"), [(1 / 8, 0.0982, 185.7), (1 / 4, 0.1963, 92.8)]
)
def test_dabs_from_a_cartridge(thickness, volume, dabs):
    assert dab_volume(1, thickness=thickness) == pytest.approx(volume, abs=0.00005)
    cartridge = read("10.1 fl oz", "in3")
    assert cartridge / dab_volume(1, thickness=thickness) == pytest.approx(dabs, abs=HALF_A_TENTH)
    assert sealant(dabs=int(dabs), dab_thickness=thickness).cartridges == 1
    assert sealant(dabs=int(dabs) + 1, dab_thickness=thickness).cartridges == 2


@pytest.mark.parametrize(
    ("thickness", "area", "gallons"),
    [(1 / 16, 25.67, 3.90), (1 / 8, 12.83, 7.79), (1 / 4, 6.42, 15.58)],
)
def test_area_from_a_gallon(thickness, area, gallons):
    # 231 / 144 = 1.604167 ft2 at 1 in.
    used = sealant(bedding_area=100 * 144, bedding_thickness=thickness)
    assert used.spread / 144 == pytest.approx(area, abs=0.005)
    assert used.bedding_volume / 231 == pytest.approx(gallons, abs=0.005)
    assert used.cans == int(gallons) + 1


@pytest.mark.parametrize(
    ("text", "cubic_inches", "millilitres"),
    [("10.1 fl oz", 18.227, 298.7), ("10.3 fl oz", 18.588, 304.6), ("28 fl oz", 50.53, 828.1),
     ("29 fl oz", 52.34, 857.6)],
)  # fmt: skip
def test_what_packs_hold(text, cubic_inches, millilitres):
    assert read(text, "in3") == pytest.approx(cubic_inches, abs=0.005)
    assert convert(read(text, "in3"), "in3", "metric") == pytest.approx(millilitres, abs=0.05)
