"""Describing: the OpenAPI schema of every answer, made from the library's dataclasses."""

from __future__ import annotations

import types
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from decimal import Decimal
from functools import cache, reduce
from operator import or_
from typing import Annotated, Any, Union, cast, get_args, get_origin, get_type_hints

from pydantic import BaseModel, ConfigDict, Field, create_model

from roofing_api.answering import STATED, unit_in
from roofing_api.docstrings import attributes, docs
from roofing_api.variants import OneOf, kinds_in, variants_of
from roofing_core.materials import names_of
from roofing_core.measures.sentences import Amount, Sentence
from roofing_core.measures.units import SHOWN, System


class Answer(BaseModel):
    """Every field is always there, and no others."""

    model_config = ConfigDict(extra="forbid")


_STATED: dict[str, Any] = {
    "system": (System, Field(description="The unit system asked for.")),
    **{
        what: (str, Field(description=f"Every {what.replace('_', ' ')} is in this unit."))
        for what in STATED
    },
}
Units = create_model(
    "Units", __base__=Answer, __doc__="The units of every number in the answer.", **_STATED
)


class AmountAnswer(Answer):
    """A number with its own unit."""

    value: float = Field(description="The number, not rounded.")
    unit: str = Field(description="Its unit, under the unit system asked for.")


@cache
def answer_of(kind: type) -> type[Answer]:
    """Make the model of a whole answer: the units, then the fields of the result."""
    units = (Units, Field(description="The units of every number here, stated once."))
    return create_model(
        f"{kind.__name__}Answer",
        __base__=Answer,
        __doc__=docs(kind).summary,
        units=units,
        **_fields(kind),
    )


@cache
def _part_of(kind: type) -> type[Answer]:
    # A material and what a layer takes of it can share a name, such as Sealant.
    name = f"{kind.__name__}{'Material' if names_of(kind) else ''}"
    return create_model(name, __base__=Answer, __doc__=docs(kind).summary, **_fields(kind))


def _fields(kind: type) -> dict[str, Any]:
    about, hints = attributes(kind), get_type_hints(kind, include_extras=True)
    return {
        field.name: (
            _as_answer(hints[field.name]),
            Field(description=f"{about[field.name]} {shown_in(hints[field.name])}".strip()),
        )
        for field in fields(kind)
    }


#: What is no dataclass of the answer's own, or is written as something else.
_WRITTEN_AS: Mapping[Any, Any] = {
    Sentence: str,
    Amount: AmountAnswer,
    Decimal: Annotated[str, Field(pattern=r"^[0-9]+(\.[0-9]+)?$")],
}


def _as_answer(hint: Any) -> Any:
    """Turn an annotation of the library into what stands in the JSON."""
    origin, arguments = get_origin(hint), get_args(hint)
    if origin is Annotated:
        return float
    if origin is tuple:
        entries: Any = tuple(one if one is ... else _as_answer(one) for one in arguments)
        return tuple[entries]
    if origin in (Union, types.UnionType):
        return _either(arguments)
    if is_dataclass(hint) and hint not in _WRITTEN_AS:
        return _part_of(cast(type, hint))
    return _WRITTEN_AS.get(hint, hint)


def _either(kinds: tuple[Any, ...]) -> Any:
    """Give one of several types; dataclasses that a word tells apart are described with it."""
    either = reduce(or_, map(_as_answer, kinds))
    if not all(is_dataclass(kind) and kind not in _WRITTEN_AS for kind in kinds):
        return either
    variants = variants_of(kinds)
    parts = map(_part_of, kinds)
    return Annotated[either, OneOf(variants, dict(zip(variants.words, parts, strict=True)))]


def shown_in(hint: Any) -> str:
    """Say the unit under each unit system, where the annotation has one."""
    if get_origin(hint) is tuple:
        return shown_in(get_args(hint)[0])
    hint = kinds_in(hint)[0]
    if get_origin(hint) is not Annotated:
        return ""
    us, metric = (SHOWN[unit_in(hint)][system].unit for system in ("us", "metric"))
    return f"({us})" if us == metric else f"({us}; metric: {metric})"
