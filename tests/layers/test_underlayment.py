"""Underlayment and ice barrier: hand-worked planes, printed values, and laws over random planes."""

from __future__ import annotations

from collections import Counter
from functools import cache
from itertools import pairwise
from math import ceil
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from roofing_core.layers.underlaying.end_laps import Cutting, fill_row
from roofing_core.layers.underlaying.ice_barrier import ice_barrier, no_ice_barrier
from roofing_core.layers.underlaying.ice_reach import ice_barrier_reach
from roofing_core.layers.underlaying.layering import underlayment_layers
from roofing_core.layers.underlaying.underlaid import Underlayment
from roofing_core.layers.underlaying.underlayment import underlayment
from roofing_core.measures.faults import Refused, TooManyPieces

SIXTEENTH = 1 / 16


def inches(low: int, high: int):
    """Lengths in sixteenths of an inch, exact as floats."""
    return st.integers(low * 16, high * 16).map(lambda n: n * SIXTEENTH)


# ---- Published -----------------------------------------------------------------------------------

# Felt as sold, 36 in wide, in the roofing tables restated by the shop: net cover of a roll in ft2
# by head lap. Printed to 1 ft2; the arithmetic is exact, so nothing is allowed.
NET_COVER = {
    (1728, 3 / 12, 4): 204,  # 19 in laps, "2 squares half-lapped"
    (1728, 4 / 12, 2): 408,
    (1728, 4 / 12, 4): 384,
    (864, 3 / 12, 4): 102,
    (864, 4 / 12, 2): 204,
    (864, 4 / 12, 4): 192,
}


@pytest.mark.parametrize(("roll", "printed"), NET_COVER.items())
def test_net_cover_of_a_roll_is_the_printed_one(roll, printed):
    roll_length, pitch, head_lap = roll
    laid = underlayment(
        168, slope_length=112, pitch=pitch, head_lap=head_lap, roll_length=roll_length
    )
    assert laid.exposure * roll_length / 144 == printed


# IRC table R905.1.1(2) and IBC 1507.1.1 exception 2: 19 in strip, 36 in sheets lapped 19 in, so
# 17 in exposed (Navy Builder, NAVEDTRA 14044, fig. 3-14, prints the 17). Whole inches, exact.
def test_low_slope_laps_are_those_of_the_code():
    laid = underlayment(168, slope_length=112, pitch=2 / 12)
    assert (laid.rows[0].width, laid.head_lap, laid.exposure) == (19, 19, 17)


# IRC R905.1.2 worked for overhangs: (overhang, rise in 12) to inches up the slope, printed to
# 1/100 in, so half of that is all that can be asked of it.
REACH = {(12, 4): 37.95, (12, 5): 39.00, (0, 4): 25.30}
HUNDREDTH = 0.005


@pytest.mark.parametrize(("roof", "printed"), REACH.items())
def test_ice_barrier_reaches_as_far_as_printed(roof, printed):
    overhang, rise = roof
    assert ice_barrier_reach(overhang, pitch=rise / 12) == pytest.approx(printed, abs=HUNDREDTH)


# The same source: 12 in overhang at 4:12 takes "two 36 in courses".
def test_a_12_in_overhang_at_4_in_12_takes_two_rows():
    reach = ice_barrier_reach(12, pitch=4 / 12)
    assert len(ice_barrier(168, slope_length=240, reach=reach).rows) == 2


# ---- Worked by hand ------------------------------------------------------------------------------


