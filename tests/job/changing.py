"""Changing one value deep in a job, by the dotted place that a caller knows it by."""

from __future__ import annotations

from dataclasses import replace
from operator import attrgetter
from typing import Any, TypeVar

from roofing_core import Job
from roofing_core.job.found import Finding

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


def cured(job: Job, finding: Finding) -> Job:
    """Give a job with the changes of a finding written into its fields."""
    for change in finding.changes:
        now = at(job, change.field)
        numbers = tuple(amount.value for amount in change.values)
        if change.word:
            new: Any = change.word == "true" if isinstance(now, bool) else change.word
        else:
            new = numbers if isinstance(now, tuple) else type(now)(numbers[0])
        job = changed(job, **{change.field.replace(".", "__"): new})
    return job
