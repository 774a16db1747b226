"""What keeps a named form of roof from being built, by the names of its measurements."""

from __future__ import annotations

from roofing_core.measures.faults import Fault, fault, negative, not_positive
from roofing_core.measures.sentences import length
from roofing_core.measures.units import Inches
from roofing_core.roof.footprints import pitch_range_fault
from roofing_core.roof.forms import Gable, Gambrel, Hip, Pyramid, Saltbox, deck_sizes, oblong
from roofing_core.roof.polygons import LEAST_SIDE, least_side


def form_faults(roof: Gable | Saltbox | Gambrel | Hip | Pyramid) -> list[Fault]:
    """Give all that is wrong with the measurements of a named form.

    Args:
        roof: What was measured.

    Returns:
        None when it can be built.

    Raises:
        Nothing: The faults are the answer.

    Source:
        Geometry; the least sizes are this library's own.

    >>> [one.at for one in form_faults(Gable(length=0, width=-1, pitch=0))]
    [('length',), ('width',), ('pitch',)]
    """
    faults = _plain_faults(roof)
    own = _own_faults(roof) if not faults else []
    return faults + [one for one in own if one is not None]


def _plain_faults(roof: Gable | Saltbox | Gambrel | Hip | Pyramid) -> list[Fault]:
    """Give the sizes and pitches that no roof has, and what is missing or left over."""
    faults = [not_positive(name, getattr(roof, name)) for name in ("length", "width")]
    for name in ("break_run", "rise", "ridge_run"):
        if (size := getattr(roof, name, None)) is not None:
            faults.append(not_positive(name, size))
    for name in ("back_eave_drop", "eave_overhang", "rake_overhang"):
        if (size := getattr(roof, name, None)) is not None:
            faults.append(negative(name, size))
    for name in ("pitch", "back_pitch", "upper_pitch", "end_pitch"):
        if (pitch := getattr(roof, name, None)) is not None:
            faults.append(pitch_range_fault((name,), pitch))
    if isinstance(roof, Saltbox):
        faults.append(_one_of(roof, "back_eave_drop", "ridge_run"))
    if isinstance(roof, Pyramid):
        faults.append(_one_of(roof, "rise", "pitch"))
    return [one for one in faults if one is not None]


def _one_of(roof: Saltbox | Pyramid, *names: str) -> Fault | None:
    """Give a fault unless exactly one of two measurements is given."""
    given = [name for name in names if getattr(roof, name) is not None]
    if len(given) == 1:
        return None
    return fault(names[0], " and ".join(given) or "none", f"one of {' and '.join(names)}")


def _own_faults(roof: Gable | Saltbox | Gambrel | Hip | Pyramid) -> list[Fault | None]:
    """Give the faults of sizes that do not go together."""
    least = least_side(oblong(roof.length, roof.width))
    faults = [_least("length", roof.length, least), _least("width", roof.width, least)]
    if isinstance(roof, Gambrel):
        faults.append(_most("break_run", roof.break_run, roof.width / 2 - LEAST_SIDE))
    elif isinstance(roof, Saltbox):
        faults += _saltbox_faults(roof)
    elif isinstance(roof, Pyramid):
        faults += _pyramid_faults(roof)
    return faults


def _least(at: str, size: Inches, least: Inches) -> Fault | None:
    return None if size >= least else fault(at, length(size), "at least ", length(least))


def _most(at: str, size: Inches, most: Inches) -> Fault | None:
    return None if size <= most else fault(at, length(size), "at most ", length(most))


def _saltbox_faults(roof: Saltbox) -> list[Fault | None]:
    """Give what is wrong with the ridge of a saltbox: it must stand between the eaves."""
    if roof.ridge_run is not None:
        most = roof.width - LEAST_SIDE
        return [_least("ridge_run", roof.ridge_run, LEAST_SIDE),
                _most("ridge_run", roof.ridge_run, most)]  # fmt: skip
    back_pitch = roof.pitch if roof.back_pitch is None else roof.back_pitch
    most = back_pitch * deck_sizes(roof)[1] - (roof.pitch + back_pitch) * LEAST_SIDE
    return [_most("back_eave_drop", roof.back_eave_drop or 0.0, most)]


def _pyramid_faults(roof: Pyramid) -> list[Fault | None]:
    """Give what is wrong with the pitches that follow from the rise of a pyramid."""
    long, wide = deck_sizes(roof)
    if roof.rise is not None:
        return [pitch_range_fault(("rise",), 2 * roof.rise / size) for size in (long, wide)]
    return [pitch_range_fault(("length",), (roof.pitch or 0.0) * wide / long)]
