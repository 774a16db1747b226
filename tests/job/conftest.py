"""A job with nothing to find, to be spoilt in one thing at a time."""

from __future__ import annotations

from dataclasses import replace

import pytest

from roofing_core import Job, SingleSlope


@pytest.fixture(scope="session")
def clean(shed: Job) -> Job:
    """Give the example at 5:12 with 30 shingles in a bundle: 105 are used, 15 left, no findings."""
    return replace(
        shed,
        roof=SingleSlope(eave_length=168, slope_length=112, pitch=5 / 12),
        shingle=replace(shed.shingle, per_bundle=30),
    )
