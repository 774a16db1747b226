"""Hostile and careless input: each gets a problem that says where, what came and what is wanted.

A generator does not find these; they are typed by hand.
"""

from __future__ import annotations

import json

import pytest

JSON = {"Content-Type": "application/json"}
LENGTH = "a length with its unit, such as 14 ft, 14' 6 1/2\", 9'-4\", 4.27 m or 1270 mm"
SHED = {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}
COURSES = {"slope_length": "9 ft 4 in", "shingle_height": "13 1/4 in", "exposure": "5 5/8 in"}
METAL = {"run_length": "14 ft", "stock_length": "10 ft", "lap": "6 in"}
OFFSETS = {
    "eave_length": "14 ft",
    "shingle_length": "39 3/8 in",
    "sequence": "0 in,6 in",
    "courses": "4",
}

NEAREST = "one of the names known here, the nearest: "

#: A path, its query, the parameter to name, what came, and how what is wanted begins.
QUERIES = [
    ("area", {**SHED, "eave_length": "14"}, "eave_length", "14", "a number with its unit: write"),
    ("courses", {**COURSES, "exposure": "5 5/8 in in"}, "exposure", "5 5/8 in in", LENGTH),
    ("courses", {**COURSES, "exposure": "5 in 12 cm"}, "exposure", "5 in 12 cm", LENGTH),
    ("courses", {**COURSES, "exposure": "9**9**9 ft"}, "exposure", "9**9**9 ft", LENGTH),
    ("courses", {**COURSES, "exposure": "14,5 ft"}, "exposure", "14,5 ft", LENGTH),
    ("courses", {**COURSES, "exposure": "ft"}, "exposure", "ft", LENGTH),
    ("courses", {**COURSES, "exposure": ""}, "exposure", "an empty text", LENGTH),
    ("courses", {**COURSES, "exposure": "NaN"}, "exposure", "NaN", LENGTH),
    ("courses", {**COURSES, "exposure": "inf in"}, "exposure", "inf in", LENGTH),
    ("courses", {**COURSES, "exposure": "1e400 in"}, "exposure", "1e400 in", LENGTH),
    ("courses", {**COURSES, "exposure": "1/0 in"}, "exposure", "1/0 in", "a fraction under 1"),
    ("courses", {**COURSES, "exposure": "5\x00in"}, "exposure", "5\\x00in", LENGTH),
    ("courses", {**COURSES, "exposure": "\u202e5 in"}, "exposure", "\\u202e5 in", LENGTH),
    ("courses", {**COURSES, "exposure": "5 in" * 40}, "exposure", "5 in" * 14 + "5...", LENGTH),
    ("courses", {**COURSES, "exposure": "-5 in"}, "exposure", "-5 in", "more than zero"),
    ("courses", {**COURSES, "exposure": "0 in"}, "exposure", "0 in", "more than zero"),
    ("courses", {**COURSES, "slope_length": "1000000000 ft"}, "slope_length", None, "at most"),
    ("courses", {**COURSES, "exposure": "6 in"}, "exposure", "6 in", "at most 5 5/8 in: a shingle"),
    ("metal", {**METAL, "lap": "11 ft"}, "lap", "11 ft", "at most 5 ft, half of the stock"),
    ("metal", {**METAL, "stock_length": ""}, "stock_length", None, "one or more stock lengths"),
    ("metal", {**METAL, "stock_length": "10 ft,x"}, "stock_length", "x", LENGTH),
    ("offsets", {**OFFSETS, "sequence": "0 in,40 in"}, "sequence", None, "zero or more, and less"),
    ("offsets", {**OFFSETS, "sequence": ""}, "sequence", None, "at least one length"),
    ("offsets", {**OFFSETS, "courses": "0"}, "courses", "0", "1 or more"),
    (
        "offsets",
        {**OFFSETS, "courses": "-4"},
        "courses",
        "-4",
        "a whole number under a billion, such as 20",
    ),
    (
        "offsets",
        {**OFFSETS, "courses": "4.5"},
        "courses",
        "4.5",
        "a whole number under a billion, such as 20",
    ),
    (
        "offsets",
        {**OFFSETS, "courses": "9" * 5000},
        "courses",
        None,
        "a whole number under a billion, such as 20",
    ),
    (
        "offsets",
        {**OFFSETS, "courses": "٤"},
        "courses",
        "٤",
        "a whole number under a billion, such as 20",
    ),
    ("pitch", {"pitch": "4"}, "pitch", "4", "a number with its unit: write 4:12 or 4 deg"),
    ("pitch", {"pitch": "4:0"}, "pitch", "4:0", "a pitch, such as 4:12"),
    ("pitch", {"pitch": "90 deg"}, "pitch", "90 deg", "an angle under 90 deg"),
    ("pitch", {}, "pitch", "nothing", "it is needed. Rise over run"),
    ("pitch", {"pitch": "4:12", "ptich": "x"}, "ptich", "x", "one of the names known here, the ne"),
    ("pitch", {"pitch": "4:12", "units": "si"}, "units", "si", "one of us, metric"),
    ("pitch", {"pitch": "4:12", "value": "long"}, "value", "long", "one of number, text"),
    ("pitch", {"pitch": "4:12", "number_unit": "yd"}, "number_unit", "yd", "one of in, ft, mm,"),
    ("underlayment", {**SHED, "pitch": "1:12"}, "pitch", "1:12", "2:12 or more"),
    ("plans", {**SHED, "pitch": "1.9:12"}, "pitch", "1.9:12", "2:12 or more"),
    ("plans", {**SHED, "run": "9 ft"}, "slope_length", "9 ft 4 in", "exactly two of"),
    ("plans", {"eave_length": "14 ft"}, "slope_length", "none of them", "exactly two of"),
    ("plans", {}, "eave_length", "nothing", "it is needed. Along the eave"),
    ("plans", {**SHED, "shingle": "slate"}, "shingle", "slate", "one of metric_strip, metric_thr"),
    ("plans", {**SHED, "shingle.exposure": "6in"}, "shingle.exposure", "6in", "at most 5 5/8 in"),
    ("plans", {**SHED, "shingle.sequence": ""}, "shingle.sequence", None, "at least one length"),
    ("plans", {**SHED, "decking": "1"}, "decking", "1", "one of the names known here"),
    ("plans", {**SHED, "decking.lay": "yes"}, "decking.lay", "yes", "true or false"),
    ("plans", {**SHED, "decking.lie": "1"}, "decking.lie", "1", NEAREST + "decking.lay"),
    ("plans", {**SHED, "format": "docx"}, "format", "docx", "one of json, text"),
    (
        "plans",
        {**SHED, "metalwork.lap": "11 ft"},
        "metalwork.lap",
        "11 ft",
        "at most 5 ft, half of",
    ),
    ("plans", {**SHED, "shingle.name": "\x07"}, "shingle.name", "\\x07", "a text of 1 to 60"),
    ("plans", {**SHED, "shingle.per_bundle": "0"}, "shingle.per_bundle", "0", "1 or more"),
]


