"""Metal: runs along the edges of a roof, each as a cut list with its laps, tabs and nails."""

from roofing_core.layers.metal.run_limits import MOST_NAILS, MOST_PIECES
from roofing_core.layers.metal.runs import (
    END_DISTANCE,
    LAP,
    LEAST_PIECE,
    NAIL_SPACING,
    STOCK_LENGTHS,
    LapDirection,
    MetalRun,
    Tabs,
    metal_run,
)
from roofing_core.layers.metal.valleys import valley_reach, valley_run

__all__ = [
    "END_DISTANCE",
    "LAP",
    "LEAST_PIECE",
    "MOST_NAILS",
    "MOST_PIECES",
    "NAIL_SPACING",
    "STOCK_LENGTHS",
    "LapDirection",
    "MetalRun",
    "Tabs",
    "metal_run",
    "valley_reach",
    "valley_run",
]
