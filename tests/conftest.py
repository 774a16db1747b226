"""What all tests share: how random cases are drawn, and the example roof of the documentation."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, settings

from roofing_core import Job, SingleSlope

# The same cases on every machine and in every run: a test that fails for one fails for all.
settings.register_profile(
    "reproducible",
    derandomize=True,
    deadline=None,
    database=None,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("reproducible")


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the option that writes the kept digits anew; without it they are only compared."""
    parser.addoption(
        "--write-regression",
        action="store_true",
        help="write tests/regression/plans.json anew instead of comparing with it",
    )


@pytest.fixture(scope="session")
def shed() -> Job:
    """Give the example shed: 14 ft of eave, 9 ft 4 in up a slope of 3:12, all else as it comes."""
    return Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12))
