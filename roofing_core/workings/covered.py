"""Covered: the edges of what each layer covers of a plane, as the layer reaches past them."""

from __future__ import annotations

from roofing_core.layers.coursing.outline import runs_through, square_ends
from roofing_core.roof.outlines import RoofPlane, is_lower
from roofing_core.workings.at import At
from roofing_core.workings.bounds import Bound, Past, Places, bound
from roofing_core.workings.expressions import Expression, Figure, Step


def shingle_bounds(at: At, plane: int) -> tuple[Bound, ...]:
    """Give the edges of what the shingles of a plane cover.

    Args:
        at: The plan.
        plane: The plane, from 0.

    Returns:
        One entry per edge of the plane: past the metal of eaves and rakes, and at valleys as these
        are laid.

    Raises:
        Nothing.

    Source:
        Geometry; the distances are those chosen.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.workings.expressions import evaluated
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(shingle_bounds(At(shed, ()), 0)[1].place)
    168.25
    """
    one = at.plan.planes[plane]
    return at.known.kept(
        ("bounds of shingles", plane),
        lambda: tuple(
            bound(at, plane, k, _shingled(at, one, plane, k)) for k in range(len(one.edges))
        ),
    )


def square_tops(at: At, plane: int) -> tuple[tuple[Bound, Expression], ...]:
    """Give the lines along which closed valleys end square at their top.

    Args:
        at: The plan.
        plane: The plane, from 0.

    Returns:
        For each such valley the line, square to it through its top, and how high the top is.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> square_tops(At(shed, ()), 0)
    ()
    """
    if at.plan.choices.valleying.method != "closed_cut":
        return ()
    one = at.plan.planes[plane]
    return tuple(
        _square_top(at, plane, corner, k)
        for corner, k in square_ends(one, planes=at.plan.planes).items()
    )


def _square_top(at: At, plane: int, top: int, k: int) -> tuple[Bound, Expression]:
    foot = (k + 1) % len(at.plan.planes[plane].corners) if top == k else k
    (ut, vt), (uf, vf) = (
        tuple(at("planes/*/corners/*/*", plane, n, axis) for axis in (0, 1)) for n in (top, foot)
    )
    name = f"the end, square, of the valley along side {k + 1} of {at.plan.planes[plane].name}"
    lean = Step(f"lean of {name}", "1", (vt - vf) / (uf - ut))
    return Bound(name, "sloping", Step(f"foot of {name}", "in", ut - lean * vt), lean), vt


def _shingled(at: At, plane: RoofPlane, number: int, k: int) -> Past | None:
    kind = plane.edges[k]
    if kind == "rake":
        return _both(at.choice("coursing/shingle_past_rake"))
    if kind != "valley":
        past = at.choice("coursing/starter_past_metal") + at.choice("coursing/course_past_starter")
        return _both(past) if is_lower(plane, k) else None
    if at.plan.choices.valleying.method == "closed_cut":
        other = next(one for one in at.plan.planes if one.name == plane.beyond[k])
        if runs_through(plane, other):
            return _both(at.choice("valleying/run_through"))
        return _both(-at.choice("valleying/cut_back"))
    return _open(at, plane, number, k)


def _open(at: At, plane: RoofPlane, number: int, k: int) -> Past:
    exposed, widening = (at.choice(f"valleying/{name}") for name in ("exposed_width", "widening"))
    long = at("planes/*/lengths/*", number, k)
    top = -(exposed / 2)
    foot = -((exposed + widening * long) / 2)
    rises = plane.corners[(k + 1) % len(plane.corners)][1] > plane.corners[k][1]
    return Past(foot, top) if rises else Past(top, foot)


def _both(past: Expression) -> Past:
    return Past(past, past)


def sheet_bounds(at: At, plane: int, sheet: str) -> tuple[Bound, ...]:
    """Give the edges of what a sheet covers of a plane.

    Args:
        at: The plan.
        plane: The plane, from 0.
        sheet: Which sheet, ``underlayment`` or ``ice_barrier``.

    Returns:
        One entry per edge: over hips, ridges and valleys, past the metal of eaves, and as far as
        a head lap below a pitch break.

    Raises:
        Nothing.

    Source:
        Geometry; the distances are those chosen.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.workings.expressions import evaluated
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> evaluated(sheet_bounds(At(shed, ()), 0, "underlayment")[0].place)
    -0.25
    """
    one = at.plan.planes[plane]
    return at.known.kept(
        ("bounds of", sheet, plane),
        lambda: tuple(
            bound(at, plane, k, sheet_past(at, one, k, sheet)) for k in range(len(one.edges))
        ),
    )


def sheet_past(at: At, plane: RoofPlane, k: int, sheet: str) -> Past | None:
    """Give how far a sheet reaches past an edge of a plane.

    Args:
        at: The plan.
        plane: The plane.
        k: The edge, from 0.
        sheet: Which sheet, ``underlayment`` or ``ice_barrier``.

    Returns:
        How far; nothing where it ends at the edge.

    Raises:
        Nothing.

    Source:
        Geometry; the distances are those chosen.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> sheet_past(At(shed, ()), shed.planes[0], 0, "underlayment").start.value
    0.25
    """
    if is_lapped(plane, k):
        return _both(at.choice("underlaying/over_edges"))
    if not is_lower(plane, k):
        return None
    if plane.edges[k] == "eave":
        return _both(at.choice("underlaying/past_metal"))
    own = "ice_barrier_" if sheet == "ice_barrier" else ""
    return _both(at.choice(f"underlaying/{own}head_lap"))


def is_lapped(plane: RoofPlane, k: int) -> bool:
    """Tell whether sheets run over an edge on to the next plane.

    Args:
        plane: The plane.
        k: The edge, from 0.

    Returns:
        Whether they do: over hips and valleys, and a ridge with another plane beyond.

    Raises:
        Nothing.

    Source:
        Navy Builder manual, NAVEDTRA 14044, chapter 3.

    >>> from roofing_core.roof.outlines import rectangle
    >>> is_lapped(rectangle(168, slope_length=112), 2)
    False
    """
    kind = plane.edges[k]
    return kind in {"hip", "valley"} or (kind == "ridge" and plane.beyond[k] != "")


def deck_bounds(at: At, plane: int) -> tuple[Bound, ...]:
    """Give the edges of a plane as they are.

    Args:
        at: The plan.
        plane: The plane, from 0.

    Returns:
        One entry per edge.

    Raises:
        Nothing.

    Source:
        The plane.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> deck_bounds(At(shed, ()), 0)[2].place.value
    112
    """
    count = len(at.plan.planes[plane].edges)
    return at.known.kept(
        ("bounds of the deck", plane),
        lambda: tuple(bound(at, plane, k) for k in range(count)),
    )


def with_openings(
    at: At, plane: int, bounds: tuple[Bound, ...], *lines: tuple[Expression, ...]
) -> Places:
    """Put the places along the eave and the heights together where things end on a plane.

    Args:
        at: The plan.
        plane: The plane, from 0.
        bounds: The edges of what is covered.
        lines: Further places along the eave, and further heights.

    Returns:
        All of them, with the sides of the openings in the plane.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> with_openings(At(shed, ()), 0, ()).along
    ()
    """
    here = [k for k, one in enumerate(at.plan.openings) if one.plane == at.plan.planes[plane].name]

    def sides(*names: str) -> tuple[Figure, ...]:
        return tuple(at(f"openings/*/{name}", k) for k in here for name in names)

    along, heights = lines or ((), ())
    return Places(bounds, (*along, *sides("left", "right")), (*heights, *sides("lower", "upper")))
