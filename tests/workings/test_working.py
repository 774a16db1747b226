"""What may be asked after, where its numbers come from, and what is refused and how."""

from __future__ import annotations

import re
from dataclasses import fields, replace
from textwrap import wrap

import pytest

from roofing_core import (
    Coursing,
    Cutting,
    Footprint,
    Gable,
    Hip,
    Job,
    Plan,
    Refused,
    Shingle,
    SingleSlope,
    VentPipe,
    material,
    plan,
    workable,
    working,
    working_text,
)
from roofing_core.job.layout import NOT_KEPT
from roofing_core.sheets.text import WIDTH
from roofing_core.workings.asking import FigureAsked, figure_worked

SHED = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)


@pytest.fixture(scope="module")
def shed() -> Plan:
    return plan(Job(roof=SHED))


@pytest.fixture(scope="module")
def hip() -> Plan:
    return plan(Job(roof=Hip(length=216, width=144, pitch=0.5)))


def came_from(planned: Plan, figure: str) -> dict[str, str]:
    return {
        one.figure: one.comes_from
        for line in working(planned, figure).lines
        for one in line.put_in
    }  # fmt: skip


def test_a_choice_is_told_from_a_default():
    chosen = Job(
        roof=SHED,
        coursing=Coursing(starter_past_metal=0.375),
        shingle=replace(material(Shingle, "metric_strip"), exposure=5.5),
    )
    found = came_from(plan(chosen), "/courses/19/butt")
    assert found["/choices/coursing/starter_past_metal"] == "chosen"
    assert found["/choices/coursing/course_past_starter"] == "default"
    # A material of the caller's own is chosen as a whole.
    assert found["/choices/shingle/exposure"] == "chosen"
    assert came_from(plan(chosen), "/courses/19/snap_line")["/choices/shingle/height"] == "chosen"


def test_the_corner_of_a_cut_piece_is_where_a_hip_crosses_a_level_line(hip):
    """A square hip at 6:12 goes in 12 in for each 13.42 in up the slope, of the framing square."""
    found = working(hip, "/courses/3/laid/0/corners/0/0")
    lean = next(
        line for line in found.lines if line.name.startswith("lean of the hip along edge 4")
    )
    assert lean.result.value == pytest.approx(12 / 13.42, rel=0.005 / 13.42)
    assert found.result.value == pytest.approx(lean.result.value * hip.courses[3].butt)
    ends = {one.figure for line in found.lines for one in line.put_in}
    assert {"/as_measured/roof/width", "/choices/shingle/exposure"} <= ends


def test_a_figure_goes_back_to_what_was_measured_of_the_walls():
    """Slope length from run and overhangs: 90 + 10 + 3 1/2 in, times root(1 + 0.4 x 0.4)."""
    walls = SingleSlope(
        eave_length=140, run=90, pitch=0.4, measured="walls", eave_overhang=10, ridge_overhang=3.5
    )
    found = working(plan(Job(roof=walls)), "/roof/slope_length")
    assert [line.numbers.written() for line in found.lines] == [
        "90 in + 10 in + 3 1/2 in",
        "0.4",
        "root(1 + 0.4 x 0.4)",
        "103 1/2 in x 1.07703296143",
    ]
    first = found.lines[0].put_in
    assert {one.figure.rpartition("/")[2]: one.comes_from for one in first} == dict.fromkeys(
        ("run", "eave_overhang", "ridge_overhang"), "measured"
    )


def test_a_gable_s_slope_goes_back_to_its_width():
    """Walls 144 in wide with 12 in of eaves, 9:12: a run of 84 in, 105 in up the slope."""
    gable = Gable(length=240, width=144, pitch=0.75, measured="walls", eave_overhang=12)
    lines = working(plan(Job(roof=gable)), "/roof/slope_length").lines
    assert lines[-1].result.value == 105
    assert "/as_measured/roof/width" in {one.figure for line in lines for one in line.put_in}
    numbers = [line.numbers.written() for line in lines]
    assert "84 in x root(1 + 9/12 x 9/12)" in numbers


