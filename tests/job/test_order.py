"""The order list of the example, every line worked out by hand, and lines that other jobs have."""

from __future__ import annotations

from math import pi

import pytest

from roofing_core import material, plan
from roofing_core.materials import Nail
from tests.job.changing import changed

# Weights and volumes are products of a few floats: a billionth is far more than their dust.
RELATIVE = 1e-9


def test_the_packs_of_the_example(shed):
    order = plan(shed).order
    assert {line.item: (line.packs, line.pack) for line in order.lines()} == {
        "eave metal": (2, "length"),
        "underlayment": (1, "roll"),
        "cap nails": (1, "box"),
        "rake metal": (2, "length"),
        "shingles": (5, "bundle"),
        "roofing nails": (1, "box"),
        "ridge metal": (2, "length"),
        "sealant": (3, "cartridge"),
        "asphalt cement": (1, "can"),
    }
    assert len(order.all_lines()) == 23


def test_what_the_example_uses_and_leaves(shed):
    order = plan(shed).order
    # 20 courses of 5 and a starter of 5, 21 in a bundle.
    assert (order.shingles.needed.value, order.shingles.left_over.value) == (105, 0)
    # 168 and two tabs of 2 in, lapped 6 in: 178 in out of 240.
    assert (order.eave_metal.needed.value, order.eave_metal.left_over.value) == (178, 62)
    # Two rakes of 112 in out of one length each.
    assert (order.rake_metal.needed.value, order.rake_metal.left_over.value) == (224, 16)
    # 168 1/2 in and a lap of 6.
    assert (order.ridge_metal.needed.value, order.ridge_metal.left_over.value) == (174.5, 65.5)
    # Seven rows of 168 + 4 in; the strip along the top comes from beside the starter strip.
    assert (order.underlayment.needed.value, order.underlayment.left_over.value) == (1204, 524)
    # Seven lower edges of 15 nails at 12 in, and a line of 8 at 24 in above each.
    assert (order.cap_nails.needed.value, order.cap_nails.left_over.value) == (161, 839)


def test_the_nails_of_the_example_by_weight(shed):
    # A shank of 0.1205 x 1 1/4 in and a head of 0.4375 x 0.05 in, steel of 0.2836 lb/in3. Shingles
    # 345, starter 17, eave 18, rakes 11 each, ridge 16.
    each = pi / 4 * (0.1205**2 * 1.25 + 0.4375**2 * 0.05) * 0.2836
    planned = plan(shed)
    counts = {use.use: use.nails for use in planned.nails}
    assert counts == {
        "deck": 0, "eave metal": 18, "valley metal": 0, "underlayment": 161, "rake metal": 22,
        "pitch break metal": 0, "apron metal": 0, "caps": 0, "flashings": 0, "starter": 17,
        "shingles": 345,
        "ridge metal": 16,
    }  # fmt: skip
    line = planned.order.roofing_nails
    assert line.needed.value == pytest.approx(418 * each, rel=RELATIVE)
    assert (line.packs, line.pack_holds.value, line.pack_holds.unit) == (1, 5, "lb")


def test_the_sealant_of_the_example(shed):
    # Two beads under each of two legs along 168 1/2 in; a bead across the eave's lap of 4 1/2 in
    # and the ridge's of 9 in, round and 1/4 in. Dabs 1 in across and 1/8 in thick on 16 nails of
    # the ridge metal and 17 of the closing course. Bedding of 5 5/8 x 168 1/2 in, 1/8 in thick.
    beads = pi / 4 * 0.25**2 * (4 * 168.5 + 4.5 + 9)
    dabs = pi / 4 * 0.125 * (16 + 17)
    order = plan(shed).order
    assert order.sealant.needed.value == pytest.approx(beads + dabs, rel=RELATIVE)
    assert order.cement.needed.value == pytest.approx(5.625 * 168.5 / 8, rel=RELATIVE)


def test_what_is_left_would_cover_more_roof(shed):
    # 62 in are left of 178 in that did for 168 x 112 in.
    line = plan(shed).order.eave_metal
    assert line.covers_more == pytest.approx(168 * 112 * 62 / 178, rel=RELATIVE)


def test_nails_for_metal_have_a_line_of_their_own_when_they_are_others(shed):
    long_ones = material(Nail, "long_roofing_nail")
    order = plan(changed(shed, metal_nail=long_ones)).order
    each = pi / 4 * (0.1205**2 * 1.75 + 0.4375**2 * 0.05) * 0.2836
    assert order.metal_nails.needed.value == pytest.approx((18 + 22 + 16) * each, rel=RELATIVE)
    assert order.metal_nails.material == "long_roofing_nail"
    same = plan(shed).order
    assert same.metal_nails.packs == 0
    assert order.roofing_nails.needed.value < same.roofing_nails.needed.value


def test_a_ready_made_starter_has_a_line_of_its_own(shed):
    order = plan(changed(shed, starter__made="ready_made", starter__per_pack=2)).order
    assert (order.starter.packs, order.starter.needed.value) == (3, 5)
    assert order.shingles.needed.value == 100


def test_a_deck_brings_panels_nails_and_tape(shed):
    # 14 x 9 1/3 ft in rows of 4 ft: two joints along 14 ft, and one end joint in each row.
    order = plan(changed(shed, decking__lay=True)).order
    assert (order.deck_panels.packs, order.deck_panels.pack) == (5, "panel")
    assert order.deck_panels.left_over.value == 5 * 96 * 48 - 168 * 112
    laid = plan(changed(shed, decking__lay=True)).deck
    assert order.joint_tape.needed.value == laid.tape_length > 2 * 168
    assert order.joint_tape.packs == 1
    each = pi / 4 * (0.131**2 * 2.5 + 0.281**2 * 0.05) * 0.2836
    assert order.deck_nails.needed.value == pytest.approx(laid.nails * each, rel=RELATIVE)
    assert [line.item for line in order.lines()][:3] == ["deck panels", "deck nails", "joint tape"]


def test_an_ice_barrier_brings_rolls(shed):
    # No overhang: 24 in, at 3:12 24.74 in up the slope, one row of 36 in, 172 in long.
    order = plan(changed(shed, underlaying__ice_barrier=True)).order
    assert (order.ice_barrier.packs, order.ice_barrier.needed.value) == (1, 172)
    assert plan(shed).order.ice_barrier.packs == 0
