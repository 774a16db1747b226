"""Telling: the turns of phrase that steps of work and findings share."""

from __future__ import annotations

from collections.abc import Iterable

from roofing_core.job.layout import Layout
from roofing_core.measures.sentences import length


def count(number: int, what: str, many: str = "") -> str:
    """Write a number with what it counts.

    Args:
        number: How many.
        what: The thing, in the singular.
        many: Its plural, where that is not the singular and an s.

    Returns:
        Both, one way for one and another for all else.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> count(1, "box", "boxes"), count(2, "box", "boxes")
    ('1 box', '2 boxes')
    """
    return f"{number} {what}" if number == 1 else f"{number} {many or what + 's'}"


def listed(values: Iterable[float]) -> list[object]:
    """Give the parts of a sentence that list lengths.

    Args:
        values: The lengths.

    Returns:
        The lengths with commas between them.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> len(listed((0.0, 6.0, 11.0)))
    5
    """
    parts: list[object] = []
    for value in values:
        parts += [", ", length(value)]
    return parts[1:]


def on(layout: Layout, plane: str) -> str:
    """Begin a sentence with its plane, where there are several.

    Args:
        layout: The roof.
        plane: The name of the plane.

    Returns:
        The name and a colon, or nothing on a single slope.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> on(lay_out(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))), "slope")
    ''
    """
    return "" if len(layout.planes) == 1 else f"{plane.capitalize()}: "


def starting(layout: Layout, text: str) -> str:
    """Begin a sentence that no plane's name begins with a capital.

    Args:
        layout: The roof.
        text: What the sentence says.

    Returns:
        The text, with a capital on a single slope.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> starting(lay_out(shed), "snap a line")
    'Snap a line'
    """
    return text if len(layout.planes) > 1 else text[0].upper() + text[1:]
