"""Shingle makers' association, technical bulletin on slopes over 21:12: sealing by hand.

Spots of cement about 1 in across: 4 under a laminated shingle, 2 under each of the three tabs.
"""

from __future__ import annotations

import pytest

from roofing_core.layers.coursing.nailing import hand_sealed, hand_sealing_dabs
from roofing_core.layers.sealant import DAB_DIAMETER


@pytest.mark.parametrize(("kind", "printed"), [("laminated", 4), ("three_tab", 2 * 3)])
def test_spots_of_cement_under_a_shingle(kind, printed):
    assert hand_sealing_dabs(1, kind=kind) == printed
    assert hand_sealing_dabs(25, kind=kind) == 25 * printed


def test_where_it_begins():
    assert not hand_sealed(21 / 12)
    assert hand_sealed(22 / 12)


def test_size_of_a_spot():
    assert DAB_DIAMETER == 1  # in, "the size of a quarter"
