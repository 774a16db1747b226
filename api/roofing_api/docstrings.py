"""Docstrings: what the library says of its functions and fields, for the OpenAPI document."""

from __future__ import annotations

import re
from dataclasses import dataclass
from inspect import getdoc

_HEADING = re.compile(r"^(Args|Attributes|Returns|Raises|Source):$", re.MULTILINE)
_ENTRY = re.compile(r"^(\w+): ", re.MULTILINE)
_EXAMPLE = re.compile(r"^>>> .*\Z", re.MULTILINE | re.DOTALL)


@dataclass(frozen=True, slots=True)
class Docs:
    """A docstring, taken apart."""

    summary: str
    body: str
    sections: dict[str, str]

    def entries(self, heading: str) -> dict[str, str]:
        """Give the entries of a section such as Args, each as one paragraph, by its name."""
        parts = _ENTRY.split(self.sections.get(heading, ""))
        return {name: _paragraph(text) for name, text in zip(parts[1::2], parts[2::2], strict=True)}


def docs(thing: object) -> Docs:
    """Take apart the docstring of a function or class of the library."""
    text = _EXAMPLE.sub("", getdoc(thing) or "").replace("``", "`")
    lead, *rest = _HEADING.split(text)
    summary, _, body = lead.strip().partition("\n")
    sections = dict(zip(rest[::2], map(_outdented, rest[1::2]), strict=True))
    return Docs(summary.strip(), body.strip(), sections)


def attributes(kind: type) -> dict[str, str]:
    """Give the description of every field of a dataclass, inherited ones too, by its name."""
    described: dict[str, str] = {}
    for part in reversed(kind.__mro__[:-1]):
        described |= docs(part).entries("Attributes")
    return described


def _outdented(section: str) -> str:
    return re.sub(r"^    ", "", section, flags=re.MULTILINE).strip("\n")


def _paragraph(text: str) -> str:
    return " ".join(text.split())
