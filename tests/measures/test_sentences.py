"""Measurements written for people: rounding, both systems, and what is written reads back."""

from __future__ import annotations

from fractions import Fraction
from math import inf, nan

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from roofing_core.measures.reading import read, read_length, read_pitch
from roofing_core.measures.sentences import (
    Amount,
    Sentence,
    at_least,
    length,
    say,
    shown,
    write,
    write_length,
)

HALF_A_SIXTEENTH = 1 / 32  # in
HALF_A_MILLIMETRE = 0.5 / 25.4  # in

LENGTHS = st.floats(-1e6, 1e6, allow_nan=False)


@settings(max_examples=1500)
@given(LENGTHS)
@example(47.97)
@example(-0.03)
def test_what_is_written_reads_back_within_half_a_sixteenth(inches):
    assert read_length(write_length(inches)) == pytest.approx(inches, abs=HALF_A_SIXTEENTH)


@settings(max_examples=500)
@given(LENGTHS)
def test_what_is_written_in_millimetres_reads_back_within_half_of_one(inches):
    back = read_length(write_length(inches, "metric"))
    assert back == pytest.approx(inches, abs=HALF_A_MILLIMETRE * (1 + 1e-9))


@given(st.integers(0, 100_000))
def test_sixteenths_are_written_as_they_are(sixteenths):
    exact = Fraction(sixteenths, 16)
    text = write_length(float(exact))
    assert Fraction(read_length(text)) == exact
    if exact.denominator > 1:
        assert f"{exact.numerator % exact.denominator}/{exact.denominator} in" in text


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (0, "0 in"),
        (1 / 16, "1/16 in"),
        (1 / 32, "1/16 in"),  # half up
        (1 / 32 - 1e-9, "0 in"),
        (3 / 32, "1/8 in"),
        (13 + 1 / 32, "13 1/16 in"),
        (47.9375, "47 15/16 in"),
        (47.96875, "4 ft"),  # half up, over the step to feet
        (48, "4 ft"),
        (48.5, "4 ft 1/2 in"),
        (59.96875, "5 ft"),
        (106.375, "8 ft 10 3/8 in"),
        (112, "9 ft 4 in"),
        (-0.25, "-1/4 in"),
        (-0.01, "0 in"),
        (-168.5, "-14 ft 1/2 in"),
        (nan, "nan"),
        (inf, "inf"),
    ],
)
def test_feet_inches_and_sixteenths(inches, text):
    assert write_length(inches) == text


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (0, "0 mm"),
        (1, "25 mm"),  # 25.4
        (1 / 8, "3 mm"),  # 3.175
        (5 / 127 / 2, "1 mm"),  # 0.5, half up
        (-5 / 127 / 2, "-1 mm"),  # the same below the eave metal
        (-5 / 127 * 3 / 2, "-2 mm"),
        (-5 / 127 * 0.49, "0 mm"),
        (112, "2845 mm"),  # 2844.8
        (-0.01, "0 mm"),
        (-10, "-254 mm"),
        (nan, "nan"),
    ],
)
def test_millimetres(inches, text):
    assert write_length(inches, "metric") == text


@pytest.mark.parametrize(
    ("value", "unit", "us", "metric"),
    [
        (112, "in", "9 ft 4 in", "2845 mm"),
        (14_400, "in2", "100 ft2", "9.29 m2"),
        (18_816, "in2", "131 ft2", "12.1 m2"),  # 130.67; 12.139
        (231 / 128 * 10.1, "in3", "10.1 fl oz", "299 mL"),  # 298.69
        (2.286, "lb", "2.29 lb", "1.04 kg"),  # 1.0369
        (2, "lb/ft2", "2 lb/ft2", "9.76 kg/m2"),  # 9.7649
        (0.3, "lb/ft", "0.3 lb/ft", "0.45 kg/m"),  # 0.4464
        (115, "mph", "115 mph", "51.4 m/s"),  # 51.4096
        (0.25, "pitch", "3:12", "3:12"),
        (5.5 / 12, "pitch", "5.5:12", "5.5:12"),
        (33.333, "percent", "33.3 %", "33.3 %"),
        (1.30667, "square", "1.31 squares", "1.31 squares"),
        (100, "count", "100", "100"),
        (65.016, "count", "65", "65"),
        (2.5, "count", "2.5", "2.5"),
        (1.0541, "1", "1.05", "1.05"),
        (3.14159265358979 / 4, "rad", "45 deg", "45 deg"),
        (nan, "lb", "nan", "nan"),
        (inf, "pitch", "inf", "inf"),
    ],
)
def test_every_unit_in_both_systems(value, unit, us, metric):
    assert write(value, unit) == us
    assert write(value, unit, "metric") == metric
    assert Amount(value, unit).written() == us
    assert Amount(value, unit).written("metric") == metric