@pytest.mark.parametrize("case", QUERIES)
def test_a_query_is_refused_by_name(client, case):
    path, query, parameter, came, wanted = case
    answer = client.get(f"/v1/{path}", params=query)
    told = answer.json()
    assert (answer.status_code, told["status"]) == (422, 422)
    assert answer.headers["content-type"] == "application/problem+json"
    [error] = [one for one in told["errors"] if one["parameter"] == parameter]
    assert came is None or error["came"] == came
    assert error["wanted"].startswith(wanted)
    assert error["detail"] == f"{parameter} came as {error['came']}: {error['wanted']}"
    assert error["detail"] in told["detail"]


def body(**changes: object) -> dict[str, object]:
    return {"roof": SHED, **changes}


#: A body, the place to name, what came, and how what is wanted begins.
BODIES = [
    (body(roof={**SHED, "eave_length": 14}), "#/roof/eave_length", "14", "a number with its unit"),
    (body(roof={**SHED, "eave_length": True}), "#/roof/eave_length", "true", LENGTH),
    (body(roof={**SHED, "eave_length": None}), "#/roof/eave_length", "null", LENGTH),
    (body(roof={**SHED, "eave_length": []}), "#/roof/eave_length", None, LENGTH),
    (body(roof={**SHED, "eave_length": "-14 ft"}), "#/roof/eave_length", "-14 ft", "more than"),
    (body(roof={**SHED, "pitch": "1:12"}), "#/roof/pitch", "1:12", "2:12 or more"),
    (body(roof={**SHED, "form": "dome"}), "#/roof/form", "dome", "one of single_slope"),
    (body(roof={**SHED, "ptich": "1:12"}), "#/roof/ptich", "1:12", "one of the names known here"),
    (body(roof={}), "#/roof/eave_length", "nothing", "it is needed."),
    (body(roof=[]), "#/roof", "a list of 0", "a JSON object"),
    ({}, "#/roof", "nothing", "it is needed."),
    ([], "#", "a list of 0", "a JSON object"),
    ("x", "#", "x", "a JSON object"),
    (body(shingle="slate"), "#/shingle", "slate", "one of metric_strip"),
    (body(shingle=5), "#/shingle", "5", "a JSON object"),
    (body(shingle={"material": "slate"}), "#/shingle/material", "slate", "one of metric_strip"),
    (body(shingle={"exposure": "6 in"}), "#/shingle/exposure", "6 in", "at most 5 5/8 in: a"),
    (body(shingle={"height": "1 in"}), "#/shingle/height", "1 in", "more than 2 in"),
    (body(shingle={"sequence": "0 in"}), "#/shingle/sequence", "0 in", "a JSON list"),
    (body(shingle={"sequence": []}), "#/shingle/sequence", None, "at least one length"),
    (body(shingle={"sequence": ["0 in", "6"]}), "#/shingle/sequence/1", "6", "a number with its"),
    (body(shingle={"sequence": ["0 in"] * 101}), "#/shingle/sequence", None, "a list of at most"),
    (
        body(eave_metal={"stock_lengths": ["8 ft", "0 ft"]}),
        "#/eave_metal/stock_lengths/1",
        "0 ft",
        "more than zero",
    ),
    (body(shingle={"per_bundle": "21"}), "#/shingle/per_bundle", "21", "a whole number"),
    (body(shingle={"per_bundle": 2.5}), "#/shingle/per_bundle", "2.5", "a whole number"),
    (body(shingle={"bundle_weight": 65}), "#/shingle/bundle_weight", "65", "a weight with its"),
    (body(shingle={"name": ""}), "#/shingle/name", "an empty text", "a text of 1 to 60"),
    (body(decking={"lay": 1}), "#/decking/lay", "1", "true or false"),
    (body(decking={"lay": "true"}), "#/decking/lay", "true", "true or false"),
    (body(number_unit="yd"), "#/number_unit", "yd", "one of in, ft, mm, cm, m"),
    (body(number_unit=["ft"]), "#/number_unit", "a list of 1", "one of in, ft, mm, cm, m"),
    (body(**{"a/b~c": 1}), "#/a~1b~0c", "1", "one of the names known here"),
    (body(units="us"), "#/units", "us", "one of the names known here"),
    (body(metalwork={"lap": "11 ft"}), "#/metalwork/lap", "11 ft", "at most 5 ft, half of"),
]


