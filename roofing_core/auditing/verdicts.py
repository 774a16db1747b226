"""Verdicts: what an audit answers: questions asked, least margins, where water can get in."""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.measures.sentences import Amount, Sentence
from roofing_core.measures.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where on the roof something is.

    Attributes:
        plane: The plane; of a line that two planes share both, with a comma between; empty for what
            is about the whole roof.
        part: What it is about there: course, starter, a row of a sheet, a run of metal, a step.
        number: Which of these; 0 where there is but one.
        piece: Which of its pieces, from the left or in the order of laying; 0 for all of it.
        u: Along the eave, or along a run of metal; 0 where it has no one place.
        v: Up the slope; 0 where it has no one place.
    """

    plane: str
    part: str
    number: int
    piece: int
    u: Inches
    v: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Breach:
    """A place where water can get in, or where the plan contradicts itself.

    Attributes:
        question: The question that it was found by.
        place: Where it is.
        value: What the plan has there.
        limit: What keeps water out.
        says: All of it as a sentence.
    """

    question: str
    place: Place
    value: Amount
    limit: Amount
    says: Sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class Margin:
    """The least that was found of something that keeps water out.

    Attributes:
        question: The question that it answers.
        place: Where it was found first.
        value: The least, or the most, found anywhere.
        limit: What keeps water out.
        says: All of it as a sentence.
    """

    question: str
    place: Place
    value: Amount
    limit: Amount
    says: Sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One question that was asked of the plan.

    Attributes:
        question: Its stable code.
        asks: What has to hold.
        source: Where its limit is published.
        looked_at: How many places it was asked of.
        breaches: In how many of them it does not hold.
    """

    question: str
    asks: Sentence
    source: str
    looked_at: int
    breaches: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Audit:
    """What an audit found.

    Attributes:
        sheds_water: Whether the roof keeps water out as it is planned.
        says: The same as a sentence.
        asked: One entry per question.
        margins: The least margin of each question that measures one and found anything to measure.
        breaches: The first places where water can get in, question by question; none where it
            cannot.
        breaches_found: In how many places it can, those told above among them.
        not_judged: What this roof has that a plan does not say enough of to be judged.
    """

    sheds_water: bool
    says: Sentence
    asked: tuple[Asked, ...]
    margins: tuple[Margin, ...]
    breaches: tuple[Breach, ...]
    breaches_found: int
    not_judged: tuple[Sentence, ...]
