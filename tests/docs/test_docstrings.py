"""Every public function and class says what it gives, from what, by which formula and whose word.

Read off the code itself, so that a missing part fails here and not in front of a reader.
"""

from __future__ import annotations

import ast
import importlib
import inspect
import pkgutil
import re
import types
from dataclasses import fields, is_dataclass
from doctest import DocTestFinder, DocTestRunner
from pathlib import Path
from typing import Annotated, Any, Literal, TypeVar, get_args, get_origin, get_type_hints

import pytest

import roofing_core
from roofing_core.measures.units import SHOWN, Unit

PACKAGE = Path(roofing_core.__file__).parent

#: Floats that carry no unit, each with the reason.
WITHOUT_UNIT = {
    "roofing_core.buying.lines.priced_line.on_hand": "in the unit of the line",
    "roofing_core.buying.lines.priced_line.left_over": "in the unit of the line",
    "roofing_core.buying.packs.PackOffer.holds": "in the unit of what is needed",
    "roofing_core.buying.packs.PacksBought.holds": "in the unit of what is needed",
    "roofing_core.buying.packs.PacksBought.left_over": "in the unit of what is needed",
    "roofing_core.buying.packs.cheapest_packs.needed": "in the unit of the packs",
    "roofing_core.buying.packs.fewest_packs.needed": "in the unit of the packs",
    "roofing_core.measures.counting.whole_pieces.pieces": "a fractional number of pieces",
    "roofing_core.measures.counting.whole_packs.needed": "in the unit of the pack",
    "roofing_core.measures.counting.whole_packs.per_pack": "in the unit of what is needed",
    "roofing_core.measures.counting.uncountable_fault.per_pack": "in the unit named with it",
    "roofing_core.measures.counting.uncountable_fault.needed": "in the unit that is named with it",
    "roofing_core.measures.quantities.from_quantity.return": "in the unit that is asked for",
    "roofing_core.measures.quantities.to_quantity.value": "in the unit that is named with it",
    "roofing_core.measures.reading.read.return": "in the unit that is asked for",
    "roofing_core.measures.reading.read_length.return": "inches; reading is what gives them",
    "roofing_core.measures.reading.read_pitch.return": "rise over run; reading is what gives it",
    "roofing_core.measures.sentences.Amount.value": "its unit stands beside it",
    "roofing_core.measures.sentences.write.value": "in the unit that is named with it",
    "roofing_core.measures.sentences.write_length.inches": "its name is its unit",
    "roofing_core.measures.sentences.length.inches": "its name is its unit",
    "roofing_core.measures.units.Scale.times": "a factor between two units",
    "roofing_core.measures.units.Scale.over": "a factor between two units",
    "roofing_core.measures.units.convert.value": "in the unit that is named with it",
    "roofing_core.measures.units.convert.return": "in the unit that `SHOWN` names",
    "roofing_core.measures.faults.largest.return": "in the unit that is asked for",
    "roofing_core.measures.faults.require_positive.values": "in the unit that they share",
    "roofing_core.measures.faults.require_not_negative.values": "in the unit that they share",
    "roofing_core.measures.faults.not_positive.value": "in the unit that is named with it",
    "roofing_core.measures.faults.negative.value": "in the unit that is named with it",
    "roofing_core.layers.underlaying.limits.limit_sheets.pieces": "a fractional number of pieces",
    "roofing_core.layers.underlaying.limits.pieces_needed.return": "a fractional number of pieces",
    "roofing_core.layers.coursing.joints.limit_pieces.pieces": "a fractional number of pieces",
    "roofing_core.layers.weight.packed.packs": "a fractional number of packs",
    "roofing_core.layers.fasteners.nails_per_pound.density": "pounds in a cubic inch",
    "roofing_core.sizing.amounts.constant.value": "a number of any kind",
    "roofing_core.sizing.sheeted_rows.RowsUp.rows": "a fractional number of rows",
    "roofing_core.sizing.rolls_along.RollsAlong.across": "a fractional number of pieces",
    "roofing_core.sizing.walks.Bought.holds": "in the unit of the line",
    "roofing_core.sizing.walks.whole_steps.reach": "in the unit of the step",
    "roofing_core.sizing.walks.whole_steps.step": "in the unit of the reach",
    "roofing_core.roof.documents.a_number.return": "in the unit of the place where it stands",
    "roofing_core.roof.tangent_plane.inches.metres": "its name is its unit",
    "roofing_core.ruling.rule.Rule.limit": "its unit stands beside it",
    "roofing_core.ruling.rule.Rule.kept_by.value": "in the unit of the rule",
    "roofing_core.ruling.rule.keeps.value": "in the unit of the limit",
    "roofing_core.ruling.rule.keeps.limit": "in the unit of the value",
    "roofing_core.ruling.rule.rule.at_least": "in the unit named with it",
    "roofing_core.ruling.rule.rule.at_most": "in the unit named with it",
    "roofing_core.sheets.tables.table.Table.rows": "in the unit of their column",
    "roofing_core.workings.expressions.evaluated.return": "in the unit of the figure",
    "roofing_core.workings.expressions.Figure.value": "its unit stands beside it",
    "roofing_core.workings.expressions.Constant.value": "its unit stands beside it",
    "roofing_core.job.found.broken.value": "in the unit of the rule",
    "roofing_core.job.found.broken.limit": "in the unit of the rule",
    "roofing_core.job.found.broken.to": "in the unit of the rule",
}

