"""Forms: a query or a body as a whole, and where in it a fault lies."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from difflib import get_close_matches
from typing import Any, NamedTuple

from pydantic import BaseModel, ValidationError, create_model

from roofing_api.inputs import Inputs, schema_of
from roofing_api.problems import MOST_ERRORS, fragment, shown
from roofing_api.values import LONGEST_LIST
from roofing_core.measures.faults import Fault, Refused
from roofing_core.measures.sentences import say

Path = tuple[str | int, ...]

#: What pydantic checks itself, in our words.
_SHAPES = {
    "model_type": "a JSON object",
    "tuple_type": "a JSON list",
    "too_long": f"a list of at most {LONGEST_LIST}",
}


class Form:
    """A model, and the names of the places in the tree that it takes."""

    def __init__(self, model: type[BaseModel]) -> None:
        self.model = model

    def taken(self, tree: Any) -> Any:
        """Read a tree into the model; every fault in it is refused at once."""
        bearing = tree.get("number_unit") if isinstance(tree, dict) else None
        try:
            return self.model.model_validate(tree, context=bearing)
        except ValidationError as invalid:
            raise Refused(*self._faults(invalid)) from None

    def place(self, at: Path, tree: Any) -> tuple[dict[str, str], str | None]:
        """Give where a fault lies, as the caller names it, and the text that came there, if any."""
        walked, came = _walked(tree, at)
        return {"pointer": fragment(walked)}, came

    def names_beside(self, at: Path) -> list[str]:
        """Give the names that could stand at a place."""
        return list(self._model_around(at).model_fields)

    def _faults(self, invalid: ValidationError) -> Iterator[Fault]:
        for one in invalid.errors(include_url=False)[: MOST_ERRORS + 1]:
            at: Path = one["loc"]
            match one["type"]:
                case "value_error":
                    yield from (replace(each, at=at) for each in one["ctx"]["error"].faults)
                case "missing":
                    about = _about(self._model_around(at), str(at[-1]))
                    yield Fault(at, "nothing", say("it is needed. ", about))
                case "extra_forbidden":
                    yield Fault(at, shown(one["input"]), say(self._nearest(at)))
                case kind:
                    yield Fault(at, shown(one["input"]), say(_SHAPES.get(kind, one["msg"])))

    def _nearest(self, at: Path) -> str:
        names = self.names_beside(at)
        near = get_close_matches(str(at[-1])[:100], names, n=3) or names
        return f"one of the names known here, the nearest: {', '.join(near)}"

    def _model_around(self, at: Path) -> type[BaseModel]:
        model: Any = self.model
        for part in at[:-1]:
            model = model.model_fields[part].annotation
        return model  # type: ignore[no-any-return]


def _about(model: type[BaseModel], name: str) -> str:
    described: str = schema_of(model)["properties"][name].get("description", "a value")
    return described


def _walked(tree: Any, at: Path) -> tuple[Path, str | None]:
    """Walk down what came as far as it goes, into a list with commas too.

    Where an object or a list came, or nothing, the library's own words say more than that.
    """
    for depth, part in enumerate(at):
        if isinstance(tree, str) and str(part).isdigit():
            tree = [one.strip() for one in tree.split(",")]
        if isinstance(tree, dict) and part in tree:
            tree = tree[part]
        elif isinstance(tree, list) and str(part).isdigit() and int(part) < len(tree):
            tree = tree[int(part)]
        else:  # a text stands for all that could be below it
            return (at[:depth], shown(tree)) if isinstance(tree, str) else (at, None)
    return at, None if isinstance(tree, dict | list) else shown(tree)


class Leaf(NamedTuple):
    """One value that a query can hold."""

    path: tuple[str, ...]
    schema: dict[str, Any]
    required: bool


class QueryForm(Form):
    """A query: what is nested in the library is flat here, with dots.

    The fields of `lifted` stand without its name, unless that is taken, and a material's name
    stands for the material.
    """

    def __init__(self, inputs: type[Inputs], *manner: type[BaseModel], lifted: str = "") -> None:
        super().__init__(create_model(inputs.__name__, __base__=(*manner, inputs)))
        self._lifted = lifted
        self.leaves: dict[str, Leaf] = {}
        for leaf in sorted(_leaves(self.model), key=lambda leaf: leaf.path[0] != lifted):
            self.leaves[self._name(leaf.path)] = leaf
        self._names = {leaf.path: name for name, leaf in self.leaves.items()}
        self._is_flat = all(len(leaf.path) == 1 for leaf in self.leaves.values())

    def tree(self, given: dict[str, str]) -> dict[str, Any]:
        """Put each parameter where the model has it."""
        if self._is_flat:
            return given
        tree: dict[str, Any] = {self._lifted: {}}
        for name, text in given.items():
            *parts, last = self._path(name)
            inner = tree
            for part in parts:
                inner = inner.setdefault(part, {})
            inner[last] = text
        return tree

    def place(self, at: Path, tree: Any) -> tuple[dict[str, str], str | None]:
        """Give the parameter that a fault lies in, and the text that came in it, if any."""
        texts = tuple(str(part) for part in at)
        known = next((texts[:n] for n in range(len(at), 0, -1) if texts[:n] in self._names), None)
        name = self._names[known] if known else ".".join(texts)
        return {"parameter": shown(name.removesuffix("."))}, _walked(tree, at)[1]

    def names_beside(self, _: Path) -> list[str]:
        """Give the names of all parameters."""
        return list(self.leaves)

    def _path(self, name: str) -> tuple[str, ...]:
        if name in self.leaves:
            return self.leaves[name].path
        return (name, "") if name in self.model.model_fields else (name,)

    def _name(self, path: tuple[str, ...]) -> str:
        if path[0] == self._lifted and path[-1] not in self.model.model_fields:
            path = path[1:]
        return ".".join(path[:-1] if len(path) > 1 and path[-1] == "material" else path)


def _leaves(
    model: type[BaseModel], above: tuple[str, ...] = (), required: bool = True
) -> Iterator[Leaf]:
    schemas = schema_of(model)["properties"]
    for name, field in model.model_fields.items():
        path, needed = (*above, name), required and field.is_required()
        if isinstance(field.annotation, type) and issubclass(field.annotation, Inputs):
            yield from _leaves(field.annotation, path, needed)
        else:
            yield Leaf(path, schemas[name], needed)
