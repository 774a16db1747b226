"""A question, and the sources that several of them share."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

#: Codes and manuals by the words that they are cited in elsewhere.
PRACTICE = "common practice, no published source"
GEOMETRY = "geometry"
NAIL = "half of the least head of a nail: International Residential Code, 2018, R905.2.5"


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question, asked of every place that it is about.

    Attributes:
        code: Its stable code, the layer first.
        asks: What has to hold; the limit goes where empty braces are, and figures that are
            published in US units stand in braces.
        finds: What is there, as the end of a sentence; the value goes where the braces are.
        source: Where the limit is published.
        limit: The name of its limit among `AuditLimits`; empty where nothing may lack.
        unit: The unit of what is looked at.
    """

    code: str
    asks: str
    finds: str
    source: str
    limit: str = ""
    unit: Literal["in", "in2", "count"] = "in"
