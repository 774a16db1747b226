"""Clearances of the usual layouts, worked out by hand: differences of trims, round the shingle."""

from __future__ import annotations

import pytest

from roofing_core import generated_sequence
from roofing_core.layers.coursing.offsets import offsets
from roofing_core.materials import Shingle, material

# Long enough that every course has joints on both sides of its neighbours'.
EAVE = 1200


def _laid(length: float, trims: tuple[float, ...]):
    return offsets(EAVE, shingle_length=length, sequence=trims, courses=3 * len(trims))


@pytest.mark.parametrize(
    ("length", "trims", "next_one", "next_but_one"),
    [
        # 30 back to 0 is 6 the other way round: 36 - 30.
        (36, (0, 6, 12, 18, 24, 30), [6] * 6, [12] * 6),
        # 30 back to 0 is 6; two apart 10, but 25 to 0 is 36 - 25 = 11, and 30 to 5 as well.
        (36, (0, 5, 10, 15, 20, 25, 30), [5] * 6 + [6], [10] * 5 + [11, 11]),
        # 17 back to 0: 17, and 22 3/8 the other way. Two apart: 11, 11, 11, and 17 to 6: 11.
        (39.375, (0, 6, 11, 17), [6, 5, 6, 17], [11] * 4),
    ],
)
def test_clearances_of_repeating_trims(length, trims, next_one, next_but_one):
    laid = _laid(length, trims)
    assert [course.clearance for course in laid.courses] == next_one * 3
    assert [course.clearance_two for course in laid.courses] == next_but_one * 3
    assert laid.period == len(trims)


def test_six_and_a_half_inches_restart_after_six():
    # 6 x 6 1/2 = 39, 3/8 short of a shingle: a seventh would fall 3/8 in beside the first.
    trims = generated_sequence(39.375)
    assert list(trims) == [0, 6.5, 13, 19.5, 26, 32.5]
    laid = _laid(39.375, trims)
    # 32 1/2 back to 0: 39 3/8 - 32 1/2 = 6 7/8. Two apart 13, and 13 3/8 across the restart.
    assert [course.clearance for course in laid.courses[:6]] == [6.5] * 5 + [6.875]
    assert [course.clearance_two for course in laid.courses[:6]] == [13] * 4 + [13.375] * 2
    running_on = _laid(39.375, (*trims, 39.0))
    assert running_on.courses[6].clearance == 0.375


def test_bundles_cover_what_their_strips_show():
    # 27 strips of 36 x 5 in: 33.75 ft2 a bundle, 101.25 for three. 21 of 39 3/8 x 5 5/8 in: 32.30.
    for name, feet in (("inch_three_tab", 33.75), ("metric_strip", 32.30)):
        strip = material(Shingle, name)
        covered = strip.per_bundle * strip.length * strip.exposure / 144
        assert covered == pytest.approx(feet, abs=0.005)
