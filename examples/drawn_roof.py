"""A cottage that nobody built, read from a plan and from a model: its planes and its lines.

python examples/drawn_roof.py
"""

import json
from pathlib import Path

from roofing_core import given_surfaces, planes_from_drawing, surfaces_text

HERE = Path(__file__).parent

for name in ("cottage.geojson", "cottage.city.json"):
    document = json.loads((HERE / name).read_text(encoding="utf-8"))
    print(name)
    print(surfaces_text(given_surfaces(planes_from_drawing(document))))
