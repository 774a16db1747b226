"""Worked forms: one roof of each form, as a caller writes it. They show, and are tested."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

SINGLE_SLOPE = {
    "form": "single_slope",
    "eave_length": "14 ft",
    "slope_length": "9 ft 4 in",
    "pitch": "3:12",
}
GABLE = {"form": "gable", "length": "24 ft", "width": "16 ft", "pitch": "9:12"}
HIP = {"form": "hip", "length": "36 ft", "width": "24 ft", "pitch": "6:12"}

#: A gable roof over a garden house, with a pipe and a chimney that takes a cricket.
WITH_A_CHIMNEY: dict[str, Any] = {
    "roof": {"form": "gable", "length": "12 ft", "width": "10 ft", "pitch": "6:12"},
    "openings": [
        {
            "kind": "vent_pipe",
            "plane": "front",
            "from_left": "24 in",
            "up_slope": "30 in",
            "diameter": "3 1/2 in",
        },
        {
            "kind": "chimney",
            "plane": "back",
            "from_left": "48 in",
            "up_slope": "12 in",
            "width": "32 in",
            "depth": "16 in",
        },
    ],
}

#: Those that a query can hold.
FLAT: tuple[dict[str, str], ...] = (
    HIP,
    SINGLE_SLOPE,
    GABLE,
    {
        "form": "saltbox",
        "length": "24 ft",
        "width": "20 ft",
        "pitch": "12:12",
        "back_pitch": "9:12",
        "ridge_run": "7 ft 6 in",
    },
    {
        "form": "gambrel",
        "length": "24 ft",
        "width": "18 ft",
        "pitch": "20:12",
        "upper_pitch": "5:12",
        "break_run": "3 ft",
    },
    {"form": "pyramid", "length": "14 ft", "width": "14 ft", "rise": "5 ft 3 in"},
)

#: A roof with one inside corner, and so one valley; its shorter wing ends in a gable.
FOOTPRINT: dict[str, Any] = {
    "form": "footprint",
    "pitch": "8:12",
    "corners": [
        ["0 ft", "0 ft"],
        ["36 ft", "0 ft"],
        ["36 ft", "16 ft"],
        ["16 ft", "16 ft"],
        ["16 ft", "30 ft"],
        ["0 ft", "30 ft"],
    ],
    "sides": [
        {"name": "front"},
        {"name": "right"},
        {"name": "inner back"},
        {"name": "inner right"},
        {"end": "gable"},
        {"name": "left"},
    ],
}

#: Two planes as taped: a porch roof against a wall, and the lean-to that goes on below it.
PLANES: dict[str, Any] = {
    "form": "planes",
    "planes": [
        {
            "name": "porch",
            "pitch": "3:12",
            "corners": [
                ["0 ft", "0 ft"],
                ["14 ft", "0 ft"],
                ["14 ft", "6 ft"],
                ["0 ft", "6 ft"],
            ],
            "edges": ["pitch_break", "rake", "headwall", "rake"],
            "beyond": ["lean-to", "", "", ""],
        },
        {
            "name": "lean-to",
            "pitch": "2.5:12",
            "corners": [
                ["0 ft", "0 ft"],
                ["14 ft", "0 ft"],
                ["14 ft", "4 ft"],
                ["0 ft", "4 ft"],
            ],
            "edges": ["eave", "rake", "pitch_break", "rake"],
            "beyond": ["", "", "porch", ""],
        },
    ],
}

BODIES: Mapping[str, Any] = {roof["form"]: {"roof": roof} for roof in (*FLAT, FOOTPRINT, PLANES)}
