"""Each route: it calls its function with the right numbers inside, and its answer is rendered.

The numbers themselves are tested in the library. What an answer should look like is worked out
here by a slow walk over the result's annotations, which shares nothing with the compiled one.
"""

from __future__ import annotations

import types
from dataclasses import fields, is_dataclass
from decimal import Decimal
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

import pytest

from roofing_api import plans, routes
from roofing_core.job.choices import Job
from roofing_core.job.plan import plan
from roofing_core.materials import material
from roofing_core.materials.kinds import Shingle
from roofing_core.measures.sentences import Amount, Sentence
from roofing_core.measures.units import SHOWN, convert
from roofing_core.roof.planes import SingleSlope

FOOT = 12.0

#: For each path: the function, a query in mixed spellings, and what the function must be given.
CALLS = {
    "/v1/pitch": ("pitch_factors", "pitch=4:12", {"pitch": 1 / 3}),
    "/v1/area": (
        "roof_area",
        "eave_length=14ft&run=2743.2mm&pitch=3/12",
        {"eave_length": 168.0, "run": 108.0, "pitch": 0.25},
    ),
    "/v1/courses": (
        "courses",
        "slope_length=9%27-4%22&shingle_height=13%201/4in&exposure=5.625+in&edge_distance=19.05mm",
        {
            "slope_length": 112.0,
            "shingle_height": 13.25,
            "exposure": 5.625,
            "edge_distance": 0.75,
        },
    ),
    "/v1/offsets": (
        "offsets",
        "eave_length=14ft&shingle_length=39%203/8in&sequence=0in,6in,11in,17in&courses=20",
        {
            "eave_length": 168.0,
            "shingle_length": 39.375,
            "sequence": (0.0, 6.0, 11.0, 17.0),
            "courses": 20,
        },
    ),
    "/v1/underlayment": (
        "underlayment",
        "eave_length=14ft&slope_length=9ft4in&pitch=3:12&roll_length=144ft",
        {
            "eave_length": 168.0,
            "slope_length": 112.0,
            "pitch": 0.25,
            "roll_length": 144 * FOOT,
        },
    ),
    "/v1/metal": (
        "metal_run",
        "run_length=14ft&stock_length=8ft,10ft&lap=6in&tab=2in&lap_direction=either",
        {
            "run_length": 168.0,
            "stock_length": (96.0, 120.0),
            "lap": 6.0,
            "tab": 2.0,
            "lap_direction": "either",
        },
    ),
    "/v1/fasteners": (
        "fasteners",
        "strips=105&nails_per_strip=4&box_weight=5lb",
        {"strips": 105, "nails_per_strip": 4, "box_weight": 5.0},
    ),
    "/v1/sealant": (
        "sealant",
        "bead_length=56ft&dabs=20&can=1gal&bedding_area=1ft2&bead_section=fillet",
        {
            "bead_length": 56 * FOOT,
            "dabs": 20,
            "can": 231.0,
            "bedding_area": 144.0,
            "bead_section": "fillet",
        },
    ),
    "/v1/weight": (
        "weight",
        "area=1.3squares&pitch=3:12&strips=105&bundle_weight=65lb&underlayment_weight=0.3lb/ft2",
        {
            "area": 1.3 * 14_400,
            "pitch": 0.25,
            "strips": 105,
            "bundle_weight": 65.0,
            "underlayment_weight": 0.3,
        },
    ),
    "/v1/materials": ("catalogue", "", {}),
    "/v1/wind": (
        "wind_class",
        "design_speed=51.4096m/s&pitch=5:12&exposure=B&roof_height=30ft&speed_up=false",
        {
            "design_speed": 115.0,
            "pitch": 5 / 12,
            "exposure": "B",
            "roof_height": 30 * FOOT,
            "speed_up": False,
        },
    ),
    "/v1/ice_barrier": (
        "ice_reach",
        "eave_overhang=12in&pitch=8:12&edition=2024&roll_width=1m",
        {"eave_overhang": 12.0, "pitch": 8 / 12, "edition": "2024", "roll_width": 10_000 / 254},
    ),
    "/v1/ventilation": (
        "ventilation",
        "vented_area=1500ft2&ratio=1/300&high_vent=50in2&low_vent=0.5ft2",
        {"vented_area": 216_000.0, "ratio": "1/300", "high_vent": 50.0, "low_vent": 72.0},
    ),
    "/v1/deck_load": (
        "deck_load",
        "pitch=9:12&layers=2&shingles=2.4psf&panels=2lb/ft2",
        {"pitch": 0.75, "layers": 2, "shingles": 2.4, "panels": 2.0},
    ),
    "/v1/stacked_load": (
        "stacked_load",
        "bundles=3&pitch=4:12&bundle_weight=70lb&patch_length=4ft&tributary_area=100ft2",
        {
            "bundles": 3,
            "pitch": 1 / 3,
            "bundle_weight": 70.0,
            "patch_length": 48.0,
            "tributary_area": 14_400.0,
        },
    ),
    "/v1/rules": (
        "rules",
        "edition=2021&severity=breaks_code&rule=metal.lap",
        {"edition": "2021", "severity": "breaks_code", "rule": "metal.lap"},
    ),
}


