"""Random jobs for the recount: sizes, shingles, rolls, metal and ways of working, all in ticks.

A tick is 1/64 in, which a float holds exactly, or 1/10 mm, which hardly any float does: a job in
whole millimetres meets its limits exactly by hand, and up to float dust in the library.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Literal

from hypothesis import strategies as st

from roofing_core import (
    Coursing,
    Job,
    Metalwork,
    Nailing,
    SingleSlope,
    Underlaying,
    material,
    read_length,
)
from roofing_core.materials import Metal, Roll, Shingle, Starter

#: Ticks in an inch, when a tick is 1/64 in and when it is 1/10 mm.
IN_64THS, IN_TENTHS_OF_MM = 64, 254
INCH = IN_64THS


def inches(ticks: int) -> float:
    """Give ticks of 1/64 in as inches: exact as a float."""
    return ticks / INCH


def millimetres(ticks: int) -> float:
    """Give ticks of 1/10 mm as inches: as the library reads them."""
    return read_length(f"{ticks // 10}.{ticks % 10} mm")


@dataclass(frozen=True)
class Drawn:
    """One random job, as ticks for the recount and as the library is asked."""

    ticks: dict[str, Any]
    rise_48: int
    made: Literal["self_made", "ready_made"]
    high_wind: bool
    field_lines: int
    per_bundle: int
    inch: int = IN_64THS

    @property
    def two_layers(self) -> bool:
        """Tell whether the slope is under 4:12."""
        return self.rise_48 < 16

    def job(self) -> Job:
        """Give the job as the library is asked."""
        read = inches if self.inch == IN_64THS else millimetres
        size = {
            name: tuple(map(read, value)) if isinstance(value, list) else read(value)
            for name, value in self.ticks.items()
        }

        def of(kind: str) -> dict[str, Any]:
            return {
                name.removeprefix(f"{kind}."): value
                for name, value in size.items()
                if name.startswith(f"{kind}.")
            }

        return Job(
            roof=SingleSlope(pitch=self.rise_48 / 48, **of("roof")),
            shingle=replace(
                material(Shingle, "metric_strip"), per_bundle=self.per_bundle, **of("shingle")
            ),
            starter=replace(
                material(Starter, f"{self.made}_starter"), made=self.made, **of("starter")
            ),
            underlayment=replace(material(Roll, "felt_15"), **of("roll")),
            eave_metal=replace(material(Metal, "eave_metal"), **of("eave_metal")),
            rake_metal=replace(material(Metal, "rake_metal"), **of("rake_metal")),
            ridge_metal=replace(material(Metal, "ridge_metal"), **of("ridge_metal")),
            coursing=Coursing(**of("coursing")),
            metalwork=Metalwork(**of("metalwork")),
            underlaying=Underlaying(field_lines=self.field_lines, **of("underlaying")),
            nailing=Nailing(high_wind=self.high_wind, **of("nailing")),
        )


@st.composite
def drawn(draw: Any, *, inch: int = IN_64THS) -> Drawn:
    """Draw a job that can be built: 1 to 60 ft of eave, 1 to 40 ft of slope.

    In 1/64 in any number of ticks is drawn; in millimetres, whole ones.
    """
    step = 1 if inch == IN_64THS else 10

    def ticks(least: int, most: int) -> int:
        return step * int(draw(st.integers(-(-least // step), most // step)))

    def between(least: float, most: float) -> int:
        return ticks(round(least * inch), round(most * inch))

    def stocks() -> list[int]:
        return [between(60, 144) for _ in range(draw(st.integers(1, 3)))]

    length = between(12, 48)
    height = between(8, 18)
    exposure = ticks(5 * inch // 2, (height - 2 * inch) // 2)
    zone_low = ticks(exposure, height - inch)
    piece = between(12, 60)
    ready = draw(st.booleans())
    eave, trim, stagger, end_lap = between(12, 720), between(0, 3), between(0, 90), between(0, 8)
    shortest_roll = max(4 * stagger, 24 * inch) + 24 * inch + end_lap
    if eave + 2 * trim < max(shortest_roll, 48 * inch - end_lap + 2 * stagger):
        shortest_roll = eave + 2 * trim
    sequence = [ticks(0, length - step) for _ in range(draw(st.integers(1, 8)))]
    # Half of the sequences are the trade's own, so that joints also fall where a crew puts them.
    usual = [k * length // 6 // step * step for k in range(6)]
    return Drawn(
        ticks={
            "roof.eave_length": eave,
            "roof.slope_length": between(12, 480),
            "shingle.length": length,
            "shingle.height": height,
            "shingle.exposure": exposure,
            "shingle.nail_zone_low": zone_low,
            "shingle.nail_zone_high": ticks(zone_low, height),
            "shingle.sequence": draw(st.sampled_from([sequence, usual])),
            "starter.length": piece,
            "starter.height": between(4, 10),
            "starter.trim": ticks(0, (piece if ready else length) - step),
            "roll.width": 2 * between(12, 30),
            "roll.length": ticks(shortest_roll, shortest_roll + 1800 * inch),
            "eave_metal.stock_lengths": stocks(),
            "rake_metal.stock_lengths": stocks(),
            "ridge_metal.stock_lengths": stocks(),
            "coursing.starter_past_metal": between(0, 1),
            "coursing.course_past_starter": between(0, 1),
            "coursing.shingle_past_rake": between(0, 2),
            "coursing.edge_distance": between(0, 2),
            "metalwork.lap": between(1, 8),
            "metalwork.eave_tab": between(0, 3),
            "metalwork.ridge_proud": between(0, 1),
            "metalwork.nail_spacing": between(4, 14),
            "metalwork.ridge_nail_spacing": between(4, 14),
            "metalwork.end_distance": between(0, 2),
            "metalwork.least_piece": between(0, 14),
            "underlaying.head_lap": between(0, 8),
            "underlaying.end_lap": end_lap,
            "underlaying.end_lap_stagger": stagger,
            "underlaying.past_metal": between(0, 1),
            "underlaying.trim_allowance": trim,
            "underlaying.lap_spacing": between(4, 14),
            "underlaying.field_spacing": between(6, 26),
            "nailing.end_distance": ticks(step, 2 * inch),
        },
        rise_48=draw(st.integers(8, 96)),
        made="ready_made" if ready else "self_made",
        high_wind=draw(st.booleans()),
        field_lines=draw(st.integers(0, 3)),
        per_bundle=draw(st.integers(10, 40)),
        inch=inch,
    )
