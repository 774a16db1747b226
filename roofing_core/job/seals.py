"""What a job seals and with how much: beads, dabs, laps and bedding."""

from __future__ import annotations

from roofing_core.job.capping import CapRun
from roofing_core.job.edges import EdgeRun
from roofing_core.job.flashing import OpeningFlashed
from roofing_core.job.shingles import ShinglesLaid
from roofing_core.job.wiring import Site, Wired
from roofing_core.layers.coursing.laid import LaidCourse
from roofing_core.layers.coursing.nailing import hand_sealed, hand_sealing_dabs
from roofing_core.layers.sealant import Sealant, sealant

_SEALANT = Wired(
    sealant,
    bead_size="sealing.bead_size",
    bead_section="sealing.bead_section",
    dab_diameter="sealing.dab_diameter",
    dab_thickness="sealing.dab_thickness",
    bedding_thickness="sealing.bedding_thickness",
    cartridge="sealant.volume",
    can="cement.volume",
)

#: Metal that is nailed through its face, over the courses.
_NAILED_THROUGH = frozenset({"ridge", "headwall"})

#: Of the nails in the base of a pipe's flashing one half is below the pipe, over the courses.
_BARE_PART = 2


def seal(
    site: Site,
    *,
    metal: tuple[EdgeRun, ...],
    courses: tuple[LaidCourse, ...],
    shingles: ShinglesLaid,
    caps: tuple[CapRun, ...] = (),
    openings: tuple[OpeningFlashed, ...] = (),
) -> Sealant:
    """Give the sealant and cement that a roof takes.

    Beads run under each of the two legs of the ridge metal; a bead crosses every lap of metal; a
    dab goes on every nail through the ridge metal and through that at the foot of a wall, of a
    closing course, and of a last cap; on planes above 21:12 every
    shingle is sealed by hand as well. Closing
    courses are bedded.

    Args:
        site: The roof with its choices.
        metal: The runs of metal.
        courses: The courses.
        shingles: What they come to.
        caps: The caps of hips and ridges.
        openings: The openings with their flashings; nothing covers the nails of an apron, nor those
            of a pipe's base below the pipe.

    Returns:
        The volumes, cartridges and cans.

    Raises:
        Refused: A size or a pack cannot be; names the caller's fields.

    Source:
        Two beads under each leg and a dab on each exposed nail are common practice, no published
        source; hand sealing above 21:12 is in the shingle makers' association's bulletin.

    >>> from roofing_core.job.edges import lay_metal
    >>> from roofing_core.job.shingles import lay_shingles
    >>> from roofing_core.job.wiring import site_of
    >>> from roofing_core.roof.planes import SingleSlope
    >>> site = site_of(SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    >>> _, courses, shingles = lay_shingles(site)
    >>> seal(site, metal=lay_metal(site), courses=courses, shingles=shingles).cartridges
    3
    """
    ridge = [run for run in metal if run.edge == "ridge"]
    closing = sum(course.nails for course in courses if not course.nailable)
    steep = {plane.name for plane in site.surfaces.planes if hand_sealed(plane.pitch)}
    by_hand = sum(course.pieces for course in courses if course.plane in steep)
    bare = sum(run.nails for run in metal if run.edge in _NAILED_THROUGH)
    dabs = bare + closing + sum(run.exposed_nails for run in caps)
    dabs += sum(piece.nails for one in openings for piece in one.aprons)
    dabs += sum(pipe.nails // _BARE_PART for one in openings for pipe in one.pipes)
    dabs += hand_sealing_dabs(by_hand, kind=site.choices.shingle.kind)
    across = [(len(run.laps), run.deck_leg + run.face_leg) for run in metal if run.laps]
    laps = sum(count for count, _ in across)
    return _SEALANT(
        site,
        bead_length=2 * site.choices.sealing.beads_per_leg * sum(run.run_length for run in ridge),
        dabs=dabs,
        laps=laps,
        lap_bead=sum(count * bead for count, bead in across) / laps if laps else 0.0,
        bedding_area=shingles.bedding_area,
    )
