"""What is not a length, a pitch or another measurement, and the sentence that says so."""

from __future__ import annotations

from time import perf_counter

import pytest

from roofing_core.measures.faults import Refused
from roofing_core.measures.reading import read, read_length, read_pitch

A_LENGTH = "a length with its unit, such as 14 ft, 14' 6 1/2\", 9'-4\", 4.27 m or 1270 mm"
A_PITCH = "a pitch, such as 4:12, 4/12, 18.43 deg or 33.3 %"
NO_POWERS = "; with all its digits and no power of ten"
NO_COMMAS = "; with a decimal point and no commas"


def _sentence(reader, *args) -> str:
    with pytest.raises(Refused) as refused:
        reader(*args)
    (fault,) = refused.value.faults
    return fault.written()


@pytest.mark.parametrize(
    "text",
    [
        "",
        " ",
        "ft",
        "in",
        "nan",
        "NaN ft",
        "inf in",
        "infinity",
        "10^9 ft",
        "9**9**9 ft",
        "(1) ft",
        "0x10 in",
        "1_000 in",
        "+5 in",
        "5 5/8 in in",
        "14 ft ft",
        "14 ft 6 ft",
        "6 in 14 ft",
        "6 in 4 in",
        "14 ft 6",
        "14 6 in",
        "14 ft 6 in 3",
        "14 ft 6 in 1/2",
        "14 ft -6 in",
        "4 m 20 cm",
        "4 m 2 in",
        "1 1/2 m",
        "14 yd",
        "14 inchs",
        "14 ft2",
        "14 sq ft",
        "14 ft x 9 ft",
        "1 2 3/4 in",
        "1/2/3 in",
        "3. 5 in",
        "1.2.3 in",
        "--5 in",
        "14 ft-",
        "9'-",
        "about 14 ft",
        "14 ft; drop it",
    ],
)
def test_not_a_length(text):
    assert _sentence(read_length, text) == f"length came as {text}: {A_LENGTH}"


@pytest.mark.parametrize("text", ["14,5 ft", "1,000 mm", "14 ft, 6 in"])
def test_a_comma_is_not_guessed_at(text):
    assert _sentence(read_length, text) == f"length came as {text}: {A_LENGTH}{NO_COMMAS}"


@pytest.mark.parametrize("text", ["1e3 ft", "1e400 ft", "1e400", "-1E3", "2.5e+1 in", "5.625e0"])
def test_a_power_of_ten_is_not_read_and_not_told_to_be_written(text):
    assert _sentence(read_length, text) == f"length came as {text}: {A_LENGTH}{NO_POWERS}"


@pytest.mark.parametrize("text", ["14", "14.5", "5 5/8", "1/2", "-3", "0", ".5"])
def test_a_bare_number_is_told_what_to_write(text):
    assert _sentence(read_length, text) == (
        f"length came as {text}: a number with its unit: write {text} ft, {text} in or 4.27 m"
    )


@pytest.mark.parametrize("text", ["14.5 ft 3 in", "1/2 ft 3 in", "14 ft 12 in", "14' 12.01\""])
def test_feet_are_whole_and_inches_under_12_where_both_are_given(text):
    assert _sentence(read_length, text) == (
        f"length came as {text}: whole feet, and inches under 12 after them"
    )


@pytest.mark.parametrize("text", ["1/0 in", "5 5/0 in", "14 ft 1/0 in"])
def test_nothing_is_divided_by_0(text):
    assert _sentence(read_length, text) == (
        f"length came as {text}: a fraction under 1, over a number that is not 0"
    )


@pytest.mark.parametrize("text", ["1000000000 ft", "999999999999 m", "-1000000000 ft"])
def test_no_roof_is_that_long(text):
    assert _sentence(read_length, text) == f"length came as {text}: at most 100000 ft"


@pytest.mark.parametrize(
    ("text", "echo"),
    [
        ("\ud800 ft", "\\ud800 ft"),  # half a surrogate pair
        ("١٤ ft", "\\u0661\\u0664 ft"),  # digits that are not ours
        ("\uff11\uff14 ft", "\\uff11\\uff14 ft"),  # wide digits
        ("5\x00 in", "5\x00 in"),
        ("14 \uff46\uff54", "14 \\uff46\\uff54"),  # wide letters
        ("\xb2ft", "\\xb2ft"),  # a square is no 2
        ("5\xb2 ft", "5\\xb2 ft"),
        ("14 ft 6\xb3 in", "14 ft 6\\xb3 in"),
        ("\xbd1 in", "\\xbd1 in"),  # half an inch and then a 1 is not 1/21
        ("\xbd6 ft", "\\xbd6 ft"),
        ("3/\xbd in", "3/\\xbd in"),
    ],
)
def test_strange_letters_are_echoed_in_plain_ones(text, echo):
    assert _sentence(read_length, text) == f"length came as {echo}: {A_LENGTH}"


@pytest.mark.parametrize("came", [14, 14.0, None, True, b"14 ft", ["14 ft"]])
def test_what_is_no_text_is_not_read(came):
    assert _sentence(read_length, came) == f"length came as {came!r}: {A_LENGTH}"


def test_a_long_text_is_refused_at_once_and_echoed_in_short():
    started = perf_counter()
    said = _sentence(read_length, "9" * 2_000_000 + " ft")
    assert perf_counter() - started < 0.5  # s
    assert said == f"length came as {'9' * 57}...: {A_LENGTH}"


