"""Inputs: request models made from what the library's functions take.

A name, a unit, a default and a description are written once, in the library; here they become
pydantic models. A measurement comes as text and is read by the library's own grammar.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import is_dataclass, replace
from functools import cache, reduce
from inspect import Parameter, signature
from operator import or_
from types import MappingProxyType
from typing import (
    Annotated,
    Any,
    ClassVar,
    Literal,
    cast,
    get_args,
    get_origin,
    get_type_hints,
)

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Discriminator,
    Field,
    GetJsonSchemaHandler,
    Tag,
    create_model,
)
from pydantic.json_schema import GenerateJsonSchema

from roofing_api.docstrings import attributes, docs
from roofing_api.values import (
    LONGEST_LIST,
    MOST_PARTS,
    PLAIN,
    PLAIN_TYPES,
    as_written,
    list_type,
    measure_type,
    number_type,
    one_of,
    text_type,
    wording_type,
)
from roofing_api.variants import OneOf, Variants, kinds_in, variants_of
from roofing_core.materials import material, names_of
from roofing_core.measures.faults import Fault, Refused, refuse_if_any
from roofing_core.measures.units import Unit
from roofing_core.measures.wording import Wording


class Inputs(BaseModel):
    """What a function or dataclass of the library is given; only what was asked for is kept.

    A field may have any name that the library uses, so this class has no methods of its own.
    """

    model_config = ConfigDict(extra="forbid")
    made_of: ClassVar[Callable[..., Any]]
    given_unless: ClassVar[Mapping[str, object]] = MappingProxyType({})
    about: ClassVar[Mapping[str, str]] = MappingProxyType({})
    variants: ClassVar[Variants | None] = None


#: What a value can be that the library has a dataclass for, or a list of them.
_TO_MAKE = (Inputs, tuple)


def measures(inputs: Inputs) -> dict[str, Any]:
    """Give what the library is called with; what was not asked for has its default there."""
    asked, names = inputs.model_fields_set, inputs.given_unless
    given = {name: getattr(inputs, name) for name in names if name in asked}
    faults: list[Fault] = []
    for name, value in given.items():
        if isinstance(value, _TO_MAKE):
            try:
                given[name] = _made(value, names[name])
            except Refused as refused:
                faults += refused.below(name).faults
    refuse_if_any(faults)
    return given


def _made(value: Any, default: object) -> Any:
    """Make the dataclass or dataclasses that were asked for; a list of values stays as it is."""
    if isinstance(value, Inputs):
        return _part(value, default)
    return _each_made(value) if value and isinstance(value[0], Inputs) else value


def _each_made(values: tuple[Inputs, ...]) -> tuple[Any, ...]:
    made: list[Any] = []
    faults: list[Fault] = []
    for place, one in enumerate(values):
        try:
            made.append(_part(one, Parameter.empty))
        except Refused as refused:
            faults += refused.below(place).faults
    refuse_if_any(faults)
    return tuple(made)


def _part(inputs: Inputs, default: object) -> Any:
    """Make a dataclass: a material or the default with what was given put in, or anew."""
    given, kind = measures(inputs), cast(Any, inputs.made_of)
    name = getattr(inputs, "material", None)
    start: Any = default if name is None else material(kind, name)
    return replace(start, **given) if isinstance(start, kind) else kind(**given)


@cache
def inputs_of(
    thing: Callable[..., Any], *, body: bool, variants: Variants | None = None
) -> type[Inputs]:
    """Make the model of what a function or dataclass takes, from a query or from a JSON body.

    What a query cannot hold is left out of its model. A dataclass may be one of `variants`.
    """
    about = attributes(thing) if isinstance(thing, type) else docs(thing).entries("Args")
    hints = get_type_hints(thing, include_extras=True)
    defaults = {name: one.default for name, one in signature(thing).parameters.items()}
    material_names = names_of(thing) if isinstance(thing, type) else ()
    taken: dict[str, Any] = {}
    if material_names:
        described = _described("Name of the material in the catalogue.", None, str)
        choice = Annotated[str, *one_of(material_names)]
        taken["material"] = (choice, Field(None, json_schema_extra=described))
    if variants and variants.unsaid != variants.word_of(thing):
        defaults[variants.told_by] = Parameter.empty
    for name, default in defaults.items():
        if not body and not _fits_query(hints[name]):
            continue
        needed = default is Parameter.empty and not material_names
        described = _described(about.get(name, ""), default, hints[name])
        field = Field(... if needed else None, json_schema_extra=described)
        is_text = default == "" and hints[name] is str
        kind = text_type(0) if is_text else as_input(hints[name], body=body)
        taken[name] = (kind, field)
    title = "".join(word.capitalize() for word in re.split(r"_|(?=[A-Z])", thing.__name__))
    model = create_model(f"{title}Input", __base__=Inputs, __doc__=docs(thing).summary, **taken)
    model.made_of, model.given_unless = thing, defaults
    model.about, model.variants = about, variants
    return model


def _fits_query(hint: Any) -> bool:
    """Tell whether a query can hold what an annotation stands for: no list of lists or objects."""
    if get_origin(hint) is tuple:
        return not any(get_origin(one) is tuple or _is_part(one) for one in get_args(hint))
    return any(not is_dataclass(kind) or _needs_fit_query(kind) for kind in kinds_in(hint))


def _is_part(hint: Any) -> bool:
    return any(is_dataclass(kind) for kind in kinds_in(hint))


def _needs_fit_query(kind: Any) -> bool:
    hints = get_type_hints(kind, include_extras=True)
    needed = (name for name, one in signature(kind).parameters.items() if one.default is one.empty)
    return all(_fits_query(hints[name]) for name in needed)


class AsName:
    """Say in a schema that the name of a material may stand for the object that names it."""

    def __get_pydantic_json_schema__(
        self, core_schema: Any, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """Offer the names of the catalogue beside the object."""
        part = handler(core_schema)
        return {"anyOf": [handler.resolve_ref_schema(part)["properties"]["material"], part]}


def _named(raw: Any) -> Any:
    return {"material": raw} if type(raw) is str else raw


def as_input(hint: Any, *, body: bool) -> Any:
    """Turn an annotation of the library into one that pydantic reads a query or a body by."""
    origin: Any = get_origin(hint)
    if origin is Annotated:
        return _annotated(*hint.__metadata__, body=body)
    if origin is tuple:
        return _list_of(*get_args(hint), body=body)
    if origin is Literal:
        return Annotated[hint, *one_of(get_args(hint))]
    kinds = kinds_in(hint)
    if len(kinds) > 1:
        return _variant_type(kinds, body=body)
    if kinds[0] is not hint:
        return as_input(kinds[0], body=body)
    return _part_type(hint, body=body) if is_dataclass(hint) else PLAIN_TYPES[hint](body)


def _annotated(said: Unit | Wording, *, body: bool) -> Any:
    """Make the type of what the library says more about: a measurement's unit, a text's length."""
    if isinstance(said, Wording):
        return wording_type(said)
    return number_type() if said.name in PLAIN else measure_type(said.name, body=body)


def _list_of(item: Any, *others: Any, body: bool) -> Any:
    """Make the type of a list: of any length, or where the library has a pair, of two."""
    if not {item, ...}.issuperset(others):
        raise TypeError(f"a list holds {item} and {others}")
    entry = text_type(0) if item is str else as_input(item, body=body)
    if others == (...,):
        return list_type(entry, body=body, most=MOST_PARTS if _is_part(item) else LONGEST_LIST)
    exactly = len((item, *others))
    return list_type(entry, body=body, least=exactly, most=exactly)


def _variant_type(kinds: tuple[Any, ...], *, body: bool) -> Any:
    """Make the type of one of several dataclasses: a body holds each, a query those that fit it."""
    taken = tuple(kind for kind in kinds if body or _fits_query(kind))
    others = tuple(kind for kind in kinds if kind not in taken)
    variants = variants_of(taken, others)
    models = {
        word: inputs_of(kind, body=body, variants=variants)
        for word, kind in zip(variants.words, taken, strict=True)
    }
    tagged = [Annotated[model, Tag(word)] for word, model in models.items()]
    tells = Discriminator(variants.word_in)
    return Annotated[reduce(or_, tagged), tells, OneOf(variants, models)]


class Untitled(GenerateJsonSchema):
    """Schemas without titles, which would only repeat the names."""

    def field_title_should_be_set(self, _: Any) -> bool:
        """Never."""
        return False


def schema_of(model: type[BaseModel]) -> dict[str, Any]:
    """Give the JSON Schema of what a model takes, its parts under `$defs`."""
    return model.model_json_schema(
        ref_template="#/components/schemas/{model}", schema_generator=Untitled
    )


def _part_type(kind: Any, *, body: bool) -> Any:
    model = inputs_of(kind, body=body)
    if names_of(kind) and body:
        return Annotated[model, BeforeValidator(_named), AsName()]
    return model


def _described(about: str, default: Any, hint: Any) -> Callable[[dict[str, Any]], None]:
    """Put the library's description and default, as a caller writes it, into a field's schema."""

    def change(schema: dict[str, Any]) -> None:
        schema.pop("default", None)
        told = [about, schema.get("description", "")]
        schema["description"] = " ".join(filter(None, told))
        written = as_written(default, hint)
        if written is not None:
            schema["default"] = written

    return change
