"""Found: how a breach of a rule is told, with its place, value, limit, source and cure."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import get_args

from roofing_core.job.layout import Layout
from roofing_core.measures.sentences import Amount, Exact, Sentence, say
from roofing_core.measures.units import System
from roofing_core.ruling.rule import Rule, Severity, keeps

SYSTEMS: tuple[System, ...] = get_args(System)


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What to write into a job, in one of its fields, to put a breach right.

    Attributes:
        field: The field of the job, with dots where it is nested: ``metalwork.lap``.
        values: The number to write there, or all that are listed there.
        word: The word to write there, where it takes no number.
    """

    field: str
    values: tuple[Amount, ...] = ()
    word: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """Something on the plan that breaks a rule, or that is worth knowing.

    Attributes:
        rule: The rule's stable code, by which the list of rules tells all of it.
        severity: How bad it is.
        place: Where on the roof.
        says: What was found.
        value: What the plan has.
        limit: What the rule asks, or what the caller chose in its stead.
        source: Where the rule is published, in the edition of the code that the job is held to.
        cure: What puts it right.
        changes: The same as fields of the job: with these written in, the finding is gone. Empty
            where a choice does not cure it.
    """

    rule: str
    severity: Severity
    place: str
    says: Sentence
    value: Amount
    limit: Amount
    source: str
    cure: Sentence
    changes: tuple[Change, ...]


def broken(
    layout: Layout,
    rule: Rule,
    value: float,
    place: str,
    *,
    limit: float | None = None,
    to: float | None = None,
    fields: tuple[str, ...] = (),
    cure: Sentence | None = None,
    changes: tuple[Change, ...] = (),
) -> Iterator[Finding]:
    """Give the finding of a rule where a value breaks it, in the edition that the job is held to.

    Args:
        layout: The roof, with the edition among its choices.
        rule: The rule.
        value: What the plan has, in the rule's unit.
        place: Where on the roof.
        limit: The limit that the caller chose instead of the rule's own.
        to: The number that cures, in the rule's unit; the limit unless given.
        fields: The fields of the job that it is to be written into.
        cure: A closer cure than the rule's own.
        changes: What to write into the job, where it is not one number into all `fields`.

    Returns:
        The finding; nothing where the rule is kept, or the edition does not have it.

    Raises:
        Nothing.

    Source:
        The rule's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> from roofing_core.ruling.on_metal import METAL_LAP
    >>> shed = lay_out(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))
    >>> (one,) = broken(shed, METAL_LAP, 1.5, "eave metal", fields=("metalwork.lap",))
    >>> one.says.written()
    'Each length of edge metal laps the next by at least 2 in. Here: 1 1/2 in.'
    >>> one.changes[0].values
    (Amount(value=2.0, unit='in'),)
    >>> list(broken(shed, METAL_LAP, 2.0, "eave metal"))
    []
    """
    source = rule.source_in(layout.choices.code_edition)
    asked = Amount(rule.limit if limit is None else limit, rule.unit)
    if source is None or keeps(rule.bound, value, asked.value):
        return
    has = Amount(value, rule.unit)
    alike = any(has.written(system) == asked.written(system) for system in SYSTEMS)
    here = Exact(value, rule.unit) if alike else has
    number = Amount(asked.value if to is None else to, rule.unit)
    yield Finding(
        rule=rule.id,
        severity=rule.severity,
        place=place,
        says=say(rule.asks_with(asked), " Here: ", here, "."),
        value=has,
        limit=asked,
        source=source.text(),
        cure=rule.cure_with(number) if cure is None else cure,
        changes=changes or tuple(Change(field=field, values=(number,)) for field in fields),
    )


def place_on(layout: Layout, plane: str, place: str) -> str:
    """Name a place on a roof: with its plane, where there are several.

    Args:
        layout: The roof.
        plane: The plane.
        place: The place on it.

    Returns:
        The name.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.layout import lay_out
    >>> from roofing_core.roof.planes import SingleSlope
    >>> shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> place_on(lay_out(shed), "slope", "course 5")
    'course 5'
    """
    return place if len(layout.planes) == 1 else f"{plane}, {place}"
