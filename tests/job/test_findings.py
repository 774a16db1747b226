"""Each rule on both sides of its limit: kept, nothing is found; broken, all of it is said.

Every limit and value is worked out by hand from the example: 14 ft of eave, 9 ft 4 in of slope at
5:12, 39 3/8 x 13 1/4 in shingles at 5 5/8 in, 15/32 in panels, 1/4 in past metal and starter.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any, get_args

import pytest

from roofing_core import (
    Chimney,
    Footprint,
    Gable,
    GivenPlane,
    GivenPlanes,
    Plan,
    Pyramid,
    Refused,
    Side,
    plan,
)
from roofing_core.job.findings import findings
from roofing_core.job.found import Finding
from roofing_core.materials.nominal import READY_MADE_STARTER
from roofing_core.measures.sentences import Amount, Exact
from roofing_core.measures.units import System
from roofing_core.ruling.listing import RULES
from roofing_core.ruling.rule import Edition
from tests.job.changing import changed, cured

# A roof with end laps: 100 ft of eave on rolls of 72 ft.
LONG: dict[str, Any] = {"roof__eave_length": 1200.0, "underlayment__length": 864.0}

ICE: dict[str, Any] = {"underlaying__ice_barrier": True}

# A nail passes through felt 1/32, rake metal 0.019 and two shingles of 1/8 in, then through the
# deck of 15/32 in, and by practice 1/8 in out of it.
LEAST_NAIL = 0.03125 + 0.019 + 0.25 + 0.46875

# Of the width, 168 1/2 in, four whole shingles leave 11; of 157 1/2 + w they leave w.
FOUR_SHINGLES = 4 * 39.375 - 0.5


@dataclass(frozen=True)
class Case:
    """One rule: what keeps it just so, what just breaks it, and what is then found."""

    rule: str
    good: dict[str, Any]
    bad: dict[str, Any]
    value: float
    place: str
    limit: float
    roof: dict[str, Any] = field(default_factory=dict)


#: A gable roof of two clean slopes, of which 31 in a bundle leave some shingles over.
GABLE: dict[str, Any] = {
    "roof": Gable(length=168, width=2 * 112 * 12 / 13, pitch=5 / 12), "shingle__per_bundle": 31,
}  # fmt: skip
#: Two wings of 200 in that meet in a valley.
ANGLE: dict[str, Any] = {
    "roof": Footprint(
        corners=((0, 0), (400, 0), (400, 200), (200, 200), (200, 400), (0, 400)), pitch=5 / 12
    )
}
#: The same, the second eave of the inside corner 12 in higher than the others: at the foot of its
#: valley one plane has an eave, the other a wall.
HIGHER_WING: dict[str, Any] = {
    "roof": Footprint(
        corners=((0, 0), (400, 0), (400, 200), (200, 200), (200, 400), (0, 400)),
        sides=tuple(Side(pitch=5 / 12, eave_height=12.0 * (k == 3)) for k in range(6)),
    )
}
#: The clean slope below a wall.
PORCH: dict[str, Any] = {
    "roof": GivenPlanes(
        planes=(
            GivenPlane(
                name="porch",
                pitch=5 / 12,
                corners=((0, 0), (168, 0), (168, 112), (0, 112)),
                edges=("eave", "rake", "headwall", "rake"),
            ),
        )
    )
}
#: Slope factor 5/4: hips come in by 4/5 of the height.
TENT: dict[str, Any] = {
    "roof": Pyramid(length=240, width=240, pitch=9 / 12), "capping__side_distance": 0.5,
}  # fmt: skip
# Course 2, from 5 1/8 up, ends in a triangle from its last joint, 229.85, to the hip, which is
# nailed half-way up, at 8.90625, a quarter of its width in. The hip stands at 240 less 4/5 of that.
BARE = (240 - 0.8 * 8.90625 - 230.60625) * 5 / 41**0.5


#: A slope with a chimney, and one beside a wall.
def chimney(width: float) -> dict[str, Any]:
    """Give a chimney of a width."""
    return {"openings": (Chimney(plane="slope", from_left=60, up_slope=40, width=width, depth=20),)}


CHIMNEY = chimney(36.0)
WALL: dict[str, Any] = {
    "roof": GivenPlanes(
        planes=(
            GivenPlane(
                name="porch",
                pitch=5 / 12,
                corners=((0, 0), (168, 0), (168, 112), (0, 112)),
                edges=("eave", "sidewall", "headwall", "rake"),
            ),
        )
    )
}

#: Where the wind is known, and all that it asks is done but for what a case is about.
WINDY: dict[str, Any] = {"nailing__high_wind": True}
HELD: dict[str, Any] = {"wind__design_speed": 110.0, "shingle__class_d7158": "D"}
STORMY: dict[str, Any] = {
    "wind__design_speed": 140.0, "shingle__class_d7158": "G", "underlaying__lap_spacing": 6.0,
    "underlaying__field_spacing": 12.0,
}  # fmt: skip
ATTIC: dict[str, Any] = {
    "venting__vented_area": 1500 * 144.0, "venting__high_area": 720.0, "venting__low_area": 720.0,
}  # fmt: skip
CASES = [
    Case("flashing.cricket", chimney(30.0), chimney(30.0625), 30.0625, "chimney 1", 30,
         {"flashing__cricket": "never"}),
    Case("flashing.step_lap", {"step_flashing__length": 7.625}, {"step_flashing__length": 7.5625},
         1.9375, "step flashing", 2, WALL),
    Case("metal.wall_leg", {"step_flashing__deck_leg": 4.0}, {"step_flashing__deck_leg": 3.875},
         3.875, "step flashing", 4, WALL),
    Case("caps.width", {"cap__width": 12.0}, {"cap__width": 11.75}, 11.75, "caps",
         300 * 10 / 254, ANGLE),
    Case("caps.headlap", {"cap__length": 13.25}, {"cap__length": 13.1875}, 1.9375, "caps", 2,
         ANGLE),
    # The last nails stand 3/4 in below the ridge.
    Case("caps.cover", {"cap__width": 3.5}, {"cap__width": 3.375}, 0.9375, "front, caps", 1, GABLE),
    Case("nails.bare", {"cap__width": 4.0}, {"cap__width": 3.5}, BARE,
         "front, course 2, piece 7", 1.75, TENT),
    Case("metal.valley_width", {"valley_metal__face_leg": 12.0},
         {"valley_metal__face_leg": 11.875}, 23.875, "side 3, valley metal", 24, ANGLE),
    # A valley that is as wide at its foot as at its top, in metal of 12 in on each side.
    Case("valley.lap", {"valleying__exposed_width": 16.0}, {"valleying__exposed_width": 16.25},
         3.875, "side 3, valley", 4, {**ANGLE, "valleying__widening": 0.0}),
    # Cut back by 2 in.
    Case("valley.lap", {"valleying__run_through": 6.0}, {"valleying__run_through": 5.9375},
         3.9375, "valleys", 4, {**ANGLE, "valleying__method": "closed_cut"}),
    Case("valley.nails", {"valleying__nails_clear": 6.0}, {"valleying__nails_clear": 5.9375},
         5.9375, "valleys", 6, ANGLE),
    Case("valley.top", {"valleying__over_ridge": 2.0}, {"valleying__over_ridge": 1.9375},
         1.9375, "valley metal", 2, ANGLE),
    Case("valley.top", {"valleying__lining_over_top": 2.0},
         {"valleying__lining_over_top": 1.9375}, 1.9375, "valley lining", 2,
         {**ANGLE, "valleying__method": "closed_cut"}),
    Case("valley.closed_foot", {"valleying__method": "open"}, {"valleying__method": "closed_cut"},
         1, "valleys", 0, HIGHER_WING),
    Case("metal.wall_leg", {"apron_metal__face_leg": 4.0}, {"apron_metal__face_leg": 3.9375},
         3.9375, "headwall metal", 4, PORCH),
    Case("metal.foot_cover", {"apron_metal__deck_leg": 1.75}, {"apron_metal__deck_leg": 1.6875},
         0.9375, "apron metal", 1, PORCH),
    Case("underlayment.single_layer_pitch", {"roof__pitch": 4 / 12}, {"roof__pitch": 3.9 / 12},
         3.9 / 12, "slope", 4 / 12),
    Case("shingles.steep_pitch", {"roof__pitch": 21 / 12}, {"roof__pitch": 22 / 12},
         22 / 12, "slope", 21 / 12),
    Case("wind.class", {"wind__design_speed": 155.0}, {"wind__design_speed": 156.0},
         155, "shingles", 156, {**WINDY, "shingle__class_d7158": "G"}),
    # By the table for shingles that are tested in the other way, from memory.
    Case("wind.class", {"wind__design_speed": 129.0}, {"wind__design_speed": 130.0},
         129, "shingles", 130, {**WINDY, "shingle__class_d3161": "A"}),
    Case("wind.class_known", {"shingle__class_d7158": "D"}, {"shingle__class_d7158": "unknown"},
         0, "shingles", 1, {"wind__design_speed": 110.0}),
    Case("wind.conditions", {"wind__roof_height": 720.0}, {"wind__roof_height": 721.0},
         1, "roof", 0, HELD),
    Case("wind.conditions", {"wind__exposure": "C"}, {"wind__exposure": "D"}, 1, "roof", 0, HELD),
    Case("wind.conditions", {"wind__speed_up": False}, {"wind__speed_up": True}, 1, "roof", 0,
         HELD),
    Case("wind.nails", {"wind__design_speed": 116.0}, {"wind__design_speed": 117.0},
         4, "shingles", 6, {"shingle__class_d7158": "H"}),
    # From 140 mph on cap nails stand 6 in apart on laps and 12 in between; usually 12 and 24 in.
    Case("wind.lap_nails", {"underlaying__lap_spacing": 6.0}, {"underlaying__lap_spacing": 6.0625},
         6.0625, "underlayment", 6, STORMY),
    Case("wind.field_nails", {"underlaying__field_spacing": 12.0},
         {"underlaying__field_spacing": 12.5}, 12.5, "underlayment", 12, STORMY),
    Case("wind.head_lap", {"underlaying__head_lap": 4.0}, {"underlaying__head_lap": 3.9375},
         3.9375, "underlayment", 4, STORMY),
    # 1,500 ft2 need 10 ft2, half as much by 1/300; of that 40 to 50 % high up.
    Case("vents.area", {"venting__low_area": 720.0}, {"venting__low_area": 719.0},
         1439, "vents", 1440, ATTIC),
    Case("vents.area", {"venting__low_area": 360.0}, {"venting__low_area": 359.0},
         719, "vents", 720, {**ATTIC, "venting__ratio": "1/300", "venting__high_area": 360.0}),
    Case("vents.least_high", {"venting__high_area": 288.0}, {"venting__high_area": 284.4},
         39.5, "vents", 40, {**ATTIC, "venting__ratio": "1/300"}),
    Case("vents.most_high", {"venting__high_area": 360.0}, {"venting__high_area": 363.6},
         50.5, "vents", 50, {**ATTIC, "venting__ratio": "1/300"}),
    Case("load.stack", {"loading__stacked_bundles": 2}, {"loading__stacked_bundles": 3},
         3, "deck", 2),
    Case("load.layers", {"loading__layers_left": 1}, {"loading__layers_left": 2}, 3, "deck", 2),
    Case("flashing.thickness", {"step_flashing__thickness": 0.019},
         {"step_flashing__thickness": 0.018}, 0.018, "step flashing", 0.019, WALL),
    Case("flashing.thickness", {"apron_metal__thickness": 0.019},
         {"apron_metal__thickness": 0.018}, 0.018, "headwall metal", 0.019, PORCH),
    Case("flashing.thickness", {"flashing_sheet__thickness": 0.019},
         {"flashing_sheet__thickness": 0.018}, 0.018, "flashing sheet", 0.019, CHIMNEY),
    Case("valley.lining_width", {"valley_lining__width": 36.0}, {"valley_lining__width": 35.5},
         35.5, "valley lining", 36, {**ANGLE, "valleying__method": "closed_cut"}),
    Case("metal.ridge_beads", {"sealing__beads_per_leg": 2}, {"sealing__beads_per_leg": 1},
         1, "ridge metal", 2),
    Case("ice_barrier.inside_wall", {"underlaying__inside_wall": 24.0},
         {"underlaying__inside_wall": 23.5}, 23.5, "ice barrier", 24, ICE),
    # 100 mm.
    Case("ice_barrier.lap", {"underlaying__over_ice_barrier": 3.9375},
         {"underlaying__over_ice_barrier": 3.875}, 3.875, "ice barrier", 1000 / 254, ICE),
    # Without an overhang 24 in level are 24 x 14.4222 / 12 in up a slope of 8:12.
    Case("ice_barrier.steep_reach", {"roof__pitch": 7.99 / 12}, {"roof__pitch": 8 / 12},
         24 * (1 + 4 / 9) ** 0.5, "ice barrier", 36, ICE),
    # 36 in up that slope are 29.95 in level, 24 of them inside the wall.
    Case("ice_barrier.steep_reach", {"roof__eave_overhang": 6.0}, {"roof__eave_overhang": 5.9},
         29.9 * (1 + 4 / 9) ** 0.5, "ice barrier", 36, {**ICE, "roof__pitch": 8 / 12}),
    Case("deck.support_spacing", {"decking__support_spacing": 24.0},
         {"decking__support_spacing": 24.5}, 24.5, "deck", 24,
         {"decking__lay": True, "panel__length": 144.0}),
    Case("deck.thickness", {"panel__thickness": 0.4375}, {"panel__thickness": 0.375},
         0.375, "deck", 0.4375, {"decking__lay": True}),
    Case("deck.edge_spacing", {"decking__edge_spacing": 6.0}, {"decking__edge_spacing": 6.0625},
         6.0625, "deck", 6, {"decking__lay": True}),
    Case("deck.field_spacing", {"decking__field_spacing": 12.0},
         {"decking__field_spacing": 12.5}, 12.5, "deck", 12, {"decking__lay": True}),
    Case("underlayment.head_lap", {"underlaying__head_lap": 2.0},
         {"underlaying__head_lap": 1.9375}, 1.9375, "underlayment", 2),
    Case("underlayment.end_lap", {"underlaying__end_lap": 4.0}, {"underlaying__end_lap": 3.9375},
         3.9375, "underlayment", 4, LONG),
    Case("underlayment.end_lap_stagger", {"underlaying__end_lap_stagger": 72.0},
         {"underlaying__end_lap_stagger": 71.5}, 71.5, "underlayment", 72, LONG),
    # 2 in past the rakes the fifth piece begins at 4 x 39 3/8 - 2 = 155 1/2: past a deck of 155.
    Case("pieces.nails", {"roof__eave_length": 155.75}, {"roof__eave_length": 155.0}, 0,
         "course 1, piece 5", 2,
         {"coursing__shingle_past_rake": 2.0, "coursing__minimum_end_piece": 1.0}),
    Case("metal.lap", {"metalwork__lap": 2.0}, {"metalwork__lap": 1.9375}, 1.9375, "eave metal",
         2),
    Case("flashing.lap", {"metalwork__lap": 2.0}, {"metalwork__lap": 1.9375}, 1.9375,
         "ridge metal", 2),
    Case("flashing.lap", {"metalwork__lap": 2.0}, {"metalwork__lap": 1.9375}, 1.9375,
         "side 3, valley metal", 2, ANGLE),
    Case("metal.nail_spacing", {"metalwork__nail_spacing": 12.0},
         {"metalwork__nail_spacing": 12.25}, 12.25, "left rake metal", 12),
    Case("flashing.nail_spacing", {"metalwork__ridge_nail_spacing": 12.0},
         {"metalwork__ridge_nail_spacing": 12.25}, 12.25, "ridge metal", 12),
    Case("flashing.nail_spacing", {"metalwork__nail_spacing": 12.0},
         {"metalwork__nail_spacing": 12.25}, 12.25, "headwall metal", 12, PORCH),
    Case("metal.deck_leg", {"eave_metal__deck_leg": 2.0}, {"eave_metal__deck_leg": 1.9375},
         1.9375, "eave metal", 2),
    Case("metal.deck_leg", {"rake_metal__deck_leg": 2.0}, {"rake_metal__deck_leg": 1.9375},
         1.9375, "right rake metal", 2),
    # 23/32 in over the edge of a 15/32 in deck is 1/4 in below it.
    Case("metal.below_deck", {"eave_metal__face_leg": 0.71875},
         {"eave_metal__face_leg": 0.6875}, 0.21875, "eave metal", 0.25),
    # The closing course is nailed 3/4 in below the top edge; 1 in of cover takes 1 3/4 in of leg.
    Case("metal.ridge_cover", {"ridge_metal__deck_leg": 1.75}, {"ridge_metal__deck_leg": 1.6875},
         0.9375, "ridge metal", 1),
    Case("metal.ridge_cover", {"metalwork__nail_cover": 5.25}, {"metalwork__nail_cover": 5.5},
         5.25, "ridge metal", 5.5),
    Case("nails.shank", {"shingle_nail__shank": 0.105}, {"shingle_nail__shank": 0.104},
         0.104, "shingle nail", 0.105),
    Case("nails.shank", {"metal_nail__shank": 0.105}, {"metal_nail__shank": 0.104},
         0.104, "metal nail", 0.105),
    Case("nails.head", {"shingle_nail__head": 0.375}, {"shingle_nail__head": 0.374},
         0.374, "shingle nail", 0.375),
    Case("nails.point", {"shingle_nail__length": LEAST_NAIL + 0.125},
         {"shingle_nail__length": LEAST_NAIL + 0.0625}, 0.0625, "shingles", 0.125),
    # 3/4 in into a deck of 1 in, however little the job asks for.
    Case("nails.length", {"shingle_nail__length": LEAST_NAIL - 0.46875 + 0.75},
         {"shingle_nail__length": LEAST_NAIL - 0.46875 + 0.6875}, -0.0625, "shingles", 0,
         {"panel__thickness": 1.0, "nailing__deck_penetration": 0.5,
          "metal_nail__length": 2.0}),
    Case("nails.length", {"shingle_nail__length": LEAST_NAIL},
         {"shingle_nail__length": LEAST_NAIL - 0.0625}, -0.0625, "shingles", 0),
    # A deck nail goes 1 1/2 in into the rafter below a 15/32 in panel.
    Case("nails.length", {"deck_nail__length": 1.96875}, {"deck_nail__length": 1.90625},
         -0.0625, "deck", 0, {"decking__lay": True}),
    Case("nails.cap", {"cap_nail__cap": 1.0}, {"cap_nail__cap": 0.9375},
         0.9375, "underlayment", 1),
    Case("deck.tape", {"joint_tape__width": 4.0}, {"joint_tape__width": 3.9375},
         3.9375, "deck", 4, {"decking__lay": True}),
    Case("joints.clearance", {"shingle__sequence": (0.0, 4.0)},
         {"shingle__sequence": (0.0, 3.9375)}, 3.9375, "courses 1 and 2", 4),
    Case("starter.offset", {"starter__trim": 4.0}, {"starter__trim": 3.9375},
         3.9375, "starter and course 1", 4),
    # Trims of 0, 6, 11 and 17 in stand 5 in apart at the least, between courses 2 and 3.
    Case("joints.clearance", {"coursing__minimum_clearance": 5.0},
         {"coursing__minimum_clearance": 5.0625}, 5.0, "courses 2 and 3", 5.0625,
         {"starter__trim": 30.0}),
    Case("pieces.end_piece", {"roof__eave_length": FOUR_SHINGLES + 3},
         {"roof__eave_length": FOUR_SHINGLES + 2.9375}, 2.9375, "course 1", 3),
    Case("pieces.end_piece", {"coursing__minimum_end_piece": 11.0},
         {"coursing__minimum_end_piece": 11.5}, 11.0, "course 1", 11.5),
    # Course 19 from 100 3/4 in: a zone from 10 1/2 in up is 3/4 in below the top, at 111 1/4 in.
    Case("courses.closing", {"shingle__nail_zone_low": 10.5, "shingle__nail_zone_high": 11.5},
         {"shingle__nail_zone_low": 10.5625, "shingle__nail_zone_high": 11.5}, 2, "top edge", 1),
    # 19 courses of 5 5/8 in from 1/2 in below the metal reach 106 3/8 in; the 20th shows the rest.
    Case("courses.top_exposure", {"roof__slope_length": 107.375},
         {"roof__slope_length": 107.3125}, 0.9375, "course 20", 1,
         {"shingle__nail_zone_low": 5.625, "coursing__edge_distance": 0.25}),
    # The first course shows 5 5/8 in, 1/4 in of it below the starter.
    Case("starter.height", {"starter": replace(READY_MADE_STARTER, height=5.375)},
         {"starter": replace(READY_MADE_STARTER, height=5.25)}, 5.25, "starter", 5.375),
    # 100 pieces and 5 starter strips.
    Case("order.spare_shingles", {"shingle__per_bundle": 107}, {"shingle__per_bundle": 106},
         1, "order", 2),
]  # fmt: skip

#: What no choice puts right: said so that it is known, or a matter of the roof's own size.
NOT_CURED = {
    "underlayment.single_layer_pitch", "shingles.steep_pitch", "ice_barrier.steep_reach",
    "wind.class_known", "wind.conditions", "pieces.nails", "courses.closing",
    "courses.top_exposure", "order.spare_shingles",
}  # fmt: skip


def found(planned: Plan, rule: str, place: str) -> list[Finding]:
    """Give the findings of a rule at a place."""
    return [one for one in planned.findings if (one.rule, one.place) == (rule, place)]


def named(case: Case) -> str:
    """Name a case by its rule and place."""
    return f"{case.rule}-{case.place}"


def told(amount: Amount, system: System) -> tuple[str, str]:
    """Give both ways in which a finding may write an amount: rounded, or with its decimals."""
    return amount.written(system), Exact(amount.value, amount.unit).written(system)


def test_nothing_is_found_on_the_clean_job(clean):
    assert plan(clean).findings == ()


@pytest.mark.parametrize("case", CASES, ids=named)
def test_nothing_is_found_just_on_the_good_side(case, clean):
    planned = plan(changed(clean, **case.roof | case.good))
    assert found(planned, case.rule, case.place) == []


@pytest.mark.parametrize("case", CASES, ids=named)
def test_a_breach_is_found_just_on_the_bad_side(case, clean):
    planned = plan(changed(clean, **case.roof | case.bad))
    (one,) = found(planned, case.rule, case.place)
    rule = RULES[case.rule]
    assert one.value.value == pytest.approx(case.value, abs=1e-9)
    assert one.limit.value == pytest.approx(case.limit, abs=1e-12)
    assert one.value.unit == one.limit.unit == rule.unit
    source = rule.source_in("2018")
    assert source is not None
    assert (one.severity, one.source) == (rule.severity, source.text())
    assert len(one.source) > 10
    systems: tuple[System, ...] = ("us", "metric")
    for system in systems:
        said = one.says.written(system)
        none = one.limit.value == 0 and said.startswith("No ")
        assert none or any(written in said for written in told(one.limit, system))
        assert any(said.endswith(f" Here: {written}.") for written in told(one.value, system))
        assert said.rpartition(" Here: ")[2] != f"{one.limit.written(system)}."
        assert one.cure.written(system).endswith(".")


@pytest.mark.parametrize("case", CASES, ids=named)
def test_a_breach_brings_no_other_finding_with_it(case, clean):
    # The good side of a rule is clean but for what its roof is asked for beside it.
    planned = plan(changed(clean, **case.roof | case.bad))
    beside = {one.rule for one in planned.findings} - {case.rule}
    allowed = {
        "order.spare_shingles": {"order.spare_shingles"},
        "metal.lap": {"flashing.lap"},
        "flashing.lap": {"metal.lap"},
        "flashing.nail_spacing": {"metal.nail_spacing"},
        "joints.clearance": {"joints.clearance"},
        "caps.cover": {"caps.width"},
        "wind.lap_nails": {"wind.nails"},
        "wind.field_nails": {"wind.nails"},
        "wind.head_lap": {"wind.nails"},
        "vents.least_high": {"vents.area"},
        "nails.bare": {"caps.width"},
        "metal.foot_cover": {"metal.wall_leg"},
        "valley.top": {"joints.clearance", "pieces.end_piece", "starter.offset"},
        "valley.lap": {"joints.clearance", "pieces.end_piece", "starter.offset"},
        "valley.closed_foot": {
            "joints.clearance",
            "pieces.end_piece",
            "pieces.nails",
            "starter.offset",
            "courses.closing",
            "courses.top_exposure",
        },
        "valley.lining_width": {"joints.clearance", "pieces.end_piece", "starter.offset"},
    }
    assert beside <= allowed.get(case.rule, set())


@pytest.mark.parametrize("case", CASES, ids=named)
def test_the_cure_of_a_finding_written_into_the_job_cures_it(case, clean):
    job = changed(clean, **case.roof | case.bad)
    (one,) = found(plan(job), case.rule, case.place)
    assert bool(one.changes) is (case.rule not in NOT_CURED)
    if one.changes:
        better = plan(cured(job, one))
        assert found(better, case.rule, case.place) == []


@pytest.mark.parametrize("case", CASES, ids=named)
def test_a_cure_tells_the_numbers_that_it_changes(case, clean):
    (one,) = found(plan(changed(clean, **case.roof | case.bad)), case.rule, case.place)
    said = [part.value for part in one.cure.parts if isinstance(part, Amount)]
    for change in one.changes:
        assert [amount.value for amount in change.values] == ([] if change.word else said)


def test_end_laps_are_held_against_their_rules_only_where_there_are_any(clean):
    short = plan(changed(clean, underlaying__end_lap=1.0, underlaying__end_lap_stagger=1.0))
    assert short.underlayment.end_laps == 0
    assert short.findings == ()


def test_two_layers_set_their_own_head_lap(clean):
    low = plan(changed(clean, roof__pitch=3 / 12, underlaying__head_lap=0.5))
    assert [one.rule for one in low.findings] == ["underlayment.single_layer_pitch"]
    assert low.underlayment.head_lap == 19


def test_a_roof_without_joints_has_none_too_near_to_each_other(clean):
    # 3 in of eave takes one piece a course.
    planned = plan(changed(clean, roof__eave_length=3.0))
    assert not any(course.joints for course in planned.courses)
    assert [one.rule for one in planned.findings if one.rule == "joints.clearance"] == []


def test_the_finding_names_the_limit_that_the_caller_chose(clean):
    planned = plan(changed(clean, coursing__minimum_clearance=5.5, starter__trim=30.0))
    (one,) = found(planned, "joints.clearance", "courses 2 and 3")
    assert one.says.written() == (
        "Joints of neighbouring courses stand at least 5 1/2 in apart. Here: 5 in."
    )
    assert one.cure.written() == (
        "Trim the first shingles by 0 in, 6 1/2 in, 13 in, 19 1/2 in, 26 in, 32 1/2 in, repeating."
    )


def test_a_strip_with_three_nails_is_found(clean):
    # No choice leaves a strip with fewer than four: the layout is spoilt by hand.
    laid = plan(clean)
    assert laid.shingles.nails_per_strip == 4
    spoilt = replace(laid, shingles=replace(laid.shingles, nails_per_strip=3))
    (one,) = findings(spoilt, spoilt.order, spoilt.weight)
    assert (one.rule, one.place, one.value.value, one.limit.value) == (
        "nails.per_strip", "shingles", 3, 4,
    )  # fmt: skip


def test_a_roof_is_no_heavier_than_its_designer_allows(clean):
    weight = plan(clean).weight.per_plan_area
    assert 1.5 < weight < 2.5
    just = plan(changed(clean, loading__dead_load_allowed=weight))
    assert found(just, "load.dead", "deck") == []
    over = plan(changed(clean, loading__dead_load_allowed=weight - 0.01))
    (one,) = found(over, "load.dead", "deck")
    assert (one.severity, one.value.value, one.changes) == ("stops_the_job", weight, ())
    assert one.limit.value == weight - 0.01
    assert "licensed designer" in one.cure.written()


@pytest.mark.parametrize(
    ("speed", "designed"), [(194.0, True), (195.0, False)],
)  # fmt: skip
def test_no_class_cures_a_wind_that_none_holds(clean, speed, designed):
    windy = changed(clean, wind__design_speed=speed, shingle__class_d7158="D")
    (one,) = found(plan(windy), "wind.class", "shingles")
    assert [change.word for change in one.changes] == (["H"] if designed else [])


def test_nothing_is_asked_of_a_place_that_is_not_known(clean):
    rules = {one.rule for one in plan(clean).findings}
    assert not any(code.startswith(("wind.", "vents.", "load.")) for code in rules)


def test_a_starter_that_no_trim_clears_is_told_so(clean):
    # Joints of the first course stand every 39 3/8 in. A starter of 6 in pieces has one within
    # 3 in of each, whatever is trimmed from its first piece.
    short = replace(READY_MADE_STARTER, length=6.0)
    planned = plan(changed(clean, starter=short))
    (one,) = found(planned, "starter.offset", "starter and course 1")
    assert one.changes == ()
    assert "use another trim sequence" in one.cure.written()


@pytest.mark.parametrize("edition", get_args(Edition))
def test_findings_cite_the_edition_that_the_job_is_held_to(clean, edition):
    (one,) = plan(changed(clean, metalwork__lap=1.5, code_edition=edition)).findings[:1]
    assert one.source.startswith(f"International Residential Code, {edition}, R905.2.8.5")
    assert one.source.endswith("from memory") is (edition == "2024")


@pytest.mark.parametrize("edition", get_args(Edition))
def test_one_choice_of_edition_drives_the_barrier_and_its_finding(clean, edition):
    steep = changed(clean, roof__pitch=8 / 12, underlaying__ice_barrier=True, code_edition=edition)
    planned = plan(steep)
    said = edition != "2024"
    assert planned.ice_barrier.reach == pytest.approx(36 if said else 24 * (13 / 9) ** 0.5)
    assert bool(found(planned, "ice_barrier.steep_reach", "ice barrier")) is said


def test_an_edition_that_is_not_known_is_refused_by_its_name(clean):
    with pytest.raises(Refused) as refusal:
        plan(changed(clean, code_edition="1999"))
    assert [fault.at for fault in refusal.value.faults] == [("code_edition",)]
    assert "one of 2015, 2018, 2021, 2024" in str(refusal.value)


@pytest.mark.parametrize(("exposure", "kept"), [(5.625, True), (5.6875, False)])
def test_less_headlap_than_the_rule_asks_is_refused(clean, exposure, kept):
    # 13 1/4 in less twice 5 5/8 in leaves 2 in.
    rule = RULES["shingles.headlap"]
    assert rule.checked == "refusal"
    assert rule.kept_by(13.25 - 2 * exposure) is kept
    job = changed(clean, shingle__exposure=exposure)
    if kept:
        assert plan(job).shingles.headlap == rule.limit
    else:
        with pytest.raises(Refused, match="keeps 2 in of headlap"):
            plan(job)


@pytest.mark.parametrize("rise", [0.0, 1.0, 1.99])
def test_below_the_least_pitch_the_job_is_refused(clean, rise):
    assert plan(changed(clean, roof__pitch=2 / 12)).underlayment.layers == 2
    with pytest.raises(Refused) as refusal:
        plan(changed(clean, roof__pitch=rise / 12))
    rule = RULES["shingles.least_pitch"]
    assert rule.checked == "refusal"
    assert rule.kept_by(2 / 12)
    assert not rule.kept_by(rise / 12)
    assert [fault.at for fault in refusal.value.faults] == [("roof", "pitch")]
    assert "2:12 or more" in refusal.value.faults[0].wanted.written()
