"""Rule: what one thing that is asked of a roof is made of, and where it is published.

A rule knows the editions of the residential code that have it. Which of them holds is the caller's
to say: nothing here sets "the current code" for everyone.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from roofing_core.measures.published import with_figures
from roofing_core.measures.sentences import Amount, Exact, Sentence, on_a_sixteenth

Severity = Literal["stops_the_job", "breaks_code", "against_practice", "worth_knowing"]
Edition = Literal["2015", "2018", "2021", "2024"]

#: Who holds a plan against a rule: its findings, a refusal before there is a plan, or the audit.
Checked = Literal["findings", "refusal", "audit"]

#: How a source is known: read in a copy, told by those who quote it, from memory, or not published.
Known = Literal["read", "restated", "from_memory", "practice"]

EDITIONS: tuple[Edition, ...] = get_args(Edition)

#: The edition whose text most limits here were read in; a caller under another says so.
EDITION: Edition = "2018"

CODE = "International Residential Code"


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where a rule is published.

    Attributes:
        title: The publication, or ``common practice``.
        edition: Its edition, empty for practice.
        place: The section in it, or ``no published source``.
        known: Whether it was read, told by those who quote it, or is from memory; or practice.
    """

    title: str
    edition: str
    place: str
    known: Known = "read"

    def text(self) -> str:
        """Write the source as people cite it, and say where it was not read itself."""
        told = {"restated": "as restated", "from_memory": "from memory"}.get(self.known, "")
        parts = (self.title, self.edition, self.place, told)
        return ", ".join(part for part in parts if part)


PRACTICE = (
    Source(
        title="common practice", edition="", place="no published source", known="practice"
    ),
)  # fmt: skip


def residential(
    place: str,
    *,
    read: tuple[Edition, ...] = ("2018",),
    restated: tuple[Edition, ...] = (),
    editions: tuple[Edition, ...] = EDITIONS,
) -> tuple[Source, ...]:
    """Cite a place in the residential code, in each edition that has the rule.

    Args:
        place: The section, the same in all of them.
        read: Editions in which it was read.
        restated: Editions in which it is known by those who quote it.
        editions: Editions that have the rule; those neither read nor restated are from memory.

    Returns:
        One source per edition.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> [source.text() for source in residential("R905.2.5", editions=("2018", "2021"))][1]
    'International Residential Code, 2021, R905.2.5, from memory'
    """

    def known(edition: Edition) -> Known:
        if edition in restated:
            return "restated"
        return "read" if edition in read else "from_memory"

    return tuple(
        Source(title=CODE, edition=edition, place=place, known=known(edition))
        for edition in editions
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One thing that is asked of a roof, with its limit.

    Attributes:
        id: Stable code, the layer first.
        asks: What it asks, in our words; the limit goes where empty braces are, and figures that
            are published in US units stand in braces.
        applies: When it is asked, with such figures in braces.
        bound: Whether the limit is the least or the most.
        limit: The limit, in the unit inside.
        unit: Its unit.
        severity: How bad a breach is.
        sources: Where it is published: once for each edition of the residential code that has it,
            or one other publication, which holds beside all of them.
        cure: What puts it right; the number that does, where one does, goes where the braces are.
        checked: Who holds a plan against it.
    """

    id: str
    asks: str
    applies: str
    bound: Literal["at_least", "at_most"]
    limit: float
    unit: str
    severity: Severity
    sources: tuple[Source, ...]
    cure: str
    checked: Checked

    def source_in(self, edition: Edition) -> Source | None:
        """Give the source that holds beside an edition of the code; none where it lacks the rule.

        A rule of another publication holds beside every edition.
        """
        holding = (one for one in self.sources if one.title != CODE or one.edition == edition)
        return next(holding, None)

    def asks_with(self, limit: Amount) -> Sentence:
        """Give what it asks with a limit in its place."""
        return with_figures(self.asks, told(limit))

    def cure_with(self, number: Amount) -> Sentence:
        """Give the cure with its number in its place."""
        return with_figures(self.cure, told(number))

    def kept_by(self, value: float) -> bool:
        """Tell whether a value keeps the rule, forgiving float dust."""
        return keeps(self.bound, value, self.limit)


def keeps(bound: Literal["at_least", "at_most"], value: float, limit: float) -> bool:
    """Tell whether a value keeps a limit, forgiving float dust.

    Args:
        bound: Whether the limit is the least or the most.
        value: The value.
        limit: The limit, in the same unit.

    Returns:
        Whether it does.

    Raises:
        Nothing.

    Source:
        Arithmetic.

    >>> keeps("at_most", 12.0, 12.0), keeps("at_least", 11.9, 12.0)
    (True, False)
    """
    dust = 1e-9 * max(1.0, abs(limit))
    return value >= limit - dust if bound == "at_least" else value <= limit + dust


def told(amount: Amount) -> Amount:
    """Give an amount as it is to be told: with its decimals where 1/16 in would mislead.

    Args:
        amount: Any amount.

    Returns:
        The amount, or one that is written with its decimals.

    Raises:
        Nothing.

    Source:
        None: a way of writing.

    >>> told(Amount(0.105, "in")).written(), told(Amount(0.375, "in")).written()
    ('0.105 in', '3/8 in')
    """
    return amount if on_a_sixteenth(amount) else Exact(amount.value, amount.unit)


def rule(
    rule_id: str,
    asks: str,
    *,
    applies: str,
    at_least: float | None = None,
    at_most: float | None = None,
    unit: str = "in",
    severity: Severity = "breaks_code",
    sources: tuple[Source, ...],
    cure: str,
    checked: Checked = "findings",
) -> Rule:
    """Make a rule with a least or a most.

    Args:
        rule_id: Stable code, the layer first.
        asks: What it asks, in our words; the limit goes where empty braces are, and figures that
            are published in US units stand in braces.
        applies: When it is asked, with such figures in braces.
        at_least: The limit, where it is the least; 0 where neither is given.
        at_most: The limit, where it is the most.
        unit: Its unit.
        severity: How bad a breach is.
        sources: Where it is published.
        cure: What puts it right; the number that does goes where the braces are.
        checked: Who holds a plan against it.

    Returns:
        The rule.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> rule("a.b", "At most {}.", applies="Always.", at_most=3, sources=PRACTICE,
    ...      cure="Less.").kept_by(3)
    True
    """
    bound: Literal["at_least", "at_most"] = "at_least" if at_most is None else "at_most"
    return Rule(
        id=rule_id,
        asks=asks,
        applies=applies,
        bound=bound,
        limit=at_least or at_most or 0.0,
        unit=unit,
        severity=severity,
        sources=sources,
        cure=cure,
        checked=checked,
    )
