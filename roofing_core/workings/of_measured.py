"""The working of a single slope from what was measured: two of its sizes, of walls or deck."""

from __future__ import annotations

from collections.abc import Sequence

from roofing_core.roof.planes import SingleSlope
from roofing_core.workings.at import At
from roofing_core.workings.deck_sides import roof_measured
from roofing_core.workings.expressions import Expression, Figure, Step

_OVERHANGS = ("eave_overhang", "ridge_overhang")


def single_slope(at: At) -> SingleSlope | None:
    """Give a single slope as it was measured; nothing where the plan does not keep it.

    Args:
        at: The plan.

    Returns:
        What came in.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, run=108, rise=45)))
    >>> single_slope(At(shed, ())).run
    108
    """
    roof = at.plan.as_measured.roof
    return roof if isinstance(roof, SingleSlope) else None


def eave_length(at: At) -> Expression | None:
    """Give the eave length of a single slope: as measured, with the overhangs over walls.

    Args:
        at: The plan.

    Returns:
        The formula; nothing where the plan does not keep what was measured.

    Raises:
        Nothing.

    Source:
        Geometry.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, run=108, rise=45)))
    >>> eave_length(At(shed, ())).value
    168
    """
    roof = single_slope(at)
    if roof is None:
        return None
    long = roof_measured(at, "eave_length")
    if roof.measured == "walls" and roof.rake_overhang:
        return long + 2 * roof_measured(at, "rake_overhang")
    return long


def slope_size(at: At, size: str) -> Expression | None:
    """Give the slope length, run, rise or pitch of a single slope, from the two that were measured.

    Args:
        at: The plan.
        size: Which.

    Returns:
        The formula; for a measurement itself its own figure. Nothing where the plan does not keep
        what was measured.

    Raises:
        Nothing.

    Source:
        Geometry: ``slope_length ** 2 = run ** 2 + rise ** 2``, ``pitch = rise / run``, and over
        walls level overhangs are added to the run.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.workings.expressions import evaluated
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, run=108, rise=45)))
    >>> evaluated(slope_size(At(shed, ()), "slope_length"))  # 5:12 is 13 up for 12 of run
    117.0
    """
    roof = single_slope(at)
    if roof is None:
        return None
    over = [roof_measured(at, name) for name in _OVERHANGS if getattr(roof, name)]
    if roof.measured == "walls" and over:
        return _over_walls(at, size, roof, over)
    if getattr(roof, size) is not None:
        return roof_measured(at, size)
    return _from_two(roof, size, {name: at(f"roof/{name}") for name in _SIZES})


_SIZES = ("slope_length", "run", "rise", "pitch", "slope_factor")


def _from_two(roof: SingleSlope, size: str, of: dict[str, Figure]) -> Expression:
    """Give what was not measured from the two that were."""
    slant, run, rise, pitch, factor = (of[name] for name in _SIZES)
    if size == "pitch":
        return rise / run
    if roof.pitch is not None:
        if size == "run":
            return rise / pitch if roof.slope_length is None else slant / factor
        return run * pitch if size == "rise" else run * factor
    if size == "slope_length":
        return (run.squared() + rise.squared()).root()
    leg = rise if size == "run" else run
    return _other_leg(slant, leg)


def _other_leg(slant: Expression, leg: Expression) -> Expression:
    return ((slant - leg) * (slant + leg)).root()


def _over_walls(at: At, size: str, roof: SingleSlope, over: Sequence[Expression]) -> Expression:
    """Give a size of the deck over walls: the run between them and the overhangs."""
    if size == "slope_length":
        return at("roof/run") * at("roof/slope_factor")
    if size == "rise":
        return at("roof/run") * at("roof/pitch")
    if size == "pitch":
        return _wall_pitch(at, roof)
    run = _wall_run(at, roof)
    for each in over:
        run = run + each
    return run


def _wall_pitch(at: At, roof: SingleSlope) -> Expression:
    if roof.pitch is not None:
        return roof_measured(at, "pitch")
    rise = _wall_leg(at, roof, "rise", "run")
    return rise / _wall_run(at, roof)


def _wall_run(at: At, roof: SingleSlope) -> Expression:
    if roof.run is not None:
        return roof_measured(at, "run")
    if roof.pitch is None:
        return _wall_leg(at, roof, "run", "rise")
    if roof.slope_length is not None:
        run: Expression = roof_measured(at, "slope_length") / at("roof/slope_factor")
    else:
        run = roof_measured(at, "rise") / at("roof/pitch")
    return Step("run over the walls", "in", run)


def _wall_leg(at: At, roof: SingleSlope, leg: str, other: str) -> Expression:
    if getattr(roof, leg) is not None:
        return roof_measured(at, leg)
    slant, known = roof_measured(at, "slope_length"), roof_measured(at, other)
    return Step(f"{leg} over the walls", "in", _other_leg(slant, known))
