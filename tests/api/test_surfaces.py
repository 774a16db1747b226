"""The shape of a roof over HTTP: every form, by query and by body, as numbers and as text."""

from __future__ import annotations

import re
from typing import Any, get_type_hints

import pytest

from roofing_api import surfaces
from roofing_api.document import document
from roofing_api.variants import kinds_in
from roofing_api.worked_forms import BODIES, FLAT, FOOTPRINT, HIP, PLANES
from roofing_core import Footprint, Gable, GivenPlane, GivenPlanes, Hip, Pyramid, Saltbox, Side
from roofing_core.roof.forms import Gambrel
from roofing_core.roof.measuring import AnyRoof
from roofing_core.roof.planes import SingleSlope
from roofing_core.roof.whole_roof import surfaces as surfaces_of
from roofing_core.sheets.surfaces import surfaces_text
from tests.api.test_routes import expected

ELL = ((0.0, 0.0), (432.0, 0.0), (432.0, 192.0), (192.0, 192.0), (192.0, 360.0), (0.0, 360.0))
SIDES = ("front", "right", "inner back", "inner right")

#: What the library has to be given for each worked form.
GIVEN: dict[str, AnyRoof] = {
    "hip": Hip(length=432.0, width=288.0, pitch=0.5),
    "single_slope": SingleSlope(eave_length=168.0, slope_length=112.0, pitch=0.25),
    "gable": Gable(length=288.0, width=192.0, pitch=0.75),
    "saltbox": Saltbox(length=288.0, width=240.0, pitch=1.0, back_pitch=0.75, ridge_run=90.0),
    "gambrel": Gambrel(
        length=288.0, width=216.0, pitch=20 / 12, upper_pitch=5 / 12, break_run=36.0
    ),
    "pyramid": Pyramid(length=168.0, width=168.0, rise=63.0),
    "footprint": Footprint(
        corners=ELL,
        pitch=8 / 12,
        sides=(*(Side(name=name) for name in SIDES), Side(end="gable"), Side(name="left")),
    ),
    "planes": GivenPlanes(
        planes=(
            GivenPlane(
                name="porch",
                pitch=0.25,
                corners=((0.0, 0.0), (168.0, 0.0), (168.0, 72.0), (0.0, 72.0)),
                edges=("pitch_break", "rake", "headwall", "rake"),
                beyond=("lean-to", "", "", ""),
            ),
            GivenPlane(
                name="lean-to",
                pitch=2.5 / 12,
                corners=((0.0, 0.0), (168.0, 0.0), (168.0, 48.0), (0.0, 48.0)),
                edges=("eave", "rake", "pitch_break", "rake"),
                beyond=("", "", "porch", ""),
            ),
        )
    ),
}


@pytest.fixture
def given(monkeypatch) -> list[AnyRoof]:
    """Record what the library is given."""
    called: list[AnyRoof] = []

    def recorded(roof):
        called.append(roof)
        return surfaces_of(roof)

    monkeypatch.setattr(surfaces, "surfaces", recorded)
    return called


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("form", BODIES)
def test_a_body_of_each_form_reaches_the_library_and_its_surfaces_are_rendered(
    client, given, form, system
):
    answer = client.post(f"/v1/surfaces?units={system}", json=BODIES[form])
    assert answer.status_code == 200, answer.text
    assert given == [GIVEN[form]]
    told = answer.json()
    assert told.pop("units")["system"] == system
    found = surfaces_of(GIVEN[form])
    assert told == expected(found, type(found), system)


@pytest.mark.parametrize("roof", FLAT, ids=lambda roof: roof["form"])
def test_a_query_of_each_flat_form_says_the_same_as_a_body(client, given, roof):
    asked = client.get("/v1/surfaces", params=roof)
    assert asked.status_code == 200, asked.text
    assert asked.content == client.post("/v1/surfaces", json={"roof": roof}).content
    assert given == [GIVEN[roof["form"]]] * 2


def test_every_form_that_the_library_knows_is_worked_out(client):
    told = client.get("/openapi.json").json()
    mapping = told["components"]["schemas"]["SurfacesBodyInput"]["properties"]["roof"][
        "discriminator"
    ]
    assert set(mapping["mapping"]) == set(BODIES) == set(GIVEN)
    for place in mapping["mapping"].values():
        assert place.rpartition("/")[2] in told["components"]["schemas"]
    flat = {one["name"]: one for one in told["paths"]["/v1/surfaces"]["get"]["parameters"][:1]}
    assert flat["form"]["schema"]["enum"] == [
        "single_slope", "gable", "saltbox", "gambrel", "hip", "pyramid",
    ]  # fmt: skip
    assert {roof["form"] for roof in FLAT} == set(flat["form"]["schema"]["enum"])


