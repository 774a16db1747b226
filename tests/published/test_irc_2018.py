"""International Residential Code, 2018 edition, chapter 9, section R905 (asphalt shingles).

Limits as the code prints them, held from both sides, with its own millimetres where it gives them.
R905.1.1, R905.1.2 and the tables are as restated by those who quote the code.
"""

from __future__ import annotations

from itertools import pairwise
from math import inf, nextafter

import pytest

from roofing_core import cricket
from roofing_core.layers.coursing.nailing import hand_sealed, nails_on_piece, nails_per_strip
from roofing_core.layers.fasteners import least_nail_length
from roofing_core.layers.underlaying.ice_reach import ice_barrier_reach
from roofing_core.layers.underlaying.layering import underlayment_layers
from roofing_core.layers.underlaying.underlayment import underlayment
from roofing_core.materials import Metal, Roll, catalogue, material
from roofing_core.measures.faults import Refused
from roofing_core.measures.reading import read_pitch
from roofing_core.measures.sentences import write_length
from roofing_core.roof.pitch import slope_factor
from roofing_core.ruling.listing import RULES

#: Rule: what the code asks, in the rule's own unit, and where.
LIMITS = {
    "shingles.least_pitch": ("at_least", 2 / 12, "R905.2.2"),
    "shingles.steep_pitch": ("at_most", 21 / 12, "R905.2.6"),
    "underlayment.head_lap": ("at_least", 2, "Table R905.1.1(2)"),
    "underlayment.end_lap": ("at_least", 4, "Table R905.1.1(2)"),
    "underlayment.end_lap_stagger": ("at_least", 6 * 12, "Table R905.1.1(2)"),
    "metal.lap": ("at_least", 2, "R905.2.8.5"),
    "metal.nail_spacing": ("at_most", 12, "R905.2.8.5"),
    "metal.deck_leg": ("at_least", 2, "R905.2.8.5"),
    "metal.below_deck": ("at_least", 1 / 4, "R905.2.8.5"),
    "metal.valley_width": ("at_least", 24, "R905.2.8.2"),
    "valley.lining_width": ("at_least", 36, "R905.2.8.2"),
    "metal.wall_leg": ("at_least", 4, "R905.2.8.3"),
    "flashing.thickness": ("at_least", 0.019, "R905.2.8.1"),
    "ice_barrier.inside_wall": ("at_least", 24, "R905.1.2"),
    "ice_barrier.steep_reach": ("at_least", 36, "R905.1.2"),
    "nails.per_strip": ("at_least", 4, "R905.2.6"),
    "nails.shank": ("at_least", 0.105, "R905.2.5"),
    "nails.head": ("at_least", 3 / 8, "R905.2.5"),
}


@pytest.mark.parametrize(("rule_id", "printed"), LIMITS.items())
def test_a_rule_holds_the_printed_limit(rule_id, printed):
    rule = RULES[rule_id]
    bound, limit, place = printed
    source = rule.source_in("2018")
    assert source is not None
    assert (rule.bound, rule.limit, source.place) == (bound, limit, place)
    assert (source.title, source.edition) == ("International Residential Code", "2018")
    assert source.known == ("restated" if place.startswith(("Table", "R905.1.2")) else "read")
    assert rule.kept_by(limit)
    a_hair_inside, a_hair_outside = limit * 1.0001, limit * 0.9999
    if bound == "at_most":
        a_hair_inside, a_hair_outside = a_hair_outside, a_hair_inside
    assert rule.kept_by(a_hair_inside)
    assert not rule.kept_by(a_hair_outside)


@pytest.mark.parametrize(
    ("inches", "printed"),
    [(2, "51 mm"), (4, "102 mm"), (11, "279 mm"), (18, "457 mm"), (36, "914 mm")],
)
def test_the_code_s_own_millimetres(inches, printed):
    assert write_length(inches, "metric") == printed


@pytest.mark.parametrize(("rise", "percent"), [(2, 17), (21, 175)])
def test_the_code_s_own_percent(rise, percent):
    # R905.2.2 and R905.2.6, to the whole percent.
    assert read_pitch(f"{percent} %") == pytest.approx(rise / 12, abs=0.005)


def test_no_shingles_below_2_in_12():
    assert underlayment_layers(2 / 12) == 2
    with pytest.raises(Refused, match="2:12 or more"):
        underlayment_layers(1.99 / 12)


