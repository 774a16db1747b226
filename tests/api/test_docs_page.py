"""The documentation page: everything that it loads is served here, and nothing else may load."""

from __future__ import annotations

import re

from roofing_api.docs_page import POLICY


def test_the_page_loads_only_what_the_service_serves(client):
    page = client.get("/docs")
    assert page.headers["content-type"] == "text/html; charset=utf-8"
    loaded = re.findall(r'(?:src|href)="([^"]+)"', page.text)
    assert loaded == [
        "/docs/swagger-ui.css",
        "/docs/favicon.png",
        "/docs/swagger-ui-bundle.js",
        "/docs/start.js",
    ]
    sizes = {path: len(client.get(path).content) for path in loaded}
    assert sizes["/docs/swagger-ui-bundle.js"] > 500_000
    assert sizes["/docs/swagger-ui.css"] > 50_000
    assert '"/openapi.json"' in client.get("/docs/start.js").text
    assert "://" not in page.text + client.get("/docs/start.js").text


def test_files_come_with_the_type_that_nosniff_asks_for(client):
    types = {
        "swagger-ui-bundle.js": "text/javascript; charset=utf-8",
        "swagger-ui.css": "text/css; charset=utf-8",
        "favicon.png": "image/png",
        "start.js": "text/javascript; charset=utf-8",
    }
    for name, media_type in types.items():
        headers = client.get(f"/docs/{name}").headers
        assert headers["content-type"] == media_type
        assert headers["x-content-type-options"] == "nosniff"


def test_the_page_may_load_nothing_from_elsewhere_and_run_nothing_of_its_own(client):
    policy = client.get("/docs").headers["content-security-policy"]
    assert policy == POLICY
    allowed = dict(part.split(" ", 1) for part in policy.split("; "))
    assert allowed["default-src"] == "'none'"
    for kind in ("script-src", "style-src", "connect-src"):
        assert allowed[kind] == "'self'"
    assert "<script>" not in client.get("/docs").text
    assert "style=" not in client.get("/docs").text


def test_a_file_is_sent_once(client):
    tag = client.get("/docs/swagger-ui.css").headers["etag"]
    again = client.get("/docs/swagger-ui.css", headers={"If-None-Match": tag})
    assert (again.status_code, again.content) == (304, b"")


def test_no_other_file_of_the_package_is_served(client):
    for name in ("redoc.standalone.js", "..%2f__init__.py", "%2e%2e/__init__.py"):
        assert client.get(f"/docs/{name}").status_code == 404