def test_two_layers_on_14_ft_by_9_ft_4_in():
    """From -1/4 in, sheets every 17 in: the 6th reaches 120 3/4, the 5th only 103 3/4.

    The next would start at 101 3/4, and is ripped to 112 - 101 3/4 = 10 1/4. Lengths of 168 + 4:
    strip and 6 sheets, 7 x 172 = 1204 of 1728; the top strip comes out of the 17 in beside the
    starter strip.
    """
    laid = underlayment(168, slope_length=112, pitch=3 / 12)
    assert [(row.kind, row.lower, row.upper, row.width) for row in laid.rows] == [
        ("starter_strip", -0.25, 18.75, 19),
        ("full", -0.25, 35.75, 36),
        ("full", 16.75, 52.75, 36),
        ("full", 33.75, 69.75, 36),
        ("full", 50.75, 86.75, 36),
        ("full", 67.75, 103.75, 36),
        ("full", 84.75, 112, 36),
        ("top_strip", 101.75, 112, 10.25),
    ]
    assert [row.trim for row in laid.rows] == [0, 0, 0, 0, 0, 0, 8.75, 0]
    assert [row.head_lap for row in laid.rows] == [0, 19, 19, 19, 19, 19, 19, 10.25]
    assert (laid.layers, laid.rolls, laid.left_over, laid.end_laps) == (2, 1, 524, 0)
    assert laid.roll_plan[0].cuts[-1].taken_from == "rest_of_width"
    assert laid.area_cut == 172 * (19 + 6 * 36 + 10.25)
    assert laid.area_laid == 168 * (19 + 5 * 36 + 27.25 + 10.25)


def test_fasteners_on_14_ft_by_9_ft_4_in():
    """Strip and first sheet share the eave line; 6 laps above it; a field line over each of the 7.

    Usual: 7 lines of 168/12 + 1 = 15 and 7 of 168/24 + 1 = 8, so 161. High wind (6 in, 12 in, two
    lines): 7 x 29 + 14 x 15 = 413.
    """
    usual = underlayment(168, slope_length=112, pitch=3 / 12)
    windy = underlayment(
        168, slope_length=112, pitch=3 / 12, lap_spacing=6, field_spacing=12, field_lines=2
    )
    assert (usual.fasteners, windy.fasteners) == (161, 413)
    assert (usual.eave_edge_length, usual.head_lap_length) == (168, 6 * 168)
    assert (usual.field_length, windy.field_length) == (7 * 168, 14 * 168)
    assert usual.end_lap_length == 0
    field = [line.lower for line in usual.fastener_lines if line.kind == "field"]
    assert field[:2] == [8.25, 25.25]  # halfway from -1/4 to 16 3/4, and on to 33 3/4


def test_one_layer_on_14_ft_by_9_ft_4_in():
    """Rows every 32 in from -1/4; the 4th from 95 3/4 tops out at 131 3/4, 19 3/4 too far."""
    laid = underlayment(168, slope_length=112, pitch=4 / 12)
    assert [row.lower for row in laid.rows] == [-0.25, 31.75, 63.75, 95.75]
    assert [row.head_lap for row in laid.rows] == [0, 4, 4, 4]
    assert (laid.rows[-1].upper, laid.rows[-1].trim) == (112, 19.75)
    assert (laid.layers, laid.rolls, laid.left_over) == (1, 1, 1728 - 4 * 172)


@pytest.mark.parametrize(("head_lap", "rows", "sixth"), [(2, 6, 205.75), (4, 7, 195.75)])
def test_rows_up_200_in_of_slope(head_lap, rows, sixth):
    """Counted by hand: 6 rows at 2 in are -1/4 + 6 x 34 + 2 high; at 4 in, -1/4 + 6 x 32 + 4."""
    laid = underlayment(168, slope_length=200, pitch=4 / 12, head_lap=head_lap)
    assert len(laid.rows) == rows
    assert laid.rows[5].lower + 36 == sixth


def test_low_slope_rows_up_100_in_of_slope():
    """By hand: strip and 5 sheets, tops as below; the top strip doubles 86 3/4 to 100 in."""
    kinds = Counter(row.kind for row in underlayment(168, slope_length=100, pitch=2 / 12).rows)
    assert kinds == {"starter_strip": 1, "full": 5, "top_strip": 1}
    full = underlayment(168, slope_length=100, pitch=2 / 12).rows[1:6]
    assert [row.lower + 36 for row in full] == [35.75, 52.75, 69.75, 86.75, 103.75]


