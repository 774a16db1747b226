"""Net coverage of rolls by the rows laid, and how far ice barriers reach: worked out by hand."""

from __future__ import annotations

import pytest

from roofing_core.layers.underlaying.ice_barrier import ice_barrier
from roofing_core.layers.underlaying.ice_reach import ice_barrier_reach
from roofing_core.layers.underlaying.underlayment import underlayment

FELT_15, FELT_30 = 144 * 12, 72 * 12


# 36 in less the lap, times the length: 34 in x 144 ft = 408 ft2, 32 in 384, 17 in 204; half for
# the shorter roll.
@pytest.mark.parametrize(
    ("roll_length", "lap", "pitch", "net"),
    [
        (FELT_15, 2, 4 / 12, 408),
        (FELT_15, 4, 4 / 12, 384),
        (FELT_15, 2, 3 / 12, 204),
        (FELT_30, 2, 4 / 12, 204),
        (FELT_30, 4, 4 / 12, 192),
        (FELT_30, 2, 3 / 12, 102),
    ],
)
def test_net_area_of_a_roll(roll_length, lap, pitch, net):
    laid = underlayment(168, slope_length=300, pitch=pitch, roll_length=roll_length, head_lap=lap)
    full = [row for row in laid.rows if row.kind == "full"]
    exposed = full[1].lower - full[0].lower
    assert exposed == laid.exposure
    assert exposed * roll_length / 144 == net


def test_a_roll_is_used_up_by_the_rows_it_makes():
    # 172 in a row with 2 in to trim at each rake: ten rows of 1,728 in, 8 in left; the eleventh row
    # goes on from a second roll. Eleven rows: the tenth reaches -1/4 + 9 x 34 + 36 = 341 3/4 in.
    ten = underlayment(168, slope_length=341.75, pitch=4 / 12, head_lap=2)
    eleven = underlayment(168, slope_length=341.8125, pitch=4 / 12, head_lap=2)
    assert (len(ten.rows), ten.rolls, ten.left_over) == (10, 1, 8)
    assert (len(eleven.rows), eleven.rolls) == (11, 2)


# (overhang + 24) x slope factor: 36 x 1.05409 = 37.95, 36 x 13/12 = 39 exactly, 24 x 1.05409 =
# 25.30; at 8:12 24 x 1.20185 = 28.84 is less than 36, 36 x 1.20185 = 43.27 is not.
@pytest.mark.parametrize(
    ("overhang", "rise", "reach"),
    [(12, 4, 37.95), (12, 5, 39.00), (0, 4, 25.30), (0, 8, 36.00), (12, 8, 43.27)],
)
def test_reach_of_an_ice_barrier(overhang, rise, reach):
    found = ice_barrier_reach(overhang, pitch=rise / 12, edition="2018")
    assert found == pytest.approx(reach, abs=0.005)


@pytest.mark.parametrize(("overhang", "rows"), [(12, 2), (0, 1)])
def test_rows_of_an_ice_barrier(overhang, rows):
    # 37.95 in is more than the 35 3/4 of one 36 in row that starts 1/4 in past the metal.
    reach = ice_barrier_reach(overhang, pitch=4 / 12)
    laid = ice_barrier(168, slope_length=112, reach=reach)
    assert len(laid.rows) == rows
    assert laid.upper >= reach
