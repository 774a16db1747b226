"""Every argument of a layer comes from the place that a refusal would name."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from dataclasses import fields, replace
from typing import Any, get_args, get_type_hints

import pytest

import roofing_core.job
from roofing_core import Choices, Job, Refused
from roofing_core.job.wiring import Site, Wired, site_of
from roofing_core.measures.faults import require_positive
from tests.job.changing import at, changed


def all_wired() -> dict[str, Wired[Any]]:
    """Find every wiring at the top of a module of the job."""
    modules = [
        importlib.import_module(f"roofing_core.job.{module.name}")
        for module in pkgutil.iter_modules(roofing_core.job.__path__)
    ]
    return {
        f"{module.__name__}.{name}": value
        for module in modules
        for name, value in vars(module).items()
        if isinstance(value, Wired)
    }


WIRED = all_wired()
ARGUMENTS = [
    pytest.param(wired, argument, place, id=f"{name}.{argument}")
    for name, wired in WIRED.items()
    for argument, place in wired.places.items()
]


@pytest.fixture(scope="module")
def site(shed: Job) -> Site:
    """Give the example roof, measured, with its choices."""
    return site_of(shed.roof, shed.choices())


def prefixed(place: str) -> str:
    """Give a place as it is reached from a site."""
    return place if place.startswith("roof.") else f"choices.{place}"


def another(value: Any, kind: Any) -> Any:
    """Give another value of the same kind, one that a material or a choice may have."""
    if isinstance(value, bool):
        return not value
    if isinstance(value, int | float):
        return value + 1
    if isinstance(value, tuple):
        return (*value, value[-1] + 1)
    return next(one for one in get_args(kind) if one != value)


def test_every_layer_is_wired():
    layers = {wired.function.__name__ for wired in WIRED.values()}
    assert layers >= {
        "DeckWay", "SheetWay", "UnderlaymentWay", "apron", "caps", "check_joints", "courses",
        "cricket", "head_flashing", "ice_barrier_reaches", "metal_run", "nail_positions",
        "pipe_flashing", "sealant", "step_flashing", "valley_lining", "valley_run",
    }  # fmt: skip
    assert len(ARGUMENTS) > 50


@pytest.mark.parametrize(("wired", "argument", "place"), ARGUMENTS)
def test_a_wired_argument_is_one_of_its_function(wired, argument, place):
    assert argument in inspect.signature(wired.function).parameters
    assert place.count(".") == 1 or place in {field.name for field in fields(Choices)}


@pytest.mark.parametrize(("wired", "argument", "place"), ARGUMENTS)
def test_what_stands_at_the_place_is_what_arrives(wired, argument, place, site):
    def arriving(**arguments: Any) -> dict[str, Any]:
        return arguments

    asked = Wired(arriving, **wired.places)
    before = asked(site)
    assert before[argument] == at(site, prefixed(place))
    part, name = prefixed(place).rsplit(".", 1)
    kind = get_type_hints(type(at(site, part)))[name]
    value = another(before[argument], kind)
    other = changed(site, **{prefixed(place).replace(".", "__"): value})
    after = asked(other)
    assert after[argument] == value != before[argument]
    differing = {key for key in after if after[key] != before[key]}
    assert differing == {key for key, where in wired.places.items() if where == place}


def test_what_another_layer_worked_out_goes_first(site):
    def arriving(**arguments: Any) -> dict[str, Any]:
        return arguments

    wired = Wired(arriving, width="roof.eave_length", reach="roof.slope_length")
    assert wired(site) == {"width": 168, "reach": 112}
    assert wired(site, reach=40) == {"width": 168, "reach": 40}


def test_a_refusal_names_the_place_and_not_the_argument(site):
    def layer(**arguments: float) -> None:
        require_positive("in", **arguments)

    wired = Wired(layer, height="shingle.height", eave="roof.eave_length")
    bad = replace(site, roof=replace(site.roof, eave_length=-1.0))
    with pytest.raises(Refused) as refusal:
        wired(bad)
    assert [fault.at for fault in refusal.value.faults] == [("roof", "eave_length")]
