"""A contractor's article on nails for shingles, and what nails are read to weigh elsewhere.

The article: 320 nails to a square, 480 in wind; 1 1/2 in, 11 gauge, 7/16 in head, 140 to the
pound; about 2 1/4 lb and about 3 1/2 lb. Others: 200 to 240 one-inch nails to the pound, 160 to
180 of 1 1/4 in.
"""

from __future__ import annotations

import pytest

from roofing_core.layers.fasteners import WITHIN, fasteners, nails_per_pound

HALF_A_QUARTER = 0.125  # lb, "about 2 1/4"
HALF_A_HALF = 0.25  # lb, "about 3 1/2"


def _square(per_strip: int):
    return fasteners(
        80, nails_per_strip=per_strip, shingle_length=36, exposure=5, nail_lengths=(1.5,)
    )


@pytest.mark.parametrize(
    ("per_strip", "nails", "pounds", "about"),
    [(4, 320, 2.25, HALF_A_QUARTER), (6, 480, 3.5, HALF_A_HALF)],
)
def test_nails_for_a_square_of_three_tabs(per_strip, nails, pounds, about):
    bought = _square(per_strip)
    assert bought.nails == bought.nails_per_square == nails
    assert bought.weight == pytest.approx(pounds, abs=about)


@pytest.mark.parametrize(
    ("length", "least", "most"), [(1, 200, 240), (1.25, 160, 180), (1.5, 140, 140)]
)
def test_nails_to_the_pound(length, least, most):
    # Worked out from the nail's size, said to be good to 15 %.
    computed = nails_per_pound(length)
    assert least / (1 + WITHIN) <= computed <= most * (1 + WITHIN)


def test_what_the_count_is_said_to_be_good_to():
    assert WITHIN == 0.15