@pytest.mark.parametrize("case", BODIES)
def test_a_body_is_refused_by_place(client, case):
    sent, pointer, came, wanted = case
    answer = client.post("/v1/plans", json=sent)
    told = answer.json()
    assert (answer.status_code, told["status"]) == (422, 422)
    assert answer.headers["content-type"] == "application/problem+json"
    [error] = [one for one in told["errors"] if one["pointer"] == pointer]
    assert came is None or error["came"] == came
    assert error["wanted"].startswith(wanted)
    assert error["detail"] in told["detail"]


ROOF = json.dumps(SHED)
RAW = [
    (b"", 400, "the body is not JSON: Expecting value"),
    (b"{", 400, "the body is not JSON: Expecting property name"),
    (b'{"roof": }', 400, "the body is not JSON: Expecting value"),
    (b"\xef\xbb\xbf{}", 400, "the body is not JSON: Unexpected UTF-8 BOM"),
    (b'{"roof": "\xff"}', 400, "the body is not UTF-8"),
    (b'{"roof": "\xed\xa0\x80"}', 400, "the body is not UTF-8"),
    (b"null", 422, "# came as null: a JSON object"),
    ('{"roof": {}}'.encode("utf-16"), 400, "the body is not UTF-8"),
    (b'{"roof":' + b"[" * 90_000, 400, "the body is nested too deeply"),
    (b'{"a":' * 90_000 + b"1" + b"}" * 90_000, 400, "the body is nested too deeply"),
    (b'{"roof": {"eave_length": 1e400}}', 422, "#/roof/eave_length came as 1e400: "),
    (b'{"roof": {"eave_length": NaN}}', 422, "#/roof/eave_length came as NaN: "),
    (b'{"roof": {"eave_length": -Infinity}}', 422, "#/roof/eave_length came as -Infinity: "),
    (b'{"roof": {"eave_length": ' + b"9" * 5000 + b"}}", 422, "#/roof/eave_length came as 999"),
    (b'{"roof": {"eave_length": "\\ud800"}}', 422, "#/roof/eave_length came as \\ud800: "),
    (f'{{"roof": {ROOF}, "\\ud800": 1}}'.encode(), 422, "#/%5Cud800 came as 1: "),
    (b'{"shingle": {"name": "\\udfff"}, "roof": {}}', 422, "#/shingle/name came as \\udfff: "),
    (b'{"number_unit": "ft", "roof": {"eave_length": 1e400}}', 422, "#/roof/eave_length came as 1"),
    (b'{"number_unit": "ft", "roof": {"eave_length": NaN}}', 422, "#/roof/eave_length came as NaN"),
    (
        b'{"roof": {"pitch": "3:12", "pitch": "4:12"}}',
        422,
        "#/roof/pitch came as more than one value: one value",
    ),
    (
        b'{"roof": 1, "roof": {"pitch": "3:12"}}',
        422,
        "#/roof came as more than one value: one value",
    ),
]