#: Names that are imported for a type checker alone: reading a type does not load what is heavy.
ONLY_FOR_CHECKING: dict[str, Any] = {
    "Quantity": list,
    "UnitRegistry": list,
    "Column": TypeVar("Column"),
}

#: What a docstring of a function has, in this order.
PARTS = ("Args:", "Returns:", "Raises:", "Source:", ">>> ")


def modules() -> dict[str, types.ModuleType]:
    """Import every module of the library."""
    names = [
        module.name
        for module in pkgutil.walk_packages([str(PACKAGE)], prefix="roofing_core.")
    ]  # fmt: skip
    return {name: importlib.import_module(name) for name in ["roofing_core", *names]}


MODULES = modules()


def public(kind: Any) -> dict[str, Any]:
    """Give what the modules define under a public name, by its full name."""
    return {
        f"{module_name}.{name}": value
        for module_name, module in MODULES.items()
        for name, value in vars(module).items()
        if not name.startswith("_")
        and kind(value)
        and getattr(value, "__module__", "") == module_name
    }


FUNCTIONS = public(inspect.isfunction)
CLASSES = public(inspect.isclass)
DATACLASSES = {name: value for name, value in CLASSES.items() if is_dataclass(value)}

#: Small helpers of the text and fault vocabulary, used on every line: one sentence says it all.
ONE_SENTENCE = {
    "roofing_core.measures.faults.fault",
    "roofing_core.measures.faults.is_number",
    "roofing_core.measures.faults.largest",
    "roofing_core.measures.faults.negative",
    "roofing_core.measures.faults.not_positive",
    "roofing_core.measures.faults.refuse_if_any",
    "roofing_core.measures.sentences.length",
    "roofing_core.measures.sentences.say",
    "roofing_core.measures.sentences.shown",
}
DESCRIBED = {name: value for name, value in FUNCTIONS.items() if name not in ONE_SENTENCE}


def doc_of(value: Any) -> str:
    """Give the docstring of a function or class, without its indent."""
    return inspect.getdoc(value) or ""


def section(doc: str, heading: str) -> str:
    """Give a section of a docstring: the indented lines below its heading."""
    found = re.search(rf"^{heading}\n((?:[ \t]+.*\n|\n)+)", f"{doc}\n", re.MULTILINE)
    return inspect.cleandoc(found[1]) if found else ""


