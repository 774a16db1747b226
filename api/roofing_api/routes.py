"""The single calculations: a path each, and one function of the library each."""

from __future__ import annotations

from fastapi import Request, Response

from roofing_api.calculation import Calculation
from roofing_api.operations import operation
from roofing_api.straight import straight_router
from roofing_core.layers.coursing.courses import courses
from roofing_core.layers.coursing.offsets import offsets
from roofing_core.layers.fasteners import fasteners
from roofing_core.layers.metal import metal_run
from roofing_core.layers.sealant import sealant
from roofing_core.layers.underlaying.ice_reach import ice_reach
from roofing_core.layers.underlaying.underlayment import underlayment
from roofing_core.layers.weight import weight
from roofing_core.materials import catalogue
from roofing_core.roof.pitch import pitch_factors
from roofing_core.roof.slopes import roof_area
from roofing_core.ruling.listing import rules
from roofing_core.site.loads import deck_load, stacked_load
from roofing_core.site.ventilation import ventilation
from roofing_core.site.wind import wind_class

router = straight_router("Single calculations")

PITCH = Calculation(pitch_factors, example={"pitch": "4:12"})
AREA = Calculation(roof_area, example={"eave_length": "14 ft", "slope_length": "9 ft 4 in"})
COURSES = Calculation(
    courses,
    example={
        "slope_length": "9 ft 4 in",
        "shingle_height": "13 1/4 in",
        "exposure": "5 5/8 in",
    },
)
OFFSETS = Calculation(
    offsets,
    example={
        "eave_length": "14 ft",
        "shingle_length": "39 3/8 in",
        "sequence": "0 in,6 in,11 in,17 in",
        "courses": "20",
    },
)
UNDERLAYMENT = Calculation(
    underlayment,
    example={"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"},
)
METAL = Calculation(
    metal_run,
    example={"run_length": "14 ft", "stock_length": "10 ft", "lap": "6 in", "tab": "2 in"},
)
FASTENERS = Calculation(fasteners, example={"strips": "105", "nails_per_strip": "4"})
SEALANT = Calculation(sealant, example={"bead_length": "56 ft", "dabs": "20"})
WEIGHT = Calculation(weight, example={"area": "130.7 ft2", "pitch": "3:12", "strips": "105"})
MATERIALS = Calculation(catalogue, example={})
RULES = Calculation(
    rules,
    example={"edition": "2021", "rule": "metal.lap"},
    more=({"edition": "2024", "severity": "breaks_code"},),
)
WIND = Calculation(wind_class, example={"design_speed": "130 mph", "pitch": "5:12"})
ICE_BARRIER = Calculation(ice_reach, example={"eave_overhang": "12 in", "pitch": "5:12"})
VENTILATION = Calculation(
    ventilation, example={"vented_area": "1200 ft2", "ratio": "1/300", "high_vent": "50 in2"}
)
DECK_LOAD = Calculation(deck_load, example={"pitch": "9:12", "layers": "2"})
STACKED_LOAD = Calculation(stacked_load, example={"bundles": "2", "pitch": "4:12"})

CALCULATIONS = (
    PITCH,
    COURSES,
    AREA,
    OFFSETS,
    UNDERLAYMENT,
    METAL,
    FASTENERS,
    SEALANT,
    WEIGHT,
    MATERIALS,
    RULES,
    WIND,
    ICE_BARRIER,
    VENTILATION,
    DECK_LOAD,
    STACKED_LOAD,
)


@router.get("/v1/pitch", **operation(PITCH))
async def get_pitch(request: Request) -> Response:
    asked = PITCH.read(request)
    return asked.reply(pitch_factors(**asked.measures))


@router.get("/v1/courses", **operation(COURSES))
async def get_courses(request: Request) -> Response:
    asked = COURSES.read(request)
    return asked.reply(courses(**asked.measures))


@router.get("/v1/area", **operation(AREA))
async def get_area(request: Request) -> Response:
    asked = AREA.read(request)
    return asked.reply(roof_area(**asked.measures))


@router.get("/v1/offsets", **operation(OFFSETS))
async def get_offsets(request: Request) -> Response:
    asked = OFFSETS.read(request)
    return asked.reply(offsets(**asked.measures))


@router.get("/v1/underlayment", **operation(UNDERLAYMENT))
async def get_underlayment(request: Request) -> Response:
    asked = UNDERLAYMENT.read(request)
    return asked.reply(underlayment(**asked.measures))


@router.get("/v1/metal", **operation(METAL))
async def get_metal(request: Request) -> Response:
    asked = METAL.read(request)
    return asked.reply(metal_run(**asked.measures))


@router.get("/v1/fasteners", **operation(FASTENERS))
async def get_fasteners(request: Request) -> Response:
    asked = FASTENERS.read(request)
    return asked.reply(fasteners(**asked.measures))


@router.get("/v1/sealant", **operation(SEALANT))
async def get_sealant(request: Request) -> Response:
    asked = SEALANT.read(request)
    return asked.reply(sealant(**asked.measures))


@router.get("/v1/weight", **operation(WEIGHT))
async def get_weight(request: Request) -> Response:
    asked = WEIGHT.read(request)
    return asked.reply(weight(**asked.measures))


@router.get("/v1/materials", **operation(MATERIALS))
async def get_materials(request: Request) -> Response:
    asked = MATERIALS.read(request)
    return asked.reply(catalogue(**asked.measures))


@router.get("/v1/rules", **operation(RULES))
async def get_rules(request: Request) -> Response:
    asked = RULES.read(request)
    return asked.reply(rules(**asked.measures))


@router.get("/v1/wind", **operation(WIND))
async def get_wind(request: Request) -> Response:
    asked = WIND.read(request)
    return asked.reply(wind_class(**asked.measures))


@router.get("/v1/ice_barrier", **operation(ICE_BARRIER))
async def get_ice_barrier(request: Request) -> Response:
    asked = ICE_BARRIER.read(request)
    return asked.reply(ice_reach(**asked.measures))


@router.get("/v1/ventilation", **operation(VENTILATION))
async def get_ventilation(request: Request) -> Response:
    asked = VENTILATION.read(request)
    return asked.reply(ventilation(**asked.measures))


@router.get("/v1/deck_load", **operation(DECK_LOAD))
async def get_deck_load(request: Request) -> Response:
    asked = DECK_LOAD.read(request)
    return asked.reply(deck_load(**asked.measures))


@router.get("/v1/stacked_load", **operation(STACKED_LOAD))
async def get_stacked_load(request: Request) -> Response:
    asked = STACKED_LOAD.read(request)
    return asked.reply(stacked_load(**asked.measures))
