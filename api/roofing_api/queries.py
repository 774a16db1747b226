"""Queries: what is nested in the library stands flat in an address."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from pydantic import BaseModel, create_model

from roofing_api.forms import Form, Path, models_by_word, walked
from roofing_api.inputs import Inputs, schema_of
from roofing_api.problems import shown
from roofing_api.variants import Variants


class Leaf(NamedTuple):
    """One value that a query can hold."""

    path: tuple[str, ...]
    schema: dict[str, Any]
    required: bool
    about: str = ""


class QueryForm(Form):
    """A query: what is nested in the library is flat here, with dots.

    The fields of `lifted` stand without its name, unless that is taken, and a material's name
    stands for the material. One value serves all variants that have it.
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
        return {"parameter": shown(name.removesuffix("."))}, walked(tree, at)[1]

    def names_beside(self, _: type[BaseModel]) -> list[str]:
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
    schemas, told = schema_of(model)["properties"], getattr(model, "about", {})
    for name, field in model.model_fields.items():
        path, needed = (*above, name), required and field.is_required()
        variants = models_by_word(field.annotation)
        if variants:
            yield from _shared_leaves(variants, path, needed)
        elif isinstance(field.annotation, type) and issubclass(field.annotation, Inputs):
            yield from _leaves(field.annotation, path, needed)
        else:
            yield Leaf(path, schemas[name], needed, told.get(name, ""))


def _shared_leaves(
    models: Mapping[str, type[Inputs]], path: tuple[str, ...], required: bool
) -> Iterator[Leaf]:
    """Give the values that variants have: each once, with what it is in each of them."""
    found: dict[tuple[str, ...], dict[str, Leaf]] = {}
    for word, model in models.items():
        for leaf in _leaves(model, path):
            found.setdefault(leaf.path, {})[word] = leaf
    variants: Any = next(iter(models.values())).variants
    for at, leaves in found.items():
        leaf = _shared(leaves, variants, tells=at == (*path, variants.told_by))
        yield leaf._replace(required=required and leaf.required)


def _shared(leaves: Mapping[str, Leaf], variants: Variants, *, tells: bool) -> Leaf:
    """Put what a value is in each of the variants that have it into one leaf."""
    first = next(iter(leaves.values()))
    everywhere = tuple(leaves) == variants.words
    about, shared = first.schema.get("description", ""), dict(first.schema)
    if tells:
        shared |= {"enum": list(leaves), "default": variants.unsaid}
    elif any(leaf.schema.get("default") != shared.get("default") for leaf in leaves.values()):
        shared["default"] = None
    told = (_told(leaves, everywhere=everywhere), about.removeprefix(first.about).strip())
    shared["description"] = " ".join(filter(None, told))
    schema = {name: value for name, value in shared.items() if value is not None}
    return Leaf(first.path, schema, everywhere and all(leaf.required for leaf in leaves.values()))


def _told(leaves: Mapping[str, Leaf], *, everywhere: bool) -> str:
    """Say what a value is: once, or for each of the variants where it differs or some lack it."""
    meant: dict[tuple[str, bool], list[str]] = {}
    for word, leaf in leaves.items():
        meant.setdefault((leaf.about, leaf.required), []).append(word)
    if everywhere and len({about for about, _ in meant}) == 1:
        return next(about for about, _ in meant)
    return " ".join(
        f"For {', '.join(words)}{' (needed)' if needed else ''}: {about}"
        for (about, needed), words in meant.items()
    )
