"""What is laid: materials by their dimensions, and a catalogue of nominal, unbranded ones."""

from roofing_core.materials.edge_kinds import Cap, PipeFlashing, Sheet, StepFlashing
from roofing_core.materials.kinds import (
    CapNail,
    Metal,
    Nail,
    Panel,
    Roll,
    Sealant,
    Shingle,
    Starter,
    Tape,
)
from roofing_core.materials.listing import Catalogue, catalogue, material, names_of

__all__ = [
    "Cap",
    "CapNail",
    "Catalogue",
    "Metal",
    "Nail",
    "Panel",
    "PipeFlashing",
    "Roll",
    "Sealant",
    "Sheet",
    "Shingle",
    "Starter",
    "StepFlashing",
    "Tape",
    "catalogue",
    "material",
    "names_of",
]
