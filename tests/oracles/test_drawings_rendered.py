"""Drawings rendered: the ink of every text lies within the room that was kept for it.

Needs a renderer, from the dependency group `oracles`, and a plain font; skipped without them.
"""

from __future__ import annotations

from io import BytesIO
from typing import get_args
from xml.etree import ElementTree

import numpy as np
import pytest

from roofing_core.sheets.drawings.all import DrawingKind, drawings
from tests.sheets.conftest import MADE, planned
from tests.sheets.reading import SVG, texts_of

resvg = pytest.importorskip("resvg_py")
Image = pytest.importorskip("PIL.Image")

#: Pixels to a millimetre of paper, and what the renderer's own smoothing adds round a letter.
FINE, SMOOTHED = 6, 0.4


def ink(svg: str) -> int:
    """Count the pixels of a drawing that are not white."""
    rendered = resvg.svg_to_bytes(
        svg_string=svg, dpi=25.4, zoom=FINE, background="white", sans_serif_family="DejaVu Sans"
    )
    pixels = np.asarray(Image.open(BytesIO(bytes(rendered))).convert("L"))
    return int((pixels < 200).sum())


def words_alone(svg: str, *, blotted: bool) -> str:
    """Give a drawing without its shapes; if blotted, with the room of each text whitened."""
    root = ElementTree.fromstring(svg)
    shapes, words = root.findall(f"{SVG}g")
    root.remove(shapes)
    for text in texts_of(svg) if blotted else ():
        room = " ".join(f"{x:.3f},{y:.3f}" for x, y in text.corners)
        blot = {"points": room, "fill": "white", "stroke": "white", "stroke-width": f"{SMOOTHED}"}
        ElementTree.SubElement(words, f"{SVG}polygon", blot)
    return ElementTree.tostring(root, encoding="unicode")


@pytest.mark.parametrize("name", MADE)
def test_no_letter_is_drawn_outside_its_room(name):
    plan, system = planned(name)
    for kind in get_args(DrawingKind):
        for page in drawings(plan, kind, system=system)[:2]:
            if not ink(words_alone(page.svg, blotted=False)):
                pytest.skip("no font to draw letters with")
            assert ink(words_alone(page.svg, blotted=True)) == 0, page.title


def test_a_letter_outside_its_room_would_be_seen():
    plan, system = planned("shed")
    (page,) = drawings(plan, "nailing", system=system)
    if not ink(words_alone(page.svg, blotted=False)):
        pytest.skip("no font to draw letters with")
    larger = page.svg.replace('font-size="2.8"', 'font-size="2.8" letter-spacing="0.2"')
    assert ink(words_alone(larger, blotted=True)) > 0
