"""What a job is asked with: the roof, its materials, and how the work is done.

Everything but the roof has a default, and a plan repeats all of it. The defaults are the layers'
own; those that no layer has stand here, each common practice, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Annotated, Literal

from roofing_core.job.on_site import (
    NO_VENTING,
    NO_WIND,
    UNKNOWN_WORK,
    USUAL_LOADING,
    Loading,
    Venting,
    Wind,
    Working,
)
from roofing_core.layers import caps as _caps
from roofing_core.layers import fasteners as _fasteners
from roofing_core.layers import metal as _metal
from roofing_core.layers import sealant as _sealant
from roofing_core.layers.coursing import courses as _courses
from roofing_core.layers.coursing import joints as _joints
from roofing_core.layers.coursing import nailing as _nailing
from roofing_core.layers.coursing import outline as _outline
from roofing_core.layers.coursing import sequences as _sequences
from roofing_core.layers.decking import deck_way as _deck
from roofing_core.layers.flashings import bent_pieces as _bent_pieces
from roofing_core.layers.flashings import crickets as _crickets
from roofing_core.layers.flashings import step_flashing as _step_flashing
from roofing_core.layers.metal import valleys as _valleys
from roofing_core.layers.underlaying import end_laps as _end_laps
from roofing_core.layers.underlaying import ice_barrier as _ice
from roofing_core.layers.underlaying import ice_reach as _reach
from roofing_core.layers.underlaying import sheet_fasteners as _sheets
from roofing_core.layers.underlaying import sheeting as _sheeting
from roofing_core.layers.underlaying import underlaid as _underlaid
from roofing_core.layers.underlaying import valley_lining as _lining
from roofing_core.materials import nominal
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
from roofing_core.measures.units import Inches
from roofing_core.measures.wording import Wording
from roofing_core.roof.measuring import AnyRoof
from roofing_core.roof.openings import Chimney, Skylight, VentPipe
from roofing_core.ruling.rule import EDITION, Edition

#: What a job is called, and what else is to be read on its sheets.
NAME, NOTES = Wording(80), Wording(1_000, lines=20)


@dataclass(frozen=True, slots=True, kw_only=True)
class Decking:
    """How the deck is laid, when it is part of the job.

    Attributes:
        lay: Whether the deck is part of the job.
        support_spacing: From rafter to rafter.
        edge_spacing: Between nails along supported panel edges.
        field_spacing: Between nails along the supports within a panel.
    """

    lay: bool = False
    support_spacing: Inches = _deck.SUPPORT_SPACING
    edge_spacing: Inches = _deck.EDGE_SPACING
    field_spacing: Inches = _deck.FIELD_SPACING


@dataclass(frozen=True, slots=True, kw_only=True)
class Underlaying:
    """How the underlayment is laid.

    Attributes:
        head_lap: Of each row over the one below, at 4:12 and up.
        end_lap: Where one roll goes on from another within a row.
        end_lap_stagger: Least distance between end laps of neighbouring rows.
        past_metal: How far the first row stands past the eave metal.
        trim_allowance: How much longer than the roof each row is cut, at each rake.
        over_edges: How far rows run over hips, ridges and valleys, square to them.
        ice_barrier: Whether an ice barrier is laid first, where the area has ice damming.
        inside_wall: How far inside the wall line an ice barrier reaches, measured level.
        over_ice_barrier: How far the first row of underlayment laps over the ice barrier.
        ice_barrier_head_lap: Of each row of ice barrier over the one below.
        ice_barrier_end_lap: Where one roll of ice barrier goes on from another.
        lap_spacing: Between cap nails along eave and laps.
        field_spacing: Between cap nails in the lines within a row.
        field_lines: Lines of cap nails within a row.
    """

    head_lap: Inches = _end_laps.HEAD_LAP
    end_lap: Inches = _end_laps.END_LAP
    end_lap_stagger: Inches = _end_laps.END_LAP_STAGGER
    past_metal: Inches = _end_laps.PAST_METAL
    trim_allowance: Inches = _end_laps.TRIM_ALLOWANCE
    over_edges: Inches = _sheeting.OVER_EDGES
    ice_barrier: bool = False
    inside_wall: Inches = _reach.INSIDE_WALL
    over_ice_barrier: Inches = _underlaid.OVER_ICE_BARRIER
    ice_barrier_head_lap: Inches = _end_laps.HEAD_LAP
    ice_barrier_end_lap: Inches = _ice.END_LAP
    lap_spacing: Inches = _sheets.LAP_SPACING
    field_spacing: Inches = _sheets.FIELD_SPACING
    field_lines: int = _sheets.FIELD_LINES


@dataclass(frozen=True, slots=True, kw_only=True)
class Coursing:
    """How the shingles are laid.

    Attributes:
        starter_past_metal: How far the starter stands past the eave metal.
        course_past_starter: How far the first course stands past the starter; 0 is flush.
        shingle_past_rake: How far shingles stand past the rake metal.
        edge_distance: No nail nearer than this to the top edge of the deck.
        minimum_clearance: Least distance between joints of neighbouring courses.
        minimum_end_piece: Least width of a piece at a rake.
    """

    starter_past_metal: Inches = _courses.STARTER_PAST_METAL
    course_past_starter: Inches = _courses.COURSE_PAST_STARTER
    shingle_past_rake: Inches = _joints.SHINGLE_PAST_RAKE
    edge_distance: Inches = _courses.EDGE_DISTANCE
    minimum_clearance: Inches = _sequences.MINIMUM_CLEARANCE
    minimum_end_piece: Inches = _sequences.MINIMUM_END_PIECE


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """How the pieces share the shingles that are bought.

    Attributes:
        reuse: Whether what one piece leaves of a shingle serves another: none, as a person alone
            with a knife works; best, from the fewest shingles.
        caps_from: What self-made caps are cut from: bundles of their own, or the shingles of the
            field, where those can be cut into caps.
    """

    reuse: Literal["none", "best"] = "none"
    caps_from: Literal["own_bundles", "field_shingles"] = "own_bundles"


@dataclass(frozen=True, slots=True, kw_only=True)
class Metalwork:
    """How the edge metal is laid.

    Attributes:
        buying: ``run_by_run``: each run is cut from lengths of its own; ``across_runs``: all runs
            of one profile are bought for together, from all its stock lengths, the least metal that
            will do, and what is left of a length goes on to another run.
        lap: Of one length over the next.
        eave_tab: Bent round the corner at each end of the eave metal, under the rake metal.
        ridge_proud: How far the ridge metal stands past the rake metal at each end.
        nail_spacing: Between nails, at most.
        ridge_nail_spacing: Between nails of the ridge metal, at most.
        end_distance: From the end of a run to its first nail.
        least_piece: No piece of metal is cut shorter.
        nail_cover: The ridge metal reaches at least this far past the nails that it covers.
    """

    buying: Literal["run_by_run", "across_runs"] = "run_by_run"
    lap: Inches = _metal.LAP
    eave_tab: Inches = 2.0
    ridge_proud: Inches = 0.25
    nail_spacing: Inches = _metal.NAIL_SPACING
    ridge_nail_spacing: Inches = _metal.NAIL_SPACING
    end_distance: Inches = _metal.END_DISTANCE
    least_piece: Inches = _metal.LEAST_PIECE
    nail_cover: Inches = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Nailing:
    """How the shingles are nailed.

    Attributes:
        high_wind: Whether six nails go into each strip, and cap nails into a closer pattern.
        end_distance: From the end of a strip to its first nail.
        deck_penetration: Depth that a nail reaches into a deck that is thick enough.
    """

    high_wind: bool = False
    end_distance: Inches = _nailing.END_DISTANCE
    deck_penetration: Inches = _fasteners.INTO_DECK


@dataclass(frozen=True, slots=True, kw_only=True)
class Sealing:
    """How metal, nails and closing courses are sealed.

    Attributes:
        beads_per_leg: Beads under each leg of the ridge metal.
        bead_size: Of a bead: its diameter, or its side.
        bead_section: The shape of a bead.
        dab_diameter: Of the dab on an exposed nail.
        dab_thickness: Of that dab.
        bedding_thickness: Of the asphalt cement under a closing course.
    """

    beads_per_leg: int = 2
    bead_size: Inches = _sealant.BEAD_SIZE
    bead_section: _sealant.Section = "round"
    dab_diameter: Inches = _sealant.DAB_DIAMETER
    dab_thickness: Inches = _sealant.DAB_THICKNESS
    bedding_thickness: Inches = _sealant.BEDDING_THICKNESS


@dataclass(frozen=True, slots=True, kw_only=True)
class Valleying(_outline.ValleyWay):
    """How shingles and metal are laid at valleys.

    Attributes:
        past_eave: How far the metal of a valley starts below its foot, to be cut off at the eaves.
        over_ridge: How far it goes on over its top.
        lining_past_foot: How much longer than the valley its lining is cut at the foot.
        lining_over_top: How much longer at the top.
        lining_end_lap: Of a piece of lining over the one below.
    """

    past_eave: Inches = _valleys.PAST_EAVE
    over_ridge: Inches = _valleys.OVER_RIDGE
    lining_past_foot: Inches = _lining.PAST_FOOT
    lining_over_top: Inches = _lining.OVER_TOP
    lining_end_lap: Inches = _lining.END_LAP


@dataclass(frozen=True, slots=True, kw_only=True)
class Capping:
    """How hips and ridges are capped.

    Attributes:
        wind_from: The side that the prevailing wind comes from, as seen from the front; ridges are
            capped from the end away from it.
        nail_above: From the butt of the next cap up to the nails of each.
        side_distance: From the edge of a cap to its nail.
    """

    wind_from: Literal["left", "right", "front", "back", "unknown"] = "unknown"
    nail_above: Inches = _caps.NAIL_ABOVE
    side_distance: Inches = _caps.SIDE_DISTANCE


@dataclass(frozen=True, slots=True, kw_only=True)
class Flashing:
    """How walls and openings are flashed.

    Attributes:
        short_of_butt: From the butt of a course up to the step flashing under it.
        past_corner: How much of an apron or a head flashing is folded round each corner.
        head_height: Of the leg of a head flashing, or of a cricket's metal, up the opening.
        under_covering: How far the metal of a cricket reaches under the courses beside it.
        cricket: Whether a chimney has a cricket: where it must, being over 30 in wide, or always,
            or never.
    """

    short_of_butt: Inches = _step_flashing.SHORT_OF_BUTT
    past_corner: Inches = _bent_pieces.PAST_CORNER
    head_height: Inches = _bent_pieces.LEAST_HEIGHT
    under_covering: Inches = _crickets.UNDER_COVERING
    cricket: Literal["where_required", "always", "never"] = "where_required"


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """The materials, and how the work is done.

    Attributes:
        panel: The deck's panels; their thickness counts for nails also where no deck is laid.
        joint_tape: Tape over the deck's joints.
        eave_metal: Metal along the eave.
        rake_metal: Metal along the rakes.
        ridge_metal: Metal over a top edge that no plane lies beyond.
        valley_metal: Metal in open valleys, its two legs on either side of the middle.
        pitch_break_metal: Metal where a slope turns flatter or steeper.
        apron_metal: Metal where a plane ends at the foot of a wall.
        underlayment: Underlayment.
        valley_lining: Lining of valleys, under their metal or under closed ones.
        ice_barrier: Ice barrier.
        starter: Starter.
        shingle: Shingles.
        cap: Caps for hips and ridges.
        step_flashing: Step flashing beside walls, chimneys and skylights.
        pipe_flashing: Flashing for pipes.
        flashing_sheet: Flat metal that the pieces round chimneys and skylights are bent from.
        shingle_nail: Nails for shingles and starter.
        metal_nail: Nails for metal.
        cap_nail: Nails for underlayment.
        deck_nail: Nails for the deck.
        sealant: Sealant for beads and dabs.
        cement: Asphalt cement for bedding.
        decking: How the deck is laid.
        underlaying: How the underlayment is laid.
        coursing: How the shingles are laid.
        cutting: How the pieces share the shingles that are bought.
        metalwork: How the metal is laid.
        nailing: How the shingles are nailed.
        sealing: How things are sealed.
        valleying: How shingles and metal are laid at valleys.
        capping: How hips and ridges are capped.
        flashing: How walls and openings are flashed.
        wind: The wind that the roof is to stand, where it is known.
        venting: The vented space under the roof and its vents, where there is one.
        loading: What the roof has to carry.
        working: How the work goes on there: what chooses the cautions.
        code_edition: Edition of the residential code that the plan is held to; local code governs.
    """

    panel: Panel = nominal.PLYWOOD
    joint_tape: Tape = nominal.JOINT_TAPE
    eave_metal: Metal = nominal.EAVE_METAL
    rake_metal: Metal = nominal.RAKE_METAL
    ridge_metal: Metal = nominal.RIDGE_METAL
    valley_metal: Metal = nominal.VALLEY_METAL
    pitch_break_metal: Metal = nominal.PITCH_BREAK_METAL
    apron_metal: Metal = nominal.APRON_METAL
    underlayment: Roll = nominal.FELT_15
    valley_lining: Roll = nominal.VALLEY_LINING
    ice_barrier: Roll = nominal.ICE_BARRIER
    starter: Starter = nominal.SELF_MADE_STARTER
    shingle: Shingle = nominal.METRIC_STRIP
    cap: Cap = nominal.METRIC_CAP
    step_flashing: StepFlashing = nominal.STEP_FLASHING
    pipe_flashing: PipeFlashing = nominal.PIPE_FLASHING
    flashing_sheet: Sheet = nominal.FLASHING_SHEET
    shingle_nail: Nail = nominal.ROOFING_NAIL
    metal_nail: Nail = nominal.ROOFING_NAIL
    cap_nail: CapNail = nominal.CAP_NAIL
    deck_nail: Nail = nominal.DECK_NAIL
    sealant: Sealant = nominal.CARTRIDGE
    cement: Sealant = nominal.CEMENT_CAN
    decking: Decking = Decking()
    underlaying: Underlaying = Underlaying()
    coursing: Coursing = Coursing()
    cutting: Cutting = Cutting()
    metalwork: Metalwork = Metalwork()
    nailing: Nailing = Nailing()
    sealing: Sealing = Sealing()
    valleying: Valleying = Valleying()
    capping: Capping = Capping()
    flashing: Flashing = Flashing()
    wind: Wind = NO_WIND
    venting: Venting = NO_VENTING
    loading: Loading = USUAL_LOADING
    working: Working = UNKNOWN_WORK
    code_edition: Edition = EDITION


_CHOICES = tuple(field.name for field in fields(Choices))


@dataclass(frozen=True, slots=True, kw_only=True)
class Job(Choices):
    """A roof to plan, with its materials and how the work is done.

    Attributes:
        roof: The roof as it was measured.
        openings: What comes through it: pipes, skylights, chimneys, each on the plane it names; the
            plane of a single slope is called slope.
        name: What the job is called, for the sheets: up to 80 characters.
        notes: What else is to be read on the sheets: up to 1,000 characters in 20 lines.
    """

    roof: AnyRoof
    openings: tuple[VentPipe | Skylight | Chimney, ...] = ()
    name: Annotated[str, NAME] = ""
    notes: Annotated[str, NOTES] = ""

    def choices(self) -> Choices:
        """Give everything but the roof."""
        return Choices(**{name: getattr(self, name) for name in _CHOICES})