@pytest.mark.parametrize(("raw", "status", "detail"), RAW)
def test_a_body_that_is_hardly_one(client, raw, status, detail):
    answer = client.post("/v1/plans", content=raw, headers=JSON)
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.status_code == status
    assert answer.json()["detail"].startswith(detail)


def test_what_a_list_gives_twice_is_named_with_its_place(client):
    raw = b'{"a": [0, {"b": 1, "b": 2, "d": 5, "c": 3, "c": 4}]}'
    told = client.post("/v1/plans", content=raw, headers=JSON).json()
    assert [one["pointer"] for one in told["errors"]] == ["#/a/1/b", "#/a/1/c"]


def test_a_parameter_given_twice_is_refused(client):
    answer = client.get("/v1/pitch?pitch=4:12&pitch=5:12&units=us&value=text&%75nits=metric")
    assert answer.status_code == 422
    told = {one["parameter"]: one["wanted"] for one in answer.json()["errors"]}
    assert set(told) == {"pitch", "units"}
    assert told["pitch"].startswith("one value; a list goes into one parameter")


def test_a_query_that_is_not_utf8(client):
    answer = client.get("/v1/pitch?pitch=%ff")
    assert (answer.status_code, answer.json()["detail"]) == (400, "the query is not UTF-8")


def test_all_bad_fields_are_told_at_once(client):
    query = {**COURSES, "exposure": "6", "slope_length": "x", "foo": "1", "edge_distance": "-"}
    told = client.get("/v1/courses", params=query).json()
    named = {one["parameter"] for one in told["errors"]}
    assert named == {"exposure", "slope_length", "foo", "edge_distance"}


def test_ten_thousand_unknown_fields_get_a_short_answer(client):
    sent = {f"field_{n}": n for n in range(10_000)}
    answer = client.post("/v1/plans", json=sent)
    assert (answer.status_code, len(answer.json()["errors"])) == (422, 20)
    assert answer.json()["detail"].endswith("and more")
    # 20 errors, each with the names that a body may have: 33 of them.
    assert len(answer.content) < 40_000


