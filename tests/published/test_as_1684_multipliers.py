"""Multipliers for roof members by whole degrees: a technical college's carpentry notes.

"Multiplier table", notes to AS 1684 (residential timber-framed construction), 10 to 40 degrees:
for 1 m of run the length of the rafter, the length of the hip, and the rise; and the shortening of
creeper (jack) rafters spaced 600 mm, in metres.
"""

from __future__ import annotations

import pytest

from roofing_core.measures.reading import read_pitch
from roofing_core.roof.hips import jack_difference
from roofing_core.roof.pitch import hip_valley_factor, slope_factor

# Printed to five places; a few figures are cut off and not rounded.
LAST_PLACE = 0.00001  # m per m of run

#: Degrees: rafter, hip, rise, shortening.
PRINTED = {
    10: (1.01543, 1.42516, 0.17633, 0.60926),
    11: (1.01872, 1.42751, 0.19438, 0.61123),
    12: (1.02234, 1.43010, 0.21256, 0.61340),
    13: (1.02630, 1.43293, 0.23087, 0.61578),
    14: (1.03061, 1.43602, 0.24933, 0.61837),
    15: (1.03528, 1.43937, 0.26795, 0.62117),
    16: (1.04030, 1.44299, 0.28675, 0.62418),
    17: (1.04569, 1.44688, 0.30573, 0.62742),
    18: (1.05146, 1.45106, 0.32492, 0.63088),
    19: (1.05762, 1.45553, 0.34433, 0.63457),
    20: (1.06418, 1.46030, 0.36397, 0.63851),
    21: (1.07114, 1.46538, 0.38386, 0.64269),
    22: (1.07853, 1.47079, 0.40403, 0.64712),
    23: (1.08636, 1.47654, 0.42447, 0.65182),
    24: (1.09464, 1.48264, 0.44523, 0.65678),
    25: (1.10338, 1.48911, 0.46631, 0.66203),
    26: (1.11260, 1.49596, 0.48773, 0.66756),
    27: (1.12233, 1.50320, 0.50953, 0.67340),
    28: (1.13257, 1.51087, 0.53171, 0.67954),
    29: (1.14335, 1.51897, 0.55431, 0.68601),
    30: (1.15470, 1.52753, 0.57735, 0.69282),
    31: (1.16663, 1.53657, 0.60086, 0.69998),
    32: (1.17918, 1.54611, 0.62487, 0.70751),
    33: (1.19236, 1.55619, 0.64941, 0.71542),
    34: (1.20622, 1.56683, 0.67451, 0.72373),
    35: (1.22077, 1.57807, 0.70021, 0.73246),
    36: (1.23607, 1.58993, 0.72654, 0.74164),
    37: (1.25214, 1.60245, 0.75355, 0.75128),
    38: (1.26902, 1.61568, 0.78129, 0.76141),
    39: (1.28676, 1.62965, 0.80978, 0.77206),
    40: (1.30541, 1.64441, 0.83910, 0.78324),
}


@pytest.mark.parametrize(("degrees", "row"), PRINTED.items())
def test_multipliers_of_a_pitch_written_in_degrees(degrees, row):
    rafter, hip, rise, _ = row
    pitch = read_pitch(f"{degrees} deg")
    assert pitch == pytest.approx(rise, abs=LAST_PLACE)
    assert slope_factor(pitch) == pytest.approx(rafter, abs=LAST_PLACE)
    assert hip_valley_factor(pitch) == pytest.approx(hip, abs=LAST_PLACE)


@pytest.mark.parametrize(("degrees", "row"), PRINTED.items())
def test_shortening_of_creepers_at_600_mm(degrees, row):
    pitch = read_pitch(f"{degrees} deg")
    assert jack_difference(0.6, pitch_1=pitch, pitch_2=pitch) == pytest.approx(
        row[3], abs=LAST_PLACE
    )
