"""Faults: the place, what came, what would be right; all of them at once, and in order."""

from __future__ import annotations

import pickle
from copy import copy, deepcopy
from math import inf, nan

import pytest

from roofing_core.measures.faults import (
    LARGEST,
    LARGEST_LENGTH,
    SMALLEST,
    Fault,
    Refused,
    TooManyPieces,
    fault,
    is_number,
    negative,
    not_positive,
    refuse_if_any,
    require_not_negative,
    require_positive,
    together,
)
from roofing_core.measures.sentences import length, say

TOO_LARGE = fault("shingle.exposure", length(6), "at most ", length(5.625))


def test_a_fault_is_one_sentence_in_either_system():
    assert TOO_LARGE.at == ("shingle", "exposure")
    assert TOO_LARGE.written() == "shingle.exposure came as 6 in: at most 5 5/8 in"
    assert TOO_LARGE.written("metric") == "shingle.exposure came as 152 mm: at most 143 mm"


def test_what_breaks_a_limit_by_a_hair_is_not_written_like_it():
    by_a_hair = fault("lap", length(6.001), "at most ", length(6))
    assert by_a_hair.written() == "lap came as 6.001 in: at most 6 in"
    assert by_a_hair.written("metric") == "lap came as 152.4254 mm: at most 152 mm"


def test_what_came_as_text_is_repeated_as_it_came():
    one = fault("eave_length", "14", "a length with its unit")
    assert one.written("metric") == "eave_length came as 14: a length with its unit"


def test_a_fault_of_nothing_in_particular():
    assert Fault((), "x", say("y")).written() == "the request came as x: y"
    assert Fault(("stock", 2), "x", say("y")).written() == "stock.2 came as x: y"


def test_a_refusal_carries_every_fault_and_says_them_all():
    refusal = Refused(TOO_LARGE, fault("pitch", "steep", "a pitch"))
    assert isinstance(refusal, ValueError)
    assert [one.at for one in refusal.faults] == [("shingle", "exposure"), ("pitch",)]
    assert str(refusal) == (
        "shingle.exposure came as 6 in: at most 5 5/8 in; pitch came as steep: a pitch"
    )


@pytest.mark.parametrize("kind", [Refused, TooManyPieces])
@pytest.mark.parametrize(
    "through", [copy, deepcopy, lambda refusal: pickle.loads(pickle.dumps(refusal))]
)
def test_a_refusal_comes_whole_from_another_process(kind, through):
    # A pool of processes hands it over so; one that cannot be taken out again breaks the pool.
    refusal = kind(TOO_LARGE, Fault((), "x", say("y")))
    again = through(refusal)
    assert (type(again), again.faults, str(again)) == (kind, refusal.faults, str(refusal))


def test_places_move_below_an_outer_name():
    refusal = TooManyPieces(fault("eave_length", "x", "y"), fault("a.b", "x", "y"))
    moved = refusal.below("roofs", 2)
    assert type(moved) is TooManyPieces
    assert [one.at for one in moved.faults] == [("roofs", 2, "eave_length"), ("roofs", 2, "a", "b")]
    assert [one.at for one in refusal.faults] == [("eave_length",), ("a", "b")]


def test_first_names_are_replaced_by_the_caller_s():
    refusal = Refused(Fault(("stock_length", 1), "x", say("y")), fault("lap", "x", "y"))
    renamed = refusal.renamed({"stock_length": "eave_metal.stock_lengths"})
    assert [one.at for one in renamed.faults] == [("eave_metal", "stock_lengths", 1), ("lap",)]


def test_a_fault_of_nothing_in_particular_stays_one_when_names_are_replaced():
    refusal = Refused(Fault((), "x", say("y")), fault("lap", "x", "y"))
    renamed = refusal.renamed({"lap": "metalwork.lap"})
    assert [one.at for one in renamed.faults] == [(), ("metalwork", "lap")]


def test_a_place_that_starts_with_a_number_keeps_it_when_names_are_replaced():
    refusal = Refused(Fault((2, "lap"), "x", say("y")))
    assert [one.at for one in refusal.renamed({"lap": "other"}).faults] == [(2, "lap")]


def test_no_faults_no_refusal():
    refuse_if_any([None, None])
    with pytest.raises(Refused) as refused:
        refuse_if_any([None, TOO_LARGE, None])
    assert refused.value.faults == (TOO_LARGE,)


