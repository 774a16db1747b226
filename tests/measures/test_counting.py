"""Whole pieces: the one rounding up, which forgives float dust and nothing more."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.measures.counting import DUST, whole_packs, whole_pieces
from roofing_core.measures.faults import Refused
from roofing_core.measures.reading import read_length

COUNTS = st.integers(1, 100_000)


@given(count=COUNTS, dust=st.floats(-0.9 * DUST, 0.9 * DUST))
def test_dust_on_a_whole_number_is_forgiven(count, dust):
    assert whole_pieces(count + dust) == count


@given(count=st.integers(0, 100_000), part=st.floats(2 * DUST, 1 - 2 * DUST))
def test_any_real_part_takes_a_whole_piece(count, part):
    assert whole_pieces(count + part) == count + 1


@pytest.mark.parametrize(("pieces", "whole"), [(0, 0), (0.0, 0), (1e-10, 0), (2e-9, 1), (1, 1)])
def test_none_and_nearly_none(pieces, whole):
    assert whole_pieces(pieces) == whole
    assert isinstance(whole_pieces(pieces), int)


def test_lengths_of_1_m_added_up_in_inches():
    # k lengths of 1 m make k lengths. A plain ceiling buys one too many for 820 of 1,999.
    metre, added, too_many = read_length("1 m"), 0.0, 0
    for k in range(1, 2000):
        added += metre
        assert whole_pieces(added / metre) == whole_packs(added, metre) == k
        too_many += ceil(added / metre) - k
    assert too_many == 820


@given(
    needed=st.fractions(0, 1000, max_denominator=64),
    pack=st.fractions("1/64", 50, max_denominator=64),
)
def test_packs_hold_what_is_needed_and_one_fewer_would_not(needed, pack):
    packs = whole_packs(float(needed), float(pack))
    assert packs == ceil(Fraction(needed) / pack)


@given(needed=st.floats(0, 1e4), pack=st.floats(0.01, 100), times=st.integers(2, 9))
def test_larger_packs_never_take_more_of_them(needed, pack, times):
    assert whole_packs(needed, pack * times) <= whole_packs(needed, pack)


@pytest.mark.parametrize(
    ("value", "said"),
    [
        (-1, "pieces came as -1: zero or more and at most 10000000000"),
        (nan, "pieces came as nan: zero or more and at most 10000000000"),
        (inf, "pieces came as inf: zero or more and at most 10000000000"),
    ],
)
def test_what_cannot_be_counted(value, said):
    with pytest.raises(Refused) as refused:
        whole_pieces(value)
    assert str(refused.value) == said


@pytest.mark.parametrize("per_pack", [0, -1, nan, inf, 5e-324])
def test_packs_that_hold_nothing(per_pack):
    with pytest.raises(Refused, match=r"^per_pack came as .+: more than zero"):
        whole_packs(1, per_pack)


@pytest.mark.parametrize(
    ("needed", "per_pack", "said"),
    [
        (-5, 21, "needed came as -5: zero or more"),
        (-1e-9, 1e-3, "needed came as 0: zero or more"),  # a millionth of a pack is no dust
        (nan, 21, "needed came as nan: zero or more"),
        (inf, 21, "needed came as inf: zero or more"),
        (100, 1e-9, "needed came as 100: at most 10000000000 packs"),
    ],
)
def test_a_need_that_no_packs_meet_is_told_by_the_names_of_the_function(needed, per_pack, said):
    with pytest.raises(Refused) as refused:
        whole_packs(needed, per_pack)
    assert str(refused.value) == said


def test_dust_below_nothing_takes_no_pack_and_a_large_roof_its_panels():
    assert whole_packs(-1e-12, 21) == 0
    assert whole_packs(1.44e10, 96 * 48) == 3_125_000  # 10,000 ft each way


def test_both_are_told_where_both_are_wrong():
    with pytest.raises(Refused) as refused:
        whole_packs(-1, 0)
    assert [one.at for one in refused.value.faults] == [("needed",), ("per_pack",)]
