"""The surfaces of the buildings of a CityJSON model, each with what its semantics say."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from roofing_core.measures.faults import Refused, refuse_if_any
from roofing_core.roof.documents import At, a_list, an_index, an_object, wrong
from roofing_core.roof.footprints import name_faults

#: What is read of a model.
ROOF, WALL = "RoofSurface", "WallSurface"

#: How many lists lie between the boundaries of a geometry and its surfaces.
_DEPTHS = MappingProxyType(
    {"MultiSurface": 0, "CompositeSurface": 0, "Solid": 1, "MultiSolid": 2, "CompositeSolid": 2}
)

_LOD = re.compile(r"[0-9](\.[0-9])?", re.ASCII)


@dataclass(frozen=True, slots=True, kw_only=True)
class CitySurface:
    """A surface of a building.

    Attributes:
        kind: Its kind, as its semantics say.
        name: What its semantics call it; mostly nothing.
        rings: Its rings of indices of vertices, as they stand in the document.
        at: Where they stand.
    """

    kind: str
    name: str
    rings: object
    at: At


def city_surfaces(
    top: Mapping[str, object], *, building: str = "", lod: str = ""
) -> tuple[CitySurface, ...]:
    """Give the surfaces with semantics of the city objects of a model.

    Of each object those of its highest level of detail that has roof surfaces, in the order of the
    document.

    Args:
        top: The model.
        building: The identifier of a city object; its children belong to it. All objects unless
            given.
        lod: The level of detail to take in place of the highest.

    Returns:
        The surfaces; none of an object without roof surfaces.

    Raises:
        Refused: The model is not as its specification says, or has no such building.

    Source:
        CityJSON 1.1 and 2.0 (OGC 20-072), 2 for city objects, 3.2 for boundaries, 3.3 for
        semantics: values nest two lists less than boundaries. Levels of detail written as
        numbers, as before 1.1, are read too.

    >>> surface = {"surfaces": [{"type": "RoofSurface"}], "values": [0]}
    >>> shed = {"geometry": [{"type": "MultiSurface", "lod": lod, "boundaries": [[[0, 1, 2]]],
    ...     "semantics": surface} for lod in ("1.3", "2.2")]}
    >>> [one.at[3] for one in city_surfaces({"CityObjects": {"shed": shed}})]
    [1]
    """
    if lod and not _LOD.fullmatch(lod):
        raise wrong(("lod",), lod, "a level of detail, such as 2.2")
    objects = an_object(top.get("CityObjects"), ("CityObjects",))
    return tuple(
        surface
        for name in _chosen(objects, building)
        for surface in _finest(objects[name], lod, at=("CityObjects", name))
    )


def _chosen(objects: Mapping[str, object], building: str) -> list[str]:
    """Give the identifiers of the city objects to read, each once."""
    if not building:
        return list(objects)
    if building not in objects:
        raise wrong(("building",), building, "the identifier of a city object")
    chosen = {building: True}
    waiting = [building]
    while waiting:
        name = waiting.pop()
        at: At = ("CityObjects", name)
        children = a_list(an_object(objects[name], at).get("children", ()), (*at, "children"))
        for place, child in enumerate(children):
            if not (isinstance(child, str) and child in objects):
                raise wrong((*at, "children", place), child, "the identifier of a city object")
            if child not in chosen:
                chosen[child] = True
                waiting.append(child)
    return [name for name in objects if name in chosen]


def _finest(thing: object, lod: str, *, at: At) -> Sequence[CitySurface]:
    """Give the surfaces of a city object, of the level of detail that is asked for or highest."""
    levels: dict[float, list[CitySurface]] = {}
    at = (*at, "geometry")
    geometries = a_list(an_object(thing, at[:2]).get("geometry", ()), at)
    for place, geometry in enumerate(geometries):
        one = an_object(geometry, (*at, place))
        surfaces = list(_surfaces(one, (*at, place)))
        if any(surface.kind == ROOF for surface in surfaces):
            levels.setdefault(_level(one.get("lod"), (*at, place, "lod")), []).extend(surfaces)
    if lod:
        return levels.get(float(lod), ())
    return levels[max(levels)] if levels else ()


def _level(lod: object, at: At) -> float:
    """Give a level of detail as a number."""
    if isinstance(lod, str | int | float) and _LOD.fullmatch(str(lod)):
        return float(lod)
    raise wrong(at, lod, 'a level of detail, such as "2.2"')


def _surfaces(geometry: Mapping[str, object], at: At) -> Iterator[CitySurface]:
    """Give the surfaces of a geometry that its semantics say something of."""
    depth = _DEPTHS.get(str(geometry.get("type")))
    if depth is None or geometry.get("semantics") is None:
        return
    within: At = (*at, "semantics")
    said = an_object(geometry["semantics"], within)
    kinds = a_list(said.get("surfaces"), (*within, "surfaces"))
    values: At = (*within, "values")
    for rings, mark, place in _marked(
        geometry.get("boundaries"), said.get("values"), depth, at=(*at, "boundaries"), values=values
    ):
        if mark is not None:
            which = an_index(mark, len(kinds), (*values, *place[len(at) + 1 :]))
            kind = an_object(kinds[which], (*within, "surfaces", which))
            yield CitySurface(
                kind=str(kind.get("type")),
                name=_name(kind.get("name"), (*within, "surfaces", which, "name")),
                rings=rings,
                at=place,
            )


def _marked(
    boundaries: object, marks: object, depth: int, *, at: At, values: At
) -> Iterator[tuple[object, object, At]]:
    """Give each surface with its mark and its place; no marks are as many that say nothing."""
    here = a_list(boundaries, at)
    beside = a_list([None] * len(here) if marks is None else marks, values)
    if len(beside) != len(here):
        raise wrong(values, beside, f"{len(here)} of them, as many as boundaries")
    for place, (inner, mark) in enumerate(zip(here, beside, strict=True)):
        if depth:
            yield from _marked(
                inner, mark, depth - 1, at=(*at, place), values=(*values, place)
            )  # fmt: skip
        else:
            yield inner, mark, (*at, place)


def _name(name: object, at: At) -> str:
    """Give what a surface is called; what is no text is somebody else's."""
    if not isinstance(name, str):
        return ""
    refuse_if_any(Refused(*name_faults(name)).below(*at[:-1]).faults)
    return name
