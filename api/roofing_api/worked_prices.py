"""Worked prices: a job with a price list, as a caller writes them. They show, and are tested.

The prices are invented.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from roofing_api.worked_forms import SINGLE_SLOPE

_METAL = {"packs": [{"holds": "10 ft", "price": "9.80"}, {"holds": "8 ft", "price": "7.95"}]}

#: Dollars, tax on top, several sizes, something on hand.
_SHED: dict[str, Any] = {
    "job": {"roof": SINGLE_SLOPE},
    "prices": {
        "currency": "USD",
        "tax_rate": "8.25",
        "underlayment": {
            "packs": [{"holds": "144 ft", "price": "31.00"}, {"holds": "72 ft", "price": "16.50"}]
        },
        "eave_metal": _METAL,
        "rake_metal": {**_METAL, "on_hand": [{"length": "10 ft", "count": 1}]},
        "ridge_metal": _METAL,
        "cap_nails": {
            "packs": [{"holds": 1000, "price": "14.25"}, {"holds": 250, "price": "5.10"}]
        },
        "shingles": {"packs": [{"holds": 21, "price": "38.90"}], "on_hand": 4},
        "roofing_nails": {
            "packs": [
                {"holds": "1 lb", "price": "4.79", "name": "bag"},
                {"holds": "5 lb", "price": "17.25", "name": "box"},
                {"holds": "30 lb", "price": "74.00", "name": "carton"},
            ]
        },
        "sealant": {"packs": [{"holds": "10.1 fl oz", "price": "5.45"}]},
        "cement": {
            "packs": [
                {"holds": "1 US gal", "price": "21.75"},
                {"holds": "29 fl oz", "price": "9.20"},
            ],
            "tax_rate": "0",
        },
    },
}

#: Yen, which have no smaller unit, with the tax in the prices; metric packs.
_PACKS: dict[str, Any] = {"packs": [{"holds": "3.03 m", "price": "1480"}]}
_IN_YEN: dict[str, Any] = {
    "job": {"roof": {"eave_length": "3.64 m", "slope_length": "2.73 m", "pitch": "4:12"}},
    "prices": {
        "currency": "JPY",
        "tax_rate": "10",
        "tax_included": True,
        "underlayment": {"packs": [{"holds": "21 m", "price": "5980"}]},
        "eave_metal": _PACKS,
        "rake_metal": _PACKS,
        "ridge_metal": _PACKS,
        "cap_nails": {"packs": [{"holds": 200, "price": "780"}]},
        "shingles": {"packs": [{"holds": 21, "price": "6200"}, {"holds": 7, "price": "2350"}]},
        "roofing_nails": {"packs": [{"holds": "1 kg", "price": "890"}]},
        "sealant": {"packs": [{"holds": "330 mL", "price": "640"}]},
        "cement": {"packs": [{"holds": "1 L", "price": "1750"}]},
    },
}

PRICED: Mapping[str, Any] = MappingProxyType({"shed_in_dollars": _SHED, "shed_in_yen": _IN_YEN})
