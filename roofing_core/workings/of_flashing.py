"""The working of flashings: step flashing, aprons, heads, crickets and pipes."""

from __future__ import annotations

from roofing_core.workings.at import COUNTED, GEOMETRY, PRACTICE, At, Make, Table, table, under
from roofing_core.workings.expressions import Constant, Expression, Figure
from roofing_core.workings.of_courses import first_butt, plane_index
from roofing_core.workings.slopes import slope_factor

_TWO_EACH = Constant(2, "count", "nails in a piece")
_FOUR_EACH = Constant(4, "count", "nails in a pipe flashing")
_BY_WIDTH = Constant(1 / 6, "1", "of its height to its width")


def _step_lower(at: At) -> Expression:
    courses = (at.near("course") - 1) * at.choice("shingle/exposure")
    return first_butt(at) + courses + at.choice("flashing/short_of_butt")


def _past_lower(at: At) -> Expression:
    start = Constant(0, "in").greatest(at.near("lower")) - at.near("pieces", 0, "lower")
    return Constant(0, "in").greatest(start)


def _past_upper(at: At) -> Expression:
    return at.near("pieces", len(at.thing().pieces) - 1, "upper") - at.near("upper")


def _step_end(field: str) -> Make:
    def make(at: At) -> Expression:
        run = at.thing()
        if run.opening:
            return at(f"openings/*/{field}", run.opening - 1)
        return _wall_end(at, field)

    return make


def _wall_end(at: At, field: str) -> Expression:
    """Give the end of a wall beside a plane: the corner of the plane there."""
    run = at.thing()
    k = plane_index(at, run.plane)
    corners = at.plan.planes[k].corners
    wanted = getattr(run, field)
    return at("planes/*/corners/*/*", k, [v for _, v in corners].index(wanted), 1)


STEPS: Table = under(
    "/step_flashings/*",
    table(
        GEOMETRY,
        lap=lambda at: at.choice("step_flashing/length") - at.choice("shingle/exposure"),
        past_lower=_past_lower,
        past_upper=_past_upper,
        pieces__i__upper=lambda at: at.near("lower") + at.choice("step_flashing/length"),
        lower=_step_end("lower"),
        upper=_step_end("upper"),
    ),
    table(
        "One piece for each course beside it, its lower end under the butt of the next:"
        " IRC R905.2.8.4; how far under is common practice, no published source.",
        pieces__i__lower=_step_lower,
    ),
    table(
        COUNTED,
        count=lambda at: at.all("count", "pieces/*/lower", "its pieces", base=at.base()),
        nails=lambda at: _TWO_EACH * at.near("count"),
    ),
)


def _width(at: At) -> Expression:
    return at.near("right", back=3) - at.near("left", back=3)


def _pitch(at: At) -> Figure:
    return at("planes/*/pitch", plane_index(at, at.plan.openings[int(at.path[1])].plane))


def _bent_nails(at: At) -> Expression:
    return (_width(at) / at.choice("metalwork/nail_spacing")).up() + 1


_BENT = table(
    GEOMETRY,
    length=lambda at: _width(at) + 2 * at.near("past_corner"),
    area=lambda at: at.near("length") * (at.near("deck_leg") + at.near("wall_leg")),
) | table(
    PRACTICE,
    past_corner=lambda at: at.choice("flashing/past_corner"),
    nails=_bent_nails,
)  # fmt: skip


def _head_deck_leg(at: At) -> Expression:
    up = at.near("wall_leg") * slope_factor(_pitch(at)) / _pitch(at)
    return up.greatest(1.5 * at.choice("shingle/exposure"))


def _head_wall_leg(at: At) -> Expression:
    return at.choice("flashing/head_height").greatest(_BY_WIDTH * _width(at))


def _hole_length(at: At) -> Expression:
    return at.near("hole_width") * slope_factor(_pitch(at))


def _metal_area(at: At) -> Expression:
    beside = 2 * at.near("valley_length") * at.choice("flashing/under_covering")
    return at.near("area") + beside + 2 * at.near("up_slope") * at.choice("flashing/head_height")


OPENINGS: Table = under(
    "/openings/*",
    table(
        GEOMETRY,
        area=lambda at: (
            (at.near("right") - at.near("left")) * (at.near("upper") - at.near("lower"))
        ),
        pipes__i__hole_width=_width,
        pipes__i__hole_length=_hole_length,
        pipes__i__side_flange=lambda at: (
            (at.choice("pipe_flashing/base_width") - at.near("hole_width")) / 2
        ),
        pipes__i__slope_flange=lambda at: (
            (at.choice("pipe_flashing/base_length") - at.near("hole_length")) / 2
        ),
        pipes__i__least_flange=lambda at: at.near("side_flange").least(at.near("slope_flange")),
    ),
    table(PRACTICE, pipes__i__nails=lambda _: _FOUR_EACH),
    {f"aprons__i__{name}": formula for name, formula in _BENT.items()},
    {f"heads__i__{name}": formula for name, formula in _BENT.items()},
    table(
        PRACTICE,
        aprons__i__deck_leg=lambda at: at.choice("apron_metal/deck_leg"),
        aprons__i__wall_leg=lambda at: at.choice("apron_metal/face_leg"),
        heads__i__deck_leg=_head_deck_leg,
    ),
    table("IRC R1003.20: the flashing's height by the width.", heads__i__wall_leg=_head_wall_leg),
    table(
        GEOMETRY,
        crickets__i__ridge_length=lambda at: _width(at) / 2,
        crickets__i__height=lambda at: at.near("ridge_length") * _pitch(at),
        crickets__i__valley_length=lambda at: (
            at.near("ridge_length") * (2 + _pitch(at).squared()).root()
        ),
        crickets__i__up_slope=lambda at: at.near("ridge_length") * slope_factor(_pitch(at)),
        crickets__i__wall_length=lambda at: at.near("up_slope"),
        crickets__i__area=lambda at: at.near("ridge_length") * at.near("up_slope"),
        crickets__i__plane_area=lambda at: at.near("area") / 2,
        crickets__i__metal_area=_metal_area,
    ),
)