def entries(text: str) -> list[str]:
    """Give the names that a section describes: lines that are not indented, up to the colon."""
    return [line.partition(":")[0] for line in text.splitlines() if re.match(r"\*{0,2}\w+: ", line)]


def own_fields(kind: Any) -> list[str]:
    """Give the fields that a dataclass adds to those of its bases."""
    inherited = {f.name for base in kind.__mro__[1:] if is_dataclass(base) for f in fields(base)}
    return [one.name for one in fields(kind) if one.name not in inherited]


def test_there_is_something_to_read():
    assert len(DESCRIBED) > 50
    assert len(DATACLASSES) > 40
    assert set(FUNCTIONS) >= ONE_SENTENCE


@pytest.mark.parametrize("name", [*FUNCTIONS, *CLASSES])
def test_the_first_line_is_a_sentence(name):
    first = doc_of({**FUNCTIONS, **CLASSES}[name]).partition("\n")[0]
    assert re.fullmatch(r"[A-Z].*[.:]|[A-Z].*``\.", first), first
    assert len(first) > 10


@pytest.mark.parametrize("name", DESCRIBED)
def test_a_function_has_every_part_of_its_docstring(name):
    function = DESCRIBED[name]
    doc = doc_of(function)
    takes = inspect.signature(function).parameters
    gives = get_type_hints(function, localns=ONLY_FOR_CHECKING)["return"] is not type(None)
    wanted = [
        part
        for part in PARTS
        if (part != "Args:" or takes) and (part != "Returns:" or gives)
    ]  # fmt: skip
    assert [part for part in wanted if part not in doc] == []
    places = [doc.index(part) for part in wanted]
    assert places == sorted(places)
    for part in wanted[:-1]:
        assert section(doc, part), f"{part} is empty"


@pytest.mark.parametrize("name", DESCRIBED)
def test_a_function_describes_each_of_its_parameters_once(name):
    function = DESCRIBED[name]
    named = entries(section(doc_of(function), "Args:"))
    assert [one.lstrip("*") for one in named] == list(inspect.signature(function).parameters)


def raises(text: str) -> set[str]:
    """Give the classes that a Raises section names."""
    return set(re.findall(r"^(\w+):", text, re.MULTILINE))


@pytest.mark.parametrize("name", DESCRIBED)
def test_what_a_function_raises_exists(name):
    known = {"Refused", "TooManyPieces", "Nothing", "ModuleNotFoundError"}
    text = section(doc_of(DESCRIBED[name]), "Raises:")
    assert raises(text) <= known
    assert raises(text) or text.startswith("Nothing")


@pytest.mark.parametrize("name", DATACLASSES)
def test_a_dataclass_describes_each_of_its_own_fields_once(name):
    kind = DATACLASSES[name]
    assert entries(section(doc_of(kind), "Attributes:")) == own_fields(kind)


@pytest.mark.parametrize("name", DATACLASSES)
def test_a_dataclass_is_frozen_and_slotted(name):
    kind: Any = DATACLASSES[name]
    assert kind.__dataclass_params__.frozen
    assert "__slots__" in vars(kind)
    assert not any("__dict__" in vars(base) for base in kind.__mro__)


def parts_of(hint: Any) -> list[Any]:
    """Give a type and all that it is made of, but not what an annotation says of it."""
    if get_origin(hint) is Annotated:
        return [hint]
    if get_origin(hint) is Literal:
        return []
    return [hint, *(part for one in get_args(hint) for part in parts_of(one))]


def hints_of(name: str, value: Any) -> dict[str, Any]:
    """Give the types of a function's parameters and result, or of a dataclass's own fields."""
    hints = get_type_hints(value, include_extras=True, localns=ONLY_FOR_CHECKING)
    if inspect.isfunction(value):
        return {f"{name}.{key}": hint for key, hint in hints.items()}
    return {f"{name}.{key}": hints[key] for key in own_fields(value)}