def test_faults_are_told_in_the_units_asked_for(client):
    told = client.get("/v1/courses", params={**COURSES, "exposure": "6 in", "units": "metric"})
    [error] = told.json()["errors"]
    assert (error["came"], error["wanted"][:14]) == ("6 in", "at most 143 mm")
    query = {**COURSES, "slope_length": "200000 ft", "units": "metric"}  # told while it is read
    [error] = client.get("/v1/courses", params=query).json()["errors"]
    assert (error["came"], error["wanted"]) == ("200000 ft", "at most 30480000 mm")


def test_the_unit_of_bare_lengths_says_nothing_of_other_measurements(client):
    for path, query, wanted in (
        ("pitch", {"pitch": "4"}, "a number with its unit: write 4:12 or 4 deg"),
        ("weight", {"area": "130", "pitch": "3:12", "strips": "9"}, "an area with its unit, "),
    ):
        told = client.get(f"/v1/{path}", params={**query, "number_unit": "ft"}).json()
        [error] = told["errors"]
        assert error["wanted"].startswith(wanted)


@pytest.mark.parametrize("headers", [{}, {"Content-Type": "text/json"}, {"Content-Type": "x"}])
def test_a_body_of_another_type_is_not_read(client, headers):
    answer = client.post("/v1/plans", content=f'{{"roof": {ROOF}}}'.encode(), headers=headers)
    came = headers.get("Content-Type", "nothing")
    assert answer.status_code == 415
    detail = f"Content-Type came as {came}: application/json is what is read here"
    assert answer.json()["detail"] == detail


@pytest.mark.parametrize("coding", ["gzip", "br", "deflate, gzip"])
def test_a_packed_body_is_not_unpacked(client, coding):
    headers = {**JSON, "Content-Encoding": coding}
    answer = client.post("/v1/plans", content=b"\x1f\x8b", headers=headers)
    assert answer.status_code == 415
    assert answer.json()["detail"] == (
        f"Content-Encoding came as {coding}: a body as it is, not packed, is what is read here"
    )
    assert answer.headers["accept-encoding"] == "identity"


def test_a_body_that_says_it_is_not_packed_is_read(client):
    headers = {**JSON, "Content-Encoding": "Identity"}
    answer = client.post("/v1/plans", content=f'{{"roof": {ROOF}}}'.encode(), headers=headers)
    assert answer.status_code == 200


def test_json_with_a_charset_is_read(client):
    headers = {"Content-Type": "Application/JSON; charset=utf-8"}
    answer = client.post("/v1/plans", content=f'{{"roof": {ROOF}}}'.encode(), headers=headers)
    assert answer.status_code == 200


def chunks(count):
    yield b'{"roof": "'
    for _ in range(count):
        yield b"x" * 100_000
    yield b'"}'


@pytest.mark.parametrize("content", [b'{"roof": "' + b"x" * 2_000_000 + b'"}', chunks(20)])
def test_two_megabytes_of_json_are_not_read(client, content):
    answer = client.post("/v1/plans", content=content, headers=JSON)
    assert answer.status_code == 413
    assert answer.json()["detail"] == "the body is larger than 1000000 bytes"


def test_a_roof_of_too_many_pieces_is_refused_with_their_number(client):
    query = {"eave_length": "100 ft", "slope_length": "4000 ft", "pitch": "3:12"}
    answer = client.get("/v1/plans", params=query)
    assert (answer.status_code, answer.json()["type"]) == (422, "/problems#too-many-pieces")
    assert "268726" in answer.json()["detail"]


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("underlaying", "one of the names known here, the nearest: underlaying.head_lap, "),
        ("coursings", "one of the names known here, the nearest: coursing.starter_past_metal, "),
        ("shingle.oops", "one of the names known here, the nearest: shingle, "),
        ("zzzz", "one of the names known here: /docs lists all "),
    ],
)
def test_a_name_that_is_like_none_is_not_answered_with_a_hundred(client, name, told):
    asked = {"eave_length": "14 ft", "slope_length": "9 ft", "pitch": "3:12", name: "1"}
    (error,) = client.get("/v1/plans", params=asked).json()["errors"]
    assert told in error["wanted"]
    assert len(error["wanted"]) < 1000