def test_a_name_has_one_type_in_every_form_since_a_query_has_it_once():
    meant: dict[str, set[Any]] = {}
    for kind in kinds_in(AnyRoof):
        for name, hint in get_type_hints(kind, include_extras=True).items():
            meant.setdefault(name, set()).update(kinds_in(hint))
    assert len(meant.pop("form")) == len(GIVEN)
    assert {name: kinds for name, kinds in meant.items() if len(kinds) > 1} == {}
    assert "pitch" in meant


def test_the_queries_of_the_description_are_answered(client):
    about = document(client.app)["paths"]["/v1/surfaces"]["get"]["description"]
    queries = re.findall(r"`(form=\S+)`", about)
    assert len(queries) == len(FLAT)
    for query in queries:
        assert client.get(f"/v1/surfaces?{query}").status_code == 200, query


def test_without_a_form_it_is_a_single_slope(client):
    query = "eave_length=14ft&slope_length=9ft4in&pitch=3:12"
    assert client.get(f"/v1/surfaces?{query}").json()["area"] == pytest.approx(14 * (9 + 1 / 3))
    body = {"roof": {"eave_length": 14, "run": 9, "rise": "3 ft"}, "number_unit": "ft"}
    [plane] = client.post("/v1/surfaces", json=body).json()["planes"]
    assert plane["pitch"] == pytest.approx(4)


# A hip of 24 by 36 ft at 6:12, worked out by hand: the ridge is 36 - 24 = 12 ft; a hip runs 12 ft
# over 12 ft of plan and rises 6 ft, so it is sqrt(144 + 144 + 36) = 18 ft. The slopes are
# sqrt(5)/2 as large as their plans, 288 ft2 for the sides and 144 ft2 for the ends.
HIP_TEXT = """\
SHAPE OF THE ROOF   966 ft2 on the slopes, 9.66 squares, 864 ft2 seen from above

PLANES
------
plane      pitch     area  from above  edges from the eave round
front       6:12  322 ft2     288 ft2  eave, hip, ridge, hip
right end   6:12  161 ft2     144 ft2  eave, hip, hip
back        6:12  322 ft2     288 ft2  eave, hip, ridge, hip
left end    6:12  161 ft2     144 ft2  eave, hip, hip

LINES
-----
line   length  planes
eave    36 ft  front
hip     18 ft  front and right end
ridge   12 ft  front and back
hip     18 ft  front and left end
eave    24 ft  right end
hip     18 ft  right end and back
eave    36 ft  back
hip     18 ft  back and left end
eave    24 ft  left end

LINES OF EACH KIND
------------------
line   count  all together
eave       4        120 ft
hip        4         72 ft
ridge      1         12 ft
"""


def test_the_shape_as_text(client):
    for answer in (
        client.get("/v1/surfaces", params=HIP, headers={"Accept": "text/plain"}),
        client.get("/v1/surfaces", params={**HIP, "format": "text"}),
        client.post("/v1/surfaces?format=text", json={"roof": HIP}),
    ):
        assert answer.headers["content-type"] == "text/plain; charset=utf-8"
        assert answer.text == HIP_TEXT
    metric = client.get("/v1/surfaces", params={**HIP, "format": "text", "units": "metric"}).text
    assert "hip        4      21946 mm" in metric  # 72 ft are 21,945.6 mm
    assert metric == surfaces_text(surfaces_of(GIVEN["hip"]), "metric")


def test_one_value_a_tag_and_the_methods_as_everywhere(client):
    pointed = client.get("/v1/surfaces", params={**HIP, "pointer": "/lines/2/length"})
    assert (pointed.text, pointed.headers["content-type"]) == ("144.0", "text/plain; charset=utf-8")
    said = {**HIP, "pointer": "/lines/1/length", "value": "text"}
    assert client.get("/v1/surfaces", params=said).text == "18 ft"
    first = client.get("/v1/surfaces", params=HIP)
    again = client.get("/v1/surfaces", params=HIP, headers={"If-None-Match": first.headers["etag"]})
    assert (again.status_code, again.content) == (304, b"")
    assert client.put("/v1/surfaces").headers["allow"] == "GET, HEAD, POST"


def changed(roof, /, **changes):
    return {**roof, **changes}


def moved(place, **changes):
    """Change one of the given planes."""
    planes = [dict(plane) for plane in PLANES["planes"]]
    planes[place] |= changes
    return changed(PLANES, planes=planes)


FORMS = "one of single_slope, gable, saltbox, gambrel, hip, pyramid"
ALL = f"{FORMS}, footprint, planes"
LENGTH = "a length with its unit, such as"
EDGES = "one of eave, rake, ridge, hip, valley, pitch_break, sidewall, headwall"
HIP_HAS = "hip has form, length, width, pitch, end_pitch, measured, eave_overhang"
NAMED = "left out: it belongs to gable, saltbox, gambrel, hip, pyramid"
SINGLE = "single_slope, which it is without `form`, has form, eave_length, slope_length, run"

