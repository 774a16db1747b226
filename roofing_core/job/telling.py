"""Telling: the turns of phrase that steps of work and findings share."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from roofing_core.job.layout import Layout
from roofing_core.measures.sentences import Sentence, length, say
from roofing_core.measures.units import Inches


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


def listed(values: Iterable[Inches]) -> list[object]:
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


def on_planes(layout: Layout, told: Iterable[tuple[str, Sentence]]) -> Iterator[Sentence]:
    """Say each thing once for all the planes that it is said of.

    Args:
        layout: The roof.
        told: The name of a plane and what is said of it, again and again.

    Returns:
        Each sentence once, begun with its planes where the roof has several.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.measures.sentences import say
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = lay_out(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> [one.written() for one in on_planes(shed, [("slope", say("Snap a line."))])]
    ['Snap a line.']
    """
    planes: dict[Sentence, list[str]] = {}
    for plane, sentence in told:
        planes.setdefault(sentence, []).append(plane)
    for sentence, names in planes.items():
        if len(layout.planes) == 1:
            yield sentence
        else:
            first, *rest = sentence.parts
            text = str(first)
            begun = f"{all_of(names)}: {text[:1].lower()}{text[1:]}"
            yield say(f"{begun[0].upper()}{begun[1:]}", *rest)


def all_of(names: Sequence[str]) -> str:
    """Write names one after another, as in a sentence.

    Args:
        names: One or more.

    Returns:
        All with commas, and the last one with "and".

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> all_of(["front", "back", "left end"])
    'front, back and left end'
    """
    *others, last = names
    return f"{', '.join(others)} and {last}" if others else last
