"""What holds on every path: HEAD, tags, caching, forms, methods, one value, and our own bugs."""

from __future__ import annotations

import asyncio
import http.client
import importlib
import inspect
import json
import pkgutil
import threading
import time

import pytest
import uvicorn
from starlette.testclient import TestClient

import roofing_core
from roofing_api import negotiating, problems, routes
from roofing_api.app import app, make_app
from roofing_api.problems import KIND_OF, KINDS
from roofing_core.layers.coursing.offcuts.searching import SearchEnded
from roofing_core.layers.metal.shared.placing import StepsUsedUp
from roofing_core.measures.faults import Refused

PITCH = "/v1/pitch?pitch=4:12"
PLAN = "/v1/plans?eave_length=14ft&slope_length=9ft4in&pitch=3:12"
GETS = [
    PITCH,
    f"{PITCH}&pointer=/percent",
    PLAN,
    f"{PLAN}&format=text",
    f"{PLAN}&format=svg",
    "/v1/materials",
    "/healthz",
    "/docs",
    "/docs/swagger-ui.css",
    "/openapi.json",
    "/problems",
    "/",
    "/form.js",
    "/embed.js",
    "/plan?eave_length=14ft",
    "/v1/pitch?pitch=4",
    "/v1/nothing",
]


@pytest.mark.parametrize("path", GETS)
def test_head_has_the_headers_of_get_and_no_body(client, path):
    get, head = client.get(path), client.head(path)
    assert head.status_code == get.status_code
    assert head.headers == get.headers
    assert (head.content, int(head.headers["content-length"])) == (b"", len(get.content))
    assert get.content


@pytest.mark.parametrize("path", ["/v1/pitch", "/v1/nothing"])
def test_no_body_leaves_the_application_for_head(path):
    """The client and the server drop such a body themselves, so this asks the application."""
    scope = {"type": "http", "method": "HEAD", "path": path, "query_string": b"", "headers": []}
    sent = []

    async def receive():
        return {"type": "http.request", "body": b""}

    async def send(message):
        sent.append(message)

    asyncio.run(app({**scope, "root_path": "", "http_version": "1.1"}, receive, send))
    assert [one["type"] for one in sent] == ["http.response.start", "http.response.body"]
    assert sent[1]["body"] == b""


@pytest.mark.parametrize("path", GETS[:5])
def test_a_tag_saves_sending_the_answer_again(client, path):
    first = client.get(path)
    tag = first.headers["etag"]
    assert tag[0] == tag[-1] == '"'
    for sent in (tag, f'W/{tag}, "other"', "*"):
        again = client.get(path, headers={"If-None-Match": sent})
        assert (again.status_code, again.content) == (304, b"")
        assert again.headers["etag"] == tag
        assert again.headers["cache-control"] == first.headers["cache-control"]
    assert client.get(path, headers={"If-None-Match": '"other"'}).status_code == 200
    assert client.head(path, headers={"If-None-Match": tag}).status_code == 304


def test_a_tag_is_of_one_request_one_form_and_one_version(client, monkeypatch):
    text = {"Accept": "text/plain"}
    tags = {
        client.get(path, headers=headers).headers["etag"]
        for path in (PITCH, f"{PITCH}&units=metric", "/v1/pitch?pitch=5:12", PLAN)
        for headers in ({"Accept": "application/json"},)
    }
    tags.add(client.get(PLAN, headers=text).headers["etag"])
    monkeypatch.setattr(negotiating, "VERSION", "another")
    tags.add(client.get(PITCH).headers["etag"])
    assert len(tags) == 6


def test_a_refusal_has_no_tag_even_when_any_would_do(client):
    answer = client.get("/v1/pitch?pitch=4", headers={"If-None-Match": "*"})
    assert (answer.status_code, answer.headers["cache-control"]) == (422, "no-store")
    assert "etag" not in answer.headers


def test_an_answer_may_be_kept_and_depends_on_accept(client):
    headers = client.get(PITCH).headers
    assert headers["cache-control"] == "public, max-age=3600"
    assert headers["vary"] == "Accept"
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["content-type"] == "application/json"


ACCEPTED = [
    ("*/*", "application/json"),
    ("application/*", "application/json"),
    ("application/json", "application/json"),
    ("image/png, */*;q=0.1", "application/json"),
    ("text/plain", "text/plain; charset=utf-8"),
    ("text/*", "text/plain; charset=utf-8"),
    ("application/json;q=0.5, text/plain", "text/plain; charset=utf-8"),
    ("application/json, text/plain", "application/json"),
    ("text/plain;q=0, */*", "application/json"),
    ("application/json;q=0, */*;q=0.2", "text/plain; charset=utf-8"),
    ("", "application/json"),
]


@pytest.mark.parametrize(("accept", "media_type"), ACCEPTED)
def test_a_plan_comes_in_the_form_that_is_liked_best(client, accept, media_type):
    answer = client.get(PLAN, headers={"Accept": accept})
    assert (answer.status_code, answer.headers["content-type"]) == (200, media_type)
    assert answer.text.startswith("{" if "json" in media_type else "SINGLE-SLOPE ROOF")


