"""Whatever numbers come, an answer is finite, or it is a refusal by the names of what was given.

No number is too large, too small or too strange for that: a caller can always tell which of his
measurements to look at again, and no infinity or division by zero comes of one.
"""

from __future__ import annotations

import inspect
from collections.abc import Callable
from math import inf, isfinite, nan
from typing import Any, Literal, get_args, get_origin, get_type_hints

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from roofing_core import (
    apron,
    cap_stock,
    caps,
    convert,
    cricket,
    deck_load,
    fasteners,
    head_flashing,
    hip_line,
    hip_valley_factor,
    ice_reach,
    jack_difference,
    least_nail_length,
    lifting_limit,
    metal_run,
    nails_per_pound,
    pipe_flashing,
    pitch_angle,
    pitch_factors,
    pitch_of,
    roof_area,
    roof_live_load,
    sealant,
    slope,
    slope_factor,
    stacked_load,
    step_flashing,
    step_flashing_size,
    valley_reach,
    valley_run,
    ventilation,
    weight,
    whole_packs,
    whole_pieces,
    wind_class,
    write_length,
)
from roofing_core.layers.fasteners import nail_length
from roofing_core.layers.sealant import bead_section, bead_volume, bedding_volume, dab_volume
from roofing_core.layers.weight import packed
from roofing_core.measures.faults import LARGEST, LARGEST_LENGTH, SMALLEST, Refused
from tests.laws.walking import leaves

FUNCTIONS = (
    apron, bead_section, bead_volume, bedding_volume, cap_stock, caps, cricket, dab_volume,
    fasteners, head_flashing, hip_line, hip_valley_factor, jack_difference, least_nail_length,
    lifting_limit, metal_run, nail_length, nails_per_pound, packed, pipe_flashing, pitch_angle,
    pitch_factors, pitch_of, roof_area, sealant, slope, slope_factor, step_flashing,
    step_flashing_size, valley_reach, valley_run, weight, whole_packs, whole_pieces,
    deck_load, ice_reach, roof_live_load, stacked_load, ventilation, wind_class,
)  # fmt: skip

#: Numbers on both sides of every limit, and as far from any roof as a float goes.
STRANGE = (
    0.0, -0.0, 5e-324, 1e-300, 1e-160, SMALLEST / 2, SMALLEST, 1e-9, 1e-3, LARGEST_LENGTH,
    LARGEST_LENGTH + 1, LARGEST, LARGEST + 1, 1e160, 1e300, 1.7e308, inf, -inf, nan, -1e-12, -1.0,
)  # fmt: skip
USUAL = (0.25, 1.0, 12.0, 39.375, 168.0)
COUNTS = (0, 1, 2, 20, 10**6, 10**10, 10**10 + 1, -1)


def numbers_for(hint: Any) -> st.SearchStrategy[Any]:
    """Give what may come for a parameter, from its type."""
    if get_origin(hint) is Literal:
        return st.sampled_from(get_args(hint))
    if get_origin(hint) is tuple:
        return st.lists(st.sampled_from(STRANGE + USUAL), max_size=3).map(tuple)
    if hint is str:
        return st.just("felt")
    if hint is int or int in get_args(hint):
        return st.sampled_from(COUNTS + COUNTS[1:5] * 3)
    usual = st.sampled_from(USUAL)
    return st.one_of(usual, usual, usual, usual, st.sampled_from(STRANGE), st.floats())


def arguments_of(function: Callable[..., Any]) -> st.SearchStrategy[dict[str, Any]]:
    """Give arguments for a function; those with a default are now and then left out."""
    hints = get_type_hints(function, localns={"Column": float})
    taken = inspect.signature(function).parameters
    needed = {k: numbers_for(hints[k]) for k, one in taken.items() if one.default is one.empty}
    others = {k: numbers_for(hints[k]) for k in taken if k not in needed}
    return st.fixed_dictionaries(needed, optional=others)


def outcome(call: Callable[..., Any], asked: dict[str, Any]) -> Any:
    """Give the answer, or the refusal."""
    try:
        return call(**asked)
    except Refused as refusal:
        return refusal


@pytest.mark.parametrize("function", FUNCTIONS, ids=lambda function: function.__name__)
@settings(max_examples=300)
@given(data=st.data())
def test_an_answer_is_finite_or_a_refusal_that_names_what_came(function, data):
    told = outcome(function, data.draw(arguments_of(function)))
    if isinstance(told, Refused):
        names = {fault.at[0] for fault in told.faults}
        assert names
        assert names <= set(inspect.signature(function).parameters)
        assert all(fault.written(system) for fault in told.faults for system in ("us", "metric"))
    else:
        numbers = [one for one in dict(leaves(told)).values() if isinstance(one, float)]
        assert all(map(isfinite, numbers))


@given(st.floats())
def test_any_number_at_all_can_be_written_and_converted(value):
    assert write_length(value)
    assert write_length(value, "metric")
    assert isinstance(convert(value, "in", "metric"), float)