@pytest.mark.parametrize("figure", ["/roof/slope_length", "/planes/0/points/1/0"])
def test_a_plan_that_does_not_keep_what_was_measured_ends_at_its_planes(hip, figure):
    older = replace(hip, as_measured=NOT_KEPT)
    found = working(older, figure)
    assert found.result == working(hip, figure).result
    ends = {
        one.comes_from for line in found.lines for one in line.put_in if one.comes_from != "worked"
    }
    assert ends <= {"follows"}
    if not ends:
        (line,) = found.lines
        assert "which this plan does not keep" in line.formula.written()


#: The shed with its offcuts used again, which a search decides.
REUSED = Job(roof=SHED, cutting=Cutting(reuse="best"))


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        ("/courses/4/number", "its place in the list"),
        ("/cutting/cut/0/pieces/0/weight", "as a search found it, which proves what it comes to"),
        ("/cutting/limit", "as a search found it"),
    ],
)
def test_what_no_formula_gives_is_one_line_that_says_what_it_is(figure, said):
    (line,) = working(plan(REUSED), figure).lines
    assert line.formula.written().startswith(said)
    assert line.source in ("Its place in the plan.", "A search, by a stated number of steps.")


def test_the_weights_that_a_search_found_prove_its_count_by_adding_up():
    made = plan(REUSED)
    line = working(made, "/cutting/least").lines[-1]
    weights = [one.weight for cut in made.cutting.cut for one in cut.pieces]
    assert line.result.value == made.cutting.whole + -(-sum(weights) // made.cutting.limit)
    for cut in made.cutting.cut:
        assert sum(one.weight for one in cut.pieces) <= made.cutting.limit


def test_a_finding_s_number_is_one_line_with_the_rule_s_source():
    tight = replace(material(Shingle, "metric_strip"), sequence=(0.0, 3.0))
    made = plan(Job(roof=SHED, shingle=tight))
    (line,) = working(made, "/findings/0/limit/value").lines
    assert line.source == made.findings[0].source
    assert line.result.value == made.findings[0].limit.value


def test_an_edited_figure_is_refused_since_its_formula_does_not_come_to_it(shed):
    course = replace(shed.courses[3], butt=shed.courses[3].butt + 0.25)
    edited = replace(shed, courses=(*shed.courses[:3], course, *shed.courses[4:]))
    with pytest.raises(Refused, match="a figure with a formula of its own"):
        working(edited, "/courses/3/butt")


def test_a_figure_of_a_plan_that_contradicts_itself_is_refused_too(shed):
    """Its metal is cut from lengths that the edited plan no longer has."""
    metal = replace(shed.choices.eave_metal, stock_lengths=(96.0,))
    edited = replace(shed, choices=replace(shed.choices, eave_metal=metal))
    with pytest.raises(Refused, match="a figure with a formula of its own"):
        working(edited, "/metal/0/stock_length")


@pytest.mark.parametrize(
    ("figure", "said"),
    [
        ("/choices/shingle/exposure", "the default"),
        ("/as_measured/roof/pitch", "as it was measured"),
    ],
)
def test_an_input_alone_is_one_line_that_says_so(shed, figure, said):
    (line,) = working(shed, figure).lines
    assert (line.formula.written(), line.put_in, line.source) == (said, (), "An input.")


#: What is no figure, and a pattern that is named instead of it.
WRONG = [
    ("", "/courses/..."),
    ("/", "/courses/..."),
    ("courses/19/butt", None),
    ("/courses", "/courses/*/butt"),
    ("/courses/20/butt", "/courses/0/butt to /courses/19/butt"),
    ("/courses/-1/butt", "/courses/*/butt"),
    ("/courses/01/butt", "/courses/*/butt"),
    ("/courses/0/plane", "/courses/*/"),
    ("/courses/0/nailable", "/courses/*/nail_line"),
    ("/courses/0/__class__/x", "/courses/*/clearance"),
    (f"/courses/{'9' * 5_000}/butt", "/courses/*/butt"),
    ("/order/shingles/needed", "/order/shingles/needed/value"),
    ("/steps/0/says", "/steps/*/number"),
    ("/nonsense\n\u202e/~1", "/courses/..."),
]


@pytest.mark.parametrize(("figure", "named"), WRONG)
def test_what_has_no_working_is_refused_with_what_can_be_asked(shed, figure, named):
    if named is None:
        assert working(shed, figure).result.value == 106.375  # a pointer without its first slash
        return
    with pytest.raises(Refused) as refused:
        working(shed, figure)
    (fault,) = refused.value.faults
    assert fault.at == ("figure",)
    assert named in fault.wanted.written()
    assert len(fault.written()) < 1_000
    assert fault.written().isprintable()


def test_what_a_refusal_names_can_be_asked(shed):
    with pytest.raises(Refused) as refused:
        working(shed, "/courses")
    text = refused.value.faults[0].wanted.written()
    assert "/courses/*/butt" in workable(shed)
    named = [word.strip(",:") for word in text.split() if word.startswith("/")]
    assert len(named) == 12
    assert re.search(r" and \d+ more$", text)
    for pattern in named:
        assert working(shed, pattern.replace("*", "0")).lines


def test_a_plan_holds_all_that_it_was_made_from():
    """From what was measured and chosen, both of which it keeps, the same plan is made again."""
    gable = Gable(length=240, width=144, pitch=0.75, measured="walls", eave_overhang=12)
    pipe = VentPipe(plane="front", from_left=60, up_slope=40, diameter=3)
    made = plan(Job(roof=gable, openings=(pipe,), name="Workshop", coursing=Coursing()))
    kept = {field.name: getattr(made.choices, field.name) for field in fields(made.choices)}
    again = Job(
        roof=made.as_measured.roof, openings=made.as_measured.openings, name=made.name, **kept
    )
    assert plan(again) == made


def test_asking_with_the_job_plans_it(shed):
    asked = FigureAsked(roof=SHED, name="Pump house", figure="/courses/19/butt")
    assert figure_worked(asked) == working(shed, "/courses/19/butt")
    assert asked.job() == Job(roof=SHED, name="Pump house")
    with pytest.raises(Refused) as refused:
        figure_worked(replace(asked, roof=replace(SHED, eave_length=-1)))
    assert refused.value.faults[0].at == ("roof", "eave_length")


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("figure", ["/order/shingles/packs", "/courses/3/exposed_area"])
def test_the_text_tells_all_of_it_in_narrow_lines(hip, figure, system):
    found = working(hip, figure)
    text = working_text(found, system)
    assert max(map(len, text.splitlines())) <= WIDTH
    running = " ".join(text.split())
    for line in found.lines:
        for part in (line.formula, line.numbers):
            assert " ".join(wrap(part.written(system), 10_000)) in running
        assert line.source in running
    assert running.startswith(f"WORKING OF {found.name.upper()}: {found.result.written(system)}")


def test_the_text_explains_what_its_own_lines_use(shed):
    butt = working_text(working(shed, "/courses/19/butt"))
    packs = working_text(working(shed, "/order/shingles/packs"))
    corners = ((0, 0), (480, 0), (480, 180), (240, 180), (240, 360), (0, 360))
    ell = Footprint(corners=corners, pitch=0.5, measured="walls", eave_overhang=12)
    point = working_text(working(plan(Job(roof=ell)), "/planes/0/points/4/0"))
    assert "whole( )" not in butt
    assert "whole( )" in packs
    assert "A line in plan is" not in packs
    assert "A line in plan is" in point
    for text in (butt, packs, point):
        assert "Numbers are in full" in text


def test_a_number_of_a_finding_is_called_what_it_is(shed):
    assert working(shed, "/findings/0/value/value").name == "value of finding 1"
    assert working(shed, "/findings/0/limit/value").name == "limit of finding 1"
