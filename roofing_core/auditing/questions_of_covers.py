"""Questions about valleys, caps and flashings: what covers the lines where planes end."""

from __future__ import annotations

from roofing_core.auditing.question import GEOMETRY, NAIL, PRACTICE, Question

_WALL = "International Residential Code, 2018, R905.2.8.3"

COVERS = (
    Question(
        code="valleys.lap",
        asks="Where the metal of a valley lies bare, or shingles that run through a closed one do,"
        " it reaches at least {} further under the shingles.",
        finds="{} under the shingles",
        limit="valley_lap",
        source="Professional Roofing, the roofing contractors' journal, April 2008, on open"
        f" valleys; on closed ones {PRACTICE}",
    ),
    Question(
        code="valleys.nails",
        asks="Each nail of a shingle stands at least {} from the middle of a valley.",
        finds="nail {} from the middle of the valley",
        limit="valley_nails",
        source="from memory: the shingle makers' association",
    ),
    Question(
        code="valleys.lining",
        asks="The lining of a closed valley reaches at least {} to each side of its middle.",
        finds="lining {} to each side",
        limit="lining",
        source="International Residential Code, 2018, R905.2.8.2",
    ),
    Question(
        code="valleys.top",
        asks="The metal of a valley and its lining go on at least {} past its top: over the ridge,"
        " under the shingles or under what lines the next valley.",
        finds="{} past the top",
        limit="valley_top",
        source=PRACTICE,
    ),
    Question(
        code="valleys.lined",
        asks="Each valley is lined over its whole length.",
        finds="{} of the valley without lining",
        source="International Residential Code, 2018, R905.2.8.2",
    ),
    Question(
        code="caps.spans",
        asks="Caps cover the whole of each hip, and of each ridge that two planes share.",
        finds="{} of it without caps",
        source=GEOMETRY,
    ),
    Question(
        code="caps.headlap",
        asks="Each cap reaches at least {} under the cap two above it.",
        finds="headlap {}",
        limit="headlap",
        source=PRACTICE,
    ),
    Question(
        code="caps.downhill",
        asks="Caps are laid from the lower end of a hip up, each over the one before it, and on a"
        " ridge from the end away from the wind that rains, where that is known.",
        finds="lap that faces the water",
        unit="count",
        source="a Canadian trade association's roofing manual, 9.4.5",
    ),
    Question(
        code="caps.nails_covered",
        asks="The nails of each cap but the last lie at least {} under the next one.",
        finds="nails {} under the next cap",
        limit="nail_cover",
        source=NAIL,
    ),
    Question(
        code="caps.nails_hold",
        asks="Each cap has its nails, and they go through it.",
        finds="without its nails, or with nails beside it",
        unit="count",
        source=GEOMETRY,
    ),
    Question(
        code="flashings.around",
        asks="Each opening has its flashing on all four sides: an apron below, step flashing on"
        " both sides, a head flashing or a cricket above; a pipe has its own.",
        finds="flashings missing: {}",
        unit="count",
        source="International Residential Code, 2018, R903.2",
    ),
    Question(
        code="flashings.spans",
        asks="Step flashing covers the whole of each side of a wall, a chimney or a skylight.",
        finds="{} of the side without step flashing",
        source=_WALL,
    ),
    Question(
        code="flashings.step_lap",
        asks="Each piece of step flashing laps the one below it by at least {}.",
        finds="lap {}",
        limit="step_lap",
        source="a residential trade journal's field guide",
    ),
    Question(
        code="flashings.steps",
        asks="Each piece of step flashing lies under its own course, and on the one below.",
        finds="beside its course",
        unit="count",
        source="a residential trade journal's field guide",
    ),
    Question(
        code="flashings.legs",
        asks="Flashing at a wall or an opening reaches at least {} out over the roof and up.",
        finds="leg of {}",
        limit="wall_leg",
        source=_WALL,
    ),
    Question(
        code="flashings.corners",
        asks="What goes below and above an opening reaches at least {} past each of its corners.",
        finds="{} past the corners",
        limit="metal_lap",
        source=PRACTICE,
    ),
    Question(
        code="flashings.cricket",
        asks="A chimney over {30 in} wide has a cricket.",
        finds="no cricket",
        unit="count",
        source="International Residential Code, 2018, R903.2.2",
    ),
    Question(
        code="flashings.cricket_lap",
        asks="The metal of a cricket covers it and reaches at least {} under the courses beside"
        " it.",
        finds="metal for {} under the courses",
        limit="valley_lap",
        source=PRACTICE,
    ),
    Question(
        code="flashings.pipe",
        asks="The base of a pipe's flashing reaches at least {} from the pipe all round.",
        finds="flange of {}",
        limit="pipe_flange",
        source=PRACTICE,
    ),
)
"""Those about valleys, caps and flashings, in the order in which they are asked."""
