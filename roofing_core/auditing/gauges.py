"""Gauges: what was seen for each question: how often, the least, and where it is too little."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from roofing_core.auditing.question import Question
from roofing_core.auditing.questions import QUESTIONS, AuditLimits
from roofing_core.auditing.shapes import TOUCHING
from roofing_core.auditing.verdicts import Asked, Breach, Margin, Place
from roofing_core.measures.published import with_figures
from roofing_core.measures.sentences import Amount, Exact, Sentence, length, say
from roofing_core.measures.units import Inches

#: So many breaches of one question are told one by one, of each piece the first.
MOST_TOLD = 10

#: Less than this under a limit is float dust; less than this too much as well.
DUST = 1e-6


class Where(NamedTuple):
    """A place, as it is noted.

    Attributes:
        plane: The plane; empty for what is about the whole roof.
        part: What it is about there.
        number: Which of these; 0 where there is but one.
        piece: Which of its pieces; 0 for all of it.
        u: Along the eave, or along a run of metal.
        v: Up the slope.
        of: Which figure or part of it is meant, where there are several; for words alone.
    """

    plane: str
    part: str
    number: int = 0
    piece: int = 0
    u: Inches = 0.0
    v: Inches = 0.0
    of: str = ""

    def place(self) -> Place:
        """Give the place as it is told."""
        told = self._asdict()
        del told["of"]
        return Place(**told)

    def says(self) -> Sentence:
        """Say where it is."""
        named = self.part if not self.number else f"{self.part} {self.number}"
        told = [self.plane, named, f"piece {self.piece}" if self.piece else "", self.of]
        parts: list[object] = [", ".join(filter(None, told))]
        if self.u or self.v:
            parts += [" at ", length(self.u), " along"]
        return say(*parts, *([" and ", length(self.v), " up"] if self.v else []))


class Gauge:
    """What was seen for one question.

    Args:
        question: The question.
        limits: How much keeps water out.
    """

    __slots__ = (
        "_at_least",
        "_least",
        "_where",
        "breaches",
        "limit",
        "looked_at",
        "question",
        "told",
    )

    def __init__(self, question: Question, limits: AuditLimits) -> None:
        self.question = question
        self._at_least = bool(question.limit)
        self.limit: float = getattr(limits, question.limit) if question.limit else 0.0
        self._least = float("inf")
        self._where = Where("", "")
        self.looked_at = self.breaches = 0
        self.told: dict[tuple[object, ...], tuple[float, Where]] = {}

    def see(self, value: float, where: Where) -> None:
        """Note one value at its place."""
        self.looked_at += 1
        if self._at_least and value < self._least:
            self._least, self._where = value, where
        lacks = self.limit - value if self._at_least else value
        if lacks > DUST:
            self.breaches += 1
            if len(self.told) < MOST_TOLD:
                self.told.setdefault((*where[:4], where.of), (value, where))

    def see_off(self, off: float, where: Where) -> None:
        """Note how far something is off; nothing where edges that touch may be as far apart."""
        self.see(abs(off) if abs(off) > TOUCHING else 0.0, where)

    def see_least(self, value: float, of: int, where: Where) -> None:
        """Note the least of several values, none of which breaches the limit."""
        self.looked_at += of - 1
        self.see(value, where)

    def see_well(self, of: int) -> None:
        """Note so many places where nothing lacks."""
        self.looked_at += of

    def asked(self) -> Asked:
        """Give the question with how often it was asked."""
        return Asked(
            question=self.question.code,
            asks=self._filled(self.question.asks, self.limit),
            source=self.question.source,
            looked_at=self.looked_at,
            breaches=self.breaches,
        )

    def found(self) -> Iterator[Breach]:
        """Give the first places where too little was seen."""
        for value, where in self.told.values():
            yield Breach(
                question=self.question.code,
                place=where.place(),
                value=self._amount(value),
                limit=self._amount(self.limit),
                says=self._says(value, where),
            )

    def margin(self) -> Iterator[Margin]:
        """Give the least that was seen, where anything was measured."""
        if self._at_least and self.looked_at:
            yield Margin(
                question=self.question.code,
                place=self._where.place(),
                value=self._amount(self._least),
                limit=self._amount(self.limit),
                says=self._says(self._least, self._where),
            )

    def _amount(self, value: float) -> Amount:
        return Amount(value, self.question.unit)

    def _says(self, value: float, where: Where) -> Sentence:
        asked = (
            say("; at least ", self._amount(self.limit), " keeps water out")
            if self._at_least
            else ""
        )
        return say(where.says(), ": ", self._filled(self.question.finds, value), asked, ".")

    def _filled(self, words: str, value: float) -> Sentence:
        if self._at_least and value < 0:
            none, gap = self._amount(0.0), self._amount(-value)
            return say(with_figures(words, none), ", a gap of ", gap, " instead")
        amount = self._amount(value)
        if self._at_least and amount.written() == self._amount(self.limit).written():
            amount = Exact(value, self.question.unit) if value != self.limit else amount
        return with_figures(words, amount)


def gauges(limits: AuditLimits) -> dict[str, Gauge]:
    """Make a gauge for every question.

    Args:
        limits: How much keeps water out.

    Returns:
        The gauges by the codes of their questions.

    Raises:
        Nothing.

    Source:
        `QUESTIONS`.

    >>> gauges(AuditLimits())["shingles.headlap"].limit
    2.0
    """
    return {code: Gauge(question, limits) for code, question in QUESTIONS.items()}
