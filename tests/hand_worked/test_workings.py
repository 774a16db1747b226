"""Lines of workings as a person would write them, for the shed of `test_the_shed`.

Each line is typed from the arithmetic there, not from the library: 14 ft by 9 ft 4 in, 3:12.
"""

from __future__ import annotations

import pytest

from roofing_core import Job, Plan, SingleSlope, plan, working

#: The figure, its last line with the numbers put in, what that comes to, and how it is written.
LINES = [
    # Course 20: half an inch below the metal, and 19 exposures up.
    (
        "/courses/19/butt",
        "-(1/4 in + 1/4 in) + (20 - 1) x 5 5/8 in",
        "106 3/8 in",
        "8 ft 10 3/8 in",
    ),
    ("/courses/0/snap_line", "(-1/2 in) + 13 1/4 in", "12 3/4 in", "12 3/4 in"),
    # The last course shows 112 - 106 3/8 = 5 5/8; 106 3/8 + 13 1/4 - 112 = 7 5/8 are trimmed off.
    ("/courses/19/exposure", "least(5 5/8 in, 112 in - 106 3/8 in)", "5 5/8 in", "5 5/8 in"),
    ("/courses/19/top_trim", "greatest(0 in, 119 5/8 in - 112 in)", "7 5/8 in", "7 5/8 in"),
    # Course 2 is trimmed by 6 in, course 3 by 11: their joints are 5 in apart.
    (
        "/courses/1/clearance",
        "least(distance(33 1/8 in, 28 1/8 in), distance(72 1/2 in, 67 1/2 in),"
        " distance(111 7/8 in, 106 7/8 in), distance(151 1/4 in, 146 1/4 in))",
        "5 in",
        "5 in",
    ),
    # 100 pieces and 5 of the starter, 21 to a bundle.
    ("/cutting/simply", "20 x 5 + 5", "105", "105"),
    ("/order/shingles/packs", "whole(105 / 21)", "5", "5"),
    ("/shingles/least_by_area", "whole(18816 in2 / (39 3/8 in x 5 5/8 in))", "85", "85"),
    # 168 in and a tab of 2 in at each end; two lengths of 120 lapped by 6 leave 58 for the second.
    ("/metal/0/cut_length", "168 in + 2 x 2 in", "172 in", "14 ft 4 in"),
    (
        "/metal/0/pieces",
        "greatest(whole(greatest(0 in, 172 in - 6 in) / (120 in - 6 in)), 1)",
        "2",
        "2",
    ),
    ("/metal/0/offcut", "2 x 120 in - (120 in + 58 in)", "62 in", "5 ft 2 in"),
    # Seven rows of 14 ft 4 in from a roll of 144 ft: 43 ft 8 in are left.
    (
        "/underlayment/roll_plan/0/offcut",
        "greatest(0 in, 1728 in - 7 x 172 in)",
        "524 in",
        "43 ft 8 in",
    ),
    ("/underlayment/planes/0/head_lap", "36 in / 2 + 1 in", "19 in", "19 in"),
    ("/underlayment/fastener_lines/0/count", "whole(168 in / 12 in) + 1", "15", "15"),
    # 168 1/2 x 5 5/8 in bedded 1/8 in thick; 118.4765625 x 128 / 231 = 65.65 fl oz.
    ("/sealant/bedding_volume", "947.8125 in2 x 1/8 in", "118.4765625 in3", "65.6 fl oz"),
    ("/roof/squares", "18816 in2 / 14400 in2/square", "1.30666666667 squares", "1.31 squares"),
]  # fmt: skip


@pytest.fixture(scope="module")
def shed() -> Plan:
    return plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25)))


@pytest.mark.parametrize(("figure", "numbers", "full", "shown"), LINES)
def test_a_line_reads_as_a_person_would_write_it(shed, figure, numbers, full, shown):
    line = working(shed, figure).lines[-1]
    assert line.numbers.written() == numbers
    assert line.comes_to.written() == full
    assert line.shown.written() == shown


def test_a_chain_goes_from_the_inputs_to_the_figure(shed):
    found = working(shed, "/order/eave_metal/left_over/value")
    order = [line.figure.rpartition("eave_metal/")[2] for line in found.lines]
    assert order[-1] == "left_over/value"
    # What a later line is made of stands above it.
    stands = [order.index(name) for name in ("/metal/0/cut_length", "/metal/0/lengths/0")]
    assert stands == sorted(stands)
    assert {"packs", "pack_holds/value", "needed/value"} < set(order[:-1])
    inputs = {one.figure: one.comes_from for line in found.lines for one in line.put_in}
    assert inputs["/choices/metalwork/lap"] == "default"
    assert inputs["/choices/eave_metal/stock_lengths/0"] == "default"
    assert inputs["/as_measured/roof/eave_length"] == "measured"
    assert inputs["/metal/0/run_length"] == "worked"


def test_words_of_a_formula_are_those_of_the_trade(shed):
    line = working(shed, "/courses/19/butt").lines[-1]
    assert line.formula.written() == (
        "-(starter past metal + course past starter)"
        " + (number of course 20 - 1) x exposure of the shingle"
    )
    assert line.source.endswith("common practice, no published source.")
    assert line.rounding == "none"
    assert working(shed, "/order/shingles/packs").lines[-1].rounding == "whole_pieces_up"


def test_in_metric_the_same_line_is_in_millimetres(shed):
    line = working(shed, "/courses/19/butt").lines[-1]
    # 5 5/8 in are 142.875 mm and 1/4 in 6.35 mm, exactly.
    assert line.numbers.written("metric") == "-(6.35 mm + 6.35 mm) + (20 - 1) x 142.875 mm"
    assert line.comes_to.written("metric") == "2701.925 mm"
    assert line.shown.written("metric") == "2702 mm"
