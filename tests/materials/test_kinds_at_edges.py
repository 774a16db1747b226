"""Caps, step flashing, pipe flashing and metal for more edges: sizes, names, refusals."""

from __future__ import annotations

from dataclasses import fields, replace

import pytest

from roofing_core import (
    Cap,
    Metal,
    PipeFlashing,
    Refused,
    Roll,
    Shingle,
    StepFlashing,
    catalogue,
    material,
)


def refused(made, **sizes) -> set[str]:
    with pytest.raises(Refused) as caught:
        replace(made, **sizes)
    return {str(one.at[0]) for one in caught.value.faults}


@pytest.mark.parametrize("kind", [Cap, StepFlashing, PipeFlashing])
def test_every_size_that_cannot_be_is_named_at_once(kind):
    group = next(
        getattr(catalogue(), one.name)
        for one in fields(catalogue())
        if isinstance(getattr(catalogue(), one.name)[0], kind)
    )
    sizes = {one.name for one in fields(kind)} - {"name", "made"}
    for bad in (-1, float("nan"), float("inf")):
        assert refused(group[0], **dict.fromkeys(sizes, bad)) == sizes


def test_a_size_of_nothing_is_refused_and_a_weight_of_nothing_is_not():
    cap = material(Cap, "inch_cap")
    assert refused(cap, width=0, from_shingle=0) == {"width", "from_shingle"}
    assert replace(cap, pack_weight=0).pack_weight == 0


@pytest.mark.parametrize(
    ("cap", "shingle"), [("metric_cap", "metric_three_tab"), ("inch_cap", "inch_three_tab")]
)
def test_a_cap_is_a_tab_of_its_shingle(cap, shingle):
    # One third of the strip, from the butt to the top, in bundles of such strips.
    made, strip = material(Cap, cap), material(Shingle, shingle)
    assert (made.length, made.exposure) == (strip.height, strip.exposure)
    assert made.from_shingle * made.width == strip.length
    assert (made.per_pack, made.pack_weight) == (strip.per_bundle, strip.bundle_weight)


def test_new_metal_stands_behind_the_old_in_the_list():
    # A caller may have kept places: nothing moves.
    names = [metal.name for metal in catalogue().metals]
    assert names[:3] == ["eave_metal", "rake_metal", "ridge_metal"]
    assert [roll.name for roll in catalogue().rolls][:2] == ["felt_15", "felt_30"]


def test_a_step_flashing_for_each_exposure_of_the_catalogue():
    lengths = sorted(one.length for one in catalogue().step_flashings)
    exposures = sorted({one.exposure for one in catalogue().shingles})
    assert all(long >= shows + 2 for long, shows in zip(lengths, exposures, strict=True))


def test_a_collar_leaves_a_flange_all_round():
    for collar in catalogue().pipe_flashings:
        assert (min(collar.base_width, collar.base_length) - collar.largest_pipe) / 2 >= 4


def test_a_valley_lining_is_of_another_kind_than_valley_metal():
    assert material(Roll, "valley_lining").width == 36
    assert material(Metal, "valley_metal").deck_leg == material(Metal, "valley_metal").face_leg
