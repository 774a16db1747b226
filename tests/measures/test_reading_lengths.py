"""Lengths as people write them: the grammar against pint, and against exact fractions.

pint is given one number and one unit, never the text.
"""

from __future__ import annotations

import re
from fractions import Fraction

import pint
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from roofing_core.measures.faults import LARGEST_LENGTH, Refused
from roofing_core.measures.reading import read, read_length

#: A factor and a product, each rounded once, and pint's own: a few parts in 1e16.
ROUNDING = 1e-15

FEET = ("ft", "ft.", "feet", "foot", "'", "′", "’", "‘", "ʹ")
INCHES = ("in", "in.", "inch", "inches", '"', "''", "″", "”", "“", "ʺ")
METRIC = {
    "millimeter": ("mm", "millimetre", "millimetres", "millimeter", "millimeters"),
    "centimeter": ("cm", "centimetre", "centimetres", "centimeter", "centimeters"),
    "meter": ("m", "metre", "metres", "meter", "meters"),
}
SPELLINGS = [
    *((spelt, "foot") for spelt in FEET),
    *((spelt, "inch") for spelt in INCHES),
    *((spelt, name) for name, all_of_it in METRIC.items() for spelt in all_of_it),
]

SPACES = st.sampled_from(["", " ", "  ", "\u00a0", "\u202f", "\t"])


@pytest.fixture(scope="module")
def ureg():
    return pint.UnitRegistry()


@st.composite
def decimals(draw, largest: int = 3000):
    """A number as people write decimals: 14, 14., 0.5, .5, 014."""
    text = str(draw(st.decimals(0, largest, places=draw(st.integers(0, 6)))))
    if text.startswith("0.") and draw(st.booleans()):
        return text[1:]
    return draw(st.sampled_from([text, f"0{text}", text if "." in text else f"{text}."]))


@pytest.fixture(scope="module")
def inches_in(ureg):
    """Inches in one of each unit, by pint."""
    return {name: ureg.Quantity(1.0, name).to("inch").magnitude for _, name in SPELLINGS}


@pytest.mark.parametrize(("spelt", "name"), SPELLINGS)
def test_every_spelling_is_pint_s_unit(ureg, spelt, name):
    inches = ureg.Quantity(14.25, name).to("inch").magnitude
    for text in (f"14.25 {spelt}", f"14.25{spelt}", f" 14.25  {spelt.upper()} "):
        assert read_length(text) == pytest.approx(inches, rel=ROUNDING)
        assert read(text, "in") == read_length(text)


@settings(max_examples=1500)
@given(number=decimals(), unit=st.sampled_from(SPELLINGS), space=SPACES, around=SPACES)
def test_one_number_and_one_unit_are_what_pint_makes_of_them(
    inches_in, number, unit, space, around
):
    inches = float(number) * inches_in[unit[1]]
    text = f"{around}{number}{space}{unit[0]}{around}"
    assert read_length(text) == pytest.approx(inches, rel=ROUNDING)


@st.composite
def fractions(draw):
    """A fraction or a mixed number, as text and as what it is worth."""
    bottom = draw(st.integers(2, 64))
    top = draw(st.integers(1, bottom - 1))
    whole = draw(st.integers(0, 11))
    if draw(st.booleans()):
        return f"{top}/{bottom}", Fraction(top, bottom)
    dash = draw(st.sampled_from([" ", "-"]))
    return f"{whole}{dash}{top}/{bottom}", whole + Fraction(top, bottom)


def _is_binary(value: Fraction) -> bool:
    return value.denominator & (value.denominator - 1) == 0


@settings(max_examples=1000)
@given(
    number=fractions(),
    unit=st.sampled_from([(one, 12) for one in FEET] + [(one, 1) for one in INCHES]),
    space=SPACES,
    minus=st.booleans(),
)
@example(number=("5 5/8", Fraction(45, 8)), unit=("in", 1), space=" ", minus=False)
def test_fractions_are_exact(number, unit, space, minus):
    text, value = number
    exact = value * unit[1] * (-1 if minus else 1)
    read_as = read_length(f"{'-' if minus else ''}{text}{space}{unit[0]}")
    if _is_binary(value):
        assert Fraction(read_as) == exact
    else:
        assert read_as == pytest.approx(float(exact), rel=ROUNDING)


