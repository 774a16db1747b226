"""Nominal materials without brands, to start from.

Where a size comes from a publication it is named here; everything else in the catalogue (what a
bundle or box holds, weights, thicknesses, the legs of metal) is nominal, from memory, and is to be
replaced by what is printed on the material that was bought. `listing` gives them by kind and name.
"""

from __future__ import annotations

from roofing_core.materials.edge_kinds import Cap, PipeFlashing, Sheet, StepFlashing
from roofing_core.materials.kinds import (
    CapNail,
    Metal,
    Nail,
    Panel,
    Roll,
    Sealant,
    Shingle,
    Starter,
    Tape,
)

FEET = 12.0

#: 13 1/4 x 39 3/8 in at 5 5/8 in: trade tables. 21 in a bundle cover 32 ft2 (Canadian housing
#: handbook's 3 m2 a bundle). The four trims are common practice, no published source.
METRIC_STRIP = Shingle(
    name="metric_strip",
    kind="laminated",
    length=39.375,
    height=13.25,
    exposure=5.625,
    nail_zone_low=6.125,
    nail_zone_high=7.125,
    sequence=(0.0, 6.0, 11.0, 17.0),
    thickness=0.125,
    per_bundle=21,
    bundle_weight=65.0,
)

METRIC_THREE_TAB = Shingle(
    name="metric_three_tab",
    kind="three_tab",
    length=39.375,
    height=13.25,
    exposure=5.625,
    nail_zone_low=6.125,
    nail_zone_high=7.125,
    sequence=(0.0, 6.5, 13.0, 19.5, 26.0, 32.5),
    thickness=0.09375,
    per_bundle=21,
    bundle_weight=60.0,
)

#: 12 x 36 in at 5 in and 27 in a bundle: Navy Builder manual (NAVEDTRA 14044) ch. 3. Six trims by
#: 6 in: a trade journal's field guide.
INCH_THREE_TAB = Shingle(
    name="inch_three_tab",
    kind="three_tab",
    length=36.0,
    height=12.0,
    exposure=5.0,
    nail_zone_low=5.625,
    nail_zone_high=6.625,
    sequence=(0.0, 6.0, 12.0, 18.0, 24.0, 30.0),
    thickness=0.09375,
    per_bundle=27,
    bundle_weight=67.0,
)

#: One from each shingle, 4 in off the first: common practice, no published source.
SELF_MADE_STARTER = Starter(
    name="self_made_starter",
    made="self_made",
    length=39.375,
    height=7.625,
    trim=4.0,
    per_pack=1,
    pack_weight=0.0,
)

READY_MADE_STARTER = Starter(
    name="ready_made_starter",
    made="ready_made",
    length=39.375,
    height=7.625,
    trim=4.0,
    per_pack=30,
    pack_weight=40.0,
)

#: 36 in by 144 ft and by 72 ft: the felt rolls of the handbooks, 432 and 216 ft2.
FELT_15 = Roll(name="felt_15", width=36.0, length=144 * FEET, thickness=0.03125, weight=45.0)
FELT_30 = Roll(name="felt_30", width=36.0, length=72 * FEET, thickness=0.0625, weight=45.0)
SYNTHETIC = Roll(name="synthetic", width=48.0, length=250 * FEET, thickness=0.015625, weight=28.0)
ICE_BARRIER = Roll(
    name="ice_barrier", width=36.0, length=66 * FEET + 8, thickness=0.04, weight=55.0
)

#: 36 in wide: the residential code's least for one ply of smooth roll roofing under a closed valley
#: (R905.2.8.2).
VALLEY_LINING = Roll(
    name="valley_lining", width=36.0, length=36 * FEET, thickness=0.0625, weight=55.0
)

#: 10 ft is the usual stock length. The legs meet the residential code's least sizes (2 in on the
#: deck); the ridge metal's leg covers the nails of a closing course.
EAVE_METAL = Metal(
    name="eave_metal",
    deck_leg=2.5,
    face_leg=2.0,
    stock_lengths=(120.0,),
    thickness=0.019,
    weight=0.32,
)
RAKE_METAL = Metal(
    name="rake_metal",
    deck_leg=2.5,
    face_leg=2.0,
    stock_lengths=(120.0,),
    thickness=0.019,
    weight=0.32,
)
RIDGE_METAL = Metal(
    name="ridge_metal",
    deck_leg=6.0,
    face_leg=3.0,
    stock_lengths=(120.0,),
    thickness=0.019,
    weight=0.6,
)

#: 24 in wide: the residential code's least for an open valley (R905.2.8.2), 12 in on each side.
VALLEY_METAL = Metal(
    name="valley_metal",
    deck_leg=12.0,
    face_leg=12.0,
    stock_lengths=(120.0,),
    thickness=0.019,
    weight=1.55,
)

