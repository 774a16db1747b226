"""Finished covers: what is read of a plan about caps, valleys, walls and openings.

As `finished`: the names are the plan's own.
"""

from __future__ import annotations

from dataclasses import dataclass

from roofing_core.measures.units import Inches, SquareInches


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedCaps:
    """The caps of one hip or ridge; places are measured along it from where laying starts.

    Attributes:
        line: What they lie on.
        line_length: Length of it.
        butts: Place of each cap's butt, in the order of laying.
        last_length: What the last cap is cut to.
        half_width: How far the caps reach down each side of the line.
        nail_positions: Place of each cap's nails, one on each side of the line.
        nail_from_line: From the line to each nail.
        planes: The planes that meet in it.
        starts_at: The end at which laying starts.
        exposed_nails: Nails of the last cap that are dabbed.
        exposure: How much of each cap but the last shows; 0 where the plan does not say.
    """

    line: str
    line_length: Inches
    butts: tuple[Inches, ...]
    last_length: Inches
    half_width: Inches
    nail_positions: tuple[Inches, ...]
    nail_from_line: Inches
    planes: tuple[str, ...]
    starts_at: str
    exposed_nails: int = 0
    exposure: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedLine:
    """An edge of the roof, once.

    Attributes:
        kind: What it is.
        length: As it lies.
        planes: The names of the planes that have it.
    """

    kind: str
    length: Inches
    planes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedLiningPiece:
    """One piece of the lining of a valley.

    Attributes:
        valley: Place of its valley among those of the roof's lines, from 1.
        length: As cut.
        lap: How far it lies over the piece below it; 0 for the lowest.
    """

    valley: int
    length: Inches
    lap: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedLining:
    """The lining of all valleys.

    Attributes:
        pieces: Every piece, valley by valley, the lowest first.
    """

    pieces: tuple[FinishedLiningPiece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedValleying:
    """How valleys are laid.

    Attributes:
        lining_past_foot: How much longer than the valley its lining is cut at the foot.
    """

    lining_past_foot: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedStepPiece:
    """One piece of step flashing.

    Attributes:
        course: Number of the course that covers it.
        lower: Height of its lower edge.
        upper: Height of its upper edge.
    """

    course: int
    lower: Inches
    upper: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedStepRun:
    """The step flashing along one side of a wall or an opening.

    Attributes:
        pieces: One entry per piece, in the order of laying.
        opening: Number of the opening that it stands beside, from 1; 0 for a wall.
        plane: The plane that it lies on.
        side: At which end of the courses the wall stands, left or right.
        lower: Height of the lower end of the wall.
        upper: Height of its upper end.
        lap: How far each piece is said to lap the one below it; 0 where the plan does not say.
    """

    pieces: tuple[FinishedStepPiece, ...]
    opening: int
    plane: str
    side: str
    lower: Inches
    upper: Inches
    lap: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedBent:
    """A bent piece below or above an opening.

    Attributes:
        length: Along the eave, with what is folded round the corners.
        deck_leg: The leg on the roof.
        wall_leg: The leg up the opening.
        nails: Nails through the leg on the roof.
    """

    length: Inches
    deck_leg: Inches
    wall_leg: Inches
    nails: int


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedCricket:
    """A cricket behind a chimney.

    Attributes:
        height: Of its ridge above the roof, at the chimney's back.
        up_slope: How far it reaches up the roof, from the chimney's back.
        valley_length: Of each of its two valleys.
        metal_area: Of the metal that covers it, with all that it reaches under and up.
    """

    height: Inches
    up_slope: Inches
    valley_length: Inches
    metal_area: SquareInches


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedPipe:
    """The flashing of a pipe.

    Attributes:
        side_flange: From the pipe to each side of the base.
        slope_flange: From the pipe to the upper and to the lower edge of the base.
        nails: Nails in the base.
    """

    side_flange: Inches
    slope_flange: Inches
    nails: int


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedOpening:
    """An opening in the roof, and what goes round it beside step flashing.

    Attributes:
        number: From 1.
        kind: What comes through the roof.
        plane: The plane that it lies in.
        left: Its left side.
        right: Its right side.
        lower: Its lower side, up the slope.
        upper: Its upper side.
        aprons: The apron below it.
        heads: The head flashing above it.
        crickets: The cricket above it.
        pipes: The flashing of a pipe.
    """

    number: int
    kind: str
    plane: str
    left: Inches
    right: Inches
    lower: Inches
    upper: Inches
    aprons: tuple[FinishedBent, ...]
    heads: tuple[FinishedBent, ...]
    crickets: tuple[FinishedCricket, ...]
    pipes: tuple[FinishedPipe, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedCap:
    """A cap of a hip or ridge.

    Attributes:
        length: Along the line.
        width: Across it, before it is bent; 0 where the plan does not say.
    """

    length: Inches
    width: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedCapping:
    """How hips and ridges are capped.

    Attributes:
        wind_from: The side that the prevailing wind comes from, where it is known.
    """

    wind_from: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedLegs:
    """The legs of step flashing.

    Attributes:
        deck_leg: The leg on the deck.
        wall_leg: The leg up the wall.
        length: Of a piece, up the slope; 0 where the plan does not say.
    """

    deck_leg: Inches
    wall_leg: Inches
    length: Inches = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedFlashing:
    """How openings are flashed.

    Attributes:
        head_height: Of the leg of a cricket's metal up the chimney.
    """

    head_height: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedRoll:
    """A roll of a sheet.

    Attributes:
        width: Of the roll.
    """

    width: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedPipeBase:
    """The flashing for pipes.

    Attributes:
        base_width: Of its base, along the eave.
        base_length: Of its base, up the slope.
    """

    base_width: Inches
    base_length: Inches