@st.composite
def feet_and_inches(draw):
    """Feet and inches together, as text and as inches."""
    feet, foot = draw(st.integers(0, 9999)), draw(st.sampled_from(FEET))
    inch = draw(st.sampled_from(INCHES))
    text, value = draw(fractions() | st.integers(0, 11).map(lambda n: (str(n), Fraction(n))))
    between = ["", " ", "-"]
    if foot not in ("ft", "ft.", "feet", "foot"):
        between += [" - ", " -", "- "]
    separator = draw(st.sampled_from(between))
    space = draw(st.sampled_from(["", " "]))
    return f"{feet}{space}{foot}{separator}{text}{space}{inch}", feet * 12 + value


@settings(max_examples=1500)
@given(feet_and_inches())
@example(("14' 6 1/2\"", Fraction(349, 2)))
@example(("14ft 6.5in", Fraction(349, 2)))
@example(("9'-4\"", Fraction(112)))
@example(("14′ 6½″", Fraction(349, 2)))
@example(("14’ 6”", Fraction(174)))
@example(("9′ 4 ⅝″", Fraction(901, 8)))
def test_feet_and_inches_add_up(written):
    text, exact = written
    if _is_binary(exact):
        assert Fraction(read_length(text)) == exact
    else:
        assert read_length(text) == pytest.approx(float(exact), rel=ROUNDING)


@pytest.mark.parametrize(
    ("sign", "value"),
    [("½", "1/2"), ("¼", "1/4"), ("¾", "3/4"), ("⅛", "1/8"), ("⅜", "3/8"), ("⅝", "5/8"),
     ("⅞", "7/8"), ("⅓", "1/3"), ("⅔", "2/3"), ("⅙", "1/6"), ("⅚", "5/6")],
)  # fmt: skip
def test_signs_for_fractions(sign, value):
    assert read_length(f"{sign} in") == float(Fraction(value))
    assert read_length(f"7{sign} in") == pytest.approx(float(7 + Fraction(value)), rel=ROUNDING)
    assert read_length(f"2 ft 7 {sign}″") == pytest.approx(
        float(31 + Fraction(value)), rel=ROUNDING
    )


def test_a_minus_counts_for_feet_and_inches_together():
    assert read_length("-2' 6\"") == -30
    assert read_length("\u22122 ft") == -24


def test_the_limit_itself_is_read_and_a_hair_more_is_not():
    assert read_length("100000 ft") == LARGEST_LENGTH
    with pytest.raises(Refused, match="at most 100000 ft"):
        read_length("100000.01 ft")


def _read(text: str) -> float | Refused:
    try:
        return read_length(text)
    except Refused as refusal:
        return refusal


# Texts made of the grammar's own words in any order. N is a whole number, D a decimal, F a
# fraction.
WORDS = {
    "14": "N", "6": "N", "2.5": "D", "1/2": "F", "3/8": "F", "ft": "f", "'": "f", "in": "i",
    '"': "i", "mm": "m", "m": "m", "-": "-", " ": "",
}  # fmt: skip
ONE_MEASURE = re.compile(r"-?(?:(?:N-?F|[NDF])[fi]|[ND]m)")
FEET_THEN_INCHES = re.compile(r"-?Nf-?(?:N-?F|[NDF])i")


@settings(max_examples=1500)
@given(st.lists(st.sampled_from(list(WORDS)), min_size=1, max_size=8))
@example(["14", "ft", "-"])
@example(["-", "-", "6", "in"])
@example(["14", "ft", "6", "in", "in"])
def test_words_in_any_order_are_read_only_where_they_make_a_length(words):
    text, kinds = "", ""
    for word in words:
        # Two numbers side by side would be a third number.
        if kinds and WORDS[word] in ("N", "D", "F") and text[-1].isdigit():
            text += " "
        text, kinds = text + word, kinds + WORDS[word]
    if isinstance(_read(text), Refused):
        return
    assert ONE_MEASURE.fullmatch(kinds) or FEET_THEN_INCHES.fullmatch(kinds), text


@settings(max_examples=600)
@given(st.text(max_size=70))
def test_any_text_is_a_length_of_a_roof_or_is_refused_in_plain_letters(text):
    came = _read(text)
    if isinstance(came, Refused):
        assert str(came).isascii()
        assert len(str(came.faults[0].came)) <= 60 * len("\\U0010ffff")
    else:
        assert abs(came) <= LARGEST_LENGTH
