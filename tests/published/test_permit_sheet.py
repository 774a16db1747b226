"""Permit calculation for solar panels on a roof (after ASCE 7-05): the dead load of that roof."""

from __future__ import annotations

import pytest

from roofing_core.layers.weight import Load, weights


def test_dead_load_adds_up():
    # Two layers of shingles 5.0, felt 0.5, plywood 1.5, rafters 1.7, other 1.3: 10.0 psf.
    psf = {"shingles": 5.0, "felt": 0.5, "plywood": 1.5, "rafters": 1.7, "other": 1.3}
    loads = tuple(
        Load(name=name, on_deck=100 * weight, to_carry=0, heaviest=0)
        for name, weight in psf.items()
    )
    weighed = weights(loads, slope_area=100 * 144, pitch=0)
    assert weighed.per_slope_area == pytest.approx(10.0, abs=0.05)  # psf, to a tenth