def test_a_row_that_ends_on_the_top_edge_needs_none_above_it():
    """Six rows of 34 in and 2 in of lap end at 205 3/4 exactly; a sixteenth more takes a 7th."""
    even = underlayment(168, slope_length=205.75, pitch=4 / 12, head_lap=2)
    more = underlayment(168, slope_length=205.8125, pitch=4 / 12, head_lap=2)
    assert (len(even.rows), even.rows[-1].trim, len(more.rows)) == (6, 0, 7)


def test_a_row_longer_than_its_roll_is_lapped_and_the_next_is_laid_from_the_other_rake():
    """146 ft: rows of 1756 from rolls of 1728.

    Row 1: 1728, then 1756 - 1724 = 32 off roll 2; the lap begins 1724 from the left end, u = 1722.
    Row 2, 1696 in hand: from the left its lap would begin at 1692, 32 short of 1724, and to keep
    72 the piece would lose 40. From the right rake it begins 1756 - 1696 = 60 from the left end.
    """
    laid = underlayment(1752, slope_length=60, pitch=4 / 12)
    assert [row.end_laps for row in laid.rows] == [(1722,), (58,)]
    assert [[piece.length for piece in row.pieces] for row in laid.rows] == [[1728, 32], [64, 1696]]
    assert [[piece.roll for piece in row.pieces] for row in laid.rows] == [[1, 2], [3, 2]]
    assert [used.offcut for used in laid.roll_plan] == [0, 0, 1664]
    assert laid.left_over == 1664
    assert laid.area_laid == (36 + 28.25) * (1752 + 4)


def test_a_piece_is_cut_short_to_keep_the_stagger():
    """Rows of 172 from rolls of 200, end laps as distances from the left end of the row.

    Row 1 whole, 28 left. Row 2: 28, lap at 24; 52 left. Row 3: at 48 it would be 24 from that, so
    52 from the right, lap at 120; 76 left. Row 4: at 72 it would be 48 from that, so it is moved
    to 48 and 24 in of roll 3 fall off.
    """
    laid = underlayment(168, slope_length=130, pitch=4 / 12, roll_length=200)
    assert [row.end_laps for row in laid.rows[:4]] == [(), (22,), (118,), (46,)]
    assert laid.roll_plan[2].offcut == 24


def test_a_rest_is_set_aside_where_no_end_lap_keeps_the_stagger():
    """Rows of 172 from rolls of 256: row 2 laps at 80. The 164 left could lap from 20 to 148 only.

    None of that is 72 from 80 on either side, except under 8 or past 152: row 3 takes a new roll.
    """
    laid = underlayment(168, slope_length=95, pitch=4 / 12, roll_length=256)
    assert [row.end_laps for row in laid.rows] == [(), (78,), ()]
    assert (laid.rolls, laid.roll_plan[1].offcut, laid.left_over) == (3, 164, 84)


def test_a_rest_shorter_than_the_least_piece_is_not_used():
    """Ten rows of 172 leave 8 in of a roll of 1728: the 11th row is whole, off a new roll."""
    laid = underlayment(168, slope_length=350, pitch=4 / 12)
    assert len(laid.rows) == 11
    assert (laid.rolls, laid.end_laps, laid.roll_plan[0].offcut) == (2, 0, 8)


def test_a_top_strip_too_wide_for_the_starters_rest_takes_a_length_of_its_own():
    """Beside 19 in of strip 17 are left. Five sheets reach 103 3/4 in; it starts at 84 3/4.

    Up 103 1/2 in it is 18 3/4 wide: strip, 5 sheets and top strip are 7 lengths. Up 101 3/4, 17.
    """
    wide = underlayment(168, slope_length=103.5, pitch=3 / 12)
    assert wide.rows[-1].width == 18.75
    assert {cut.taken_from for cut in wide.roll_plan[0].cuts} == {"length"}
    assert wide.left_over == 1728 - 7 * 172
    narrow = underlayment(168, slope_length=101.75, pitch=3 / 12)
    assert narrow.rows[-1].width == 17
    assert narrow.roll_plan[0].cuts[-1].taken_from == "rest_of_width"
    assert narrow.left_over == 1728 - 6 * 172