def expected(value: Any, hint: Any, system: Any) -> Any:
    """Work out slowly how a value of a result has to stand in the JSON."""
    if isinstance(value, Sentence | Decimal):
        return f"{value:f}" if isinstance(value, Decimal) else value.written(system)
    if isinstance(value, Amount):
        unit = SHOWN[value.unit][system].unit
        return {"value": convert(value.value, value.unit, system), "unit": unit}
    if is_dataclass(value):
        hints = get_type_hints(type(value), include_extras=True)
        names = [field.name for field in fields(value)]
        return {name: expected(getattr(value, name), hints[name], system) for name in names}
    if get_origin(hint) in (Union, types.UnionType) and value is not None:
        # What was measured, as it came in: a size that may have been left out.
        hint = get_args(hint)[0]
    if get_origin(hint) is Annotated:
        return convert(value, hint.__metadata__[0].name, system)
    if isinstance(value, tuple):
        kinds = [one for one in get_args(hint) if one is not ...]
        each = kinds * len(value) if len(kinds) == 1 else kinds
        return [expected(one, of, system) for one, of in zip(value, each, strict=True)]
    return value


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("path", CALLS)
def test_a_route_calls_its_function_and_renders_the_result(client, monkeypatch, path, system):
    name, query, inside = CALLS[path]
    function, called = getattr(routes, name), []

    def recorded(**measures):
        called.append((measures, function(**measures)))
        return called[-1][1]

    monkeypatch.setattr(routes, name, recorded)
    answer = client.get(f"{path}?{query}&units={system}")
    assert answer.status_code == 200, answer.text
    [(measures, result)] = called
    assert measures == inside
    told = answer.json()
    assert told.pop("units")["system"] == system
    assert told == expected(result, type(result), system)


def test_every_path_of_a_calculation_is_tested_here(client):
    paths = {path for path in client.get("/openapi.json").json()["paths"] if "/v1/" in path}
    shapes = {"/v1/surfaces", "/v1/planes"}
    whole = {"/v1/plans", "/v1/orders", "/v1/audits", "/v1/trims", "/v1/margins", "/v1/sizes"}
    whole.add("/v1/priced_sizes")
    elsewhere = {*shapes, *whole, "/v1/working"}
    assert paths == {*CALLS, *elsewhere}


@pytest.mark.parametrize("system", ["us", "metric"])
def test_a_plan_is_rendered_from_a_body_and_from_a_query(client, roof, system):
    shed = SingleSlope(eave_length=168.0, slope_length=112.0, pitch=0.25)
    from_body = client.post(f"/v1/plans?units={system}", json={"roof": roof})
    from_query = client.get("/v1/plans", params={**roof, "units": system})
    assert from_body.status_code == 200, from_body.text
    assert from_body.content == from_query.content
    told = from_body.json()
    assert told.pop("units")["system"] == system
    made = plan(Job(roof=shed))
    assert told == expected(made, type(made), system)


