"""Documents already parsed from JSON: their members taken one by one, refused where they are not
what their format says.

Objects come as mappings and arrays as lists or tuples. Places are given from the top.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from roofing_core.measures.faults import Fault, Refused
from roofing_core.measures.sentences import say

At = tuple[str | int, ...]

#: What came is repeated up to this many characters.
LONGEST = 60

#: Numbers beyond this are no coordinates on Earth, in any unit; nor do sums of them overflow.
LARGEST_NUMBER = 1e15


def told(value: object) -> str:
    """Give what came as short, printable text.

    Args:
        value: What stands at a place of a document.

    Returns:
        A text in quotes, a number, or what kind of thing it is.

    Raises:
        Nothing.

    Source:
        None: a way of telling.

    >>> told("lin\\te"), told([1, 2]), told(None), told({})
    ("'lin\\\\te'", 'a list of 2', 'null', 'an object')
    """
    if isinstance(value, str):
        return ascii(value if len(value) <= LONGEST else f"{value[: LONGEST - 3]}...")
    if isinstance(value, Mapping):
        return "an object"
    if isinstance(value, Sequence):
        return f"a list of {len(value)}"
    names = {None: "null", True: "true", False: "false"}
    if value is None or isinstance(value, bool):
        return names[value]
    return f"{value:.6g}" if isinstance(value, float) else ascii(value)[:LONGEST]


def wrong(at: At, value: object, *wanted: object) -> Refused:
    """Refuse what stands at a place.

    Args:
        at: The place.
        value: What stands there.
        wanted: The parts of the sentence that says what would be right.

    Returns:
        The refusal, to be raised.

    Raises:
        Nothing.

    Source:
        None: a way of telling.

    >>> str(wrong(("features", 0), 7, "an object"))
    'features.0 came as 7: an object'
    """
    return Refused(Fault(at, told(value), say(*wanted)))


def an_object(value: object, at: At) -> Mapping[str, object]:
    """Take an object.

    Args:
        value: What stands there.
        at: Its place.

    Returns:
        The object.

    Raises:
        Refused: It is none.

    Source:
        RFC 8259.

    >>> an_object({"type": "Feature"}, ("features", 0))["type"]
    'Feature'
    """
    if isinstance(value, Mapping):
        return value
    raise wrong(at, value, "an object")


def a_list(value: object, at: At) -> Sequence[object]:
    """Take an array.

    Args:
        value: What stands there.
        at: Its place.

    Returns:
        The array.

    Raises:
        Refused: It is none.

    Source:
        RFC 8259.

    >>> a_list([], ("features",))
    []
    """
    if isinstance(value, list | tuple):
        return value
    raise wrong(at, value, "a list")


def a_number(value: object, at: At) -> float:
    """Take a number.

    Args:
        value: What stands there.
        at: Its place.

    Returns:
        The number, in the unit of its place.

    Raises:
        Refused: It is none, or none that a coordinate can be.

    Source:
        RFC 8259, which has neither infinities nor NaN.

    >>> a_number(3, ("vertices", 0, 2))
    3.0
    """
    match value:
        case bool():
            pass
        case int() | float() if abs(value) <= LARGEST_NUMBER:
            return float(value)
    raise wrong(at, value, "a number")


def an_index(value: object, count: int, at: At) -> int:
    """Take the place of an entry in a list elsewhere.

    Args:
        value: What stands there.
        count: How many entries that list has.
        at: Its place.

    Returns:
        The index.

    Raises:
        Refused: It is none of a list so long.

    Source:
        None: arithmetic.

    >>> an_index(2, 3, ("properties", "eave"))
    2
    """
    if isinstance(value, int) and not isinstance(value, bool) and 0 <= value < count:
        return value
    raise wrong(at, value, f"a whole number from 0 to {count - 1}")