def test_one_end_lap_is_fastened_between_the_lines_at_its_ends():
    """Row 1 of 146 ft: from -1/4 to the next lap at 31 3/4 is 32 in: 3 spaces of 12, 2 between."""
    laid = underlayment(1752, slope_length=60, pitch=4 / 12)
    up = [line for line in laid.fastener_lines if line.kind == "end_lap"]
    assert [(line.left, line.lower, line.upper, line.count) for line in up] == [
        (1722, -0.25, 31.75, 2),
        (58, 31.75, 60, 2),
    ]
    assert laid.end_lap_length == 32 + 28.25


def test_underlayment_starts_on_an_ice_barrier():
    """Barrier to 67 3/4 (two rows of 36 lapped 4 from -1/4): underlayment from 63 3/4."""
    reach = ice_barrier_reach(12, pitch=4 / 12)
    barrier = ice_barrier(168, slope_length=112, reach=reach)
    assert [row.lower for row in barrier.rows] == [-0.25, 31.75]
    assert (barrier.upper, barrier.rolls, barrier.left_over) == (67.75, 1, 800 - 2 * 172)
    laid = underlayment(168, slope_length=112, pitch=4 / 12, ice_barrier_top=barrier.upper)
    assert [(row.lower, row.head_lap) for row in laid.rows] == [(63.75, 4), (95.75, 4)]
    assert (laid.eave_edge_length, laid.head_lap_length) == (0, 2 * 168)


def test_an_ice_barrier_over_the_whole_plane_leaves_nothing_to_lay():
    barrier = ice_barrier(168, slope_length=60, reach=90)
    assert (barrier.upper, barrier.rows[-1].trim) == (60, 7.75)
    laid = underlayment(168, slope_length=60, pitch=3 / 12, ice_barrier_top=barrier.upper)
    assert (laid.rows, laid.rolls, laid.left_over, laid.fasteners) == ((), 0, 0, 0)


@pytest.mark.parametrize(
    ("edition", "rise", "reach"),
    [
        ("2015", 8, 36),  # no overhang: 24 x 1.2019 = 28.84, under 36
        ("2018", 8, 36),
        ("2021", 8, 36),
        ("2024", 8, 28.84),
        ("2021", 7.99, 28.83),
        ("2021", 16, 40),  # 24 x 5/3
    ],
)
def test_ice_barrier_on_steep_slopes_goes_by_the_edition(edition, rise, reach):
    found = ice_barrier_reach(0, pitch=rise / 12, edition=edition)
    assert found == pytest.approx(reach, abs=HUNDREDTH)


def test_no_ice_barrier_is_all_zero():
    none = no_ice_barrier()
    assert (none.upper, none.rows, none.rolls, none.area_cut) == (0, (), 0, 0)


@pytest.mark.parametrize(("rise", "layers"), [(2, 2), (3.999, 2), (4, 1), (21, 1)])
def test_layers_by_pitch(rise, layers):
    assert underlayment_layers(rise / 12) == layers
    assert underlayment(168, slope_length=112, pitch=rise / 12).layers == layers


# ---- Laws ----------------------------------------------------------------------------------------

PLANES = {
    "eave_length": inches(6, 4000),
    "slope_length": inches(1, 700),
    "roll_length": inches(400, 1800),
}


def covering(laid: Underlayment, u: float, v: float) -> int:
    """Count, piece by piece, how many sheets lie over a point."""
    return sum(
        row.lower <= v <= row.upper and any(piece.left <= u <= piece.right for piece in row.pieces)
        for row in laid.rows
    )


def between(edges: list[float], low: float, high: float) -> list[float]:
    """Give a point in every gap between the edges that lie within limits."""
    inside = sorted({low, high, *(edge for edge in edges if low < edge < high)})
    return [(a + b) / 2 for a, b in pairwise(inside) if b - a > 1e-6]