@pytest.mark.parametrize(
    ("path", "accept"),
    [(PLAN, "image/png"), (PLAN, "*/*;q=0"), (PITCH, "text/plain"), (PITCH, "image/png, text/csv")],
)
def test_a_form_that_is_not_offered(client, path, accept):
    answer = client.get(path, headers={"Accept": accept})
    assert answer.status_code == 406
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.json()["detail"].startswith(f"Accept came as {accept}: application/json")


@pytest.mark.parametrize("accept", ["application/json", "text/plain", "text/html"])
def test_a_parameter_goes_before_accept(client, accept):
    headers = {"Accept": accept}
    text, plain = client.get(f"{PLAN}&format=text", headers=headers), "text/plain; charset=utf-8"
    assert (text.headers["content-type"], text.text[:12]) == (plain, "SINGLE-SLOPE")
    value = client.get(f"{PITCH}&pointer=/percent", headers=headers)
    assert (value.status_code, value.headers["content-type"]) == (200, plain)
    json = client.get(f"{PLAN}&format=json", headers=headers)
    assert json.headers["content-type"] == "application/json"


def test_a_posted_plan_takes_the_same_parameters(client):
    body = {"roof": {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}}
    value = client.post("/v1/plans?pointer=/squares", json=body)
    assert value.text == "1.3066666666666666"
    text = client.post("/v1/plans?format=text&units=metric", json=body)
    assert text.text == client.get(f"{PLAN}&format=text&units=metric").text
    refused = client.post("/v1/plans?unit=metric", json=body)
    assert refused.json()["errors"][0]["parameter"] == "unit"


# 20 courses at 5 5/8 in from 1/2 in below the eave metal: the last butt is at 106 3/8 in.
COURSES = "/v1/courses?slope_length=9ft4in&shingle_height=13.25in&exposure=5.625in"
POINTED = [
    ("/count", {}, "20"),
    ("/last_butt", {}, "106.375"),
    ("/last_butt", {"units": "metric"}, "2701.925"),
    ("/last_butt", {"value": "text"}, "8 ft 10 3/8 in"),
    ("/last_butt", {"value": "text", "units": "metric"}, "2702 mm"),
    ("/courses/0/butt", {}, "-0.5"),
    ("/courses/19/nailable", {}, "false"),
    ("/courses/18/nailable", {"value": "text"}, "true"),
    ("/units/length", {"units": "metric"}, "mm"),
]


@pytest.mark.parametrize(("pointer", "query", "text"), POINTED)
def test_one_value_as_plain_text(client, pointer, query, text):
    answer = client.get(f"{COURSES}&pointer={pointer}&" + "&".join(map("=".join, query.items())))
    assert (answer.status_code, answer.text) == (200, text)
    assert answer.headers["content-type"] == "text/plain; charset=utf-8"


PLANNED = [
    ("/order/eave_metal/needed/value", {}, "178.0"),
    ("/order/eave_metal/needed/value", {"value": "text"}, "14 ft 10 in"),
    ("/order/eave_metal/needed/unit", {"units": "metric"}, "mm"),
    ("/roof/form", {"value": "text"}, "single_slope"),
    ("/choices/shingle/sequence/3", {"value": "text"}, "17 in"),
    ("/planes/0/corners/2/1", {"value": "text"}, "9 ft 4 in"),
    ("/roof/pitch", {}, "3.0"),
    ("/roof/pitch", {"value": "text"}, "3:12"),
]


@pytest.mark.parametrize(("pointer", "query", "text"), PLANNED)
def test_one_value_of_a_plan(client, pointer, query, text):
    answer = client.get(f"{PLAN}&pointer={pointer}&" + "&".join(map("=".join, query.items())))
    assert (answer.status_code, answer.text) == (200, text)


def test_every_value_of_a_plan_can_be_pointed_at(client):
    def values(tree, at=""):
        inner = tree.items() if isinstance(tree, dict) else enumerate(tree)
        for name, value in inner:
            if isinstance(value, dict | list):
                yield from values(value, f"{at}/{name}")
            else:
                yield f"{at}/{name}", value

    told = client.get(f"{PLAN}&units=metric").json()
    pointed = dict(values(told))
    assert len(pointed) > 500
    for pointer, value in list(pointed.items())[::7]:
        text = client.get(f"{PLAN}&units=metric&pointer={pointer}").text
        assert text == (value if isinstance(value, str) else json.dumps(value))


