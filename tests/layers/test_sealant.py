"""Beads, dabs, laps and bedding by volume, and in cartridges and cans."""

from __future__ import annotations

from math import pi

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.layers.sealant import (
    CARTRIDGE,
    SECTIONS,
    bead_section,
    bead_volume,
    bedding_volume,
    dab_volume,
    sealant,
)
from roofing_core.measures.faults import Refused
from roofing_core.measures.units import convert

SHAPES = st.sampled_from(sorted(SECTIONS))


def refused(call, *args, **asked) -> list[str]:
    with pytest.raises(Refused) as caught:
        call(*args, **asked)
    return [fault.written() for fault in caught.value.faults]


# Published.


# Packs as printed on them and in sellers' tables: a 10.1 fl oz cartridge as 18.3 in3 and as
# 299 mL; printed to 0.1 in3 and 1 mL. 18.3 is rounded up from 18.23, so a whole tenth is asked.
def test_a_cartridge_holds_what_is_printed():
    assert pytest.approx(18.3, abs=0.1) == CARTRIDGE
    assert convert(CARTRIDGE, "in3", "metric") == pytest.approx(299, abs=0.5)


# Federal housing handbook on cemented low slopes (Canada): cold cement, about 0.5 L/m2, which is
# 1 imperial gallon (277.42 in3) to 100 ft2. Printed to one figure, so within 10 %; the two are held
# against each other through a bed of that thickness, 277.42 / 14400 in.
def test_a_bed_of_one_imperial_gallon_a_square_is_half_a_litre_to_the_metre():
    thickness = 277.42 / 14400
    square_metre = 1_000_000 * 100 / 64516
    litres = convert(bedding_volume(square_metre, thickness=thickness), "in3", "metric") / 1000
    assert litres == pytest.approx(0.5, rel=0.1)


# Exact by definition (1 US fl oz = 231/128 in3), computed apart from the code: feet of bead from
# one 10.1 fl oz cartridge, to 0.1 ft. Columns: round, half round, square, fillet, the order of
# the sections in the library.
FEET = {
    1 / 8: (123.8, 247.5, 97.2, 194.4),
    3 / 16: (55.0, 110.0, 43.2, 86.4),
    1 / 4: (30.9, 61.9, 24.3, 48.6),
    5 / 16: (19.8, 39.6, 15.6, 31.1),
    3 / 8: (13.8, 27.5, 10.8, 21.6),
    1 / 2: (7.7, 15.5, 6.1, 12.2),
}


@pytest.mark.parametrize(("size", "feet"), FEET.items())
def test_feet_of_bead_from_a_cartridge(size, feet):
    for section, printed in zip(SECTIONS, feet, strict=True):
        reach = sealant(bead_size=size, bead_section=section).bead_reach
        assert reach / 12 == pytest.approx(printed, abs=0.05)


# The same way: ft2 to the gallon, 1.604167 over the thickness in inches, to 0.01 or 0.1 ft2.
@pytest.mark.parametrize(
    ("thickness", "feet", "within"),
    [(1 / 16, 25.7, 0.05), (1 / 8, 12.83, 0.005), (1 / 4, 6.42, 0.005)],
)
def test_spread_of_a_gallon(thickness, feet, within):
    assert sealant(bedding_thickness=thickness).spread / 144 == pytest.approx(feet, abs=within)


# The same way: dabs 1 in across, in3 each to 0.0001, and to a 10.1 fl oz cartridge to 0.1.
@pytest.mark.parametrize(
    ("thickness", "volume", "to_a_cartridge"), [(1 / 8, 0.0982, 185.7), (1 / 4, 0.1963, 92.8)]
)
def test_dabs_from_a_cartridge(thickness, volume, to_a_cartridge):
    assert dab_volume(1, thickness=thickness) == pytest.approx(volume, abs=0.00005)
    assert CARTRIDGE / dab_volume(1, thickness=thickness) == pytest.approx(to_a_cartridge, abs=0.05)


