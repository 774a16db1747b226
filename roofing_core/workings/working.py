"""The working of one figure: its formula and all that led to it, as data."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Literal

from roofing_core.job.plan import Plan
from roofing_core.measures.faults import Fault, Refused
from roofing_core.measures.sentences import Amount, Sentence, say
from roofing_core.workings.at import GEOMETRY, Known
from roofing_core.workings.expressions import (
    Applied,
    Expression,
    Listed,
    Path,
    Step,
    evaluated,
    explained_in,
    put_into,
)
from roofing_core.workings.formulas import formula_of
from roofing_core.workings.names import name_of
from roofing_core.workings.origins import SAID, Origin, origin_of
from roofing_core.workings.places import found_at, numbers_in, path_of, pattern_of, pointer_to
from roofing_core.workings.writing import Checkable, comes_to, in_numbers, in_words

Rounding = Literal["none", "whole_pieces_up"]

#: As many patterns are listed where a figure has no working, those spelt most like it.
_LISTED = 12

#: What came is repeated up to this many characters.
_REPEATED = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class PutIn:
    """A number that is put into a formula.

    Attributes:
        figure: Where it stands in the plan, as a JSON Pointer; empty for a step on the way.
        name: What it is.
        value: The number.
        comes_from: Chosen by the caller, or the default; measured on the roof; worked out by a
            formula of its own; the number of a thing in its list; found by a search, which proves
            itself; or as laid out, where no formula comes to it, as in a plan that was edited.
    """

    figure: str
    name: str
    value: Amount
    comes_from: Origin


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkedLine:
    """One formula of a working, as a person checks it.

    Attributes:
        figure: Where the figure stands in the plan, as a JSON Pointer; empty for a step on the way,
            which the plan does not hold.
        name: What it is.
        formula: In words and signs; ``whole`` rounds up to whole pieces, ``distance`` has no sign,
            ``angle`` is that of a rise over a run.
        numbers: The same with the numbers put in, equal ones of a list together; lengths in inches
            or millimetres, areas and volumes in those squared and cubed, angles in degrees.
        comes_to: What the numbers come to, in full.
        result: The figure.
        shown: As it is written for people, rounded to what they read.
        rounding: Whether anything in it is rounded up to whole pieces, forgiving 1e-9 of a piece.
        source: Where the formula or the rule comes from.
        put_in: Every number that is put in, in the order of the formula; of a list each entry.
    """

    figure: str
    name: str
    formula: Sentence
    numbers: Sentence
    comes_to: Sentence
    result: Amount
    shown: Sentence
    rounding: Rounding
    source: str
    put_in: tuple[PutIn, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkedFigure:
    """How a figure of a plan came about.

    Attributes:
        figure: Where it stands in the plan, as a JSON Pointer.
        name: What it is.
        result: The figure.
        lines: One entry per formula, from the inputs to the figure, each once and after all that
            it is made of. Of a list one entry stands for all: the first that is not 0, or the
            least or greatest, or the last that is counted; the others are worked out alike, and may
            be asked for.
    """

    figure: str
    name: str
    result: Amount
    lines: tuple[WorkedLine, ...]


def working(plan: Plan, figure: str) -> WorkedFigure:
    """Work out one figure of a plan: every formula and number that led to it.

    Args:
        plan: The plan.
        figure: Where the figure stands in it, as a JSON Pointer such as ``/courses/19/butt``.

    Returns:
        The formulas from the inputs to the figure, in words and with their numbers, each with its
        source. What no formula gives is one line that says what it is: chosen, measured, the number
        of a thing, the value or limit of a finding, or found by a search.

    Raises:
        Refused: No number stands there, or one that its formula does not come to, as in a plan that
            was edited; says what can be asked.

    Source:
        Each line's own. Tests hold every formula to the plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> line = working(planned, "/courses/19/butt").lines[-1]
    >>> line.numbers.written(), line.comes_to.written()
    ('-(1/4 in + 1/4 in) + (20 - 1) x 5 5/8 in', '106 3/8 in')
    """
    path = path_of(figure)
    found = found_at(plan, path)
    if found is None or not _is_number(found[0]):
        alike = [one for one in numbers_in(plan) if pattern_of(one) == pattern_of(path)]
        if alike:
            raise _not_there(figure, alike)
        raise _refused(plan, path, figure, "a number of the plan")
    known = Known()
    if origin_of(plan, path, known) == "laid_out":
        raise _refused(plan, path, figure, "a figure with a formula of its own")
    lines = tuple(_chain(plan, path, known))
    return WorkedFigure(figure=figure, name=lines[-1].name, result=lines[-1].result, lines=lines)


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _chain(plan: Plan, wanted: Path, known: Known) -> Iterator[WorkedLine]:
    """Give the lines up to a figure, depth first, without recursion: chains may be long."""
    if formula_of(plan, wanted, known) is None:
        yield _input(plan, wanted)
        return
    opened: set[Path | Step] = set()
    waiting: list[tuple[Path | Step, bool]] = [(wanted, False)]
    while waiting:
        what, ready = waiting.pop()
        worked = _worked(plan, what, known)
        if worked is None or (what in opened and not ready):
            continue
        opened.add(what)
        formula, source = worked
        if ready:
            yield _line(plan, what, formula, source, known)
        else:
            waiting.append((what, True))
            inner = (one if isinstance(one, Step) else one.path for one in explained_in(formula))
            waiting += [(one, False) for one in reversed(tuple(inner))]


def _worked(plan: Plan, what: Path | Step, known: Known) -> tuple[Expression, str] | None:
    return (what.formula, GEOMETRY) if isinstance(what, Step) else formula_of(plan, what, known)


def _line(
    plan: Plan, what: Path | Step, formula: Expression, source: str, known: Known
) -> WorkedLine:
    if isinstance(what, Step):
        pointer, name, value, unit = "", what.name, evaluated(formula), what.unit
    else:
        pointer, name, (value, unit) = pointer_to(what), name_of(plan, what), _value(plan, what)
    return WorkedLine(
        figure=pointer,
        name=name,
        formula=in_words(formula),
        numbers=in_numbers(formula),
        comes_to=say(comes_to(formula, unit)),
        result=Amount(value, unit),
        shown=say(Amount(value, unit)),
        rounding="whole_pieces_up" if _rounds(formula) else "none",
        source=source,
        put_in=tuple(_put_in(plan, formula, known)),
    )


def _value(plan: Plan, path: Path) -> tuple[float, str]:
    found = found_at(plan, path)
    assert found is not None
    return found


def _put_in(plan: Plan, formula: Expression, known: Known) -> Iterator[PutIn]:
    for one in dict.fromkeys(put_into(formula)):
        path = () if isinstance(one, Step) else one.path
        yield PutIn(
            figure=pointer_to(path),
            name=one.name,
            value=Amount(evaluated(one), one.unit),
            comes_from=origin_of(plan, path, known) if path else "worked",
        )


def _rounds(formula: Expression) -> bool:
    if not isinstance(formula, Applied | Listed):
        return False
    return formula.how == "up" or any(map(_rounds, formula.parts))


def _input(plan: Plan, path: Path) -> WorkedLine:
    value, unit = _value(plan, path)
    origin = origin_of(plan, path)
    return WorkedLine(
        figure=pointer_to(path),
        name=name_of(plan, path),
        formula=say(SAID[origin]),
        numbers=say(Checkable(value, unit)),
        comes_to=say(Checkable(value, unit)),
        result=Amount(value, unit),
        shown=say(Amount(value, unit)),
        rounding="none",
        source=_source(plan, path, origin),
        put_in=(),
    )


def _source(plan: Plan, path: Path, origin: Origin) -> str:
    """Say where a number comes from that no formula gives."""
    if origin == "found" and isinstance(path[1], int):
        return plan.findings[path[1]].source
    if origin == "searched":
        return "A search, by a stated number of steps."
    return "Its place in the plan." if origin == "numbered" else "An input."


def _refused(plan: Plan, path: Path, figure: str, wanted: str) -> Refused:
    """Refuse a figure and say what can be asked instead, nearest to what came."""
    patterns = workable(plan)
    names = pattern_of(path).split("/")[1:]
    near: list[str] = []
    while not near and names:
        start = "/" + "/".join(names)
        near = [one for one in patterns if one == start or one.startswith(f"{start}/")]
        names.pop()
    heads = sorted({f"/{one.split('/')[1]}/..." for one in patterns})
    found = get_close_matches(pattern_of(path)[:_REPEATED], near, n=_LISTED, cutoff=0) or heads
    more = f" and {len(near) - len(found)} more" if len(near) > len(found) else ""
    return Refused(Fault(("figure",), _shown(figure), say(f"{wanted}: {', '.join(found)}{more}")))


def _not_there(figure: str, alike: Sequence[Path]) -> Refused:
    """Refuse a place past the end of a list, and say from where to where its figures go."""
    ends = dict.fromkeys((pointer_to(alike[0]), pointer_to(alike[-1])))
    wanted = f"a number of the plan: {' to '.join(ends)}"
    return Refused(Fault(("figure",), _shown(figure), say(wanted)))


def _shown(figure: str) -> str:
    short = figure if len(figure) <= _REPEATED else f"{figure[:_REPEATED]}..."
    return "".join(letter if letter.isprintable() else ascii(letter)[1:-1] for letter in short)


def workable(plan: Plan) -> tuple[str, ...]:
    """List what can be asked of a plan: the patterns of all its figures.

    Args:
        plan: The plan.

    Returns:
        JSON Pointers with a star for any entry of a list, in the order of the plan.

    Raises:
        Nothing.

    Source:
        The plan.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> planned = plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> "/courses/*/butt" in workable(planned)
    True
    """
    patterns = dict.fromkeys(map(pattern_of, numbers_in(plan)))
    return tuple(patterns)
