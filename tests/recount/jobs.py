"""Random jobs for the recount: sizes, shingles, rolls, metal and ways of working, all in ticks."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Literal

from hypothesis import strategies as st

from roofing_core import Coursing, Job, Metalwork, Nailing, SingleSlope, Underlaying, material
from roofing_core.materials import Metal, Roll, Shingle, Starter

INCH, FOOT = 64, 768


def inches(ticks: int) -> float:
    """Give ticks of 1/64 in as inches: exact as a float."""
    return ticks / INCH


@dataclass(frozen=True)
class Drawn:
    """One random job, as ticks for the recount and as the library is asked."""

    ticks: dict[str, Any]
    rise_48: int
    made: Literal["self_made", "ready_made"]
    high_wind: bool
    field_lines: int
    per_bundle: int

    @property
    def two_layers(self) -> bool:
        """Tell whether the slope is under 4:12."""
        return self.rise_48 < 16

    def job(self) -> Job:
        """Give the job as the library is asked."""
        size = {
            name: tuple(map(inches, value)) if isinstance(value, list) else inches(value)
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


def _stocks(draw: Any) -> list[int]:
    return list(draw(st.lists(st.integers(60 * INCH, 144 * INCH), min_size=1, max_size=3)))


@st.composite
def drawn(draw: Any) -> Drawn:
    """Draw a job that can be built: 1 to 60 ft of eave, 1 to 40 ft of slope."""

    def between(least: float, most: float) -> int:
        return int(draw(st.integers(round(least * INCH), round(most * INCH))))

    length = between(12, 48)
    height = between(8, 18)
    exposure = draw(st.integers(3 * INCH, (height - 2 * INCH) // 2))
    zone_low = between(exposure / INCH, height / INCH - 1)
    piece = between(12, 60)
    ready = draw(st.booleans())
    eave, trim, stagger, end_lap = between(12, 720), between(0, 3), between(0, 90), between(0, 8)
    shortest_roll = min(eave + 2 * trim, max(4 * stagger, 24 * INCH) + 24 * INCH + end_lap)
    sequence = draw(st.lists(st.integers(0, length - 1), min_size=1, max_size=8))
    # Half of the sequences are the trade's own, so that joints also fall where a crew puts them.
    usual = [k * length // 6 for k in range(6)]
    return Drawn(
        ticks={
            "roof.eave_length": eave,
            "roof.slope_length": between(12, 480),
            "shingle.length": length,
            "shingle.height": height,
            "shingle.exposure": exposure,
            "shingle.nail_zone_low": zone_low,
            "shingle.nail_zone_high": between(zone_low / INCH, height / INCH),
            "shingle.sequence": draw(st.sampled_from([sequence, usual])),
            "starter.length": piece,
            "starter.height": between(4, 10),
            "starter.trim": between(0, (piece - 1 if ready else length - 1) / INCH),
            "roll.width": 2 * draw(st.integers(12 * INCH, 30 * INCH)),
            "roll.length": draw(st.integers(shortest_roll, shortest_roll + 150 * FOOT)),
            "eave_metal.stock_lengths": _stocks(draw),
            "rake_metal.stock_lengths": _stocks(draw),
            "ridge_metal.stock_lengths": _stocks(draw),
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
            "nailing.end_distance": between(1 / 64, 2),
        },
        rise_48=draw(st.integers(8, 96)),
        made="ready_made" if ready else "self_made",
        high_wind=draw(st.booleans()),
        field_lines=draw(st.integers(0, 3)),
        per_bundle=draw(st.integers(10, 40)),
    )
