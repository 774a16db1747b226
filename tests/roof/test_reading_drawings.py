"""Drawings of either format: told apart by their type."""

from __future__ import annotations

import pytest

from roofing_core.measures.faults import Refused
from roofing_core.roof.forms import Hip
from roofing_core.roof.reading_cityjson import planes_from_cityjson
from roofing_core.roof.reading_drawings import Picked, planes_from_drawing
from roofing_core.roof.reading_geojson import planes_from_geojson
from roofing_core.roof.whole_roof import surfaces
from tests.roof.drawings import city_model, plan_drawing

HIP = surfaces(Hip(length=432, width=288, pitch=0.5))
MODEL, PLAN = city_model(HIP.planes), plan_drawing(HIP)


def test_each_format_is_read_by_its_own_reader():
    assert planes_from_drawing(MODEL) == planes_from_cityjson(MODEL)
    assert planes_from_drawing(PLAN) == planes_from_geojson(PLAN)
    overhung = Picked(eave_overhang=12)
    for drawing in (MODEL, PLAN):
        assert planes_from_drawing(drawing, overhung).eave_overhang == 12
    picked = Picked(building="house", lod="2.2", unit="ft")
    assert planes_from_drawing(MODEL, picked) == planes_from_cityjson(
        MODEL, building="house", lod="2.2", unit="ft"
    )


REFUSED = [
    ("[]", Picked(), "the request came as '[]': an object"),
    ({}, Picked(), "type came as null: FeatureCollection or CityJSON"),
    (
        PLAN,
        Picked(building="house", lod="2", unit="ft"),
        "building came as 'house': left out: it is of CityJSON alone; "
        "lod came as '2': left out: it is of CityJSON alone; "
        "unit came as 'ft': left out: it is of CityJSON alone",
    ),
    *(
        (
            drawing,
            Picked(eave_overhang=-1),
            "eave_overhang came as -1 in: zero or more and at most 100000 ft",
        )
        for drawing in (MODEL, PLAN)
    ),
]


@pytest.mark.parametrize(("document", "picked", "said"), REFUSED, ids=range(len(REFUSED)))
def test_what_is_refused_and_how_it_is_said(document, picked, said):
    with pytest.raises(Refused) as refused:
        planes_from_drawing(document, picked)
    assert str(refused.value) == said
