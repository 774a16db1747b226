"""Columns: closed formulas take a number or a column of them; here a column is checked at once.

A column is a NumPy array of any shape. NumPy itself is not imported: who gives one has done so.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import islice
from typing import TYPE_CHECKING, Any, TypeVar

from roofing_core.measures.faults import Fault

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Column = TypeVar("Column", float, NDArray[np.float64])
else:
    Column = TypeVar("Column")

#: Of a column that is wrong all over, so many numbers are told one by one.
MOST_TOLD = 20


def column_faults(
    at: str, values: Any, fault_of: Callable[[str, float], Fault | None]
) -> list[Fault]:
    """Give the faults of a number, or of the numbers of a column, each by its place in it.

    What `fault_of` lets pass must be a range of numbers: a column is right when its least and its
    greatest number are, and only where they are not is it gone through.

    Args:
        at: The name to put into the faults; ``run.3`` is the fourth number of the column ``run``.
        values: A number, or a column of them.
        fault_of: Gives the fault of one number, or ``None``.

    Returns:
        The faults, the first 20 of a column; none when all is right.

    Raises:
        Nothing: The faults are the answer.

    Source:
        None: a way of telling.

    >>> column_faults("run", 12.0, lambda at, value: None)
    []
    """
    if isinstance(values, int | float):
        found = fault_of(at, values)
        return [] if found is None else [found]
    # What is not a number is the least and the greatest of its column, and no range holds it.
    if not values.size or not (fault_of(at, values.min()) or fault_of(at, values.max())):
        return []
    told = (fault_of(f"{at}.{k}", value) for k, value in enumerate(values.ravel().tolist()))
    return list(islice((fault for fault in told if fault is not None), MOST_TOLD))
