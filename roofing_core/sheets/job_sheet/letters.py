"""Letters: which of them a page that is typeset here can show.

The pages bring their fonts with them, so that they look the same everywhere, and no font has every
script: a letter that they lack is shown as a box. The HTML sheet leaves letters to the reader's own
fonts and shows them all.
"""

from __future__ import annotations

import re
from unicodedata import normalize

#: Latin, Greek and Cyrillic letters, punctuation, currencies, fractions, arrows and mathematics.
SHOWN = (
    "\u0020-\u007e\u00a0-\u00ac\u00ae-\u024f\u0384-\u0386\u0388-\u038a\u038c\u038e-\u03a1"
    "\u03a3-\u0482\u048a-\u04ff\u1e00-\u1eff\u2010-\u2027\u2030-\u2040\u2044\u2070-\u2071"
    "\u2074-\u208e\u20a0-\u20bf\u2116\u2122\u2126\u2153-\u215f\u2190-\u22ff"
)

#: What stands for a letter that is not among them.
BOX = "\u25a1"

_OTHERS = re.compile(f"[^{SHOWN}\n{BOX}]")

#: Marks that take no room and say nothing once letters are boxes.
_UNSEEN = re.compile("[\u00ad\u200b-\u200d\u2060\ufe00-\ufe0f\ufeff]")


#: A word that is longer than any column; it may end a line after so many of its letters.
_OVERLONG = re.compile(r"[^\s]{25,}")
_MAY_BREAK = re.compile("(.{8})(?=.)")


def showable(text: str) -> str:
    """Give a text with a box for each letter that the pages' fonts lack.

    Args:
        text: Any text, or a drawing with its texts.

    Returns:
        The same text, composed, where all its letters can be shown.

    Raises:
        Nothing.

    Source:
        The fonts that the typesetting package brings, tried out letter by letter.

    >>> showable("Tool store"), showable("e\\u0301t\\u00e9"), showable("\\u5c4b\\u6839")
    ('Tool store', 'été', '□□')
    """
    return _OTHERS.sub(BOX, _UNSEEN.sub("", normalize("NFC", text)))


def breakable(text: str) -> str:
    """Give a showable text whose longest words have places to break at, which are not seen.

    Args:
        text: Any text.

    Returns:
        The same text; in a word of 25 letters or more there is such a place after every eighth.

    Raises:
        Nothing.

    Source:
        None needed.

    >>> breakable("rake metal"), breakable("W" * 25).count("\\u200b")
    ('rake metal', 3)
    """
    return _OVERLONG.sub(lambda word: _MAY_BREAK.sub("\\1\u200b", word[0]), showable(text))
