"""The cutting list of shingles as text: which offcut serves where."""

from __future__ import annotations

from roofing_core.job.cutting import PieceCut, ShingleCut
from roofing_core.job.plan import Plan
from roofing_core.measures.sentences import write_length
from roofing_core.measures.units import System

#: Headings of a cutting list.
CUTTING_HEADINGS = ("shingle", "first", "then", "left over")


def cutting_rows(plan: Plan, system: System = "us") -> tuple[tuple[str, ...], ...]:
    """Give the cutting list: the shingles that give more than one piece.

    Args:
        plan: A finished plan.
        system: The unit system of every measurement in it.

    Returns:
        One row per shingle, in the order in which they are opened, under `CUTTING_HEADINGS`; none
        where no offcut is used again.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Cutting, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> cutting_rows(plan(Job(roof=shed, cutting=Cutting(reuse="best"))))[1][1:]
    ('course 1 piece 5, left end 11 in', 'course 19 piece 1, right end 28 3/8 in', '0 in')
    """
    return tuple(
        (
            str(shingle.number),
            cut_from(plan, shingle.pieces[0], system),
            "; ".join(cut_from(plan, piece, system) for piece in shingle.pieces[1:]),
            write_length(shingle.left_over, system),
        )
        for shingle in shared(plan)
    )


def shared(plan: Plan) -> tuple[ShingleCut, ...]:
    """Give the shingles of a plan that give more than one piece.

    Args:
        plan: A finished plan.

    Returns:
        Those shingles, in the order in which they are opened.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shared(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    ()
    """
    return tuple(shingle for shingle in plan.cutting.cut if len(shingle.pieces) > 1)


def shingles_taken(plan: Plan) -> str:
    """Say how many shingles a plan takes, and where offcuts are used again, whether fewer would do.

    Args:
        plan: A finished plan.

    Returns:
        A sentence.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Cutting, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> shingles_taken(plan(Job(roof=shed)))
    'It takes 105 shingles, the starter among them, each piece from one of its own.'
    >>> shingles_taken(plan(Job(roof=shed, cutting=Cutting(reuse="best"))))[-67:]
    'offcuts used again; 105 without, and no fewer than 95 are possible.'
    """
    cut = plan.cutting
    rows = {"starter": "the starter", "cap": "caps"}
    among = " and ".join(told for row, told in rows.items() if row in cut.holds)
    taken = f"It takes {cut.shingles} shingles{f', {among} among them' if among else ''}"
    if cut.reuse == "none":
        three = f", {plan.choices.cap.from_shingle} caps from one" if "cap" in cut.holds else ""
        return f"{taken}, each piece from one of its own{three}."
    fewer = f"no fewer than {cut.least} are possible"
    if not cut.proved:
        fewer = f"it is proved that {cut.least} are needed, not that fewer than these will not do"
    return f"{taken}, offcuts used again; {cut.simply} without, and {fewer}."


def cut_from(plan: Plan, piece: PieceCut, system: System) -> str:
    """Say which piece it is, and which part of its shingle.

    Args:
        plan: A finished plan.
        piece: One of its pieces.
        system: The unit system of every measurement in it.

    Returns:
        A few words.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Cutting, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> planned = plan(Job(roof=shed, cutting=Cutting(reuse="best")))
    >>> cut_from(planned, planned.cutting.cut[0].pieces[0], "us")
    'starter piece 1, right end 35 3/8 in'
    """
    wide = write_length(piece.width, system)
    part = {
        "both": "whole",
        "left": f"left end {wide}",
        "right": f"right end {wide}",
        "neither": f"{wide} from {write_length(piece.begins, system)}",
    }
    return f"{piece_named(plan, piece)}, {part[piece.keeps]}"


def piece_named(plan: Plan, piece: PieceCut) -> str:
    """Say which piece it is: of which row, where there are several planes of which plane too.

    Args:
        plan: A finished plan.
        piece: One of its pieces.

    Returns:
        A few words.

    Raises:
        Nothing.

    Source:
        The plan's own numbers.

    >>> from roofing_core.job.choices import Cutting, Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> planned = plan(Job(roof=shed, cutting=Cutting(reuse="best")))
    >>> piece_named(planned, planned.cutting.cut[-1].pieces[0])
    'course 20 piece 5'
    """
    where = f"{piece.plane} " if len(plan.planes) > 1 else ""
    if piece.row == "cap":
        return f"cap {piece.number} between {piece.plane}"
    several = sum(strip.plane == piece.plane for strip in plan.starters) > 1
    which = f" {piece.course}" if piece.row == "course" or several else ""
    return f"{where}{piece.row}{which} piece {piece.number}"
