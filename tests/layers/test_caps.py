"""Caps on one hip or ridge: count, places, nails, the end they start from, what is refused."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.layers.caps import MOST_CAPS, cap_stock, caps
from roofing_core.materials import catalogue
from roofing_core.measures.faults import Refused, TooManyPieces

# No line in these tests is over 1,000 ft.
DUST = 1e-8


def sixteenths(least: int, most: int):
    """Lengths between two whole numbers of inches, in sixteenths: exact as floats."""
    return st.integers(least * 16, most * 16).map(lambda n: n / 16)


@st.composite
def asked_caps(draw):
    """A line and its caps, all of it buildable."""
    exposure = draw(sixteenths(5, 10))
    above = draw(sixteenths(1, 2))
    return {
        "line_length": draw(sixteenths(1, 3000)),
        "line": draw(st.sampled_from(("hip", "ridge"))),
        "exposure": exposure,
        "cap_length": exposure + above + draw(sixteenths(0, 8)),
        "cap_width": draw(sixteenths(8, 14)),
        "nail_above": above,
        "side_distance": draw(sixteenths(0, 2)),
        "from_shingle": draw(st.integers(1, 4)),
        "per_pack": draw(st.integers(1, 60)),
    }


# Worked by hand.


def test_a_hip_of_18_ft_worked_by_hand():
    # 216 / 5 = 43.2: 44 caps. 43 of them start at 0, 5, ... 210; 6 in is left for the last two, so
    # the last starts at 213 and is cut to 3 in. Nails 1 in above each next butt: the last but one's
    # at 214; the last one's half-way from there to 216.
    laid = caps(216, line="hip")
    assert (laid.count, len(laid.butts)) == (44, 44)
    assert laid.butts[:3] == (0.0, 5.0, 10.0)
    assert laid.butts[-2:] == (210.0, 213.0)
    assert laid.last_length == 3
    assert laid.nail_positions[:2] == (6.0, 11.0)
    assert laid.nail_positions[-2:] == (214.0, 215.0)
    assert (laid.half_width, laid.nail_from_line) == (6, 5)
    assert (laid.nails, laid.exposed_nails) == (88, 2)
    # 44 / 3: 15 shingles, one bundle of 27, which gives 81 caps.
    assert (laid.stock.shingles, laid.stock.packs, laid.stock.left_over) == (15, 1, 37)


def test_a_line_that_whole_exposures_fill():
    laid = caps(60, line="ridge")
    assert laid.count == 12
    assert laid.butts == tuple(5.0 * k for k in range(12))


def test_a_line_shorter_than_one_cap_shows():
    laid = caps(3, line="ridge")
    assert (laid.count, laid.butts, laid.last_length) == (1, (0.0,), 3)
    assert laid.nail_positions == (1.5,)


def test_a_hair_more_than_whole_exposures_makes_no_sliver():
    # 60 1/16 in: the 13th cap shares 5 1/16 in with the 12th, 2 17/32 each.
    laid = caps(60.0625, line="ridge")
    assert laid.butts[-2:] == (55.0, 57.53125)
    assert laid.last_length == 2.53125


def test_caps_of_the_metric_shingle_in_millimetres():
    # 5 5/8 in = 142.875 mm: 4 m takes 28 (27 reach 3857.6 mm).
    assert caps(4000 * 10 / 254, line="hip", cap_length=13.25, exposure=5.625).count == 28


@pytest.mark.parametrize(
    ("line", "wind", "laid_from", "reason"),
    [
        ("hip", "start", "start", "uphill"),
        ("hip", "end", "start", "uphill"),
        ("ridge", "start", "end", "away_from_wind"),
        ("ridge", "end", "start", "away_from_wind"),
        ("ridge", "across", "start", "wind_across"),
        ("ridge", "unknown", "start", "wind_unknown"),
    ],
)
def test_where_caps_start_from(line, wind, laid_from, reason):
    laid = caps(100, line=line, wind_from=wind)
    assert (laid.laid_from, laid.reason) == (laid_from, reason)


@pytest.mark.parametrize("wind", ["start", "end"])
def test_laps_on_a_ridge_open_downwind(wind):
    # Each cap's butt is the open end of its lap: seen along the ridge, it lies on the side of its
    # top that the wind blows to.
    laid = caps(100, line="ridge", wind_from=wind)
    towards = 1 if laid.laid_from == "start" else -1  # the way that they are laid in
    downwind = 1 if wind == "start" else -1
    butt, top = laid.butts[0] * towards, (laid.butts[0] + 12) * towards
    assert (butt - top) * downwind > 0


def test_a_hip_under_the_caps_of_a_ridge_shows_no_nails():
    open_, covered = caps(216, line="hip"), caps(216, line="hip", last_covered=True)
    assert (open_.exposed_nails, covered.exposed_nails) == (2, 0)
    assert open_.nails == covered.nails


def test_ready_made_caps_are_bought_as_they_are():
    laid = caps(216, line="hip", from_shingle=1, per_pack=48)
    assert (laid.stock.shingles, laid.stock.packs, laid.stock.left_over) == (44, 1, 4)


def test_hips_that_share_their_shingles_waste_fewer_tabs():
    # Four hips of 44 caps: 15 shingles each on their own, 59 together.
    assert 4 * caps(216, line="hip").stock.shingles == 60
    assert cap_stock(4 * 44).shingles == 59


def test_nothing_to_cap_takes_nothing():
    assert (cap_stock(0).shingles, cap_stock(0).packs, cap_stock(0).left_over) == (0, 0, 0)


@pytest.mark.parametrize("cap", catalogue().caps, ids=lambda cap: cap.name)
def test_every_cap_of_the_catalogue_can_be_laid(cap):
    laid = caps(
        216,
        line="ridge",
        cap_length=cap.length,
        cap_width=cap.width,
        exposure=cap.exposure,
        from_shingle=cap.from_shingle,
        per_pack=cap.per_pack,
    )
    assert laid.half_width == cap.width / 2
    assert laid.stock.packs == 1


# Recounts that share nothing with the code.


@given(asked_caps())
def test_caps_cover_the_whole_line_and_no_more_than_it_takes(asked):
    laid = caps(**asked)
    line, shows = Fraction(asked["line_length"]), Fraction(asked["exposure"])
    needed, reach = 1, shows
    while reach < line:
        needed, reach = needed + 1, reach + shows
    assert laid.count == needed
    assert laid.butts[0] == 0
    shown = [b - a for a, b in pairwise(laid.butts)]
    assert shown[:-1] == pytest.approx([asked["exposure"]] * (needed - 2), abs=DUST)
    if needed > 1:
        assert shown[-1] == pytest.approx(laid.last_length, abs=DUST)
        assert laid.last_length > asked["exposure"] / 2 - DUST
    assert laid.butts[-1] + laid.last_length == pytest.approx(asked["line_length"], abs=DUST)
    assert laid.last_length <= asked["exposure"] + DUST


@given(asked_caps())
def test_every_nail_stands_on_its_cap_and_under_the_next_one(asked):
    laid = caps(**asked)
    ends = [butt + asked["cap_length"] for butt in laid.butts[:-1]]
    ends.append(laid.butts[-1] + laid.last_length)
    for butt, end, nail in zip(laid.butts, ends, laid.nail_positions, strict=True):
        assert butt <= nail <= end + DUST
    for nail, over in zip(laid.nail_positions, laid.butts[1:], strict=False):
        assert nail == pytest.approx(over + asked["nail_above"], abs=DUST)
        assert nail < asked["line_length"]
    # No nail is driven on another, nor off the end: not even in the last two caps.
    least = (asked["exposure"] / 2 - asked["nail_above"]) / 2
    ends = [*laid.nail_positions, asked["line_length"]]
    if laid.count > 1:
        assert all(b - a >= least - DUST for a, b in pairwise(ends))
    assert 0 < laid.nail_from_line <= laid.half_width
    assert laid.nails == 2 * len(laid.nail_positions)


@given(asked_caps())
def test_shingles_and_packs_as_found_by_taking_one_after_another(asked):
    laid = caps(**asked)
    shingles = packs = tabs = left = 0
    while tabs < laid.count:
        if not left:
            packs, left = packs + 1, asked["per_pack"]
        shingles, left, tabs = shingles + 1, left - 1, tabs + asked["from_shingle"]
    assert (laid.stock.shingles, laid.stock.packs) == (shingles, packs)
    assert laid.stock.left_over == tabs + left * asked["from_shingle"] - laid.count


@given(asked_caps(), sixteenths(0, 100))
def test_a_longer_line_never_takes_fewer_caps(asked, more):
    longer = caps(**{**asked, "line_length": asked["line_length"] + more})
    laid = caps(**asked)
    assert laid.count <= longer.count
    assert laid.stock.packs <= longer.stock.packs


@given(st.integers(1, 60_000), st.integers(100, 200))
def test_metric_and_us_agree(line, exposure):
    count = -(-line // exposure)
    inches = exposure * 10 / 254
    laid = caps(line * 10 / 254, line="hip", cap_length=2 * inches, exposure=inches)
    assert laid.count == count


def test_whole_millimetres_added_up_take_no_cap_too_many():
    exposure = 143 * 10 / 254
    for count in range(1, 200):
        assert caps(sum([exposure] * count), line="hip", exposure=exposure).count == count


# Refusals.


def refused(*args, **asked) -> dict[str, str]:
    with pytest.raises(Refused) as caught:
        caps(*args, **{"line": "ridge", **asked})
    return {str(one.at[0]): one.written() for one in caught.value.faults}


@pytest.mark.parametrize("bad", [-1, float("nan"), float("inf"), 1.2e10])
def test_every_bad_measurement_is_named_at_once(bad):
    sizes = ("cap_length", "cap_width", "exposure", "nail_above", "side_distance")
    wrong = refused(bad, line="valley", wind_from="left", per_pack=0, **dict.fromkeys(sizes, bad))
    assert set(wrong) == {"line_length", "line", "wind_from", "per_pack", *sizes}


def test_words_that_cannot_be():
    assert refused(100, line="valley", wind_from="left", from_shingle=0) == {
        "line": "line came as valley: one of hip, ridge",
        "wind_from": "wind_from came as left: one of start, end, across, unknown",
        "from_shingle": "from_shingle came as 0: more than zero and at most 10000000000",
    }


def test_nails_that_would_miss_the_cap():
    assert refused(100, cap_length=5.5, side_distance=6) == {
        "cap_length": "cap_length came as 5 1/2 in: at least 6 in:"
        " the nails stand above what shows",
        "side_distance": "side_distance came as 6 in: less than 6 in:"
        " one nail on each side of the line",
    }
    assert caps(100, line="ridge", cap_length=6, side_distance=5.9375).count == 20


def test_nails_that_the_next_cap_would_not_cover():
    assert refused(100, nail_above=2.5) == {
        "nail_above": "nail_above came as 2 1/2 in: less than 2 1/2 in, half of what shows:"
        " the last two caps may show no more",
    }
    assert caps(101, line="ridge", nail_above=2.4375).count == 21


def test_a_line_of_too_many_caps_is_refused_with_the_limit():
    assert caps(MOST_CAPS * 5, line="ridge").count == MOST_CAPS
    with pytest.raises(TooManyPieces, match="at most 100000 caps"):
        caps(MOST_CAPS * 5 + 1, line="ridge")


def test_a_stock_that_gives_nothing():
    with pytest.raises(Refused) as caught:
        cap_stock(-1, from_shingle=0, per_pack=0)
    assert [one.at[0] for one in caught.value.faults] == ["count", "from_shingle", "per_pack"]
