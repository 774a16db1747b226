"""Rule: what one thing that is asked of a roof is made of, and where it is published."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from roofing_core.measures.sentences import Amount

Severity = Literal["stops_the_job", "breaks_code", "against_practice", "worth_knowing"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where a rule is published.

    Attributes:
        title: The publication, or ``common practice``.
        edition: Its edition, empty for practice.
        place: The section in it, or ``no published source``.
    """

    title: str
    edition: str
    place: str

    def text(self) -> str:
        """Write the source as people cite it."""
        return ", ".join(part for part in (self.title, self.edition, self.place) if part)


PRACTICE = Source(title="common practice", edition="", place="no published source")


def residential(place: str) -> Source:
    """Cite a place in the residential code.

    Args:
        place: The section.

    Returns:
        The source.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> residential("R905.2.5").text()
    'International Residential Code, 2018, R905.2.5'
    """
    return Source(title="International Residential Code", edition="2018", place=place)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One thing that is asked of a roof, with its limit.

    Attributes:
        id: Stable code, the layer first.
        asks: What it asks, in our words; the limit goes where the braces are.
        bound: Whether the limit is the least or the most.
        limit: The limit, in the unit inside.
        unit: Its unit.
        severity: How bad a breach is.
        source: Where it is published.
        cure: What puts it right.
    """

    id: str
    asks: str
    bound: Literal["at_least", "at_most"]
    limit: float
    unit: str
    severity: Severity
    source: Source
    cure: str

    def asks_with(self, limit: Amount) -> tuple[str | Amount, ...]:
        """Give what it asks with a limit in its place: the parts of a sentence."""
        before, _, after = self.asks.partition("{}")
        return (before, limit, after)

    def kept_by(self, value: float) -> bool:
        """Tell whether a value keeps the rule, forgiving float dust."""
        dust = 1e-9 * max(1.0, abs(self.limit))
        if self.bound == "at_least":
            return value >= self.limit - dust
        return value <= self.limit + dust


def rule(
    rule_id: str,
    asks: str,
    *,
    at_least: float | None = None,
    at_most: float | None = None,
    unit: str = "in",
    severity: Severity = "breaks_code",
    source: Source,
    cure: str,
) -> Rule:
    """Make a rule with a least or a most.

    Args:
        rule_id: Stable code, the layer first.
        asks: What it asks, in our words; the limit goes where the braces are.
        at_least: The limit, where it is the least; 0 where neither is given.
        at_most: The limit, where it is the most.
        unit: Its unit.
        severity: How bad a breach is.
        source: Where it is published.
        cure: What puts it right.

    Returns:
        The rule.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> rule("a.b", "At most {}.", at_most=3, source=PRACTICE, cure="Less.").kept_by(3)
    True
    """
    bound: Literal["at_least", "at_most"] = "at_least" if at_most is None else "at_most"
    return Rule(
        id=rule_id,
        asks=asks,
        bound=bound,
        limit=at_least or at_most or 0.0,
        unit=unit,
        severity=severity,
        source=source,
        cure=cure,
    )
