"""One run of metal: pieces, laps, stock, nails, and what is refused."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.layers.metal import MOST_NAILS, MOST_PIECES, metal_run
from roofing_core.measures.faults import Refused, TooManyPieces

# No length in these tests is over 1,000 ft, so float dust stays under this many inches.
DUST = 1e-8


def sixteenths(least: int, most: int):
    """Lengths between two whole numbers of inches, in sixteenths: exact as floats."""
    return st.integers(least * 16, most * 16).map(lambda n: n / 16)


@st.composite
def runs(draw):
    """A run and how it is cut, all of it buildable."""
    return {
        "run_length": draw(sixteenths(1, 2400)),
        "stock_length": tuple(draw(st.lists(sixteenths(60, 144), min_size=1, max_size=3))),
        "lap": draw(sixteenths(1, 12)),
        "nail_spacing": draw(sixteenths(4, 24)),
        "end_distance": draw(sixteenths(0, 4)),
        "tab": draw(sixteenths(0, 4)),
        "tabs": draw(st.sampled_from(("both", "start", "end"))),
        "least_piece": draw(sixteenths(0, 18)),
        "nail_lines": draw(st.integers(1, 2)),
    }


def at_ends(asked) -> tuple[float, float]:
    """Give the tab where the run starts, and the one where it ends."""
    tab = asked["tab"]
    return {"both": (tab, tab), "start": (tab, 0.0), "end": (0.0, tab)}[asked["tabs"]]


# Worked by hand.


def test_the_eave_of_the_example_takes_two_lengths():
    # 14 ft and a 2 in tab at each end: 172 in. One 120 in length is short of it; two lapped 6 in
    # make 234. The first ends at 118 in on the deck (its tab is round the corner), so the lap runs
    # from 112 to 118. The rest: 172 - 114 = 58, and 240 - 120 - 58 = 62 is left.
    run = metal_run(168, stock_length=(120,), lap=6, tab=2)
    assert (run.pieces, run.stock, run.stock_length) == (2, 2, 120)
    assert run.cut_length == 172
    assert run.lengths == (120.0, 58.0)
    assert run.laps == (112.0,)
    assert run.offcuts == (0.0, 62.0)
    assert run.offcut == 62


def test_the_nails_of_the_example_eave():
    # At 1 in, in the middle of the lap at 115, and at 167. 114 in takes ten spaces of 11.4 in,
    # 52 in takes five of 10.4 in: 1 + 10 + 5 along the edge, and one in each tab.
    run = metal_run(168, stock_length=(120,), lap=6, tab=2)
    assert len(run.nail_positions) == 16
    assert run.nail_positions[:2] == pytest.approx((1, 12.4), abs=DUST)
    assert run.nail_positions[10] == 115
    assert run.nail_positions[11] == pytest.approx(125.4, abs=DUST)
    assert run.nail_positions[-1] == 167
    assert (run.tab_nails, run.nails) == (2, 18)


def test_the_rake_of_the_example_takes_one_length():
    run = metal_run(112, stock_length=(120,), lap=6, lap_direction="upper_over_lower")
    assert run.lengths == (112.0,)
    assert run.laps == ()
    assert run.offcut == 8
    assert (run.tab_nails, run.nails) == (0, 11)  # 110 in between the end nails: ten spaces of 11
    assert run.lap_direction == "upper_over_lower"


def test_the_ridge_of_the_example_takes_two_lengths():
    # 14 ft and 1/4 in proud at both ends: 168.5 - 114 = 54.5.
    assert metal_run(168.5, stock_length=(120,), lap=6).lengths == (120.0, 54.5)


@pytest.mark.parametrize(("lap", "pieces"), [(2, 3), (6, 4)])
def test_a_run_of_354_in_from_10_ft_lengths(lap, pieces):
    # Three lengths make 360 less two laps: 356 at 2 in, 348 at 6 in.
    run = metal_run(354, stock_length=(120,), lap=lap)
    assert run.pieces == pieces
    assert sum(run.lengths) == 354 + (pieces - 1) * lap


def test_a_run_of_119_in_takes_eleven_nails():
    # 117 in between the end nails: nine spaces would be 13 in, ten are 11.7.
    run = metal_run(119, stock_length=(120,), nail_spacing=12, end_distance=1)
    assert run.nails == 11
    assert run.nail_positions == pytest.approx([1 + 11.7 * k for k in range(11)], abs=DUST)


def test_the_last_but_one_gives_to_a_last_piece_that_is_too_short():
    # 120.5 - 114 leaves 6.5 in, of which 6 would lie under the lap.
    run = metal_run(120.5, stock_length=(120,), lap=6, least_piece=12)
    assert run.lengths == (114.5, 12.0)
    assert run.laps == (108.5,)
    assert run.offcuts == (5.5, 108.0)
    assert run.offcut == 113.5


def test_of_three_pieces_the_middle_one_gives():
    # 235 - 2 x 114 leaves 7 in.
    run = metal_run(235, stock_length=(120,), lap=6, least_piece=20)
    assert run.lengths == (120.0, 107.0, 20.0)
    assert run.laps == (114.0, 215.0)


def test_a_tab_lengthens_the_least_end_piece():
    # The last piece holds a 10 in tab and a 6 in lap clear of each other: 16 in, not 12.
    run = metal_run(108, stock_length=(120,), lap=6, tab=10, least_piece=12)
    assert run.lengths == (118.0, 16.0)
    assert run.laps == (102.0,)  # and the piece starts there: 6 in of lap, up to the corner at 108


@pytest.mark.parametrize(
    ("tabs", "lengths", "laps"),
    [
        ("both", (120.0, 58.0), (112.0,)),
        ("start", (120.0, 56.0), (112.0,)),  # 170 in: the tab at the end is not cut
        ("end", (120.0, 56.0), (114.0,)),  # likewise, and nothing is bent before the deck starts
    ],
)
def test_a_tab_at_one_end_alone(tabs, lengths, laps):
    run = metal_run(168, stock_length=(120,), lap=6, tab=2, tabs=tabs)
    assert (run.lengths, run.laps) == (lengths, laps)
    assert (run.tabs, run.tab_nails) == (tabs, 2 if tabs == "both" else 1)
    assert run.cut_length == sum(lengths) - 6


def test_an_end_without_a_tab_keeps_no_room_for_one():
    # As above, 108 in with a tab of 10: the last piece keeps 16 in with a tab, 12 without.
    run = metal_run(112.5, stock_length=(120,), lap=6, tab=10, tabs="start", least_piece=12)
    assert run.lengths == (116.5, 12.0)
    assert run.laps == (100.5,)


def test_a_run_without_tabs_is_the_same_wherever_they_would_be():
    bare = {metal_run(168, tabs=tabs).lengths for tabs in ("both", "start", "end")}
    assert bare == {(120.0, 54.0)}
    assert metal_run(168, tabs="end").tab_nails == 0


def test_metal_that_is_nailed_on_both_sides_takes_its_nails_twice():
    one, two = metal_run(168, tab=2), metal_run(168, tab=2, nail_lines=2)
    assert one.nail_positions == two.nail_positions
    assert two.nails == 2 * len(two.nail_positions) + 2 == 2 * one.nails - 2


def test_an_end_nail_stands_outside_the_middle_of_the_lap():
    # 4 in from the end, and half of the 6 in lap: the end piece keeps 7 in.
    run = metal_run(120.5, stock_length=(120,), lap=6, end_distance=4, least_piece=0)
    assert run.lengths == (119.5, 7.0)
    assert run.nail_positions[-1] == 116.5  # the lap's middle and the end nail are one


def test_a_lone_piece_is_as_long_as_the_run_is():
    run = metal_run(1.5, stock_length=(120,), least_piece=12, end_distance=1)
    assert run.lengths == (1.5,)
    assert run.nail_positions == (0.75,)


# 8, 10 and 12 ft on offer. 172 in: two of 8 ft buy 192 in, two of 10 ft 240, two of 12 ft 288.
@pytest.mark.parametrize(
    ("cut", "offer", "stock", "pieces"),
    [
        (112, (96, 120, 144), 120, 1),
        (172, (96, 120, 144), 96, 2),
        (172, (144, 120, 96), 96, 2),
        (144, (96, 120, 144), 144, 1),
        (114, (60, 120), 120, 1),  # both buy 120 in: fewer pieces
        (114, (120, 60), 120, 1),
    ],
)
def test_one_stock_length_is_chosen_for_the_whole_run(cut, offer, stock, pieces):
    run = metal_run(cut, stock_length=offer, lap=6)
    assert (run.stock_length, run.pieces) == (stock, pieces)


def test_equal_purchases_in_metres_tie_in_spite_of_float_dust():
    # Three short lengths or one long one, of the same metal to the millimetre.
    for millimetres in range(1001, 2000, 7):
        short, long = millimetres * 10 / 254, 3 * millimetres * 10 / 254
        assert metal_run(long - 12, stock_length=(short, long), lap=6).pieces == 1


# Recounts that share nothing with the code.


@given(runs())
def test_stock_and_pieces_as_found_by_trying(asked):
    lap, cut = Fraction(asked["lap"]), Fraction(asked["run_length"])
    cut += sum(map(Fraction, at_ends(asked)))
    tried = []
    for stock in map(Fraction, asked["stock_length"]):
        reach, pieces = stock, 1
        while reach < cut:
            reach, pieces = reach + stock - lap, pieces + 1
        tried.append((pieces * stock, pieces, stock))
    bought, pieces, stock = min(tried)
    run = metal_run(**asked)
    assert (run.pieces, run.stock, run.stock_length) == (pieces, pieces, float(stock))
    assert run.offcut == bought - cut - (pieces - 1) * lap


@given(runs())
def test_the_pieces_laid_one_by_one_cover_the_run(asked):
    run = metal_run(**asked)
    at_start, at_end = at_ends(asked)
    start = -at_start
    starts, ends = [], []
    for piece in run.lengths:
        starts.append(start)
        ends.append(start + piece)
        start += piece - run.lap
    assert ends[-1] == pytest.approx(asked["run_length"] + at_end, abs=DUST)
    assert run.laps == pytest.approx(starts[1:], abs=DUST)
    assert all(end <= after + DUST for end, after in zip(ends, starts[2:], strict=False))


@given(runs())
def test_lengths_sum_to_the_run_its_tabs_and_its_laps(asked):
    run = metal_run(**asked)
    laid = asked["run_length"] + sum(at_ends(asked)) + (run.pieces - 1) * asked["lap"]
    assert sum(run.lengths) == pytest.approx(laid, abs=DUST)
    assert len(run.lengths) == run.pieces == len(run.laps) + 1
    assert run.lengths[: run.pieces - 2] == (run.stock_length,) * max(0, run.pieces - 2)
    assert [p + o for p, o in zip(run.lengths, run.offcuts, strict=True)] == pytest.approx(
        [run.stock_length] * run.pieces, abs=DUST
    )
    assert all(o >= 0 for o in run.offcuts)


@given(runs())
def test_no_piece_of_several_is_too_short_for_its_lap_and_its_tab(asked):
    run = metal_run(**asked)
    if run.pieces > 1:
        assert min(run.lengths) >= asked["least_piece"] - DUST
        for piece, tab in zip((run.lengths[0], run.lengths[-1]), at_ends(asked), strict=True):
            assert piece >= run.lap + tab - DUST


@given(runs())
def test_nails_at_every_lap_and_no_gap_over_the_spacing(asked):
    run = metal_run(**asked)
    nails, end = run.nail_positions, asked["end_distance"]
    assert all(a < b for a, b in pairwise(nails))
    assert all(b - a <= asked["nail_spacing"] + DUST for a, b in pairwise(nails))
    for start in run.laps:
        assert min(abs(nail - start - run.lap / 2) for nail in nails) < DUST
    if asked["run_length"] > 2 * end:
        assert nails[0] == end
        assert nails[-1] == pytest.approx(asked["run_length"] - end, abs=DUST)
    else:
        assert nails == pytest.approx((asked["run_length"] / 2,), abs=DUST)


@given(runs())
def test_no_more_nails_than_it_takes(asked):
    run = metal_run(**asked)
    end, spacing = asked["end_distance"], asked["nail_spacing"]
    marks = [end, *(start + run.lap / 2 for start in run.laps), asked["run_length"] - end]
    counted = 1
    for a, b in pairwise(marks):
        spaces = 0
        while a + spaces * spacing < b - DUST:
            spaces += 1
        counted += spaces
    assert len(run.nail_positions) == counted
    assert run.tab_nails == sum(tab > 0 for tab in at_ends(asked))
    assert run.nails == asked["nail_lines"] * counted + run.tab_nails


@given(runs(), sixteenths(0, 240))
def test_a_longer_run_never_takes_fewer_pieces_of_one_stock(asked, more):
    asked["stock_length"] = asked["stock_length"][:1]
    longer = {**asked, "run_length": asked["run_length"] + more}
    assert metal_run(**longer).pieces >= metal_run(**asked).pieces


@given(
    st.integers(100, 60_000), st.integers(1_800, 3_600), st.integers(30, 300), st.integers(0, 100)
)
def test_metric_and_us_agree(run, stock, lap, tab):
    pieces, reach = 1, stock
    while reach < run + 2 * tab:
        pieces, reach = pieces + 1, reach + stock - lap
    run_in, stock_in, lap_in, tab_in = (v * 10 / 254 for v in (run, stock, lap, tab))
    laid = metal_run(run_in, stock_length=(stock_in,), lap=lap_in, tab=tab_in)
    assert laid.pieces == pieces
    in_all = sum(v * 254 / 10 for v in laid.lengths)
    assert in_all == pytest.approx(run + 2 * tab + (pieces - 1) * lap, abs=1e-6)


def test_whole_metres_added_up_take_no_piece_too_many():
    stock, lap = 1000 * 10 / 254, 50 * 10 / 254
    for pieces in range(1, 200):
        run = sum([stock] + [stock - lap] * (pieces - 1))
        laid = metal_run(run, stock_length=(stock,), lap=lap)
        assert laid.pieces == pieces
        assert max(laid.lengths) <= stock


# Refusals.


def refused(*args, **asked) -> dict[str, str]:
    with pytest.raises(Refused) as caught:
        metal_run(*args, **asked)
    written = [fault.written() for fault in caught.value.faults]
    names = [".".join(map(str, fault.at)) for fault in caught.value.faults]
    assert len(set(names)) == len(names)
    return dict(zip(names, written, strict=True))


@pytest.mark.parametrize("bad", [0, -1, float("nan"), float("inf"), 1.2e10])
def test_every_bad_measurement_is_named_at_once(bad):
    assert set(
        refused(
            bad,
            stock_length=(120, bad),
            lap=bad,
            nail_spacing=bad,
            end_distance=-1,
            tab=-1,
            least_piece=float("nan"),
        )
    ) == {
        "run_length",
        "stock_length.1",
        "lap",
        "nail_spacing",
        "end_distance",
        "tab",
        "least_piece",
    }


def test_words_and_lines_that_cannot_be():
    assert refused(168, tabs="left", lap_direction="over", nail_lines=0) == {
        "tabs": "tabs came as left: one of both, start, end",
        "lap_direction": "lap_direction came as over: one of upper_over_lower, either",
        "nail_lines": "nail_lines came as 0: from 1 to 10",
    }


def test_a_lap_of_more_than_half_a_length():
    assert refused(168, stock_length=(144, 120), lap=120) == {
        "lap": "lap came as 10 ft: at most 5 ft, half of the stock length: "
        "no more than two lengths lie over each other"
    }
    assert metal_run(168, stock_length=(120,), lap=60).pieces == 2


def test_nothing_on_offer():
    assert refused(168, stock_length=()) == {
        "stock_length": "stock_length came as none: one or more stock lengths, such as 10 ft"
    }


def test_a_least_piece_and_a_tab_that_no_length_allows():
    # Two pieces of 63 in come out of 126 = 120 + 6; with the lap in each, 57 is left for a tab.
    assert refused(168, stock_length=(120,), lap=6, least_piece=64, tab=58) == {
        "least_piece": "least_piece came as 5 ft 4 in: at most 5 ft 3 in"
        " from a stock length of 10 ft with a lap of 6 in",
        "tab": "tab came as 4 ft 10 in: at most 4 ft 9 in"
        " from a stock length of 10 ft with a lap of 6 in",
    }
    run = metal_run(168, stock_length=(120,), lap=6, least_piece=63, tab=57)
    assert min(run.lengths) >= 63


def test_a_tab_that_overlong_laps_leave_no_room_for():
    # Half of 120 in as the lap: an end piece is all lap, and no tab is left.
    assert set(refused(168, stock_length=(120,), lap=60, tab=1, end_distance=0)) == {"tab"}


def test_an_end_distance_past_what_the_end_piece_can_keep():
    assert refused(168, stock_length=(120,), lap=6, end_distance=61) == {
        "end_distance": "end_distance came as 5 ft 1 in: at most 5 ft"
        " from a stock length of 10 ft with a lap of 6 in"
    }


def test_bad_in_itself_and_ill_fitting_are_reported_together():
    assert set(refused(0, stock_length=(120,), tab=58)) == {"run_length", "tab"}
    assert refused(168, least_piece=float("inf"), tab=58) == {
        "least_piece": "least_piece came as inf: zero or more and at most 100000 ft",
        "tab": "tab came as 4 ft 10 in: at most 4 ft 9 in"
        " from a stock length of 10 ft with a lap of 6 in",
    }


def test_a_run_of_too_many_pieces_is_refused_with_the_limit():
    longest = MOST_PIECES * 114
    assert metal_run(longest, stock_length=(120,), lap=6).pieces == MOST_PIECES
    with pytest.raises(TooManyPieces) as caught:
        metal_run(longest + 1, stock_length=(120, 60), lap=6)
    assert str(caught.value) == (
        "run_length came as 9500 ft 1 in: at most 9500 ft with tabs,"
        " 1000 pieces of the longest stock length"
    )


def test_a_short_stock_is_passed_over_where_it_would_take_too_many_pieces():
    # 1,240 pieces of 26 in buy 32,240 in, six of 6,000 in 36,000: less metal, but past the limit.
    run = metal_run(31_000, stock_length=(26, 6_000), lap=1, nail_spacing=24)
    assert (run.stock_length, run.pieces) == (6_000, 6)


def test_nails_too_close_are_refused_with_the_limit():
    with pytest.raises(TooManyPieces) as caught:
        metal_run(1000, nail_spacing=0.0625)
    assert str(caught.value) == (
        f"nail_spacing came as 1/16 in: at least 1/8 in: at most {MOST_NAILS} spaces in one run"
    )
