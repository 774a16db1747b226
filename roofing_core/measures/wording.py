"""Wording: text that a caller writes to be read again, such as the name of a job.

It is kept as it came and means nothing to any calculation. What would not be seen for what it is on
a screen or on paper is refused here; every sheet escapes the rest.
"""

from __future__ import annotations

from dataclasses import dataclass
from unicodedata import category

from roofing_core.measures.faults import Fault, fault

#: General categories of Unicode that stand for no letter: control characters, halves of pairs, and
#: separators of lines and paragraphs.
_NO_LETTERS = frozenset(("Cc", "Cs", "Zl", "Zp"))

#: Marks that make a text read in another order than it is written (Unicode Standard Annex 9).
_TURNING = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")

#: What no XML document may hold, and is no letter anyway.
_NOT_IN_XML = frozenset("\ufffe\uffff")


@dataclass(frozen=True, slots=True)
class Wording:
    """How long a caller's text may be, as written on its type.

    Attributes:
        longest: The most characters.
        lines: The most lines.
    """

    longest: int
    lines: int = 1

    def fault(self, at: str, text: str) -> Fault | None:
        """Give the fault of a text that is too long or has what no letter is.

        >>> Wording(10).fault("name", "a\\tb").written()
        'name came as a\\\\tb: at most 10 characters, and no control characters'
        """
        kept = text.replace("\n", " ") if self.lines > 1 else text
        if len(text) <= self.longest and text.count("\n") < self.lines and all(map(_is_seen, kept)):
            return None
        lines = f" in at most {self.lines} lines" if self.lines > 1 else ""
        wanted = f"at most {self.longest:,} characters{lines}, and no control characters"
        return fault(at, _shown(text), wanted)


def _is_seen(letter: str) -> bool:
    return category(letter) not in _NO_LETTERS and letter not in _TURNING | _NOT_IN_XML


#: As much of a refused text is told.
_TOLD = 40


def _shown(text: str) -> str:
    short = text if len(text) <= _TOLD else f"{text[:_TOLD]}..."
    return "".join(letter if letter.isprintable() else ascii(letter)[1:-1] for letter in short)
