"""What the tests of the service share: a client, and the example roof as it is asked for."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from starlette.testclient import TestClient

from roofing_api.app import app

#: The example shed of the documentation, as a query and as a body.
ROOF = {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}


@pytest.fixture(scope="session")
def client() -> Iterator[TestClient]:
    """Ask the application; a bug of ours is raised in the test."""
    with TestClient(app) as opened:
        yield opened


@pytest.fixture
def roof() -> dict[str, str]:
    """Give the example shed."""
    return dict(ROOF)
