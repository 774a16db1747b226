"""What must hold for the working of every figure of every plan.

A formula's own tree comes to the figure; its line as printed does, worked out by a calculator that
knows nothing of the library; and whoever follows the lines gets to what was measured and chosen.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from random import Random

import pytest
from mpmath import mpf

from roofing_core import Job, Plan, plan, working
from roofing_core.measures.units import System
from roofing_core.workings.at import At, Known
from roofing_core.workings.expressions import Expression, Path, Step, evaluated, put_into
from roofing_core.workings.formulas import FORMULAS, formula_of
from roofing_core.workings.origins import SEARCHED as SAID_SEARCHED
from roofing_core.workings.places import found_at, numbers_in, pattern_of, pointer_to
from tests.workings.calculator import worked
from tests.workings.hard_roofs import hard_roofs, jobs
from tests.workings.jobs import random_job
from tests.workings.shapes import shapes
from tests.workings.without import (
    NUMBERED,
    NUMBERS,
    SEARCHED,
    SEARCHED_SOMETIMES,
    TELL_THEMSELVES,
)

#: A formula comes to its figure within this part of it: float dust of a few sums.
DUST = 1e-9

#: A printed line does within this part of its largest number: twelve figures are printed.
PRINTED = 1e-9

SEEDS = range(13)

SHAPES = shapes()

#: Those of which lines are read one by one: a shed in two layers, a gable, and one with valleys.
FEW = (3, 9, 12)

#: Millimetres to the inch, and the weight of a pound in kg: NIST Handbook 44, appendix C.
INCH, POUND = mpf("25.4"), mpf("0.45359237")
FOOT = 12 * INCH / 1000

#: What a number inside is multiplied by to be printed in a metric line.
METRIC = {
    "in": INCH,
    "in2": INCH**2,
    "in3": INCH**3,
    "lb": POUND,
    "lb/ft": POUND / FOOT,
    "lb/ft2": POUND / FOOT**2,
}
DEGREES = mpf(180) / mpf("3.14159265358979323846")


@cache
def planned(seed: int) -> Plan:
    return plan(random_job(seed))


@cache
def figures(seed: int) -> tuple[Path, ...]:
    """Give the places of all figures of a plan; choices and what was measured are inputs."""
    others = ("choices", "as_measured", *TELL_THEMSELVES)
    return tuple(path for path in numbers_in(planned(seed)) if path[0] not in others)


def number_at(made: Plan, path: Path) -> float:
    found = found_at(made, path)
    assert found is not None
    return float(found[0])


def made_of(made: Plan, path: Path, known: Known) -> Expression | None:
    """Give the formula of a figure as the table has it, whatever it comes to."""
    formula = FORMULAS.get(pattern_of(path))
    return formula.make(At(made, path, known)) if formula else None


@cache
def formulas(seed: int) -> dict[Path, Expression | None]:
    """Give the formula of every figure of a plan."""
    known = Known()
    return {path: made_of(planned(seed), path, known) for path in figures(seed)}


def is_named(path: Path) -> bool:
    """Tell whether a number only names a thing."""
    return path[-1] in NUMBERS or pattern_of(path) in NUMBERED


def lacking(made: Plan, found: Mapping[Path, Expression | None]) -> Counter[str]:
    """Count the figures without a formula; every other comes to what the plan has."""
    lack = Counter[str]()
    for path, formula in found.items():
        if formula is None:
            lack[pattern_of(path)] += not is_named(path)
            continue
        value = number_at(made, path)
        assert evaluated(formula) == pytest.approx(value, rel=DUST, abs=DUST), path
    return +lack


@pytest.mark.parametrize("seed", SEEDS)
def test_every_figure_has_a_formula_that_comes_to_it_but_what_a_search_decides(seed):
    """A new figure of a plan needs its working, on every roof that has the figure."""
    assert set(lacking(planned(seed), formulas(seed))) <= SEARCHED | SEARCHED_SOMETIMES


@pytest.mark.parametrize("name", hard_roofs())
def test_every_figure_of_a_roof_that_cuts_pieces_every_way_has_one_too(name):
    for job in jobs(name):
        made, known = plan(job), Known()
        others = ("choices", "as_measured", *TELL_THEMSELVES)
        paths = [path for path in numbers_in(made) if path[0] not in others]
        found = {path: made_of(made, path, known) for path in paths}
        assert set(lacking(made, found)) <= SEARCHED | SEARCHED_SOMETIMES


def test_all_patterns_of_figures_have_a_working_and_nearly_all_figures():
    """All patterns but one have a formula, and 98 of 100 figures; a search has the rest."""
    found, lack = Counter[str](), Counter[str]()
    for seed in SEEDS:
        for path, formula in formulas(seed).items():
            if not is_named(path):
                found[pattern_of(path)] += 1
                lack[pattern_of(path)] += formula is None
    without = set(found) - set(FORMULAS)
    assert without == SEARCHED
    assert len(found) > 450
    assert set(FORMULAS) >= SEARCHED_SOMETIMES
    assert sum(lack.values()) < 0.02 * sum(found.values())
    assert (SEARCHED | SEARCHED_SOMETIMES) == SAID_SEARCHED


@pytest.mark.parametrize("seed", SEEDS)
def test_no_figure_is_worked_out_from_itself(seed):
    state, made = dict[Path | Step, str](), formulas(seed)

    def follow(what: Path | Step) -> None:
        assert state.get(what) != "open", f"{what} is worked out from itself"
        if what in state:
            return
        state[what] = "open"
        formula = what.formula if isinstance(what, Step) else made.get(what)
        for one in put_into(formula) if formula else ():
            follow(one if isinstance(one, Step) else one.path)
        state[what] = "done"

    for path in figures(seed):
        follow(path)
    assert len(state) > 500


def one_of_each(found: Mapping[Path, Expression | None], seed: int) -> list[Path]:
    """Give one figure of each pattern that has a working, drawn by lot."""
    by_pattern: dict[str, list[Path]] = {}
    for path, formula in found.items():
        if formula:
            by_pattern.setdefault(pattern_of(path), []).append(path)
    draw = Random(seed)
    return [draw.choice(paths) for paths in by_pattern.values()]


def printed(value: float, unit: str, system: System) -> mpf:
    """Give a number inside as a line in a unit system has it."""
    if unit == "rad":
        return value * DEGREES
    return mpf(value) * (METRIC.get(unit, 1) if system == "metric" else 1)


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("seed", FEW)
def test_every_printed_line_comes_to_its_figure_on_a_pocket_calculator(seed, system):
    paths = one_of_each(formulas(seed), seed)
    assert lines_checked(planned(seed), paths, system) > 500


@pytest.mark.parametrize(
    ("name", "system"), [("eave off level", "us"), ("hip with openings", "metric")]
)
def test_every_printed_line_of_a_roof_that_cuts_pieces_every_way_does_too(name, system):
    made, known = plan(jobs(name)[1]), Known()
    found = {path: made_of(made, path, known) for path in numbers_in(made)}
    assert lines_checked(made, one_of_each(found, 5), system) > 500


def lines_checked(made: Plan, paths: Iterable[Path], system: System) -> int:
    """Work out every line of the workings of some figures as it is printed; count the lines."""
    seen: set[tuple[str, str]] = set()
    for path in paths:
        for line in working(made, pointer_to(path)).lines:
            text = line.numbers.written(system)
            if (line.figure or line.name, text) in seen:
                continue
            found = worked(text)
            value = printed(line.result.value, line.result.unit, system)
            assert abs(found.value - value) <= PRINTED * max(found.largest, 1), (line.figure, text)
            told = worked(line.comes_to.written(system)).value
            assert abs(told - value) <= PRINTED * max(abs(value), 1), (line.figure, text)
            seen.add((line.figure or line.name, text))
    return len(seen)


@pytest.mark.parametrize("seed", FEW)
def test_a_working_ends_with_its_figure_and_each_line_comes_after_what_it_is_made_of(seed):
    made = planned(seed)
    for path in one_of_each(formulas(seed), seed):
        found = working(made, pointer_to(path))
        assert found.lines[-1].figure == found.figure == pointer_to(path)
        assert found.result.value == number_at(made, path)
        seen = set[str]()
        for line in found.lines:
            worked_out = [one for one in line.put_in if one.comes_from == "worked" and one.figure]
            # Of a list one stands for all, so that not every entry has a line.
            lists = any(word in line.formula.written() for word in LISTS)
            assert lists or all(one.figure in seen for one in worked_out), line.figure
            assert line.figure not in seen
            seen.add(line.figure or line.name)


@pytest.mark.parametrize("shape", SHAPES)
def test_the_shape_of_a_roof_is_worked_out_from_what_was_measured(shape):
    """Every figure of its planes and lines has a formula, that ends at measurements alone."""
    made = plan(Job(roof=SHAPES[shape]))
    seen, ends = set[Path](), set[str]()
    for path in numbers_in(made):
        if path[0] in ("squares", "roof", "planes", "lines"):
            found = formula_of(made, path)
            assert found, path
            value = number_at(made, path)
            assert evaluated(found[0]) == pytest.approx(value, rel=DUST, abs=DUST), path
            ends |= {str(end[0]) for end in ends_of(made, path, seen)}
    assert ends == {"as_measured"}
    assert len(seen) > 10


def ends_of(made: Plan, path: Path, seen: set[Path]) -> Iterator[Path]:
    """Give the figures without a formula that one leads to; each is gone through once."""
    if path in seen:
        return
    seen.add(path)
    found = formula_of(made, path)
    if found is None:
        yield path
        return
    for one in figures_in(found[0]):
        yield from ends_of(made, one, seen)


def figures_in(formula: Expression) -> Iterator[Path]:
    for one in put_into(formula):
        if isinstance(one, Step):
            yield from figures_in(one.formula)
        else:
            yield one.path


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("shape", SHAPES)
def test_every_printed_line_of_a_shape_comes_to_its_figure(shape, system):
    made = plan(Job(roof=SHAPES[shape]))
    for pointer in (
        "/roof/slope_length",
        "/roof/eave_length",
        f"/planes/{len(made.planes) - 1}/area",
    ):
        for line in working(made, pointer).lines:
            found = worked(line.numbers.written(system))
            value = printed(line.result.value, line.result.unit, system)
            assert abs(found.value - value) <= PRINTED * max(found.largest, 1), line.figure


LISTS = ("sum of", "count of", "least of", "greatest of")
