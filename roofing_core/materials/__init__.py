"""What is laid: materials by their dimensions, and a catalogue of nominal, unbranded ones."""

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
from roofing_core.materials.nominal import Catalogue, catalogue, material, names_of

__all__ = [
    "CapNail",
    "Catalogue",
    "Metal",
    "Nail",
    "Panel",
    "Roll",
    "Sealant",
    "Shingle",
    "Starter",
    "Tape",
    "catalogue",
    "material",
    "names_of",
]
