"""Courses and pieces of single slopes: up a column of heights, and along a column of widths.

What `courses` and `pieces_of` place, here by the closed forms of it; a test holds them together.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

import numpy as np

from roofing_core.job.choices import Choices
from roofing_core.layers.coursing.courses import MOST_COURSES
from roofing_core.layers.coursing.nailing import LEAST_NAILS
from roofing_core.layers.coursing.pieces import Strip
from roofing_core.layers.coursing.starters import STARTER_NAIL_HEIGHT
from roofing_core.measures.counting import DUST
from roofing_core.measures.units import Inches
from roofing_core.sizing.amounts import Floats, Truths, Whole, whole

#: Heights are gone through so many courses at once: enough to be quick, little to keep.
AT_ONCE = 1_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class CoursesUp:
    """The courses of each height; of columns by trim, one for each trim of the sequence.

    Attributes:
        courses: How many courses have each trim.
        nailed: How many of them have their nail line on the deck.
        dabbed: How many of these close the roof, so that each of their nails is dabbed.
        laid: Height of all courses together, what the next ones cover included.
        bedded: Height of all closing courses together.
        starter: Height of the starter.
        starter_nailed: Whether its nail line lies on the deck.
        refused: Which heights have too many courses, or no room for a nail.
    """

    courses: Whole
    nailed: Whole
    dabbed: Whole
    laid: Floats
    bedded: Floats
    starter: Floats
    starter_nailed: Truths
    refused: Truths


def courses_up(slope_length: Floats, choices: Choices, *, starter_height: Inches) -> CoursesUp:
    """Count the courses up a column of heights.

    Args:
        slope_length: Up the slope of each roof.
        choices: The materials, and how the work is done.
        starter_height: Of the starter.

    Returns:
        One row per height.

    Raises:
        Nothing: What cannot be is marked.

    Source:
        `courses`.

    >>> courses_up(np.array([112.0]), Choices(), starter_height=7.625).courses
    array([[5, 5, 5, 5]])
    """
    how, shingle = choices.coursing, choices.shingle
    first = -(how.starter_past_metal + how.course_past_starter)
    refused = (slope_length - first > MOST_COURSES * shingle.exposure) | (
        slope_length <= how.edge_distance
    )
    count = np.maximum(1, whole((slope_length - first) / shingle.exposure))
    count = np.where(refused, 1, count)
    parts = [
        _courses(slope_length[part], count[part], choices, first)
        for part in _parts(len(count), int(count.max(initial=1)))
    ]
    courses, nailed, dabbed, laid, bedded = (
        np.concatenate(each) for each in zip(*parts, strict=True)
    )
    butt = -how.starter_past_metal
    nail_line = butt + min(STARTER_NAIL_HEIGHT, starter_height / 2)
    return CoursesUp(
        courses=courses,
        nailed=nailed,
        dabbed=dabbed,
        laid=laid,
        bedded=bedded,
        starter=np.minimum(butt + starter_height, slope_length) - butt,
        starter_nailed=(nail_line >= 0) & (nail_line <= slope_length),
        refused=refused,
    )


def _parts(heights: int, most: int) -> Iterator[slice]:
    step = max(1, AT_ONCE // most)
    return (slice(start, start + step) for start in range(0, heights, step))


def _courses(
    top: Floats, count: Whole, choices: Choices, first: float
) -> tuple[Whole, Whole, Whole, Floats, Floats]:
    shingle, edge = choices.shingle, choices.coursing.edge_distance
    k = np.arange(count.max(initial=1))
    there = k < count[:, np.newaxis]
    butt, high = first + k * shingle.exposure, top[:, np.newaxis]
    last_nail = high - edge
    nailable = butt + shingle.nail_zone_low <= last_nail + DUST
    middle = (shingle.nail_zone_low + shingle.nail_zone_high) / 2
    nail_line = np.minimum(butt + middle, np.maximum(last_nail, (butt + high) / 2))
    on_deck = there & (nail_line >= 0) & (nail_line <= high)
    laid = np.where(there, np.minimum(butt + shingle.height, high) - butt, 0.0)
    bedded = np.where(there & ~nailable, high - np.maximum(butt, 0.0), 0.0)
    trims = len(shingle.sequence)
    courses, nailed, dabbed = (
        np.stack([part[:, m::trims].sum(axis=1) for m in range(trims)], axis=1)
        for part in (there, on_deck, on_deck & ~nailable)
    )
    return courses, nailed, dabbed, laid.sum(axis=1), bedded.sum(axis=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class RowAmounts:
    """What one row takes from rake to rake, one entry per width.

    Attributes:
        pieces: How many pieces.
        nails: Nails in them, where the nail line lies on the deck.
    """

    pieces: Whole
    nails: Whole


def row_amounts(
    eave_length: Floats, *, trim: Inches, strip: Strip, past_rake: Inches
) -> RowAmounts:
    """Count the pieces and nails of one row on a column of widths.

    Args:
        eave_length: Of each roof.
        trim: Length trimmed from the first strip.
        strip: What the row is cut from.
        past_rake: How far the row stands past the deck at each rake.

    Returns:
        One entry per width.

    Raises:
        Nothing: Those who call it have checked the sizes.

    Source:
        `pieces_of`.

    >>> strip = Strip(length=39.375, nails=(1, 13.4, 25.9, 38.375), end_distance=1)
    >>> row_amounts(np.array([168.0]), trim=0, strip=strip, past_rake=0.25)
    RowAmounts(pieces=array([5]), nails=array([18]))
    """
    long = strip.length
    first = long - trim
    laid = eave_length + 2 * past_rake - DUST * long - first
    pieces = 1 + np.maximum(0, np.ceil(laid / long)).astype(np.int64)
    # Only pieces at the rakes are cut or lie past the deck; all others have all of their nails.
    on_left, on_right = (ceil((past_rake + cut) / long) + 1 for cut in (trim, 0.0))
    nails = np.maximum(0, pieces - on_left - on_right) * len(strip.nails)
    for k in range(on_left):
        nails += np.where(k < pieces, _piece_nails(eave_length, k, trim, strip, past_rake), 0)
    for j in range(1, on_right + 1):
        last = pieces - j
        held = _piece_nails(eave_length, last, trim, strip, past_rake)
        nails += np.where(last >= on_left, held, 0)
    return RowAmounts(pieces=pieces, nails=nails)


def _piece_nails(
    eave_length: Floats, k: Whole | int, trim: float, strip: Strip, past: float
) -> Whole:
    """Count the nails of a piece: its strip's own where two or more lie on it and on the deck."""
    start = -past - trim + k * strip.length + np.zeros_like(eave_length)
    left = np.maximum(start, 0.0)
    right = np.minimum(start + strip.length, eave_length)
    own = sum(
        ((left + DUST < start + nail) & (start + nail < right - DUST)).astype(np.int64)
        for nail in strip.nails
    )
    # A strip that no rake cuts has all of its nails, however near to its ends.
    own = np.where((start >= 0) & (start + strip.length <= eave_length), len(strip.nails), own)
    return np.where(own >= LEAST_NAILS, own, np.where(right - left > DUST, LEAST_NAILS, 0))