@given(
    eave_length=inches(6, 4000),
    slope_length=inches(1, 200),
    pitch=st.sampled_from([2 / 12, 3 / 12, 3.9 / 12, 4 / 12, 12 / 12]),
    roll_width=inches(24, 60),
    ice_barrier_top=st.sampled_from([0.0, 35.75]),
)
def test_every_point_lies_under_as_many_sheets_as_there_are_layers(
    eave_length, slope_length, pitch, roll_width, ice_barrier_top
):
    laid = underlayment(
        eave_length,
        slope_length=slope_length,
        pitch=pitch,
        roll_width=roll_width,
        ice_barrier_top=ice_barrier_top,
    )
    rows = [edge for row in laid.rows for edge in (row.lower, row.upper)]
    ends = [end for row in laid.rows for piece in row.pieces for end in (piece.left, piece.right)]
    for v in between(rows, min(ice_barrier_top, slope_length), slope_length):
        for u in between(ends, 0, eave_length):
            assert covering(laid, u, v) >= laid.layers


@given(**PLANES, head_lap=inches(0, 20), past_metal=inches(0, 2), roll_width=inches(24, 60))
def test_single_rows_lap_alike_and_none_is_too_many(
    *, eave_length, slope_length, roll_length, head_lap, past_metal, roll_width
):
    rows = underlayment(
        eave_length,
        slope_length=slope_length,
        pitch=4 / 12,
        roll_length=roll_length,
        head_lap=head_lap,
        past_metal=past_metal,
        roll_width=roll_width,
    ).rows
    assert rows[0].lower == -past_metal
    assert rows[-1].upper == slope_length
    for below, above in pairwise(rows):
        assert below.lower + roll_width - above.lower == head_lap
        assert below.lower + roll_width < slope_length
    for row in rows:
        assert row.upper + row.trim == row.lower + row.width


@given(
    **PLANES,
    pitch=st.sampled_from([3 / 12, 6 / 12]),
    end_lap=inches(1, 8),
    trim_allowance=inches(0, 6),
    least_piece=inches(16, 48),
    stagger=st.sampled_from([0, 36, 72]),
)
def test_pieces_make_up_their_rows_and_rolls_their_cuts(
    *, eave_length, slope_length, roll_length, pitch, end_lap, trim_allowance, least_piece, stagger
):
    laid = underlayment(
        eave_length,
        slope_length=slope_length,
        pitch=pitch,
        roll_length=roll_length,
        end_lap=end_lap,
        trim_allowance=trim_allowance,
        least_piece=least_piece,
        end_lap_stagger=stagger,
    )
    for row in laid.rows:
        assert row.pieces[0].left == -trim_allowance
        assert row.pieces[-1].right == pytest.approx(eave_length + trim_allowance, abs=1e-9)
        for left, right in pairwise(row.pieces):
            assert left.right - right.left == pytest.approx(end_lap, abs=1e-9)
            assert right.end_lap == end_lap
        for piece in row.pieces:
            assert piece.right - piece.left == pytest.approx(piece.length, abs=1e-9)
            assert piece.length >= least_piece - 1e-9 or len(row.pieces) == 1
    for below, above in pairwise(laid.rows):
        for one in below.end_laps:
            assert all(abs(one - other) >= stagger - 1e-9 for other in above.end_laps)
    assert Counter(
        (cut.row, cut.length, used.number) for used in laid.roll_plan for cut in used.cuts
    ) == Counter(
        (row.number, piece.length, piece.roll) for row in laid.rows for piece in row.pieces
    )
    for used in laid.roll_plan:
        own = [cut for cut in used.cuts if cut.taken_from == "length"]
        assert own
        assert sum(cut.length for cut in own) + used.offcut == pytest.approx(roll_length)
        assert [cut.row for cut in own] == sorted(cut.row for cut in own)
    assert laid.rolls == len(laid.roll_plan)
    assert laid.end_laps == sum(len(row.pieces) - 1 for row in laid.rows)