#: Where a roof ends at the foot of a wall: one leg over the shingles, the other up the wall. 4 in
#: each way is the residential code's least beside a wall (R905.2.8.3).
APRON_METAL = Metal(
    name="apron_metal",
    deck_leg=5.0,
    face_leg=5.0,
    stock_lengths=(120.0,),
    thickness=0.019,
    weight=0.65,
)

#: Where a slope turns flatter: one leg under the courses above, the other over those below.
PITCH_BREAK_METAL = Metal(
    name="pitch_break_metal",
    deck_leg=8.0,
    face_leg=4.0,
    stock_lengths=(120.0,),
    thickness=0.019,
    weight=0.78,
)

#: Three from a shingle of three tabs, each a third of it wide and exposed as the shingle is: Navy
#: Builder manual (NAVEDTRA 14044) ch. 3, which cuts them from 12 x 36 in strips.
METRIC_CAP = Cap(
    name="metric_cap",
    made="self_made",
    length=13.25,
    width=13.125,
    exposure=5.625,
    from_shingle=3,
    per_pack=21,
    pack_weight=60.0,
)
INCH_CAP = Cap(
    name="inch_cap",
    made="self_made",
    length=12.0,
    width=12.0,
    exposure=5.0,
    from_shingle=3,
    per_pack=27,
    pack_weight=67.0,
)
READY_MADE_CAP = Cap(
    name="ready_made_cap",
    made="ready_made",
    length=12.0,
    width=12.0,
    exposure=5.0,
    from_shingle=1,
    per_pack=48,
    pack_weight=40.0,
)

#: 10 in wide bent 5/5, 2 in longer than the exposure or more: a trade journal's field guide, which
#: has 7 x 10 in for 5 in. 5 5/8 in needs 7 5/8 in or more.
STEP_FLASHING = StepFlashing(
    name="step_flashing",
    length=8.0,
    deck_leg=5.0,
    wall_leg=5.0,
    thickness=0.019,
    per_pack=50,
    pack_weight=21.5,
)
INCH_STEP_FLASHING = StepFlashing(
    name="inch_step_flashing",
    length=7.0,
    deck_leg=5.0,
    wall_leg=5.0,
    thickness=0.019,
    per_pack=50,
    pack_weight=19.0,
)

#: 36 by 96 in of the residential code's least thickness for flashings (R905.2.8.1); the weight is
#: that of steel, 0.283 lb to the cubic inch.
FLASHING_SHEET = Sheet(name="flashing_sheet", length=96.0, width=36.0, thickness=0.019, weight=18.6)

#: Pipes of 3 in and 4 in measure 3 1/2 and 4 1/2 in outside.
PIPE_FLASHING = PipeFlashing(
    name="pipe_flashing", largest_pipe=3.5, base_width=12.0, base_length=15.0, pack_weight=1.0
)
LARGE_PIPE_FLASHING = PipeFlashing(
    name="large_pipe_flashing", largest_pipe=4.5, base_width=14.0, base_length=16.0, pack_weight=1.5
)

#: 11 gauge, 7/16 in head: the roofing nail of the handbooks' tables. 12 gauge is the code's least.
ROOFING_NAIL = Nail(
    name="roofing_nail",
    length=1.25,
    shank=0.1205,
    head=0.4375,
    head_thickness=0.05,
    box_weight=5.0,
)
SHORT_ROOFING_NAIL = Nail(
    name="short_roofing_nail",
    length=0.875,
    shank=0.1205,
    head=0.4375,
    head_thickness=0.05,
    box_weight=5.0,
)
LONG_ROOFING_NAIL = Nail(
    name="long_roofing_nail",
    length=1.75,
    shank=0.1205,
    head=0.4375,
    head_thickness=0.05,
    box_weight=5.0,
)
DECK_NAIL = Nail(
    name="deck_nail", length=2.5, shank=0.131, head=0.281, head_thickness=0.05, box_weight=5.0
)
CAP_NAIL = CapNail(name="cap_nail", length=1.0, cap=1.0, per_box=1000, box_weight=6.0)

#: 10.1 fl oz is 18.23 in3; a US gallon is 231 in3.
CARTRIDGE = Sealant(
    name="sealant_cartridge", pack="cartridge", volume=10.1 * 231 / 128, pack_weight=1.0
)
CEMENT_CAN = Sealant(name="cement_can", pack="can", volume=231.0, pack_weight=11.0)

#: 4 x 8 ft: the trade's panel. 15/32 in is the 32/16 span rating's thickness, from memory.
PLYWOOD = Panel(name="plywood", length=96.0, width=48.0, thickness=0.46875, weight=46.0)
STRAND_BOARD = Panel(name="strand_board", length=96.0, width=48.0, thickness=0.4375, weight=46.0)
BOARDS = Panel(name="boards", length=96.0, width=48.0, thickness=0.75, weight=70.0)

#: 4 in wide or more over panel joints: building code 1507.1.1 and the federal fact sheet 7.2.
JOINT_TAPE = Tape(name="joint_tape", width=4.0, length=75 * FEET, weight=3.0)
