"""A working as plain text: each formula in words, with its numbers, and where those come from."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from roofing_core.measures.units import System
from roofing_core.sheets.text import WIDTH
from roofing_core.workings.origins import SAID
from roofing_core.workings.working import PutIn, WorkedFigure, WorkedLine

#: As many inputs are told one by one under a formula.
_TOLD = 8

#: What is said of the way of writing, each where one of these words comes; the first of any.
_NOTES = (
    (("",), "Numbers are in full, to twelve figures at most."),
    (("whole(",), "whole( ) is rounded up to whole pieces."),
    (("distance(",), "distance( ) has no sign."),
    (("angle(",), "angle( ) is that of a rise over a run."),
    (
        (" a of ", " b of ", " c of "),
        "A line in plan is where a x place to the right + b x place to the back = c.",
    ),
    (
        ("sum of", "count of", "least of", "greatest of"),
        "Of a list one entry is worked out; the others are alike.",
    ),
)


def working_text(working: WorkedFigure, system: System = "us") -> str:
    """Write the working of a figure as plain text.

    Args:
        working: The working.
        system: The unit system of every measurement in it.

    Returns:
        Its lines numbered, in lines of at most 92 characters, every line ended by a newline.

    Raises:
        Nothing.

    Source:
        The working's own numbers.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.workings.working import working
    >>> shed = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> print(working_text(working(shed, "/courses/19/butt"), "us").split("butt of course 20")[1])
    ...                                                         # doctest: +NORMALIZE_WHITESPACE
       (/courses/19/butt)
       = -(starter past metal + course past starter) + (number of course 20 - 1) x exposure of the
         shingle
       = -(1/4 in + 1/4 in) + (20 - 1) x 5 5/8 in
       = 106 3/8 in, that is 8 ft 10 3/8 in
       starter past metal: the default (/choices/coursing/starter_past_metal)
       course past starter: the default (/choices/coursing/course_past_starter)
       number of course 20: its place in the list (/courses/19/number)
       exposure of the shingle: the default (/choices/shingle/exposure)
       Geometry; how far starter and first course stand out is common practice, no published
       source.
    """
    title = f"WORKING OF {working.name.upper()}: {working.result.written(system)}"
    head = [*wrap(title, WIDTH), *wrap(_notes(working), WIDTH)]
    parts = ["\n".join(head) + "\n"]
    for number, line in enumerate(working.lines, 1):
        parts.append("\n".join(_lines(number, line, system)) + "\n")
    return "\n".join(parts)


def _notes(working: WorkedFigure) -> str:
    """Say how the lines are to be read, as far as these need it."""
    all_of_it = "".join(f" {line.name} {line.formula.written()}" for line in working.lines)
    return " ".join(note for words, note in _NOTES if any(word in all_of_it for word in words))


def _lines(number: int, line: WorkedLine, system: System) -> Iterator[str]:
    place = f" ({line.figure})" if line.figure else ""
    yield from _wrapped(f"{number:>3}  {line.name}{place}", 5, first=0)
    for formula in (line.formula, line.numbers):
        yield from _wrapped(f"= {formula.written(system)}", 7, first=5)
    full, shown = line.comes_to.written(system), line.shown.written(system)
    also = f", that is {shown}" if shown != full else ""
    if full != line.numbers.written(system) or also:
        yield from _wrapped(f"= {full}{also}", 7, first=5)
    yield from _inputs(line)
    yield from _wrapped(line.source, 5, first=5)


def _inputs(line: WorkedLine) -> Iterator[str]:
    """Tell where what is put in comes from, unless a line above has it."""
    told = [one for one in line.put_in if one.comes_from != "worked"]
    for one in told[:_TOLD]:
        yield from _wrapped(f"{one.name}: {_said(one)} ({one.figure})", 7, first=5)
    if len(told) > _TOLD:
        yield f"     and {len(told) - _TOLD} more such"


def _said(one: PutIn) -> str:
    return SAID[one.comes_from]


def _wrapped(text: str, indent: int, *, first: int) -> list[str]:
    return wrap(
        text,
        WIDTH,
        initial_indent=" " * first,
        subsequent_indent=" " * indent,
        break_on_hyphens=False,
        break_long_words=False,
    )