@settings(max_examples=400)
@given(
    spare=st.integers(0, 4),
    roll_spare=st.integers(0, 4),
    least_piece=st.integers(9, 24),
    end_lap=st.integers(1, 6),
    stagger=st.integers(0, 4),
)
def test_a_row_hardly_longer_than_two_least_pieces_is_laid_or_its_roll_refused(
    *, spare, roll_spare, least_piece, end_lap, stagger
):
    tight = {"trim_allowance": 0, "least_piece": least_piece, "end_lap": end_lap}
    two = 2 * least_piece - end_lap
    rows, refused = 0, []
    try:
        laid = underlayment(
            two + spare,
            slope_length=400,
            pitch=6 / 12,
            roll_length=two + roll_spare,
            end_lap_stagger=stagger,
            **tight,
        )
        rows = len(laid.rows)
    except Refused as refusal:
        refused = [fault.at for fault in refusal.faults]
    assert rows > 10 or (refused == [("roll_length",)] and roll_spare < spare)


@given(eave_length=inches(6, 900), slope_length=inches(1, 300), roll_length=inches(400, 900))
def test_a_strip_out_of_another_strips_rest_fits_beside_it(eave_length, slope_length, roll_length):
    laid = underlayment(
        eave_length, slope_length=slope_length, pitch=3 / 12, roll_length=roll_length
    )
    for used in laid.roll_plan:
        for cut in used.cuts:
            if cut.taken_from == "rest_of_width":
                beside = next(other for other in used.cuts if other.row == 1)
                assert cut.width + beside.width <= 36
                assert cut.length == beside.length


def fewest_rolls(span: float, *, rows: int, roll: float, lap: float, least: float) -> int:
    """Recount slowly: try every rest, from either rake, cut back by whole feet, or set aside."""

    @cache
    def after(row: int, rest: float, below: float) -> int:
        if row == rows:
            return 0
        ways = [1 + after(row + 1, roll - span, -1000.0)]
        if rest >= span:
            ways.append(after(row + 1, rest - span, -1000.0))
        use = rest if rest < span else 0.0
        while use >= least:
            for place in (use - lap, span - use):
                if abs(place - below) >= 72 and span - use + lap >= least:
                    ways.append(1 + after(row + 1, roll - (span - use + lap), place))
            use -= 12
        return min(ways)

    return after(0, 0.0, -1000.0)


@given(
    eave_length=inches(30, 390),
    rows=st.integers(1, 6),
    roll_length=st.sampled_from([400, 560, 800]),
)
def test_rolls_are_at_most_one_more_than_a_slow_recount_finds(eave_length, rows, roll_length):
    slope_length = 32 * rows + 3
    laid = underlayment(
        eave_length, slope_length=slope_length, pitch=4 / 12, roll_length=roll_length
    )
    assert len(laid.rows) == rows
    span = eave_length + 4
    recount = fewest_rolls(span, rows=rows, roll=roll_length, lap=4, least=24)
    assert ceil(rows * span / roll_length - 1e-9) <= laid.rolls <= recount + 1


@given(
    eave_length=inches(100, 2000),
    slope_length=inches(20, 200),
    pitch=st.sampled_from([3 / 12, 4 / 12]),
    lap_spacing=st.sampled_from([6, 12]),
    field_lines=st.integers(0, 3),
)
def test_fasteners_recounted_one_by_one(eave_length, slope_length, pitch, lap_spacing, field_lines):
    laid = underlayment(
        eave_length,
        slope_length=slope_length,
        pitch=pitch,
        lap_spacing=lap_spacing,
        field_spacing=24,
        field_lines=field_lines,
        roll_length=864,
    )
    lows = sorted({row.lower for row in laid.rows})
    spots: set[tuple[float, float]] = set()
    for low, high in pairwise([*lows, slope_length]):
        for line in range(field_lines + 1):
            apart = 24 if line else lap_spacing
            spaces = ceil(eave_length / apart)
            v = low + (high - low) * line / (field_lines + 1)
            spots |= {(k * eave_length / spaces, v) for k in range(spaces + 1)}
        for row in laid.rows:
            spaces = ceil((high - low) / lap_spacing)
            if row.lower == low:
                ups = [low + (high - low) * k / spaces for k in range(1, spaces)]
                # A hair to the side: one that meets a field line is still a fastener of its own.
                spots |= {(at + 1e-4, v) for at in row.end_laps for v in ups}
    assert laid.fasteners == len(spots)