#: A roof, the place to name in it, what came, and how what is wanted begins.
ROOFS = [
    (changed(HIP, form="dome"), "/form", "dome", ALL),
    (changed(HIP, form="Hip"), "/form", "Hip", ALL),
    (changed(HIP, form=""), "/form", "an empty text", ALL),
    (changed(HIP, form=None), "/form", "null", ALL),
    (changed(HIP, form=7), "/form", "7", ALL),
    (changed(HIP, form=["hip"]), "/form", "a list of 1", ALL),
    (changed(HIP, form={"hip": {}}), "/form", "an object", ALL),
    (changed(HIP, form="hip\x00"), "/form", "hip\\x00", ALL),
    ({"length": "36 ft"}, "/length", "36 ft", NAMED),
    ({"width": "36 ft"}, "/eave_length", "nothing", "it is needed. Along the eave."),
    ({"width": "36 ft"}, "/width", "36 ft", f"{NAMED}; {SINGLE}"),
    ({"form": "hip"}, "/length", "nothing", "it is needed. Along the front."),
    (
        changed(HIP, rise="5 ft"),
        "/rise",
        "5 ft",
        f"left out: it belongs to single_slope, pyramid; {HIP_HAS}",
    ),
    (changed(HIP, corners=[]), "/corners", "a list of 0", "left out: it belongs to footprint; hip"),
    (
        changed(HIP, end_pich="1:12"),
        "/end_pich",
        "1:12",
        "one of the names known here, the nearest: end_pitch",
    ),
    (changed(HIP, measured="roof"), "/measured", "roof", "one of deck, walls"),
    (changed(HIP, width=24), "/width", "24", "a number with its unit"),
    (changed(HIP, width="0 ft"), "/width", "0 ft", "more than zero and at most 100000 ft"),
    (changed(HIP, pitch="0:12"), "/pitch", "0:12", "at least 0.1:12 and at most 1000:12"),
    (
        {"form": "saltbox", "length": "9 ft", "width": "9 ft", "pitch": "6:12"},
        "/back_eave_drop",
        "none",
        "one of back_eave_drop and ridge_run",
    ),
    (changed(FOOTPRINT, corners="0 ft, 0 ft"), "/corners", "0 ft, 0 ft", "a JSON list"),
    (changed(FOOTPRINT, corners=[]), "/corners", "0 corners", "from 3 to 100 corners"),
    (
        changed(FOOTPRINT, corners=[["0 ft", "0 ft"]] * 101),
        "/corners",
        "a list of 101",
        "a list of at most 100",
    ),
    (
        changed(FOOTPRINT, corners=[["0 ft", "0 ft", "0 ft"]]),
        "/corners/0",
        "a list of 3",
        "a list of at most 2",
    ),
    (changed(FOOTPRINT, corners=[["0 ft"]]), "/corners/0", "a list of 1", "a list of at least 2"),
    (changed(FOOTPRINT, corners=[{"x": "0 ft"}]), "/corners/0", "an object", "a JSON list"),
    (changed(FOOTPRINT, corners=[["0 ft", "0"]]), "/corners/0/1", "0", "a number with its unit"),
    (changed(FOOTPRINT, corners=[["0 ft", [[]]]]), "/corners/0/1", None, LENGTH),
    (changed(FOOTPRINT, sides=[{}]), "/sides", "1 sides", "6, one for each corner, or none"),
    (changed(FOOTPRINT, sides=[{}] * 201), "/sides", "a list of 201", "a list of at most 200"),
    (changed(FOOTPRINT, sides=[5]), "/sides/0", "5", "a JSON object"),
    (changed(FOOTPRINT, sides=[{"end": "hip"}]), "/sides/0/end", "hip", "one of eave, gable"),
    (
        changed(FOOTPRINT, sides=[{}] * 5 + [{"pitch": "0:12"}]),
        "/sides/5/pitch",
        "0:12",
        "at least 0.1",
    ),
    (
        changed(FOOTPRINT, sides=[{}] * 5 + [{"name": "\x07"}]),
        "/sides/5/name",
        "\\x07",
        "a text of 0 to 60",
    ),
    (
        changed(FOOTPRINT, planes=[]),
        "/planes",
        "a list of 0",
        "left out: it belongs to planes; footprint",
    ),
    (changed(PLANES, planes=[]), "/planes", "0 planes", "from 1 to 200 planes"),
    (
        changed(PLANES, planes=PLANES["planes"] * 101),
        "/planes",
        "a list of 202",
        "a list of at most 200",
    ),
    (changed(PLANES, planes={}), "/planes", "an object", "a JSON list"),
    (changed(PLANES, planes=[{}]), "/planes/0/edges", "nothing", "it is needed. The kind of each"),
    (
        changed(PLANES, pitch="3:12"),
        "/pitch",
        "3:12",
        "left out: it belongs to single_slope, gable",
    ),
    (moved(0, edges=["eave"]), "/planes/0/edges", "1 of them", "4, one for each corner"),
    (moved(0, edges=["verge"]), "/planes/0/edges/0", "verge", EDGES),
    (moved(0, edges="eave"), "/planes/0/edges", "eave", "a JSON list"),
    (
        moved(1, beyond=["", "", "barn", ""]),
        "/planes/1/beyond/2",
        "barn",
        "the name of another plane",
    ),
    (moved(1, name=""), "/planes/1/name", "an empty text", "a text of 1 to 60"),
    (
        moved(1, edge=[]),
        "/planes/1/edge",
        "a list of 0",
        "one of the names known here, the nearest: edges",
    ),
    (moved(1, corners=[["0 ft", "0 ft"]] * 2), "/planes/1/corners", "2 corners", "from 3 to 100"),
]


