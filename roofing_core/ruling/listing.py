"""All rules by their codes, and those that hold in an edition of the residential code."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal, get_args

from roofing_core.measures.faults import Fault, fault, not_one_of, refuse_if_any
from roofing_core.measures.published import with_figures
from roofing_core.measures.sentences import Amount, Sentence
from roofing_core.ruling import (
    on_metal,
    on_nails,
    on_places,
    on_sheets,
    on_shingles,
    on_slopes,
    on_valleys,
)
from roofing_core.ruling.rule import (
    EDITION,
    EDITIONS,
    Checked,
    Edition,
    Rule,
    Severity,
    Source,
)

_PARTS = (on_slopes, on_sheets, on_metal, on_valleys, on_shingles, on_nails, on_places)

RULES: Mapping[str, Rule] = MappingProxyType({one.id: one for part in _PARTS for one in part.RULES})
"""All rules by their codes, the roof first."""

GOVERNS = (
    "Local code governs: it may ask for more than these model codes do, or for something else. It,"
    " the instructions printed on a material, and the advice of those licensed to give it go before"
    " every rule here."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleHeld:
    """One rule as it holds in one edition of the residential code.

    Attributes:
        rule: Its stable code, as findings name it.
        asks: What it asks, in our words.
        applies: When it is asked.
        bound: Whether the limit is the least or the most.
        limit: The limit.
        severity: How bad a breach is.
        source: Where it is published, and how that is known.
        cited: The source as findings cite it.
        cure: What puts a breach right; a finding puts its number where the dots are.
        checked: Who holds a plan against it: its findings, a refusal before there is a plan, or
            the audit of a finished plan.
    """

    rule: str
    asks: Sentence
    applies: Sentence
    bound: Literal["at_least", "at_most"]
    limit: Amount
    severity: Severity
    source: Source
    cited: str
    cure: Sentence
    checked: Checked


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleList:
    """The rules that hold in one edition of the residential code.

    Attributes:
        edition: Of the residential code.
        governs: What goes before every rule here.
        rules: One entry per rule, the roof first.
    """

    edition: Edition
    governs: str
    rules: tuple[RuleHeld, ...]


def rules(
    edition: Edition = EDITION, *, severity: Severity | None = None, rule: str = ""
) -> RuleList:
    """List the rules that plans are held against, in one edition of the residential code.

    Rules of other publications hold beside every edition. Each rule says whether its source was
    read, is known by those who quote it, is from memory, or is common practice.

    Args:
        edition: Of the residential code.
        severity: Only rules whose breach is as bad as this; all unless given.
        rule: Only the rule with this code; all unless given.

    Returns:
        One entry per rule, the roof first; none where the edition has no such rule.

    Raises:
        Refused: The edition, severity or code is not known; names each.

    Source:
        Each rule's own. Local code governs.

    >>> [one.rule for one in rules("2024", rule="ice_barrier.steep_reach").rules]  # left out
    []
    >>> rules("2021", rule="metal.lap").rules[0].cited
    'International Residential Code, 2021, R905.2.8.5, as restated'
    """
    refuse_if_any(
        [
            edition_fault("edition", edition),
            not_one_of("severity", severity, get_args(Severity)) if severity else None,
            _code_fault(rule),
        ]
    )
    held = ((one, one.source_in(edition)) for one in RULES.values())
    return RuleList(
        edition=edition,
        governs=GOVERNS,
        rules=tuple(
            _held(one, source)
            for one, source in held
            if source and one.severity == (severity or one.severity) and one.id == (rule or one.id)
        ),
    )


def edition_fault(at: str, edition: str) -> Fault | None:
    """Give a fault unless an edition of the residential code is known.

    Args:
        at: The name to put into the fault.
        edition: The edition.

    Returns:
        The fault, or ``None``.

    Raises:
        Nothing: The fault is the answer.

    Source:
        None: a list.

    >>> edition_fault("edition", "2021") is None
    True
    """
    return not_one_of(at, edition, EDITIONS)


def _code_fault(code: str) -> Fault | None:
    if not code or code in RULES:
        return None
    return fault("rule", code, "the code of a rule, such as metal.lap; without it all are listed")


def _held(rule: Rule, source: Source) -> RuleHeld:
    limit = Amount(rule.limit, rule.unit)
    return RuleHeld(
        rule=rule.id,
        asks=rule.asks_with(limit),
        applies=with_figures(rule.applies),
        bound=rule.bound,
        limit=limit,
        severity=rule.severity,
        source=source,
        cited=source.text(),
        cure=with_figures(rule.cure),
        checked=rule.checked,
    )
