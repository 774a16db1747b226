"""Lengths of degrees and seconds on the ellipsoid of WGS 84: a chart, and a question answered.

The chart, of angles to distances at a latitude, is read out at 48 degrees north, to 1 cm a second.
The answer, of the lengths of a degree at the Equator and at the pole, is in whole metres, that of
longitude to 10 m.
"""

from __future__ import annotations

from math import radians

import pytest

from roofing_core.roof.tangent_plane import on_tangent_plane

INCH = 0.0254
SECOND = radians(1 / 3600)


def seconds(latitude: float) -> tuple[float, float]:
    """Give metres to a second of longitude, and of latitude, at a latitude in degrees."""
    lat = radians(latitude)
    _, (east, _), (_, north) = on_tangent_plane(
        [(0.0, lat), (SECOND, lat), (0.0, lat + SECOND)]
    )  # fmt: skip
    return east * INCH, north * INCH


def test_the_chart_at_48_degrees():
    assert seconds(48) == pytest.approx((20.73, 30.89), abs=0.005)


def test_degrees_at_the_equator_and_at_the_pole():
    longitude, latitude = (3600 * metres for metres in seconds(0))
    assert longitude == pytest.approx(111_320, abs=5)
    assert latitude == pytest.approx(110_574, abs=0.5)
    longitude, latitude = (3600 * metres for metres in seconds(90))
    assert longitude == pytest.approx(0, abs=0.5)
    assert latitude == pytest.approx(111_694, abs=0.5)
