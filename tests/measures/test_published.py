"""Published figures: as printed in US units, and in metric with the print beside them.

The millimetres are those that the residential and building codes print after their inches and
feet (762 mm, 914 mm); the metres a second those that the building code rounds to 54 for 120 mph.
Degrees: (F - 32) x 5 / 9, 85 F being 29.4 C and 40 F 4.4 C.
"""

from __future__ import annotations

import pytest

from roofing_core.measures.published import published, with_figures
from roofing_core.measures.sentences import Amount


@pytest.mark.parametrize(
    ("printed", "metric"),
    [
        ("3 ft", "914 mm"), ("30 in", "762 mm"), ("7/16 in", "11 mm"), ("1 1/2 in", "38 mm"),
        ("120 mph", "53.6 m/s"), ("85 F", "29 C"), ("40 F", "4 C"), ("32 F", "0 C"),
        # 8 x 29.5735 mL; 1,500 x 0.092903 m2.
        ("8 fl oz", "237 mL"), ("1500 ft2", "139 m2"),
    ],
)  # fmt: skip
def test_a_figure_in_both_systems(printed, metric):
    figure = published(printed)
    assert figure.written() == figure.written("us") == printed
    assert figure.written("metric") == f"{metric} ({printed})"


def test_a_unit_that_is_not_known_is_a_slip():
    with pytest.raises(KeyError):
        published("3 yd")


def test_a_text_takes_its_figures_and_what_is_filled_in():
    said = with_figures("From {3 ft} on {} or {}, and {}.", Amount(2, "in"), "none")
    assert said.written() == "From 3 ft on 2 in or none, and ...."
    assert said.written("metric") == "From 914 mm (3 ft) on 51 mm or none, and ...."
    assert with_figures("No figure.").written("metric") == "No figure."