@pytest.mark.parametrize("case", ROOFS)
def test_a_roof_is_refused_by_place(client, case):
    roof, place, came, wanted = case
    answer = client.post("/v1/surfaces", json={"roof": roof})
    told = answer.json()
    assert (answer.status_code, told["status"]) == (422, 422), told
    assert answer.headers["content-type"] == "application/problem+json"
    [error] = [one for one in told["errors"] if one["pointer"] == f"#/roof{place}"]
    assert came is None or error["came"] == came
    assert error["wanted"].startswith(wanted)
    assert error["detail"] in told["detail"]


@pytest.mark.parametrize(
    ("roof", "place", "came"),
    [(None, "#/roof", "null"), ([], "#/roof", "a list of 0"), ("hip", "#/roof", "hip")],
)
def test_a_roof_that_is_no_object(client, roof, place, came):
    [error] = client.post("/v1/surfaces", json={"roof": roof}).json()["errors"]
    assert (error["pointer"], error["came"], error["wanted"]) == (place, came, "a JSON object")


IN_A_BODY = ", or in the JSON body of a POST footprint, planes"
QUERIES = [
    (changed(HIP, form="dome"), "form", "dome", FORMS + IN_A_BODY),
    (changed(HIP, form="planes"), "form", "planes", FORMS + IN_A_BODY),
    (
        changed(HIP, eave_length="1 ft"),
        "eave_length",
        "1 ft",
        f"left out: it belongs to single_slope; {HIP_HAS}",
    ),
    (changed(HIP, corners="0 ft,0 ft"), "corners", "0 ft,0 ft", "one of the names known here"),
    (
        changed(HIP, widht="1 ft"),
        "widht",
        "1 ft",
        "one of the names known here, the nearest: width",
    ),
    (changed(HIP, roof="hip"), "roof", "hip", "one of the names known here"),
    ({"length": "9 ft"}, "length", "9 ft", f"{NAMED}; {SINGLE}"),
    (
        {"form": "gambrel"},
        "break_run",
        "nothing",
        "it is needed. Level, from the eave, or the wall",
    ),
    ({}, "eave_length", "nothing", "it is needed. Along the eave"),
]


@pytest.mark.parametrize("path", ["surfaces", "plans"])
@pytest.mark.parametrize("case", QUERIES)
def test_a_query_is_refused_by_name(client, case, path):
    query, parameter, came, wanted = case
    answer = client.get(f"/v1/{path}", params=query)
    told = answer.json()
    assert (answer.status_code, told["status"]) == (422, 422)
    [error] = [one for one in told["errors"] if one["parameter"] == parameter]
    assert error["came"] == came
    assert error["wanted"].startswith(wanted)


def test_faults_are_told_in_the_units_asked_for(client):
    query = {**HIP, "width": "0 ft", "units": "metric"}
    [error] = client.get("/v1/surfaces", params=query).json()["errors"]
    assert (error["parameter"], error["came"]) == ("width", "0 ft")
    assert error["wanted"] == "more than zero and at most 30480000 mm"
    sent = {"roof": {**HIP, "width": "0 ft"}}
    [error] = client.post("/v1/surfaces?units=metric", json=sent).json()["errors"]
    assert (error["came"], error["wanted"]) == ("0 ft", "more than zero and at most 30480000 mm")


def test_two_hundred_planes_are_answered(client):
    corners, edges = PLANES["planes"][1]["corners"], ["eave", "rake", "ridge", "rake"]
    shed = {"pitch": "3:12", "corners": corners, "edges": edges}
    planes = [{"name": f"shed {number}", **shed} for number in range(200)]
    answer = client.post("/v1/surfaces", json={"roof": {"form": "planes", "planes": planes}})
    assert answer.status_code == 200, answer.text
    assert answer.json()["area"] == pytest.approx(200 * 14 * 4)
