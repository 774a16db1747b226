"""The working of what all courses come to."""

from __future__ import annotations

from typing import Any

from roofing_core.workings.at import COUNTED, GEOMETRY, At, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, Listed


def _sum(place: str, name: str) -> Any:
    return lambda at: at.all("sum", place, name)


def _least_by_area(at: At) -> Expression:
    opened = at.all("sum", "openings/*/area", "the areas of all openings")
    area = at("roof/area") - opened if opened.parts else at("roof/area")
    return (area / (at.choice("shingle/length") * at.choice("shingle/exposure"))).up()


def _least_by_length(at: At) -> Expression:
    lengths = at.all("sum", "courses/*/length", "the lengths of all courses")
    return (lengths / at.choice("shingle/length")).up()


def _least_clearance(at: At) -> Expression:
    courses = at.plan.courses
    last = {course.plane: k for k, course in enumerate(courses)}
    rows = [
        at("courses/*/clearance", k) for k, one in enumerate(courses) if last[one.plane] != k
    ]  # fmt: skip
    starters = at.each("starters/*/clearance")
    return Listed("least", (*starters, *rows), "the clearances of all rows that another covers")


def _narrowest(at: At) -> Expression:
    widths = [
        at("courses/*/laid/*/right", k, piece.number - 1)
        - at("courses/*/laid/*/left", k, piece.number - 1)
        for k, course in enumerate(at.plan.courses)
        for piece in course.square_ends()
    ]
    if not widths:
        return at.choice("shingle/length")
    return Listed("least", tuple(widths), "the widths of all pieces with a square end")


def _period(at: At) -> Expression:
    sequence = at.each("choices/shingle/sequence/*")
    return Listed("count", sequence[: int(at.value())], "the trims before they repeat")


def _nails_per_strip(at: At) -> Expression:
    few = at.value() == 4  # noqa: PLR2004 - the usual count
    why = "nails in a strip, usual" if few else "nails in a strip, high wind or over 21:12"
    return Constant(at.value(), "count", why)


def _starter_shingles(at: At) -> Expression:
    if at.plan.choices.starter.made != "self_made":
        return Constant(0, "count", "none: the starter is ready-made")
    return at.all("sum", "starters/*/pieces", "the pieces of all starters")


def _closing(at: At) -> Expression:
    name = "the courses that close the roof"
    return at.all("count", "courses/*/butt", name, where=lambda one: not one.nailable)


SHINGLES: Table = under(
    "/shingles",
    table(
        COUNTED,
        courses=lambda at: at.all("count", "courses/*/butt", "all courses"),
        closing_courses=_closing,
        pieces=_sum("courses/*/pieces", "the pieces of all courses"),
        nails=_sum("courses/*/nails", "the nails of all courses"),
        period=_period,
        starter_shingles=_starter_shingles,
    ),
    table(
        "One shingle for each piece, no offcut used again.", shingles=lambda at: at.near("pieces")
    ),
    table(
        GEOMETRY,
        least_by_length=_least_by_length,
        least_by_area=_least_by_area,
        headlap=lambda at: at.choice("shingle/height") - 2 * at.choice("shingle/exposure"),
        first_snap_line=lambda at: (
            at.choice("shingle/height") - at.choice("coursing/course_past_starter")
        ),
        last_butt=lambda at: at.all("greatest", "courses/*/butt", "the butts of all courses"),
        start_line=lambda at: at("courses/*/laid/*/left", 0, 0),
        trim_line=lambda at: at("courses/*/laid/*/right", 0, len(at.plan.courses[0].laid) - 1),
        least_clearance=_least_clearance,
        narrowest_end_piece=_narrowest,
        bedding_area=_sum("courses/*/bedding_area", "the bedding areas of all courses"),
        exposed_area=_sum("courses/*/exposed_area", "the exposed areas of all courses"),
    ),
    table(
        "The shingle makers' association's bulletin: 4, and 6 in high wind or over 21:12.",
        nails_per_strip=_nails_per_strip,
    ),
)
