"""Whose pages may ask from a browser: nobody's unless the operator says so, by origin.

The headers are those of the Fetch standard (https://fetch.spec.whatwg.org/#http-cors-protocol).
"""

from __future__ import annotations

from argparse import ArgumentTypeError

import pytest
from starlette.testclient import TestClient

from roofing_api.app import make_app
from roofing_api.origins import origin

HERS, THEIRS = "https://shop.example", "https://other.example"
AREA = "/v1/area?eave_length=14ft&slope_length=9ft4in"
PREFLIGHT = {
    "Access-Control-Request-Method": "POST",
    "Access-Control-Request-Headers": "content-type",
}


@pytest.fixture(scope="module")
def opened():
    with TestClient(make_app((HERS,))) as client:
        yield client


def permission(answer):
    return answer.headers.get("access-control-allow-origin")


def test_without_the_operators_word_no_page_may_ask(client):
    answer = client.get(AREA, headers={"Origin": HERS})
    assert permission(answer) is None
    assert answer.headers["vary"] == "Accept"
    asked = client.options("/v1/plans", headers={"Origin": HERS, **PREFLIGHT})
    assert not [name for name in asked.headers if name.startswith("access-control-")]


def test_pages_of_an_allowed_origin_may_ask_and_no_others(opened):
    assert permission(opened.get(AREA, headers={"Origin": HERS})) == HERS
    assert permission(opened.get(AREA, headers={"Origin": THEIRS})) is None
    asked = opened.options("/v1/plans", headers={"Origin": HERS, **PREFLIGHT})
    assert (asked.status_code, permission(asked)) == (200, HERS)
    assert "POST" in asked.headers["access-control-allow-methods"]
    assert "content-type" in asked.headers["access-control-allow-headers"].lower()
    refused = opened.options("/v1/plans", headers={"Origin": THEIRS, **PREFLIGHT})
    assert (refused.status_code, permission(refused)) == (400, None)


def test_they_can_read_problems_too_and_send_no_credentials(opened):
    answer = opened.get("/v1/area", headers={"Origin": HERS})
    assert (answer.status_code, permission(answer)) == (422, HERS)
    assert "access-control-allow-credentials" not in answer.headers


@pytest.mark.parametrize("headers", [{}, {"Origin": HERS}, {"Origin": THEIRS}])
@pytest.mark.parametrize("path", [AREA, "/v1/area", "/healthz"])
def test_caches_keep_the_answers_to_each_origin_apart(opened, path, headers):
    """A shared cache gives what it kept to whoever asks alike in the headers that Vary names."""
    vary = opened.get(path, headers=headers).headers["vary"]
    assert "origin" in vary.lower().replace(" ", "").split(",")


def test_all_origins_at_once():
    with TestClient(make_app(("*",))) as everybodys:
        assert permission(everybodys.get(AREA, headers={"Origin": THEIRS})) == "*"


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("https://example.org", "https://example.org"),
        ("https://Example.org/", "https://example.org"),
        ("http://127.0.0.1:8080", "http://127.0.0.1:8080"),
        ("https://example.org:443", "https://example.org"),
        ("http://[::1]:8080", "http://[::1]:8080"),
        ("*", "*"),
    ],
)
def test_an_origin_is_read_as_a_browser_sends_it(text, read):
    """By RFC 6454, section 6.2."""
    assert origin(text) == read


@pytest.mark.parametrize(
    "text",
    ["", "example.org", "https://", "https://example.org/shop", "ftp://example.org", "null",
     "https://a@example.org", "https://example.org:x", "https://example.org?x"],
)  # fmt: skip
def test_what_is_no_origin_is_refused(text):
    with pytest.raises(ArgumentTypeError, match="write an origin such as"):
        origin(text)
