"""Changing one value deep in a job, by the dotted place that a caller knows it by."""

from __future__ import annotations

from dataclasses import replace
from operator import attrgetter
from typing import Any, TypeVar

Whole = TypeVar("Whole")


def changed(whole: Whole, **places: Any) -> Whole:
    """Give a whole with other values at its places, dots written as two underscores."""
    for place, value in places.items():
        part, _, name = place.partition("__")
        inner = changed(getattr(whole, part), **{name: value}) if name else value
        whole = replace(whole, **{part: inner})  # type: ignore[type-var]
    return whole


def at(whole: object, place: str) -> Any:
    """Give the value at a dotted place."""
    return attrgetter(place)(whole)