# A square of three-tab strips sealed by hand, 80 strips at 6 dabs of 1 x 1/8 in (number and size
# from the shingle makers' bulletin on slopes over 21:12): 47.12 in3, 26.11 fl oz, 3 cartridges.
def test_a_square_sealed_by_hand():
    sealed = sealant(dabs=480, dab_diameter=1, dab_thickness=1 / 8)
    assert sealed.dab_volume == pytest.approx(47.12, abs=0.005)
    assert convert(sealed.dab_volume, "in3") == pytest.approx(26.11, abs=0.005)
    assert sealed.cartridges == 3
    assert sealed.cans == 0


# By hand.


def test_the_ridge_of_a_shed():
    # Two 1/4 in square beads under each leg of 168 in: 672 in x 1/16 = 42 in3. Two laps of 8 in:
    # 1 in3. 16 dabs of pi/4 x 1/8 = 1.5708. 44.57 in3 in cartridges of 20: three, 15.43 left.
    # Bedding 5 ft2 at 1/10 in: 72 in3 from one can of 100; 28 left; a can beds 1000 in2.
    sealed = sealant(
        672, bead_size=0.25, bead_section="square", dabs=16, laps=2, lap_bead=8,
        bedding_area=720, bedding_thickness=0.1, cartridge=20, can=100,
    )  # fmt: skip
    assert (sealed.bead_volume, sealed.lap_volume) == (42, 1)
    assert sealed.dab_volume == pytest.approx(1.5708, abs=0.00005)
    assert sealed.bedding_volume == pytest.approx(72)
    assert sealed.total_volume == pytest.approx(116.5708, abs=0.00005)
    assert (sealed.cartridges, sealed.cans) == (3, 1)
    assert sealed.cartridge_left == pytest.approx(15.4292, abs=0.00005)
    assert sealed.can_left == pytest.approx(28)
    assert sealed.bead_reach == 320
    assert sealed.spread == pytest.approx(1000)


def test_dabs_of_the_size_asked_for():
    # 2 in across and 1/4 in thick: pi/4 x 4 x 1/4 = 0.7854 in3 each.
    assert sealant(dabs=10, dab_diameter=2, dab_thickness=0.25).dab_volume == pytest.approx(
        7.854, abs=0.0005
    )


def test_the_note_says_which_bead_and_what_comes_from_what():
    assert sealant(bead_section="half_round", bead_size=0.375).note.written() == (
        "The bead is meant as a 3/8 in half round bead. Beads, dabs and laps are from cartridges,"
        " bedding is from cans."
    )
    assert "10 mm round bead" in sealant(bead_size=100 / 254).note.written("metric")


def test_a_cartridge_used_up_to_the_last_is_one_cartridge():
    exact = sealant(bead_length=CARTRIDGE / bead_section(0.25))
    assert exact.cartridges == 1
    assert exact.cartridge_left == pytest.approx(0, abs=1e-9)


def test_nothing_to_seal_takes_nothing():
    nothing = sealant()
    assert (nothing.total_volume, nothing.cartridges, nothing.cans) == (0, 0, 0)
    assert (nothing.cartridge_left, nothing.can_left) == (0, 0)


# Laws.

sizes = st.floats(0.05, 2)
amounts = st.floats(0, 1000)


@given(sizes)
def test_sections_stand_to_each_other_as_their_shapes_do(size):
    circle = bead_section(size, section="round")
    square = bead_section(size, section="square")
    assert circle == pytest.approx(pi * (size / 2) ** 2)
    assert bead_section(size, section="half_round") == pytest.approx(circle / 2)
    assert square == pytest.approx(size * size)
    assert bead_section(size, section="fillet") == pytest.approx(square / 2)


@given(amounts, amounts, sizes, SHAPES)
def test_two_beads_take_what_one_of_their_length_takes(one, other, size, section):
    apart = sum(bead_volume(long, size=size, section=section) for long in (one, other))
    assert bead_volume(one + other, size=size, section=section) == pytest.approx(apart)
    assert sealant(one + other, bead_size=size, bead_section=section).bead_volume == pytest.approx(
        apart
    )


