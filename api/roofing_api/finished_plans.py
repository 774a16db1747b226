"""Finished plans: an answer of ours, as it was or edited, read back for the audit.

The model follows from what the audit reads of a plan. Numbers stand in the units that the plan
states at its top; what else a plan has may come along, and is not looked at.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import MISSING, fields, is_dataclass
from functools import cache, partial
from typing import Annotated, Any, ClassVar, Literal, cast, get_args, get_origin, get_type_hints

from pydantic import (
    BaseModel,
    ConfigDict,
    Field,
    PlainValidator,
    ValidationInfo,
    WithJsonSchema,
    create_model,
)

from roofing_api.answering import unit_in, units_of
from roofing_api.describing import shown_in
from roofing_api.docstrings import attributes, docs
from roofing_api.forms import Form
from roofing_api.strict import Bare
from roofing_api.values import PLAIN_TYPES, list_type, one_of, refusal, text_type
from roofing_core.auditing.finished import FinishedPlan
from roofing_core.job.plan import Plan
from roofing_core.measures.faults import largest
from roofing_core.measures.units import SHOWN, System


class Read(BaseModel):
    """A part of a plan, read back: every field that the audit reads, and no unknown ones."""

    model_config = ConfigDict(extra="forbid")
    made_of: ClassVar[Any]
    reads: ClassVar[tuple[str, ...]]


#: The name of a plane may put those of several sides together.
LONGEST_NAME = 1_000

#: A number of JSON. `Bare` is also what NaN and Infinity come as, which are none.
_NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?([eE][-+]?[0-9]+)?", re.ASCII)


def _number(unit: str, raw: Any, info: ValidationInfo) -> float:
    scale = SHOWN[unit][info.context or "us"]
    if type(raw) is Bare and len(raw) < _LONGEST and _NUMBER.fullmatch(raw):
        number = scale.inside(float(raw))
        if -largest(unit) <= number <= largest(unit):
            return number
    raise refusal(f"a number in the unit that the plan states ({scale.unit})", raw)


#: No float takes more digits to write.
_LONGEST = 40


def _units(raw: Any) -> System:
    system: Any = raw.get("system") if isinstance(raw, dict) else None
    if not isinstance(system, str) or system not in get_args(System):
        raise refusal(
            "the units of a plan, with `system` us or metric, as its answer has them", raw
        )
    if any(units_of(system).get(name) != unit for name, unit in raw.items()):
        raise refusal(f"the units as an answer in {system} has them", raw)
    return cast(System, system)


_UNITS = Annotated[
    str,
    PlainValidator(_units),
    WithJsonSchema(
        {
            "type": "object",
            "properties": {"system": {"type": "string", "enum": list(get_args(System))}},
            "required": ["system"],
        }
    ),
]


@cache
def read_model(kind: Any, whole: Any) -> type[Read]:
    """Make the model of a dataclass that the audit reads, out of one that the plan has there."""
    about, hints, there = attributes(kind), _hints(kind), _hints(whole)
    taken: dict[str, Any] = {
        field.name: (
            _as_read(hints[field.name], there.get(field.name, hints[field.name])),
            Field(
                ... if field.default is MISSING else field.default,
                description=f"{about[field.name]} {shown_in(hints[field.name])}".strip(),
            ),
        )
        for field in fields(kind)
    }
    unread: Any = Field(None, description="The audit does not look at it.")
    others: dict[str, Any] = {name: (Any, unread) for name in there if name not in taken}
    if kind is FinishedPlan:
        others["units"] = (_UNITS, Field(description="The units of every number, as answered."))
    model: Any = create_model(
        f"Finished{whole.__name__}Input",
        __base__=Read,
        __doc__=docs(kind).summary,
        **taken,
        **others,
    )
    model.made_of, model.reads = kind, tuple(taken)
    return cast(type[Read], model)


@cache
def _hints(kind: Any) -> Mapping[str, Any]:
    return get_type_hints(kind, include_extras=True)


def _as_read(hint: Any, there: Any) -> Any:
    """Turn an annotation of what the audit reads into one that pydantic reads an answer by."""
    origin: Any = get_origin(hint)
    if origin is Annotated:
        schema = {"type": "number"}
        validate = PlainValidator(partial(_number, unit_in(hint)))
        return Annotated[float, validate, WithJsonSchema(schema)]
    if origin is tuple:
        first, *others = get_args(hint)
        entry: Any = _as_read(first, get_args(there)[0])
        if others == [...]:
            entries: Any = tuple[entry, ...]
            return entries
        exactly = len((first, *others))
        return list_type(entry, body=True, least=exactly, most=exactly)
    if origin is Literal:
        return Annotated[hint, *one_of(get_args(hint))]
    if is_dataclass(hint):
        return read_model(cast(Any, hint), there)
    return text_type(0, LONGEST_NAME) if hint is str else PLAIN_TYPES[hint](True)


def _made(read: Any) -> Any:
    """Make what the audit reads from its model."""
    if isinstance(read, Read):
        return read.made_of(**{name: _made(getattr(read, name)) for name in read.reads})
    if isinstance(read, tuple) and read and isinstance(read[0], Read):
        return tuple(map(_made, read))
    return read


class FinishedForm(Form):
    """A plan as a body has it."""

    def __init__(self) -> None:
        super().__init__(read_model(FinishedPlan, Plan))

    def context(self, tree: Any) -> Any:
        """Give the unit system that the plan states."""
        units = tree.get("units") if isinstance(tree, dict) else None
        system = units.get("system") if isinstance(units, dict) else None
        return "metric" if system == "metric" else "us"

    def plan(self, tree: Any) -> FinishedPlan:
        """Read a plan; every fault in it is refused at once."""
        made: FinishedPlan = _made(self.taken(tree))
        return made
