"""A pocket calculator: reads a line of a working as it is printed, and works it out by itself.

It knows the signs and words that a line is written with, takes units for what they are, and
computes with 30 figures. Nothing of the library is used.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from mpmath import mp, mpf

mp.dps = 30

_TOKEN = re.compile(
    r"\s*(?:(?P<mixed>\d+ \d+/\d+)|(?P<fraction>\d+/\d+)"
    r"|(?P<number>\d+(?:\.\d+)?(?:e[-+]?\d+)?)"
    r"|(?P<word>(?:root|whole|least|greatest|distance|angle)(?=\())"
    r"|(?P<times>x(?= ))|(?P<unit>[a-z]+\d?(?:/[a-z]+\d?)?)|(?P<sign>[-+/(),]))"
)


@dataclass
class Worked:
    """What a line comes to, and the largest number on the way."""

    value: mpf
    largest: mpf


@dataclass
class _Reader:
    tokens: list[tuple[str, str]]
    place: int = 0
    seen: list[mpf] = field(default_factory=list)

    def peek(self) -> tuple[str, str]:
        return self.tokens[self.place] if self.place < len(self.tokens) else ("end", "")

    def take(self, text: str = "") -> tuple[str, str]:
        found = self.peek()
        assert not text or found[1] == text, f"{text} wanted at {self.tokens[self.place :][:5]}"
        self.place += 1
        return found

    def kept(self, value: mpf) -> mpf:
        self.seen.append(abs(value))
        return value

    def sum(self) -> mpf:
        value = self.product()
        while self.peek()[1] in ("+", "-"):
            sign = self.take()[1]
            value = self.kept(value + (1 if sign == "+" else -1) * self.product())
        return value

    def product(self) -> mpf:
        value = self.part()
        while self.peek()[1] in ("x", "/"):
            value = (
                value * self.part() if self.take()[1] == "x" else value / self.part()
            )  # fmt: skip
            self.kept(value)
        return value

    def part(self) -> mpf:
        kind, text = self.take()
        if text == "-":
            return -self.part()
        if text == "(":
            value = self.sum()
            self.take(")")
            return value
        if kind == "word":
            return self.called(text)
        return self.kept(self.number(kind, text))

    def number(self, kind: str, text: str) -> mpf:
        whole, _, fraction = text.rpartition(" ")
        top, _, bottom = fraction.partition("/")
        value = mpf(whole or 0) + mpf(top) / mpf(bottom or 1)
        assert kind in ("mixed", "fraction", "number"), f"{text} is no number"
        if self.peek()[0] == "unit":
            self.take()
        return value

    def called(self, word: str) -> mpf:
        self.take("(")
        values = [self.sum()]
        while self.peek()[1] == ",":
            self.take()
            values.append(self.sum())
        self.take(")")
        return self.kept(_does(word, values))


def _does(word: str, values: list[mpf]) -> mpf:
    if word == "least":
        return min(values)
    if word == "greatest":
        return max(values)
    if word == "distance":
        return abs(values[0] - values[1])
    if word == "angle":
        return mp.degrees(mp.atan2(*values))
    (value,) = values
    # What twelve figures leave open is no piece of its own.
    return mp.sqrt(value) if word == "root" else mp.ceil(value - mpf("1e-7"))


def worked(line: str) -> Worked:
    """Work out a line as it is printed."""
    tokens, place = [], 0
    while place < len(line):
        found = _TOKEN.match(line, place)
        assert found, f"cannot read {line[place:][:40]!r}"
        tokens.append((str(found.lastgroup), found[found.lastgroup or 0]))
        place = found.end()
    reader = _Reader(tokens)
    value = reader.sum()
    assert reader.peek()[0] == "end", f"{line!r} goes on at {reader.tokens[reader.place :][:5]}"
    return Worked(value, max(reader.seen, default=abs(value)))