HINTS = {
    at: hint
    for name, value in {**FUNCTIONS, **DATACLASSES}.items()
    for at, hint in hints_of(name, value).items()
}


@pytest.mark.parametrize("at", HINTS)
def test_a_number_carries_its_unit(at):
    for hint in parts_of(HINTS[at]):
        if get_origin(hint) is Annotated and get_args(hint)[0] is float:
            (unit,) = (one for one in get_args(hint)[1:] if isinstance(one, Unit))
            assert unit.name in SHOWN
        else:
            assert hint is not float or at in WITHOUT_UNIT, f"{at} is a float of no unit"


def test_the_list_of_floats_without_a_unit_is_not_out_of_date():
    bare = {at for at, hint in HINTS.items() if float in parts_of(hint)}
    methods = {"roofing_core.ruling.rule.Rule.kept_by.value"}
    assert set(WITHOUT_UNIT) - methods <= bare


def in_results(kind: Any) -> set[Any]:
    """Give a dataclass and every dataclass within it."""
    if not (inspect.isclass(kind) and is_dataclass(kind)):
        return set()
    found = {kind}
    for hint in get_type_hints(kind, include_extras=True).values():
        for part in parts_of(hint):
            if part not in found:
                found |= in_results(part)
    return found


#: What a caller writes, where a measurement may be left out; all else is a result.
FORMS = {"SingleSlope", "Gable", "Saltbox", "Gambrel", "Hip", "Pyramid", "Footprint", "Side"}
INPUTS = {"Job", "Choices", *FORMS}
RESULTS = sorted(
    {
        kind
        for function in FUNCTIONS.values()
        for kind in in_results(get_type_hints(function, localns=ONLY_FOR_CHECKING)["return"])
        if kind.__name__ not in INPUTS
    },
    key=lambda kind: str(kind.__qualname__),
)


def test_the_results_are_found():
    names = {kind.__name__ for kind in RESULTS}
    assert names >= {"Plan", "Courses", "Offsets", "MetalRun", "Underlayment", "Weights", "Piece"}


@pytest.mark.parametrize("kind", RESULTS, ids=lambda kind: kind.__name__)
def test_no_field_of_a_result_may_be_none_or_a_dict_or_a_list(kind):
    for name, hint in get_type_hints(kind, include_extras=True).items():
        for part in parts_of(hint):
            assert part is not type(None), f"{kind.__name__}.{name} may be None"
            assert part not in (dict, list, set), f"{kind.__name__}.{name} can be changed"
            assert get_origin(part) not in (dict, list, set), f"{kind.__name__}.{name}"


@pytest.mark.parametrize("name", MODULES)
def test_every_example_runs(name):
    runner = DocTestRunner(verbose=False)
    finder = DocTestFinder(exclude_empty=True)
    told: list[str] = []
    for test in finder.find(MODULES[name], name):
        runner.run(test, out=told.append)
    assert runner.failures == 0, "".join(told)


def test_there_are_as_many_examples_as_functions():
    examples = sum(
        len(test.examples) > 0
        for name, module in MODULES.items()
        for test in DocTestFinder(exclude_empty=True).find(module, name)
    )
    assert examples >= len(DESCRIBED)


def test_all_public_names_are_listed_and_described():
    for name in roofing_core.__all__:
        value = getattr(roofing_core, name)
        assert name.startswith("__") or doc_of(value), name
    assert len(set(roofing_core.__all__)) == len(roofing_core.__all__)


@pytest.mark.parametrize("name", MODULES)
def test_a_module_is_one_chapter(name):
    module = MODULES[name]
    source = Path(str(module.__file__)).read_text(encoding="utf-8")
    is_the_list_of_names = name == "roofing_core"
    assert len(source.splitlines()) <= 400 or is_the_list_of_names
    assert ast.get_docstring(ast.parse(source)), "no docstring"
    assert "TODO" not in source
