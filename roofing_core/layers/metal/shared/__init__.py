"""Shared: stock lengths of one metal for several runs together, bought at the least cost."""

from roofing_core.layers.metal.shared.asked import RunAsked, StockOffer
from roofing_core.layers.metal.shared.bought import (
    LengthCut,
    LengthsBought,
    Offcut,
    PieceCut,
    RunPieced,
    SharedMetal,
)
from roofing_core.layers.metal.shared.buying import MOST_STEPS, shared_metal

__all__ = [
    "MOST_STEPS",
    "LengthCut",
    "LengthsBought",
    "Offcut",
    "PieceCut",
    "RunAsked",
    "RunPieced",
    "SharedMetal",
    "StockOffer",
    "shared_metal",
]
