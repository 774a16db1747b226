"""A carpentry cyclopedia of about 1900, part 1-3, "Paper": flashing beside chimneys and dormers."""

from __future__ import annotations

from roofing_core import step_flashing_size


def test_pieces_of_tin_about_7_in_square_bent_in_the_middle():
    # One in each course of wood shingles, "one half in the course, one half up the wall". 18 in
    # shingles show 5 in: (18 - 3) / 3 by the treatises of the time.
    size = step_flashing_size((18 - 3) / 3, deck_leg=7 / 2, wall_leg=7 / 2)
    assert (size.length, size.width) == (7, 7)
