"""Found: how a breach of a rule is told, with its place, value, limit, source and cure."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from roofing_core.job.layout import Layout
from roofing_core.job.rule import Rule, Severity
from roofing_core.measures.sentences import Amount, Exact, Sentence, on_a_sixteenth, say


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """Something on the plan that breaks a rule, or that is worth knowing.

    Attributes:
        rule: The rule's stable code.
        severity: How bad it is.
        place: Where on the roof.
        says: What was found.
        value: What the plan has.
        limit: What the rule asks, or what the caller chose in its stead.
        source: Where the rule is published.
        cure: What puts it right.
    """

    rule: str
    severity: Severity
    place: str
    says: Sentence
    value: Amount
    limit: Amount
    source: str
    cure: Sentence


def finding(
    rule: Rule,
    value: float,
    place: str,
    *,
    limit: float | None = None,
    cure: Sentence | None = None,
) -> Finding:
    """Make the finding of a breach of a rule.

    Args:
        rule: The rule that is broken.
        value: What the plan has, in the rule's unit.
        place: Where on the roof.
        limit: The limit that the caller chose instead of the rule's own.
        cure: A closer cure than the rule's own.

    Returns:
        The finding, with its value, limit, source and cure.

    Raises:
        Nothing.

    Source:
        The rule's own.

    >>> from roofing_core.job import rules
    >>> finding(rules.METAL_LAP, 1.5, "eave metal").says.written()
    'Each length of edge metal laps the next by at least 2 in. Here: 1 1/2 in.'
    """
    has = Amount(value, rule.unit)
    asked = Amount(rule.limit if limit is None else limit, rule.unit)
    here = has if has.written() != asked.written() else Exact(value, rule.unit)
    limit_told = asked if on_a_sixteenth(asked) else Exact(asked.value, asked.unit)
    return Finding(
        rule=rule.id,
        severity=rule.severity,
        place=place,
        says=say(*rule.asks_with(limit_told), " Here: ", here, "."),
        value=has,
        limit=asked,
        source=rule.source.text(),
        cure=cure if cure is not None else say(rule.cure),
    )


def broken(rule: Rule, value: float, place: str) -> Iterator[Finding]:
    """Give the finding of a rule where a value breaks it.

    Args:
        rule: The rule.
        value: What the plan has, in the rule's unit.
        place: Where on the roof.

    Returns:
        The finding, or nothing.

    Raises:
        Nothing.

    Source:
        The rule's own.

    >>> from roofing_core.job import rules
    >>> list(broken(rules.METAL_LAP, 2.0, "eave metal"))
    []
    """
    if not rule.kept_by(value):
        yield finding(rule, value, place)


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
