"""Carpenters' and builders' guide, 1920s, volume 3: jacks (page 975) and "Height of ridge"."""

from __future__ import annotations

import pytest

from roofing_core.roof.hips import jack_difference
from roofing_core.roof.pitch import pitch_of
from roofing_core.roof.slopes import slope


def test_shortest_jack_16_in_apart():
    # 10 in of rise per ft, figure 1993: 20.83 in, printed to 1/100.
    assert jack_difference(16, pitch_1=10 / 12, pitch_2=10 / 12) == pytest.approx(20.83, abs=0.005)


def test_shortest_jack_20_in_apart():
    # Figure 1994, a square that gives whole inches here: 26.
    assert jack_difference(20, pitch_1=10 / 12, pitch_2=10 / 12) == pytest.approx(26, abs=0.5)


def test_height_of_ridge():
    # Ridge 5 ft 4 in above the plate, run 8 ft: 64 / 8 = 8 in per ft.
    assert 12 * pitch_of(rise=64, run=96) == 8
    assert slope(run=96, pitch=8 / 12).rise == pytest.approx(64)