sealed_roofs = st.fixed_dictionaries(
    {
        "bead_length": amounts,
        "bead_size": sizes,
        "bead_section": SHAPES,
        "dabs": st.integers(0, 500),
        "laps": st.integers(0, 20),
        "lap_bead": amounts,
        "bedding_area": st.floats(0, 1e5),
        "bedding_thickness": sizes,
        "cartridge": st.floats(5, 60),
        "can": st.floats(50, 1200),
    }
)


@given(sealed_roofs)
def test_each_use_takes_its_volume(asked):
    sealed = sealant(**asked)
    bead = {"size": asked["bead_size"], "section": asked["bead_section"]}
    assert sealed.bead_volume == pytest.approx(bead_volume(asked["bead_length"], **bead))
    assert sealed.lap_volume == pytest.approx(
        asked["laps"] * bead_volume(asked["lap_bead"], **bead)
    )
    assert sealed.dab_volume == pytest.approx(asked["dabs"] * dab_volume(1))
    assert sealed.bedding_volume == pytest.approx(
        asked["bedding_area"] * asked["bedding_thickness"]
    )
    assert bead_volume(sealed.bead_reach, **bead) == pytest.approx(asked["cartridge"])
    assert sealed.spread * asked["bedding_thickness"] == pytest.approx(asked["can"])


@given(sealed_roofs)
def test_packs_hold_what_is_needed_and_no_pack_is_left_unopened(asked):
    sealed = sealant(**asked)
    gunned = sealed.bead_volume + sealed.dab_volume + sealed.lap_volume
    assert sealed.total_volume == pytest.approx(gunned + sealed.bedding_volume)
    for packs, pack, needed, left in (
        (sealed.cartridges, asked["cartridge"], gunned, sealed.cartridge_left),
        (sealed.cans, asked["can"], sealed.bedding_volume, sealed.can_left),
    ):
        assert packs * pack == pytest.approx(needed + left, abs=1e-6)
        assert 0 <= left < pack


# Of a number in some hundreds, numpy's square and Python's power differ in the last bit.
COLUMN = np.linspace(0.1, 3.1, 4001)


@pytest.mark.parametrize(
    "formula",
    [
        bead_section,
        dab_volume,
        lambda area: bedding_volume(area, thickness=0.125),
        lambda long: bead_volume(long, size=0.25, section="half_round"),
    ],
)
def test_a_column_gives_what_each_of_its_numbers_gives(formula):
    assert list(formula(COLUMN)) == [formula(float(one)) for one in COLUMN]


# Refusals.


def test_every_bad_field_is_named_at_once():
    sentences = refused(
        sealant, -1.0, bead_size=0.0, bead_section="oval", dabs=-1, dab_diameter=0.0,
        dab_thickness=float("nan"), laps=-1, lap_bead=float("inf"), bedding_area=-1.0,
        bedding_thickness=0.0, cartridge=0.0, can=float("nan"),
    )  # fmt: skip
    assert [sentence.split(" came as ")[0] for sentence in sentences] == [
        "bead_length", "bead_size", "bead_section", "dabs", "dab_diameter", "dab_thickness",
        "laps", "lap_bead", "bedding_area", "bedding_thickness", "cartridge", "can",
    ]  # fmt: skip
    assert sentences[2] == "bead_section came as oval: one of round, half_round, square, fillet"
    assert sentences[1] == "bead_size came as 0 in: more than zero and at most 100000 ft"


def test_bad_numbers_in_a_column_are_refused():
    assert refused(bead_section, np.array([0.25, 0.0, np.nan])) == [
        "size.1 came as 0 in: more than zero and at most 100000 ft",
        "size.2 came as nan: more than zero and at most 100000 ft",
    ]
    assert refused(bead_volume, np.array([1.0, -1.0]), size=0, section="oval") == [
        "bead_length.1 came as -1 in: zero or more and at most 100000 ft",
        "size came as 0 in: more than zero and at most 100000 ft",
        "section came as oval: one of round, half_round, square, fillet",
    ]
    assert len(refused(dab_volume, 0, thickness=0)) == 2
    assert len(refused(bedding_volume, -1, thickness=0)) == 2