NOT_POINTED = [
    ("", 422, "pointer came as an empty text: one value; this is an object or a list"),
    ("/courses", 422, "pointer came as /courses: one value; this is an object or a list"),
    ("/courses/0", 422, "pointer came as /courses/0: one value; this is an object"),
    ("/units", 422, "pointer came as /units: one value; this is an object"),
    ("count", 422, "pointer came as count: a JSON Pointer, which starts with /"),
    ("/county", 404, "pointer came as /county: a place in the answer; here there is count, cl"),
    (
        "/courses/20",
        404,
        "pointer came as /courses/20: a place in the answer; here there is whole numbers from 0",
    ),
    ("/courses/01/butt", 404, "pointer came as /courses/01/butt: a place in the answer"),
    ("/courses/-1/butt", 404, "pointer came as /courses/-1/butt: a place in the answer"),
    ("/courses/-", 404, "pointer came as /courses/-: a place in the answer"),
    ("/courses/٣/butt", 404, "pointer came as /courses/٣/butt: a place in the answer"),
    ("/count/0", 404, "pointer came as /count/0: a place in the answer; here there is nothing"),
    ("/units/x", 404, "pointer came as /units/x: a place in the answer; here there is system"),
    ("/__class__", 404, "pointer came as /__class__: a place in the answer"),
    ("/courses/0/__doc__", 404, "pointer came as /courses/0/__doc__: a place in the answer"),
]


@pytest.mark.parametrize(("pointer", "status", "detail"), NOT_POINTED)
def test_a_pointer_that_leads_to_no_value(client, pointer, status, detail):
    answer = client.get(f"{COURSES}&pointer={pointer}")
    told = answer.json()
    assert (answer.status_code, told["errors"][0]["parameter"]) == (status, "pointer")
    assert told["detail"].startswith(detail)


@pytest.mark.parametrize(
    ("method", "path", "allow"),
    [
        ("POST", "/v1/pitch", "GET, HEAD"),
        ("DELETE", "/v1/plans", "GET, HEAD, POST"),
        ("PUT", "/healthz", "GET, HEAD"),
        ("PATCH", "/docs/start.js", "GET, HEAD"),
    ],
)
def test_a_method_that_is_not_answered(client, method, path, allow):
    answer = client.request(method, path)
    assert (answer.status_code, answer.headers["allow"]) == (405, allow)
    assert answer.json()["detail"] == f"{method} is not answered at {path}; allowed: {allow}"


@pytest.mark.parametrize(
    "path", ["/plans", "/v1", "/v1/pitch/", "/v2/pitch", "/docs/x.js", "/v1/%ff"]
)
def test_a_path_that_is_not_there(client, path):
    answer = client.get(path)
    assert (answer.status_code, answer.json()["type"]) == (404, "/problems#not-found")
    assert answer.headers["content-type"] == "application/problem+json"


def test_a_query_that_is_too_long(client):
    answer = client.get("/v1/pitch", params={"pitch": "4:12" + " " * 8_192})
    assert answer.status_code == 414
    assert answer.json()["detail"].endswith("bytes; at most 8192 are read")


def test_what_a_problem_is_can_be_read_at_its_type(client):
    page = client.get("/problems").text
    for kind in KINDS:
        assert f'id="{kind.slug}"' in page
        assert kind.meaning.replace("'", "&#x27;") in page
    assert len({kind.slug for kind in KINDS}) == len(KINDS)


def test_every_exception_of_the_library_has_its_status():
    raised = set()
    for module in pkgutil.walk_packages(roofing_core.__path__, "roofing_core."):
        for _, thing in inspect.getmembers(importlib.import_module(module.name), inspect.isclass):
            if issubclass(thing, Exception) and thing.__module__.startswith("roofing_core"):
                raised.add(thing)
    assert Refused in raised
    # Caught where the search was begun, for shingles and for metal; they never leave the library.
    assert raised - {SearchEnded, StepsUsedUp} == set(KIND_OF)


def test_a_bug_of_ours_says_nothing_of_our_insides(monkeypatch):
    def broken(**_):
        raise RuntimeError("secret")

    monkeypatch.setattr(routes, "pitch_factors", broken)
    answer = TestClient(make_app(), raise_server_exceptions=False).get(PITCH)
    assert (answer.status_code, answer.json()["type"]) == (500, "/problems#our-fault")
    assert answer.headers["content-type"] == "application/problem+json"
    assert "secret" not in answer.text
    assert "Traceback" not in answer.text


def test_a_refusal_from_outside_a_calculation_is_a_bug_of_ours(monkeypatch):
    monkeypatch.setattr(problems, "KIND_OF", {})
    answer = TestClient(app, raise_server_exceptions=False).get("/v1/pitch?pitch=4")
    assert (answer.status_code, answer.json()["type"]) == (500, "/problems#our-fault")


@pytest.fixture(scope="module")
def port():
    """Serve the application on a free port of this machine, by the real server."""
    config = uvicorn.Config(app, port=0, log_level="warning", lifespan="off")
    server = uvicorn.Server(config)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.01)
    yield server.servers[0].sockets[0].getsockname()[1]
    server.should_exit = True
    thread.join(10)


def test_the_real_server_answers_head_and_get_alike(port):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    seen = []
    for method in ("HEAD", "GET"):
        connection.request(method, PITCH)
        answer = connection.getresponse()
        seen.append((answer.status, dict(answer.getheaders()), answer.read()))
    connection.close()
    (head, get) = seen
    assert (head[0], head[2]) == (200, b"")
    assert {**head[1], "date": ""} == {**get[1], "date": ""}
    assert len(get[2]) == int(get[1]["content-length"])
