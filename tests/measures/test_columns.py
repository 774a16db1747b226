"""Columns of numbers: what is wrong in them is told by its place, and a right one costs nothing."""

from __future__ import annotations

from math import inf, nan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from roofing_core.measures.columns import MOST_TOLD, column_faults
from roofing_core.measures.faults import Fault, not_positive


class Counted:
    """`not_positive`, and how often it was asked."""

    def __init__(self) -> None:
        self.times = 0

    def __call__(self, at: str, value: float) -> Fault | None:
        self.times += 1
        return not_positive(at, value)


@pytest.mark.parametrize("value", [1, 2.5, np.float64(3), 1e-12])
def test_a_number_that_is_right_has_no_fault(value):
    assert column_faults("run", value, not_positive) == []


@pytest.mark.parametrize("value", [0, -1, nan, inf])
def test_a_number_that_is_wrong_is_told_by_its_name(value):
    assert column_faults("run", value, not_positive) == [not_positive("run", value)]


def test_a_right_column_is_not_asked_about_number_by_number():
    asked = Counted()
    assert column_faults("run", np.linspace(1, 2, 100_000), asked) == []
    assert asked.times == 2


@given(st.lists(st.sampled_from([1.0, 5.0, 0.0, -2.0, nan, inf]), max_size=MOST_TOLD))
def test_in_a_column_each_wrong_number_is_told_by_its_place(values):
    told = [fault.at for fault in column_faults("run", np.array(values), not_positive)]
    wrong = [k for k, value in enumerate(values) if not 0 < value < inf]
    assert told == [("run", str(k)) for k in wrong]


def test_of_a_column_that_is_wrong_all_over_the_first_few_are_told():
    told = column_faults("run", -np.ones(1_000_000), not_positive)
    assert len(told) == MOST_TOLD == 20
    assert told[-1].written() == "run.19 came as -1 in: more than zero and at most 100000 ft"


@pytest.mark.parametrize("shape", [(), (0,), (3,), (2, 3), (0, 4)])
def test_a_column_may_have_any_shape(shape):
    assert column_faults("run", np.ones(shape), not_positive) == []
    assert len(column_faults("run", np.zeros(shape), not_positive)) == np.prod(shape)


def test_a_column_of_whole_numbers_is_one():
    assert column_faults("run", np.array([1, 2]), not_positive) == []
    (told,) = column_faults("run", np.array([1, 0]), not_positive)
    assert told.at == ("run", "1")