@pytest.mark.parametrize(
    ("value", "said"),
    [
        (0, "a came as 0 in: more than zero and at most 100000 ft"),
        (-1, "a came as -1 in: more than zero and at most 100000 ft"),
        (nan, "a came as nan: more than zero and at most 100000 ft"),
        (inf, "a came as inf: more than zero and at most 100000 ft"),
        (1.2e10, "a came as 1000000000 ft: more than zero and at most 100000 ft"),
    ],
)
def test_what_is_not_positive_is_named(value, said):
    with pytest.raises(Refused) as refused:
        require_positive("in", a=value, b=1)
    assert str(refused.value) == said


def test_all_that_is_wrong_is_named_and_nothing_that_is_right():
    with pytest.raises(Refused) as refused:
        require_positive("in", a=0, b=1, c=-2)
    assert [one.at for one in refused.value.faults] == [("a",), ("c",)]
    with pytest.raises(Refused) as refused:
        require_not_negative("lb", a=0, b=-1, c=nan)
    assert [one.written() for one in refused.value.faults] == [
        "b came as -1 lb: zero or more and at most 10000000000 lb",
        "c came as nan: zero or more and at most 10000000000 lb",
    ]


@pytest.mark.parametrize("value", [SMALLEST, 1, 1.2e6])
def test_what_is_positive_passes(value):
    require_positive("in", a=value)
    require_not_negative("in", a=value, b=0)
    assert not_positive("a", value) is None
    assert negative("a", value) is None


@pytest.mark.parametrize("unit", ["in", "lb", "count"])
@pytest.mark.parametrize("value", [5e-324, 1e-160, SMALLEST / 2])
def test_what_no_tape_or_scale_could_show_is_not_positive(value, unit):
    # Squares and quotients of such numbers are 0, or infinite.
    with pytest.raises(Refused, match=r"^a came as 0( in| lb)?: more than zero and at most"):
        require_positive(unit, a=value)
    assert not_positive("a", value, unit) is not None


@pytest.mark.parametrize(("unit", "most"), [("in", LARGEST_LENGTH), ("lb", LARGEST)])
def test_squares_products_and_quotients_of_what_passes_are_finite(unit, most):
    for small, large in ((SMALLEST, most), (SMALLEST**2, most**2)):
        require_positive(unit, a=SMALLEST, b=most)
        assert 0 < small / large < large / small < inf
        assert 0 < small * large < inf


def test_zero_is_not_negative_and_not_positive():
    assert negative("a", 0) is None
    assert not_positive("a", 0) is not None


def test_other_units_have_their_own_limit():
    assert not_positive("a", 1.2e6 + 1) is not None
    assert not_positive("a", 1.2e6 + 1, "in2") is None
    assert not_positive("a", 1.1e10, "in2") is not None


def _refuse(*faults: Fault, kind: type[Refused] = Refused):
    def make():
        raise kind(*faults)

    return make


A, B, C, D = (fault(name, "x", "y") for name in "abcd")


def test_parts_that_are_right_come_back():
    made = together(lambda: 1, lambda: "2", lambda: 3.0, lambda: (4,), lambda: None)
    assert made == (1, "2", 3.0, (4,), None)
    assert together(lambda: 1, lambda: 2) == (1, 2)


def test_the_faults_of_all_parts_are_told_at_once_in_their_order():
    with pytest.raises(Refused) as refused:
        together(_refuse(A, B), lambda: 2, _refuse(C), lambda: 4, _refuse(D))
    assert refused.value.faults == (A, B, C, D)


def test_a_place_is_told_once_as_the_first_part_tells_it():
    with pytest.raises(Refused) as refused:
        together(_refuse(A), _refuse(fault("a", "x", "another"), B))
    assert refused.value.faults == (A, B)


def test_a_kind_of_refusal_is_kept_where_all_are_of_it():
    with pytest.raises(TooManyPieces):
        together(_refuse(A, kind=TooManyPieces), lambda: 2)
    with pytest.raises(Refused) as refused:
        together(_refuse(A, kind=TooManyPieces), _refuse(B))
    assert type(refused.value) is Refused


def test_what_is_a_number():
    assert all(is_number(value) for value in (0, -1, 2.5))
    assert not any(is_number(value) for value in (True, nan, inf, "1", None))