def test_the_library_is_given_the_job_that_a_body_describes(client, roof, monkeypatch):
    called = []

    def recorded(job):
        called.append(job)
        return plan(job)

    monkeypatch.setattr(plans, "remembered", recorded)
    body = {
        "roof": {"form": "single_slope", **roof},
        "shingle": {"material": "inch_three_tab", "exposure": "127 mm"},
        "starter": "ready_made_starter",
        "eave_metal": {"stock_lengths": ["8 ft", "10 ft"]},
        "coursing": {"edge_distance": "1 in"},
        "underlaying": {"ice_barrier": True, "field_lines": 2},
        "code_edition": "2021",
    }
    answer = client.post("/v1/plans", json=body)
    assert answer.status_code == 200, answer.text
    [job] = called
    tab = material(Shingle, "inch_three_tab")
    assert (job.roof.eave_length, job.roof.slope_length, job.roof.pitch) == (168.0, 112.0, 0.25)
    assert (job.shingle.name, job.shingle.exposure) == ("inch_three_tab", 5.0)
    assert (job.shingle.height, job.shingle.sequence) == (tab.height, tab.sequence)
    assert (job.starter.name, job.eave_metal.stock_lengths) == ("ready_made_starter", (96.0, 120.0))
    assert job.coursing.edge_distance == 1.0
    assert (job.underlaying.ice_barrier, job.underlaying.field_lines) == (True, 2)
    assert job.code_edition == "2021"
    assert job.rake_metal == Job(roof=job.roof).rake_metal


def test_a_query_says_the_same_as_a_body(client, roof):
    body = {
        "roof": roof,
        "shingle": {"material": "inch_three_tab", "sequence": ["0 in", "6 in"]},
        "starter": {"trim": "5 in"},
        "decking": {"lay": True},
        "sealing": {"beads_per_leg": 3},
    }
    query = {
        **roof,
        "shingle": "inch_three_tab",
        "shingle.sequence": "0 in, 6 in",
        "starter.trim": "5in",
        "decking.lay": "true",
        "sealing.beads_per_leg": "3",
        "form": "single_slope",
    }
    asked, posted = client.get("/v1/plans", params=query), client.post("/v1/plans", json=body)
    assert asked.status_code == 200, asked.text
    assert asked.content == posted.content
    assert asked.content != client.get("/v1/plans", params=roof).content


def test_a_plan_repeats_its_inputs_with_the_defaults(client, roof):
    told = client.get("/v1/plans", params=roof).json()
    assert told["choices"]["shingle"]["name"] == "metric_strip"
    assert told["choices"]["shingle"]["sequence"] == [0, 6, 11, 17]
    assert told["choices"]["coursing"]["edge_distance"] == 0.75
    assert told["roof"]["eave_length"] == 168


def test_one_unit_for_all_bare_lengths(client):
    with_units = client.get("/v1/area?eave_length=14ft&slope_length=9.5ft&units=metric")
    bare = client.get("/v1/area?eave_length=14&slope_length=9 1/2&number_unit=ft&units=metric")
    mixed = client.get("/v1/area?eave_length=168in&slope_length=9.5&number_unit=ft&units=metric")
    assert with_units.status_code == 200
    assert with_units.json() == bare.json() == mixed.json()
    body = {"roof": {"eave_length": 4.25, "slope_length": 3, "pitch": "3:12"}, "number_unit": "m"}
    told = client.post("/v1/plans?units=metric", json=body).json()
    assert (told["roof"]["eave_length"], told["roof"]["slope_length"]) == (4250, 3000)


def test_materials_can_be_asked_for_one_value(client):
    told = client.get("/v1/materials", params={"pointer": "/shingles/0/exposure", "value": "text"})
    assert told.text == "5 5/8 in"
