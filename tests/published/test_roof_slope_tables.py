"""Tables of an online roofing reference: slope in degrees and percent, hip and valley factor.

Three pages of one site: "Roof slope equivalents" (degrees to 1/100, percent to 1/1000),
"Roof pitch to degrees" (half pitches, degrees to 1/100) and "Hip and valley factor table" (four
places).
"""

from __future__ import annotations

from math import degrees

import pytest

from roofing_core.measures.reading import read_pitch
from roofing_core.roof.pitch import hip_valley_factor, pitch_angle, pitch_factors

HALF_A_HUNDREDTH = 0.005  # deg
HALF_A_THOUSANDTH = 0.0005  # percent

EQUIVALENTS = {
    1: (4.76, 8.333), 2: (9.46, 16.667), 3: (14.04, 25.000), 4: (18.43, 33.333),
    5: (22.62, 41.667), 6: (26.57, 50.000), 7: (30.26, 58.333), 8: (33.69, 66.667),
    9: (36.87, 75.000), 10: (39.81, 83.333), 11: (42.51, 91.667), 12: (45.00, 100.000),
    13: (47.29, 108.333), 14: (49.40, 116.667), 15: (51.34, 125.000), 16: (53.13, 133.333),
    17: (54.78, 141.667), 18: (56.31, 150.000), 19: (57.72, 158.333), 20: (59.04, 166.667),
    21: (60.26, 175.000), 22: (61.39, 183.333), 23: (62.45, 191.667), 24: (63.43, 200.000),
    25: (64.36, 208.333), 26: (65.22, 216.667), 27: (66.04, 225.000), 28: (66.80, 233.333),
    29: (67.52, 241.667), 30: (68.20, 250.000),
}  # fmt: skip


@pytest.mark.parametrize(("rise", "printed"), EQUIVALENTS.items())
def test_angle_and_percent(rise, printed):
    factors = pitch_factors(rise / 12)
    assert degrees(factors.angle) == pytest.approx(printed[0], abs=HALF_A_HUNDREDTH)
    assert factors.percent == pytest.approx(printed[1], abs=HALF_A_THOUSANDTH)


@pytest.mark.parametrize(("rise", "printed"), EQUIVALENTS.items())
def test_what_is_printed_reads_as_the_pitch(rise, printed):
    # 1/200 of a degree is at most 0.0001 x (1 + pitch ** 2) of pitch.
    of_a_degree = 0.0001 * (1 + (rise / 12) ** 2)
    assert read_pitch(f"{printed[0]} deg") == pytest.approx(rise / 12, abs=of_a_degree)
    assert read_pitch(f"{printed[1]} %") == pytest.approx(rise / 12, abs=HALF_A_THOUSANDTH / 100)


HALF_PITCHES = {
    "1/8": 0.60, "1/4": 1.19, "1/2": 2.39, "1.5": 7.13, "2.5": 11.77, "3.5": 16.26, "4.5": 20.56,
    "5.5": 24.62, "6.5": 28.44, "7.5": 32.01, "8.5": 35.31, "9.5": 38.37, "10.5": 41.19,
    "11.5": 43.78,
}  # fmt: skip


@pytest.mark.parametrize(("rise", "printed"), HALF_PITCHES.items())
def test_angle_of_half_pitches(rise, printed):
    angle = degrees(pitch_angle(read_pitch(f"{rise} in 12")))
    assert angle == pytest.approx(printed, abs=HALF_A_HUNDREDTH)


# Four places, the last not always rounded to the nearest (3:12 is 1.43614, 15:12 is 1.88746).
LAST_PLACE = 0.0001

HIP_AND_VALLEY = {
    1: 1.4167, 2: 1.4240, 3: 1.4362, 4: 1.4529, 5: 1.4743, 6: 1.5000, 7: 1.5298, 8: 1.5635,
    9: 1.6008, 10: 1.6415, 11: 1.6853, 12: 1.7321, 13: 1.7815, 14: 1.8333, 15: 1.8874,
    16: 1.9437, 17: 2.0017, 18: 2.0616, 19: 2.1230, 20: 2.1858,
}  # fmt: skip


@pytest.mark.parametrize(("rise", "printed"), HIP_AND_VALLEY.items())
def test_hip_and_valley_factor(rise, printed):
    assert hip_valley_factor(rise / 12) == pytest.approx(printed, abs=LAST_PLACE)