@pytest.mark.parametrize(
    ("pounds", "text"),
    [
        (0.0049, "0 lb"),
        (9.994, "9.99 lb"),
        (9.996, "10 lb"),
        (10.04, "10 lb"),
        (10.26, "10.3 lb"),
        (99.94, "99.9 lb"),
        (99.96, "100 lb"),
        (100.4, "100 lb"),
        (12_345.6, "12346 lb"),
        (-10.26, "-10.3 lb"),
        (-0.001, "0 lb"),
    ],
)
def test_about_three_figures_are_written_and_no_digit_before_the_point_is_dropped(pounds, text):
    assert write(pounds, "lb") == text


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (1.75, "1 3/4 in"),
        (1.75 + 1e-12, "1 3/4 in"),  # float dust
        (1.75 - 1e-12, "1 3/4 in"),
        (1.7501, "1 13/16 in"),
        (0.0, "0 in"),
    ],
)
def test_what_would_do_is_written_as_no_less(inches, text):
    assert at_least(inches).written() == text


@pytest.mark.parametrize("unit", ["in2", "in3", "lb", "lb/ft2", "lb/ft", "mph", "rad"])
@pytest.mark.parametrize("system", ["us", "metric"])
@given(value=st.floats(1, 1e6))
def test_what_is_written_of_any_unit_reads_back_to_three_figures(unit, system, value):
    written = write(value, unit, system)
    if float(written.split()[0]) >= 1:
        assert read(written, unit) == pytest.approx(value, rel=0.0051)


@given(st.integers(0, 240))
def test_a_pitch_in_tenths_reads_back(tenths):
    pitch = tenths / 120
    assert read_pitch(write(pitch, "pitch")) == pytest.approx(pitch, rel=1e-12)


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("inches", [1.7e308, -1.7e308, 1e307])
def test_a_length_too_large_for_sixteenths_is_written_as_it_is(inches, system):
    assert write_length(inches, system) == str(inches)


@pytest.mark.parametrize(("system", "half"), [("us", 1 / 32), ("metric", 5 / 254)])
@given(halves=st.integers(0, 100_000))
def test_below_the_eave_metal_a_length_is_rounded_as_above_it(system, half, halves):
    above, below = write_length(halves * half, system), write_length(-halves * half, system)
    assert below == (above if above.startswith("0 ") else f"-{above}")


def test_a_sentence_keeps_its_numbers_until_it_is_written():
    sentence = say("Laps of ", length(6), " on ", Amount(14_400, "in2"), ".")
    assert sentence.parts == ("Laps of ", Amount(6, "in"), " on ", Amount(14_400, "in2"), ".")
    assert sentence.written() == "Laps of 6 in on 100 ft2."
    assert sentence.written("metric") == "Laps of 152 mm on 9.29 m2."


def test_sentences_go_into_sentences_flat():
    inner = say("at most ", length(2))
    assert say("lap: ", inner, ", ", 3, " times") == Sentence(
        ("lap: ", "at most ", Amount(2, "in"), ", ", "3", " times")
    )


def test_an_amount_that_is_no_number_is_shown_as_text():
    assert shown(Amount(nan, "in")) == "nan"
    assert shown(Amount(-inf, "pitch")) == "-inf"
    assert shown(Amount(5, "in")) == Amount(5, "in")
