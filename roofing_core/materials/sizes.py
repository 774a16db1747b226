"""Sizes: what is wrong with the measurements of a material, by the names of its fields.

How the sizes of a material fit together, and fit the roof, is for the layers.
"""

from __future__ import annotations

from roofing_core.measures.faults import Fault, fault, negative, not_positive

#: No pack holds more pieces than this.
MOST_IN_PACK = 1_000_000


def length_faults(material: object, *names: str) -> list[Fault | None]:
    """Give the lengths of a material that are not over zero.

    Args:
        material: Any material.
        names: The fields that hold its lengths.

    Returns:
        One entry per field: its fault, or ``None``.

    Raises:
        Nothing: The faults are the answer.

    Source:
        A limit of this library.

    >>> from roofing_core.materials import material
    >>> from roofing_core.materials.kinds import Tape
    >>> length_faults(material(Tape, "joint_tape"), "width", "length")
    [None, None]
    """
    return [not_positive(name, getattr(material, name)) for name in names]


def weight_faults(material: object, *names: str) -> list[Fault | None]:
    """Give the weights of a material that are negative. Nothing need be weighed.

    Args:
        material: Any material.
        names: The fields that hold its weights.

    Returns:
        One entry per field: its fault, or ``None``.

    Raises:
        Nothing: The faults are the answer.

    Source:
        A limit of this library.

    >>> from roofing_core.materials import material
    >>> from roofing_core.materials.kinds import Starter
    >>> weight_faults(material(Starter, "self_made_starter"), "pack_weight")  # 0 lb
    [None]
    """
    return [negative(name, getattr(material, name), "lb") for name in names]


def pack_fault(at: str, holds: int) -> Fault | None:
    """Give the fault of a pack that holds nothing, or more than any pack does.

    Args:
        at: The field that says what a pack holds.
        holds: How many pieces it holds.

    Returns:
        The fault, or ``None``.

    Raises:
        Nothing: The fault is the answer.

    Source:
        A limit of this library.

    >>> pack_fault("per_pack", 1) is None
    True
    """
    if 1 <= holds <= MOST_IN_PACK:
        return None
    return fault(at, str(holds), f"1 or more and at most {MOST_IN_PACK}")
