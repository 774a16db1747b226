"""From longitude and latitude to a plan: the plane that touches the Earth at the roof.

Within 1 km a length in that plane is short by no more than 13 parts in a thousand million. What is
left out is larger: a roof 1,000 m above the ellipsoid is 1 part in 6,400 larger than the angles
say, and the digits written after the point count for more than either.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, sin, sqrt

from roofing_core.measures.units import Inches, Radians
from roofing_core.roof.polygons import Point

#: The semi-major axis of the ellipsoid of WGS 84, in metres, and its flattening (EPSG 7030, after
#: NIMA TR 8350.2).
LARGEST_RADIUS, FLATTENING = 6_378_137.0, 1 / 298.257223563

_SQUARED = FLATTENING * (2 - FLATTENING)


def on_tangent_plane(positions: Sequence[tuple[Radians, Radians]]) -> tuple[Point, ...]:
    """Give places on Earth in a plan around the first of them.

    With ``N(lat) = a / sqrt(1 - e2 * sin(lat) ** 2)``: ``x = N * cos(lat) * sin(lon - lon0)`` to
    the east, and to the north ``y = N * ((1 - e2) * sin(lat) * cos(lat0)
    - cos(lat) * sin(lat0) * cos(lon - lon0))``, less the same for the first place.

    Args:
        positions: Longitude and latitude of each.

    Returns:
        (x, y) of each, to the east and to the north of the first.

    Raises:
        Nothing.

    Source:
        Geodesy: the ellipsoid in Cartesian coordinates, turned to the place (any textbook).

    >>> east = on_tangent_plane([(0.0, 0.0), (1e-6, 0.0)])[1][0]
    >>> round(east * 0.0254, 6)  # a millionth of the radius
    6.378137
    """
    lon0, lat0 = positions[0]
    north0 = _north(0.0, lat0, lat0)
    return tuple(
        (inches(_radius(lat) * cos(lat) * sin(lon - lon0)),
         inches(_north(lon - lon0, lat, lat0) - north0))
        for lon, lat in positions
    )  # fmt: skip


def inches(metres: float) -> Inches:
    """Give metres in inches.

    Args:
        metres: Any length.

    Returns:
        The same in inches.

    Raises:
        Nothing.

    Source:
        The international inch, exactly 25.4 mm.

    >>> inches(25.4)
    1000.0
    """
    return metres * 10_000 / 254


def _radius(lat: float) -> float:
    return LARGEST_RADIUS / sqrt(1 - _SQUARED * sin(lat) ** 2)


def _north(east: float, lat: float, lat0: float) -> float:
    across = (1 - _SQUARED) * sin(lat) * cos(lat0) - cos(lat) * sin(lat0) * cos(east)
    return _radius(lat) * across
