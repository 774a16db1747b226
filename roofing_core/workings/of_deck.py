"""The working of a deck: its panels, their areas and counts; where each lies is `of_panels`."""

from __future__ import annotations

from functools import partial
from typing import Any

from roofing_core.workings.areas import ring_area
from roofing_core.workings.at import COUNTED, GEOMETRY, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, Listed, added
from roofing_core.workings.of_fewest_panels import least
from roofing_core.workings.of_panels import (
    clips,
    end_of_piece,
    joint_length,
    joints,
    long_joints,
    nails,
    piece_corner,
)


def _piece_area(at: At) -> Expression:
    if at.thing().corners:
        return ring_area(at, (*at.base(), "corners"))
    wide = at.near("right") - at.near("left")
    return wide * (at.near("upper") - at.near("lower"))


def _panels(at: At) -> Expression:
    pieces = at.each("deck/pieces/*/panel")
    if not pieces:
        return Constant(0, "count", "none: the deck is not part of the job")
    return Listed("greatest", pieces, "the panels' numbers, from 1")


def _rows(at: At) -> Expression:
    return added(
        Listed("greatest", rows, f"the rows' numbers on {plane.name}, from 1")
        for plane in at.plan.planes
        if (rows := at.each("deck/pieces/*/row", where=partial(_is_on, plane.name)))
    )


def _is_on(plane: str, piece: Any) -> bool:
    return bool(piece.plane == plane)


def _panel(at: At) -> Expression:
    return at.choice("panel/length") * at.choice("panel/width")


def _area(at: At) -> Expression:
    if not at.plan.choices.decking.lay:
        return Constant(0, "in2", "none: the deck is not part of the job")
    return at.all("sum", "planes/*/area", "the areas of all planes")


def _shortest(at: At) -> Expression:
    pieces = range(len(at.plan.deck.pieces))
    widths = tuple(
        at("deck/pieces/*/right", k) - at("deck/pieces/*/left", k) for k in pieces
    )  # fmt: skip
    if not widths:
        return Constant(0, "in", "none: the deck is not part of the job")
    return Listed("least", widths, "the lengths of all pieces")


def _left_over(at: At) -> Expression:
    return at.near("panels") * _panel(at) - at.near("area")


DECK: Table = under(
    "/deck",
    table(COUNTED, panels=_panels, rows=_rows, end_joints=joints),
    table(
        GEOMETRY,
        area=_area,
        left_over=_left_over,
        shortest_piece=_shortest,
        tape_length=lambda at: at.near("end_joint_length") + at.near("long_joint_length"),
        pieces__i__area=_piece_area,
        pieces__i__left=end_of_piece("left"),
        pieces__i__right=end_of_piece("right"),
        pieces__i__lower=end_of_piece("lower"),
        pieces__i__upper=end_of_piece("upper"),
        pieces__i__corners__i__i=piece_corner,
        end_joint_length=joint_length,
        long_joint_length=long_joints,
    ),
    table("Nails 6 in on edges and 12 in between: IRC table R602.3(1).", nails=nails),
    table("An inspectors' guide; two in a span of 48 in from memory.", clips=clips),
    table(
        "Dual feasible functions (Fekete and Schepers, from memory): no panel holds pieces that"
        " count more than 1 together.",
        least_panels=least,
    ),
    table(
        "Whole panels, rounded up.",
        panels_by_area=lambda at: (at.near("area") / _panel(at)).up(),
    ),
)
