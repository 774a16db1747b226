"""Variants: one of several dataclasses of the library, told apart by a word that each has.

The library says `roof: SingleSlope | Gable`, and both have a field `form` with a word of their own:
the first such field of all is the one that tells. What may come is one of them as `oneOf` with a
`discriminator`, so that a caller's tools know which fields go together.
"""

from __future__ import annotations

import types
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields
from functools import cache
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from pydantic import GetJsonSchemaHandler

from roofing_core.roof.planes import SingleSlope

#: What a value is that does not say which it is: every roof was this before there were others.
UNSAID: frozenset[type] = frozenset({SingleSlope})


def kinds_in(hint: Any) -> tuple[Any, ...]:
    """Give the types that a value may have, leaving out None."""
    if get_origin(hint) not in (Union, types.UnionType):
        return (hint,)
    return tuple(kind for kind in get_args(hint) if kind is not types.NoneType)


@dataclass(frozen=True, slots=True)
class Variants:
    """Dataclasses of which a value is one, by the words in the field that tells.

    `unsaid` is the word of a value that has none, where it may have none. `elsewhere` are the words
    of those that cannot come in the same way.
    """

    told_by: str
    kinds: tuple[type, ...]
    words: tuple[str, ...]
    unsaid: str | None
    elsewhere: tuple[str, ...]

    def word_of(self, kind: Any) -> str:
        """Give the word of one of the kinds."""
        return self.words[self.kinds.index(kind)]

    def words_with(self, name: str) -> list[str]:
        """Give the words of those that have a field of this name."""
        pairs = zip(self.words, self.kinds, strict=True)
        return [word for word, kind in pairs if name in _names(kind)]

    def word_in(self, raw: Any) -> str | None:
        """Give the word that tells what came: none if that is no object, or lacks it."""
        if not isinstance(raw, dict):
            return None
        if self.told_by not in raw:
            return self.unsaid
        word = raw[self.told_by]
        return word if isinstance(word, str) else ""


@cache
def variants_of(kinds: tuple[type, ...], elsewhere: tuple[type, ...] = ()) -> Variants:
    """Find the first field that has one word in each of several dataclasses, and tells them apart.

    `elsewhere` are more of them, which cannot come in the same way.
    """
    every = [dict(_words(kind)) for kind in (*kinds, *elsewhere)]
    for name in every[0]:
        words = tuple(words[name] for words in every if name in words)
        if len(set(words)) == len(every):
            here, there = words[: len(kinds)], words[len(kinds) :]
            pairs = zip(here, kinds, strict=True)
            unsaid = next((word for word, kind in pairs if kind in UNSAID), None)
            return Variants(name, kinds, here, unsaid, there)
    raise TypeError(f"no field tells {kinds} apart")


def _names(kind: Any) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind))


def _words(kind: type) -> Iterator[tuple[str, str]]:
    """Give the fields of a dataclass that hold one word always, with the word."""
    hints = get_type_hints(kind)
    for name in _names(kind):
        options = get_args(hints[name]) if get_origin(hints[name]) is Literal else ()
        if len(options) == 1:
            yield name, options[0]


@dataclass(frozen=True, slots=True)
class OneOf:
    """Write variants into a schema as OpenAPI has them: by the names of the models' schemas."""

    variants: Variants
    models: Mapping[str, type]

    def __get_pydantic_json_schema__(
        self, core_schema: Any, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """Give the schemas under `oneOf`, which of them goes with which word, and what if none."""
        branches = [one for part in handler(core_schema).values() for one in part]
        at = {word: f"#/components/schemas/{model.__name__}" for word, model in self.models.items()}
        unsaid = self.variants.unsaid
        told = f"Without `{self.variants.told_by}` it is `{unsaid}`."
        return {
            "oneOf": branches,
            "discriminator": {"propertyName": self.variants.told_by, "mapping": at},
            **({"description": told} if unsaid else {}),
        }
