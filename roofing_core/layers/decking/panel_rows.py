"""Rows of panels up a plane: what each covers, where its joints lie, and its pieces.

A row is a level band of the plane, a panel high; hips, valleys and rakes cut it off. Where joints
can lie is `panel_joints`, what pieces are cut from is `panel_cuts`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, pairwise

from roofing_core.layers.decking.panel_cuts import Blank, cut_panels
from roofing_core.layers.decking.panel_joints import Framing, Joints, Layout, Reach, layouts
from roofing_core.measures.counting import DUST, whole_pieces
from roofing_core.measures.faults import Fault, Refused, fault
from roofing_core.measures.sentences import Amount, length
from roofing_core.measures.units import Inches, SquareInches
from roofing_core.roof.cutting import Cut, Ring, cut_between
from roofing_core.roof.outlines import RoofPlane
from roofing_core.roof.regions import region_of
from roofing_core.roof.slicing import Region, Stretch

#: Of the layouts that keep the stagger, so many with the fewest pieces are cut to compare them.
LAYOUTS_CUT = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Panels:
    """The size of a panel.

    Attributes:
        length: The long way.
        width: The short way.
    """

    length: Inches
    width: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelRow:
    """One row of panels.

    Attributes:
        number: From 1 at the eave.
        lower: v of its lower edge.
        upper: v of its upper edge.
        stretches: What it covers, from the left.
        joints: The supports that the joints of each stretch lie on.
    """

    number: int
    lower: Inches
    upper: Inches
    stretches: tuple[Stretch, ...]
    joints: tuple[Joints, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelledPlane:
    """A plane with its rows of panels.

    Attributes:
        plane: The name of the plane.
        region: The plane as it is.
        rows: Its rows, from the eave up.
    """

    plane: str
    region: Region
    rows: tuple[PanelRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelPiece:
    """One panel, or part of one, before it is known which.

    Attributes:
        plane: The name of its plane.
        row: Number of its row on that plane, from 1 at the eave.
        left: u of its left end.
        right: u of its right end.
        lower: v of its lower edge.
        upper: v of its upper edge.
        area: Of it.
        corners: Its outline (u, v), counter-clockwise from its lower left corner; none for a
            rectangle.
    """

    plane: str
    row: int
    left: Inches
    right: Inches
    lower: Inches
    upper: Inches
    area: SquareInches
    corners: tuple[tuple[Inches, Inches], ...]

    def blank(self) -> Blank:
        """Give what it is cut from."""
        return Blank(
            length=self.right - self.left,
            height=self.upper - self.lower,
            area=self.area,
            slant=_slant(self.corners, self.upper - self.lower),
        )


def panelled(plane: RoofPlane, *, framing: Framing, panels: Panels) -> PanelledPlane:
    """Lay rows of panels up a plane: of the first layouts, the one that takes the fewest panels.

    Args:
        plane: The plane.
        framing: The supports, and what panels on them have to keep.
        panels: The size of a panel.

    Returns:
        The plane with its rows.

    Raises:
        Refused: No layout keeps the stagger and the least piece.

    Source:
        Counting; the rules are those of `Framing`.

    >>> from roofing_core.roof.outlines import rectangle
    >>> frame = Framing(support_spacing=24, panel_length=96, joint_stagger=2, least_spans=1)
    >>> size = Panels(length=96, width=48)
    >>> shed = panelled(rectangle(168, slope_length=112), framing=frame, panels=size)
    >>> [row.joints for row in shed.rows]
    [((4,),), ((2, 6),), ((4,),)]
    """
    region = region_of(plane)
    bands = list(_bands(region, panels.width))
    rows = [[_reach(plane, stretch) for stretch in stretches] for _, _, stretches in bands]
    heights = [upper - lower for lower, upper, _ in bands]
    least = whole_pieces(region.area() / (panels.length * panels.width))
    tried = islice(layouts(framing, rows=rows), LAYOUTS_CUT)
    counted = ((_panels(framing, rows, heights, layout, panels), layout) for layout in tried)
    chosen = _fewest(counted, least)
    if chosen is None:
        raise Refused(_stuck_fault(framing))
    return PanelledPlane(
        plane=plane.name,
        region=region,
        rows=tuple(
            PanelRow(number=number, lower=lower, upper=upper, stretches=stretches, joints=joints)
            for number, ((lower, upper, stretches), joints) in enumerate(
                zip(bands, chosen, strict=True), 1
            )
        ),
    )


_Band = tuple[float, float, tuple[Stretch, ...]]


def _bands(region: Region, width: float) -> Iterator[_Band]:
    """Give the rows up a region: lower edge, upper edge, and what lies between."""
    high = region.highest - region.lowest
    lowers = [region.lowest + k * width for k in range(whole_pieces(high / width))]
    for lower, upper in pairwise([*lowers, region.highest]):
        yield lower, upper, region.between(lower, upper)


def _reach(plane: RoofPlane, stretch: Stretch) -> Reach:
    on_left = {
        plane.edges[part.left.edge]
        for part in stretch.parts
        if min(part.lower_left, part.upper_left) <= stretch.left + DUST
    }
    on_right = {
        plane.edges[part.right.edge]
        for part in stretch.parts
        if max(part.lower_right, part.upper_right) >= stretch.right - DUST
    }
    return Reach(
        left=stretch.left,
        right=stretch.right,
        left_square=not on_left <= {"hip", "valley"},
        right_square=not on_right <= {"hip", "valley"},
    )


def _panels(
    framing: Framing,
    rows: Sequence[Sequence[Reach]],
    heights: Sequence[float],
    layout: Layout,
    panels: Panels,
) -> int:
    """Count the panels of a layout as if all its pieces were rectangles."""
    blanks = [
        Blank(length=right - left, height=height, area=0.0)
        for row, height, laid in zip(rows, heights, layout, strict=True)
        for reach, joints in zip(row, laid, strict=True)
        for left, right in pairwise(framing.ends(reach, joints))
    ]
    return cut_panels(blanks, panel_length=panels.length, panel_width=panels.width).panels


def _fewest(counted: Iterable[tuple[int, Layout]], least: int) -> Layout | None:
    """Give the layout of the fewest panels; none can have fewer than the area takes."""
    fewest, chosen = 0, None
    for count, layout in counted:
        if chosen is None or count < fewest:
            fewest, chosen = count, layout
        if fewest <= least:
            break
    return chosen


def _stuck_fault(framing: Framing) -> Fault:
    return fault(
        "joint_stagger",
        Amount(framing.joint_stagger, "count"),
        "fewer supports, or closer ones, or a smaller least_spans: rows of whole panels ",
        length(framing.panel_length),
        " long, cut only near the rakes, on supports ",
        length(framing.support_spacing),
        f" apart cannot keep end joints {framing.joint_stagger} supports apart and every piece on ",
        f"{framing.least_spans + 1} supports or more",
    )


def pieces_on(laid: PanelledPlane, *, framing: Framing) -> Iterator[PanelPiece]:
    """Cut the rows of a plane into pieces: at their joints, and along what bounds the plane.

    Args:
        laid: The plane with its rows.
        framing: The supports that joints lie on.

    Returns:
        The pieces, row by row from the eave, left to right.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.roof.forms import Pyramid
    >>> from roofing_core.roof.whole_roof import surfaces
    >>> side = surfaces(Pyramid(length=192, width=192, pitch=0.75)).planes[0]
    >>> frame = Framing(support_spacing=24, panel_length=96, joint_stagger=2, least_spans=1)
    >>> laid = panelled(side, framing=frame, panels=Panels(length=96, width=48))
    >>> [piece.corners for piece in pieces_on(laid, framing=frame)][0]
    ((0.0, 0.0), (96, 0.0), (96, 48.0), (38.400000000000006, 48.0))
    """
    for row in laid.rows:
        for stretch, joints in zip(row.stretches, row.joints, strict=True):
            for left, right in pairwise((stretch.left, *map(framing.at, joints), stretch.right)):
                for cut in _cuts(stretch, left, right):
                    yield _piece(laid.plane, row.number, cut)


def _cuts(stretch: Stretch, left: float, right: float) -> Sequence[Cut]:
    """Cut a stretch off at two joints; a rectangle, which most are, without looking further."""
    part = stretch.parts[0]
    on_left = max(part.lower_left, part.upper_left) <= left
    if len(stretch.parts) == 1 and on_left and right <= min(part.lower_right, part.upper_right):
        return [Cut(left, right, stretch.lower, stretch.upper, (), (), ())]
    return cut_between(stretch, left, right)


def _piece(plane: str, row: int, cut: Cut) -> PanelPiece:
    around, area = (cut.right - cut.left) * (cut.upper - cut.lower), cut.area()
    square = not cut.corners or area >= around * (1 - DUST)
    return PanelPiece(
        plane=plane,
        row=row,
        left=cut.left,
        right=cut.right,
        lower=cut.lower,
        upper=cut.upper,
        area=around if square else area,
        corners=() if square else cut.corners,
    )


def _slant(corners: Ring, height: float) -> float:
    """Give how far the one leaning end of a piece leans over its height, to the right going up."""
    leaning = [
        (bu - au, bv - av)
        for (au, av), (bu, bv) in zip(corners, (*corners[1:], *corners[:1]), strict=True)
        if abs(bu - au) > DUST and abs(bv - av) > DUST
    ]
    if len(leaning) != 1 or abs(leaning[0][1]) < height * (1 - DUST):
        return 0.0
    along, up = leaning[0]
    return along if up > 0 else -along