@given(**PLANES, more=inches(1, 60))
def test_a_higher_plane_never_takes_fewer_rows_and_covers_more(
    eave_length, slope_length, roll_length, more
):
    low = underlayment(
        eave_length, slope_length=slope_length, pitch=4 / 12, roll_length=roll_length
    )
    high = underlayment(
        eave_length, slope_length=slope_length + more, pitch=4 / 12, roll_length=roll_length
    )
    assert len(high.rows) >= len(low.rows)
    assert high.rolls >= low.rolls
    assert high.area_laid > low.area_laid
    assert low.area_cut >= low.area_laid > eave_length * slope_length


@given(reach=inches(1, 200), slope_length=inches(1, 300), roll_width=inches(24, 48))
def test_ice_barrier_covers_its_reach_and_no_row_is_too_many(reach, slope_length, roll_width):
    barrier = ice_barrier(300, slope_length=slope_length, reach=reach, roll_width=roll_width)
    needed = min(reach, slope_length)
    assert barrier.upper >= needed
    assert all(row.lower + roll_width < needed for row in barrier.rows[:-1])
    assert all(above.head_lap == 4 or above.trim for above in barrier.rows[1:])


@given(overhang=inches(0, 48), inside=inches(0, 48), rise=st.integers(0, 24))
def test_reach_grows_with_the_pitch_and_is_level_on_a_flat_roof(overhang, inside, rise):
    reach = [
        ice_barrier_reach(overhang, pitch=p / 12, inside_wall=inside) for p in (0, rise, rise + 1)
    ]
    assert reach[0] == overhang + inside
    assert reach == sorted(reach)


@given(
    span=inches(100, 1500),
    rest=inches(0, 1000),
    below=st.lists(inches(0, 1500), max_size=1),
)
def test_a_filled_row_uses_what_it_says(span, rest, below):
    assume(all(lap < span - 4 for lap in below))
    roll = Cutting(roll_width=36, roll_length=1200)
    fill = fill_row(span, rest=rest, laps_below=below, cutting=roll)
    waste = rest + fill.opened * 1200 - fill.rest - sum(fill.lengths)
    assert waste >= 0
    assert sum(fill.lengths) == span + 4 * (len(fill.lengths) - 1)
    assert waste == 0 or below or rest < 1200


# ---- Refusals ------------------------------------------------------------------------------------

ROOF = {"eave_length": 168, "slope_length": 112, "pitch": 4 / 12}

REFUSED = [
    (
        {"pitch": 1.5 / 12},
        "pitch came as 1.5:12: 2:12 or more and at most 1000:12: asphalt shingles are not laid on a"
        " lower slope",
    ),
    (
        {"pitch": float("nan")},
        "pitch came as nan: 2:12 or more and at most 1000:12: asphalt shingles are not laid on a"
        " lower slope",
    ),
    (
        {"head_lap": 36},
        "head_lap came as 36 in: at most 35 in, 1 in less than the roll's width",
    ),
    (
        {"past_metal": -1},
        "past_metal came as -1 in: zero or more and at most 100000 ft",
    ),
    (
        {"past_metal": 40},
        "past_metal came as 40 in: at most 35 in, 1 in less than the roll's width",
    ),
    (
        {"ice_barrier_top": 67.75, "over_ice_barrier": 35.5},
        "over_ice_barrier came as 35 1/2 in: at most 35 in, within the ice barrier and 1 in less"
        " than the roll's width",
    ),
    (
        {"ice_barrier_top": 3, "over_ice_barrier": 4},
        "over_ice_barrier came as 4 in: at most 3 in, within the ice barrier and 1 in less than the"
        " roll's width",
    ),
    (
        {"eave_length": 1000, "roll_length": 300},
        "roll_length came as 25 ft: 26 ft 4 in or more, so that end laps can stand as far apart as"
        " end_lap_stagger",
    ),
    (
        {"roll_length": 100, "end_lap": 120, "least_piece": 200},
        "roll_length came as 8 ft 4 in: 14 ft 4 in or more, so that end laps can stand as far apart"
        " as end_lap_stagger",
    ),
    (
        {"eave_length": 100, "roll_length": 99, "least_piece": 45, "end_lap_stagger": 12},
        "roll_length came as 8 ft 3 in: 8 ft 8 in or more, so that end laps can stand as far apart"
        " as end_lap_stagger",
    ),
    (
        {"end_lap": 30},
        "least_piece came as 24 in: 33 in or more, 1 in more than end lap and trim allowance"
        " together",
    ),
    ({"lap_spacing": 0.5}, "lap_spacing came as 1/2 in: 1 in or more"),
    ({"field_lines": 13}, "field_lines came as 13: 0 to 12 lines a row"),
    ({"pitch": 3 / 12, "roll_width": 3}, "roll_width came as 3 in: 4 in or more, for two layers"),
    ({"roll_width": 1}, "roll_width came as 1 in: more than 1 in"),
]