@pytest.mark.parametrize("text", ["1" * 13 + " ft", "1/" + "1" * 6 + " in", "." + "1" * 13 + " in"])
def test_digits_without_end_are_refused(text):
    assert _sentence(read_length, text) == f"length came as {text}: {A_LENGTH}"


def test_the_place_is_the_caller_s():
    with pytest.raises(Refused) as refused:
        read_length("14", at="roof.eave_length")
    assert refused.value.faults[0].at == ("roof", "eave_length")
    assert str(refused.value).startswith("roof.eave_length came as 14: ")


@pytest.mark.parametrize(
    "text",
    ["", "steep", "4:12:3", "4 :", ":12", "4 12", "4 per 12", "4 in 12 in", "--4:12", "4:-12",
     "4 1/2/12", "nan deg", "45", "4 rad", "33 %%", "4:12 deg", "9**9:12",
     "1/2 deg", "1/2 %", "4/12 %"],
)  # fmt: skip
def test_not_a_pitch(text):
    said = _sentence(read_pitch, text)
    if text == "45":
        assert said == "pitch came as 45: a number with its unit: write 45:12 or 45 deg"
    else:
        assert said == f"pitch came as {text}: {A_PITCH}"


@pytest.mark.parametrize("text", ["1e1 deg", "1e400"])
def test_a_pitch_has_no_power_of_ten(text):
    assert _sentence(read_pitch, text) == f"pitch came as {text}: {A_PITCH}{NO_POWERS}"


@pytest.mark.parametrize("text", ["18 3/2 deg", "33 1/0 %"])
def test_the_fraction_of_an_angle_or_a_percentage_is_one(text):
    said = _sentence(read_pitch, text)
    assert said == f"pitch came as {text}: a fraction under 1, over a number that is not 0"


@pytest.mark.parametrize("reader", [read_length, read_pitch])
@pytest.mark.parametrize("text", ["14", "14.5", "5 5/8", ".5", "0.25", "12"])
def test_what_a_bare_number_is_told_to_write_is_read(reader, text):
    told = _sentence(reader, text).partition(": write ")[2].replace(" or ", ", ").split(", ")
    assert len(told) >= 2
    assert all(reader(one) > 0 for one in told)


@pytest.mark.parametrize("text", ["4:0", "4/0", "4 in 0", "0/0", "4/.", "4..5/12", "1/0:12"])
def test_a_pitch_has_a_run(text):
    assert _sentence(read_pitch, text) == f"pitch came as {text}: {A_PITCH}; the run is over 0"


@pytest.mark.parametrize("text", ["90 deg", "90°", "-90 deg", "123 degrees"])
def test_a_pitch_is_no_wall(text):
    said = _sentence(read_pitch, text)
    assert said.endswith(": an angle under 90 deg")


@pytest.mark.parametrize(
    ("text", "unit", "wanted"),
    [
        ("130.7", "in2", "an area with its unit, such as 130.7 ft2, 1.3 squares or 12.1 m2"),
        ("1.3", "square", "an area with its unit, such as 1.3 squares, 130.7 ft2 or 12.1 m2"),
        ("65 ft", "lb", "a weight with its unit, such as 65 lb or 29.5 kg"),
        ("65 lb lb", "lb", "a weight with its unit, such as 65 lb or 29.5 kg"),
        ("2 psi", "lb/ft2", "a weight on an area with its unit, such as 2 lb/ft2 or 10 kg/m2"),
        ("1 lb", "lb/ft", "a weight along a length with its unit, such as 0.3 lb/ft or 0.5 kg/m"),
        ("90 grad", "rad", "an angle with its unit, such as 90 deg"),
        ("1/0 lb", "lb", "a weight with its unit, such as 65 lb or 29.5 kg"),
    ],
)
def test_not_another_measurement(text, unit, wanted):
    said = _sentence(read, text, unit)
    assert said == f"value came as {text}: {wanted}"


@pytest.mark.parametrize("unit", ["percent", "count", "1", "ft", ""])
def test_a_unit_that_is_not_read_is_refused_by_its_own_name(unit):
    with pytest.raises(Refused) as refused:
        read("5", unit)
    assert str(refused.value) == (
        f"unit came as {unit}: one of in, pitch, in2, square, in3, lb, lb/ft2, lb/ft, mph, rad"
    )


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("5\xb2 lb", "lb"),
        ("5\xb2 ft2", "in2"),
        ("5\xb3 gal", "in3"),
        ("45\xb2 deg", "rad"),
        ("4\xb2:12", "pitch"),
        ("1/\xb2 lb", "lb"),
    ],
)
def test_a_power_is_no_digit_of_a_number(text, unit):
    # It belongs to the unit of an area or a volume: 5 ft\xb2 is one, 5\xb2 ft2 is not 52 ft2.
    said = _sentence(read, text, unit)
    echo = text.encode("ascii", "backslashreplace").decode()
    assert said.startswith(f"value came as {echo}: a")


@pytest.mark.parametrize(
    "unit", ["in", "pitch", "in2", "square", "in3", "lb", "lb/ft2", "lb/ft", "mph", "rad"]
)
def test_what_is_given_as_an_example_is_read(unit):
    said = _sentence(read, "nonsense", unit)
    examples = said.partition("such as ")[2].replace(" or ", ", ").split(", ")
    assert len(examples) >= (1 if unit == "rad" else 2)
    assert all(read(one, unit) > 0 for one in examples)
