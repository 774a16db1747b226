"""Walking through a plan: every number, word and sentence in it, with its place."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass

from roofing_core.measures.sentences import Sentence

Leaf = str | int | float | bool | None


def leaves(value: object, at: str = "") -> Iterator[tuple[str, Leaf]]:
    """Give every leaf of a tree of dataclasses and tuples, with its dotted place."""
    if is_dataclass(value):
        for field in fields(value):
            yield from leaves(getattr(value, field.name), f"{at}.{field.name}".lstrip("."))
    elif isinstance(value, tuple):
        for k, one in enumerate(value):
            yield from leaves(one, f"{at}.{k}")
    elif value is None or isinstance(value, str | int | float):
        yield at, value
    else:
        raise TypeError(f"{at} is a {type(value).__name__}: not a dataclass, tuple, word or number")


def sentences(value: object) -> Iterator[Sentence]:
    """Give every sentence in a tree of dataclasses and tuples."""
    if isinstance(value, Sentence):
        yield value
    elif is_dataclass(value):
        for field in fields(value):
            yield from sentences(getattr(value, field.name))
    elif isinstance(value, tuple):
        for one in value:
            yield from sentences(one)
