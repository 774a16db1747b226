"""Outline: how far the shingles of a plane stand past each of its edges, or stop short of it.

Past the metal at eaves and rakes, up to hips, ridges and walls, and at a valley as its way of
being laid asks: short of the middle where it is open or cut, across it where they run through.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from roofing_core.layers.coursing.nail_room import ValleyLine
from roofing_core.measures.units import Inches, Ratio
from roofing_core.roof.outlines import EdgeKind, RoofPlane, is_lower
from roofing_core.roof.regions import Hole, Moved, region_of
from roofing_core.roof.slicing import Region

ValleyMethod = Literal["open", "closed_cut"]

#: The shingle makers' association's manual of 2006, as restated by the roofing contractors' journal
#: (April 2008): an open valley shows 6 in of metal at its top, and 1/8 in more for every foot down.
EXPOSED_WIDTH, WIDENING = 6.0, 1 / 96

#: From memory, the shingle makers' association: in a closed-cut valley the shingles of one plane
#: run 12 in or more past its middle, those of the other are cut 2 in short of it, and no nail
#: stands within 6 in of the middle of any valley.
RUN_THROUGH, CUT_BACK, NAILS_CLEAR = 12.0, 2.0, 6.0

#: The same manual, as restated there for open valleys: no piece shorter than this ends a course at
#: a valley. A strip further back is cut instead, so that the last joint stands this far from its
#: middle.
LEAST_PIECE = 12.0

#: Edges that go on above a valley with nothing over them.
_UNCOVERED = frozenset({"rake", "sidewall"})


@dataclass(frozen=True, slots=True, kw_only=True)
class ValleyWay:
    """How shingles are laid at valleys.

    Attributes:
        method: Open over metal, or closed with one plane's shingles cut over the other's.
        exposed_width: Of an open valley between the shingles, at its top.
        widening: How much wider an open valley shows for each unit of its length downhill.
        cut_back: How far from the middle the shingles of the second plane are cut, where closed.
        run_through: How far past the middle those of the first plane run, where closed.
        nails_clear: No nail nearer than this to the middle.
        least_piece: No joint nearer than this to the middle, along the nail line: the strip before
            it is cut shorter instead. 0 for joints wherever they fall.
    """

    method: ValleyMethod = "open"
    exposed_width: Inches = EXPOSED_WIDTH
    widening: Ratio = WIDENING
    cut_back: Inches = CUT_BACK
    run_through: Inches = RUN_THROUGH
    nails_clear: Inches = NAILS_CLEAR
    least_piece: Inches = LEAST_PIECE


def runs_through(plane: RoofPlane, other: RoofPlane) -> bool:
    """Tell whether a plane's shingles run through a closed valley, and the other's are cut.

    Those of the plane with the lower pitch; of equal pitches, of the smaller plane, which sheds
    less water; of equal planes, of the one whose name comes first.

    Args:
        plane: The plane.
        other: The plane beyond the valley.

    Returns:
        Whether its shingles run through.

    Raises:
        Nothing.

    Source:
        Common practice, no published source.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> front, end = surfaces(Hip(length=400, width=240, pitch=0.5)).planes[:2]
    >>> runs_through(end, front), runs_through(front, end)
    (True, False)
    """
    rank = (plane.pitch, plane.area, plane.name)
    return rank < (other.pitch, other.area, other.name)


def shingled_region(
    plane: RoofPlane,
    *,
    planes: Sequence[RoofPlane],
    past_eave: Inches,
    past_rake: Inches,
    valley: ValleyWay,
    holes: Sequence[Hole] = (),
) -> Region:
    """Give the region that the shingles of a plane cover.

    Args:
        plane: The plane.
        planes: All planes of the roof, to know which runs through a valley.
        past_eave: How far the first course stands past the metal of eaves and pitch breaks.
        past_rake: How far shingles stand past the metal of rakes.
        valley: How shingles are laid at valleys.
        holes: The openings in the plane, each as (left, right, lower, upper).

    Returns:
        The region.

    Raises:
        Nothing.

    Source:
        Geometry; the distances are the caller's.

    >>> from roofing_core.roof.forms import Gable
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> front, _ = surfaces(Gable(length=168, width=120, pitch=0.75)).planes
    >>> shingled_region(front, planes=(), past_eave=0.5, past_rake=0.25, valley=ValleyWay()).area()
    12721.75
    """
    by_name = {one.name: one for one in planes}

    def moved(k: int, kind: EdgeKind) -> Moved:
        if kind == "rake":
            return past_rake, past_rake
        if kind != "valley":
            return (past_eave, past_eave) if is_lower(plane, k) else (0.0, 0.0)
        if valley.method == "closed_cut":
            through = runs_through(plane, by_name[plane.beyond[k]])
            at = valley.run_through if through else -valley.cut_back
            return at, at
        return _open_valley(plane, k, valley)

    # What runs through a valley may reach past the top of its plane, where no course lies.
    top = max(v for _, v in plane.corners)
    past = [moved(k, kind) for k, kind in enumerate(plane.edges)]
    square = square_ends(plane, planes=planes) if valley.method == "closed_cut" else {}
    return region_of(plane, past=past, holes=holes, square_at=square).up_to(top)


def square_ends(plane: RoofPlane, *, planes: Sequence[RoofPlane]) -> dict[int, int]:
    """Give the closed valleys of a plane that end square at their top, whole shingles above them.

    They end there at more than a right angle: of those that cut shingles the ones at an edge that
    goes on upwards and that no caps cover, for where the cut would go on to, none run through; and
    all whose shingles run through, for so far the others are cut.

    Args:
        plane: The plane.
        planes: All planes of the roof, to know which runs through a valley.

    Returns:
        The place of each such corner of the plane, with that of the valley among its edges.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.forms import Gable
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> planes = surfaces(Gable(length=168, width=120, pitch=0.75)).planes
    >>> square_ends(planes[0], planes=planes)
    {}
    """
    by_name, found = {one.name: one for one in planes}, {}
    for k, kind in enumerate(plane.edges):
        if kind == "valley":
            top = _top(plane, k)
            beside = plane.edges[(k - 1) % len(plane.edges) if top == k else top]
            through = runs_through(plane, by_name[plane.beyond[k]])
            covered = not through and beside not in _UNCOVERED
            if beside != "valley" and not covered and _is_blunt(plane, top):
                found[top] = k
    return found


def _top(plane: RoofPlane, k: int) -> int:
    """Give the place of the corner that is the upper end of an edge."""
    after = (k + 1) % len(plane.corners)
    return after if plane.corners[after][1] > plane.corners[k][1] else k


def _is_blunt(plane: RoofPlane, k: int) -> bool:
    """Tell whether the angle inside a plane at a corner is more than a right one."""
    corners = plane.corners
    (bu, bv), (u, v), (au, av) = corners[k - 1], corners[k], corners[(k + 1) % len(corners)]
    return (bu - u) * (au - u) + (bv - v) * (av - v) < 0


def _open_valley(plane: RoofPlane, k: int, valley: ValleyWay) -> Moved:
    top = -valley.exposed_width / 2
    foot = top - valley.widening * plane.lengths[k] / 2
    rises = plane.corners[(k + 1) % len(plane.corners)][1] > plane.corners[k][1]
    return (foot, top) if rises else (top, foot)


def valley_lines(plane: RoofPlane, *, nails_clear: Inches) -> tuple[ValleyLine, ...]:
    """Give the valleys of a plane, of which nails keep clear.

    Args:
        plane: The plane.
        nails_clear: No nail nearer than this to the middle of a valley.

    Returns:
        One entry per valley.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.forms import Hip
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> valley_lines(surfaces(Hip(length=400, width=240, pitch=0.5)).planes[0], nails_clear=6)
    ()
    """
    found = []
    for k, kind in enumerate(plane.edges):
        if kind == "valley":
            start, end = plane.corners[k], plane.corners[(k + 1) % len(plane.corners)]
            found.append(ValleyLine(start=start, end=end, clear=nails_clear, edge=k))
    return tuple(found)