def test_two_layers_up_to_4_in_12():
    # R905.2.2 doubles the underlayment "up to 4:12"; the table has one layer at 4:12 "or greater"
    # (as restated by New York State, 2025: two from 2:12 to less than 4:12), so that 4:12 has one.
    assert underlayment_layers(3.99 / 12) == 2
    assert underlayment_layers(4 / 12) == 1
    assert RULES["underlayment.single_layer_pitch"].limit == 4 / 12


def test_low_slope_strip_and_sheets():
    # A 19 in strip at the eave, then 36 in sheets lapped 19 in.
    laid = underlayment(168, slope_length=240, pitch=2 / 12)
    assert (laid.rows[0].width, laid.rows[1].width, laid.head_lap) == (19, 36, 19)
    tops = [row.upper for row in laid.rows[1:4]]
    assert [b - a for a, b in pairwise(tops)] == [17, 17]


def test_nails_in_a_strip_and_in_a_single_shingle():
    # R905.2.6: not under 4 per strip or 2 per single shingle; special fastening above 21:12.
    assert nails_per_strip(4 / 12) == 4
    assert len(nails_on_piece(0, right=4, positions=(1.0, 13.0, 25.0, 37.0))) == 2
    assert not hand_sealed(21 / 12)
    assert hand_sealed(21.01 / 12)
    assert nails_per_strip(21.01 / 12) > 4


def test_nails_reach_three_quarters_of_an_inch_into_the_deck():
    # R905.2.5: 3/4 in into the deck, or through one thinner than that.
    assert least_nail_length(0, deck_thickness=0.75) == 0.75
    assert least_nail_length(0.25, deck_thickness=1.5) == 1
    thinner = nextafter(0.75, 0)
    assert least_nail_length(0, deck_thickness=thinner) >= thinner
    assert least_nail_length(0, deck_thickness=0.4375) > 0.4375


def test_ice_barrier_reaches_24_in_inside_the_wall():
    # R905.1.2, level: with a flat roof the reach is the level distance itself.
    assert ice_barrier_reach(0, pitch=0, edition="2018") == 24
    assert ice_barrier_reach(12, pitch=0, edition="2018") == 36
    assert ice_barrier_reach(12, pitch=5 / 12, edition="2018") == pytest.approx(36 * 13 / 12)


@pytest.mark.parametrize("edition", ["2015", "2018", "2021"])
def test_ice_barrier_at_8_in_12_is_36_in_or_more_up_the_slope(edition):
    assert ice_barrier_reach(0, pitch=8 / 12, edition=edition) == 36
    below = ice_barrier_reach(0, pitch=7.99 / 12, edition=edition)
    assert below == pytest.approx(24 * slope_factor(7.99 / 12))
    assert below < 29


def test_the_edition_of_2024_leaves_that_out():
    assert ice_barrier_reach(0, pitch=8 / 12, edition="2024") == pytest.approx(
        24 * slope_factor(8 / 12)
    )


def test_valley_metal_of_24_in_and_lining_of_36_in():
    # R905.2.8.2: 24 in (610 mm) or more of metal in an open valley, one ply of smooth roll roofing
    # of 36 in (914 mm) or more under a closed one.
    metal = material(Metal, "valley_metal")
    assert write_length(metal.deck_leg + metal.face_leg, "metric") == "610 mm"
    assert write_length(material(Roll, "valley_lining").width, "metric") == "914 mm"


def test_flashing_beside_a_wall_is_4_in_each_way_or_more():
    # R905.2.8.3: 4 in (102 mm) in height and 4 in in width; R903.2.1: 0.019 in thick.
    beside = catalogue().step_flashings
    assert min(min(one.deck_leg, one.wall_leg) for one in beside) >= 4
    assert min(one.thickness for one in beside) >= 0.019


# Table R1003.20: height of a cricket as a part of the chimney's width. The first as restated, the
# others from memory.
@pytest.mark.parametrize(("rise", "part"), [(12, 2), (8, 3), (6, 4), (4, 6), (3, 8)])
def test_height_of_a_cricket(rise, part):
    assert cricket(48, pitch=rise / 12).height == pytest.approx(48 / part)


def test_a_cricket_behind_a_chimney_of_more_than_30_in():
    # R903.2.2: "greater than 30 inches (762 mm) wide".
    assert write_length(30, "metric") == "762 mm"
    assert not cricket(30, pitch=6 / 12).required
    assert cricket(nextafter(30, inf), pitch=6 / 12).required
