"""The materials of the catalogue: each size that cannot be is refused by its own name and place."""

from __future__ import annotations

from dataclasses import fields, replace
from math import inf, nan

import pytest

from roofing_core import CapNail, Metal, Refused, Sealant, Shingle, catalogue, material

KINDS = [getattr(catalogue(), group.name)[0] for group in fields(catalogue())]

#: How these fit together, and on the shingle, is for the layers.
FOR_THE_LAYERS = {"nail_zone_low", "nail_zone_high", "sequence"}
MAY_BE_0 = {"bundle_weight", "pack_weight", "weight", "trim"}


def sizes_of(made) -> set[str]:
    """Give the fields of a material that hold one number."""
    numbers = {
        one.name
        for one in fields(made)
        if isinstance(getattr(made, one.name), int | float)
    }  # fmt: skip
    return numbers - FOR_THE_LAYERS


def places(made, **sizes) -> list[tuple[str | int, ...]]:
    with pytest.raises(Refused) as caught:
        replace(made, **sizes)
    return [one.at for one in caught.value.faults]


def kind_of(made) -> str:
    return type(made).__name__


@pytest.mark.parametrize("made", KINDS, ids=kind_of)
def test_the_sizes_of_every_kind_are_found(made):
    assert len(sizes_of(made)) >= 2


@pytest.mark.parametrize("bad", [-1, nan, inf, 1e11])
@pytest.mark.parametrize("made", KINDS, ids=kind_of)
def test_each_size_that_cannot_be_is_named_and_no_other(made, bad):
    for size in sizes_of(made):
        assert places(made, **{size: bad}) == [(size,)]
    everything = places(made, **dict.fromkeys(sizes_of(made), bad))
    assert sorted(everything) == sorted((size,) for size in sizes_of(made))


@pytest.mark.parametrize("made", KINDS, ids=kind_of)
def test_nothing_measures_0_and_something_may_weigh_nothing(made):
    # Roofing nails are sold by weight, cap nails by count.
    weights = MAY_BE_0 | ({"box_weight"} if isinstance(made, CapNail) else set())
    for size in sizes_of(made):
        if size in weights:
            assert getattr(replace(made, **{size: 0}), size) == 0
        else:
            assert places(made, **{size: 0}) == [(size,)]


def test_of_the_lengths_that_metal_is_sold_in_the_wrong_one_is_named():
    metal = material(Metal, "eave_metal")
    assert places(metal, stock_lengths=(96.0, 0.0, 120.0, nan)) == [
        ("stock_lengths", "1"),
        ("stock_lengths", "3"),
    ]
    assert places(metal, stock_lengths=()) == [("stock_lengths",)]


def test_a_material_that_is_not_there_is_told_with_those_that_are():
    with pytest.raises(Refused) as refused:
        material(Shingle, "slate")
    assert str(refused.value) == (
        "material came as slate: one of metric_strip, metric_three_tab, inch_three_tab"
    )
    with pytest.raises(Refused, match=r"one of sealant_cartridge, cement_can$"):
        material(Sealant, "metric_strip")  # of another kind


def test_a_strange_or_endless_name_is_told_in_short_and_plain_letters():
    with pytest.raises(Refused, match=r"^material came as \\ud800x{39}\.\.\.: one of "):
        material(Shingle, "\ud800" + "x" * 1_000_000)