@pytest.mark.parametrize(("changed", "sentence"), REFUSED)
def test_what_cannot_be_laid_is_refused_by_name(changed, sentence):
    with pytest.raises(Refused) as refusal:
        underlayment(**{**ROOF, **changed})
    assert sentence in [fault.written() for fault in refusal.value.faults]


def test_all_that_is_wrong_is_said_at_once():
    with pytest.raises(Refused) as refusal:
        underlayment(
            -1, slope_length=float("inf"), pitch=1 / 12, head_lap=40, end_lap=-1, field_lines=-1
        )
    assert {fault.at[0] for fault in refusal.value.faults} == {
        "eave_length",
        "slope_length",
        "pitch",
        "head_lap",
        "end_lap",
        "field_lines",
    }


@pytest.mark.parametrize(
    "changed",
    [
        {"slope_length": 1.2e6, "eave_length": 1.2e6},
        {"slope_length": 1e6, "roll_width": 5},
        {"slope_length": 20_000, "head_lap": 35},
    ],
)
def test_more_pieces_than_the_limit_are_refused_before_any_is_laid(changed):
    with pytest.raises(TooManyPieces, match="at most 10000 pieces; this takes"):
        underlayment(**{**ROOF, **changed})


def test_a_billion_feet_is_refused():
    with pytest.raises(Refused, match="at most 100000 ft"):
        underlayment(12e9, slope_length=112, pitch=4 / 12)


def test_an_ice_barrier_that_cannot_be_is_refused():
    unknown: Any = "1999"
    with pytest.raises(Refused) as refusal:
        ice_barrier_reach(-1, pitch=-1, edition=unknown, inside_wall=float("nan"))
    assert [fault.written() for fault in refusal.value.faults] == [
        "eave_overhang came as -1 in: zero or more and at most 100000 ft",
        "pitch came as -12:12: 0:12 or more and at most 1000:12",
        "edition came as 1999: one of 2015, 2018, 2021, 2024",
        "inside_wall came as nan: zero or more and at most 100000 ft",
    ]
    with pytest.raises(Refused, match="reach came as 0 in: more than zero"):
        ice_barrier(168, slope_length=112, reach=0)
    with pytest.raises(TooManyPieces):
        ice_barrier(1.2e6, slope_length=1.2e6, reach=1.2e6)


@pytest.mark.parametrize("end_lap", [12.0, 13.0])
def test_an_end_lap_as_long_as_the_roll_is_refused(end_lap):
    with pytest.raises(Refused) as refusal:
        underlayment(6, slope_length=108, pitch=1 / 3, roll_length=12, end_lap=end_lap)
    assert ("end_lap",) in [fault.at for fault in refusal.value.faults]


def test_what_no_tape_reads_is_refused():
    with pytest.raises(Refused) as refusal:
        underlayment(1e-9, slope_length=108, pitch=1 / 3, trim_allowance=0)
    assert [fault.written() for fault in refusal.value.faults] == [
        "eave_length came as 1e-09 in: 1/16 in or more"
    ]
    assert underlayment(1 / 16, slope_length=108, pitch=1 / 3, trim_allowance=0).rolls == 1
