"""The OpenAPI document and the service, held against each other by schemathesis.

Every operation and every check it has. Texts of measurements are made by the unit that the
document states for them, so that requests get past the reading and into the library.
"""

from __future__ import annotations

from typing import Any

import schemathesis
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from schemathesis.config import SchemathesisConfig

from roofing_api.app import app

LENGTHS = st.builds("{} {}".format, st.integers(1, 400), st.sampled_from(["in", "ft", "mm", "cm"]))
SIZES = st.sampled_from(["39 3/8 in", "13 1/4 in", "5 5/8 in", "14' 6 1/2\"", "-1 ft", "0 in"])
WRITTEN = {
    "in": LENGTHS | SIZES,
    "pitch": st.builds("{}:12".format, st.integers(0, 24)) | st.just("18.43 deg"),
    "in2": st.builds("{} ft2".format, st.integers(1, 5000)),
    "in3": st.builds("{} fl oz".format, st.integers(1, 500)),
    "lb": st.builds("{} lb".format, st.integers(0, 100)),
    "lb/ft2": st.builds("{} lb/ft2".format, st.integers(0, 10)),
    "lb/ft": st.builds("{} lb/ft".format, st.integers(0, 10)),
}
for unit, texts in WRITTEN.items():
    schemathesis.openapi.format(f"measured-{unit}", texts)

#: What takes a whole plan, or a job and a price list, or as many plans as a hundred.
LONG = [
    "/v1/audits",
    "/v1/orders",
    "/v1/margins",
    "/v1/sizes",
    "/v1/priced_sizes",
    "/v1/trims",
    "/v1/working",
]

#: What a schema allows, a roof or an address may not; these say why not.
ACCEPTED = {"expected-statuses": ["2xx", "404", "414", "422"]}

#: Whatever asks for a job has the same 300 places: every one of them is tried on plans alone.
NOT_EACH = {"include-path": LONG, "phases": {"coverage": {"enabled": False}}}
CONFIG = {"checks": {"positive_data_acceptance": ACCEPTED}, "operations": [NOT_EACH]}


def mark(tree: Any) -> None:
    """Give every text that has a unit the format by which such texts are made."""
    if isinstance(tree, dict) and "x-unit" in tree:
        tree["format"] = f"measured-{tree['x-unit']}"
    inner = tree.values() if isinstance(tree, dict) else tree if isinstance(tree, list) else ()
    for one in inner:
        mark(one)


def leave_out(name: str, document: Any) -> None:
    """Take a parameter out of every operation."""
    reference = {"$ref": f"#/components/parameters/{name}"}
    for path in document["paths"].values():
        for operation in path.values():
            told = operation.get("parameters", [])
            operation["parameters"] = [one for one in told if one != reference]


schema = schemathesis.openapi.from_asgi(
    "/openapi.json", app, config=SchemathesisConfig.from_dict(CONFIG)
)
mark(schema.raw_schema)
# Who asks for problems as text is told of them with status 200: see test_cells.
leave_out("problems", schema.raw_schema)


@schema.exclude(path=LONG).parametrize()
@settings(max_examples=10, derandomize=True, deadline=None, database=None)
def test_every_answer_is_as_documented(case: schemathesis.Case) -> None:
    case.call_and_validate()


#: Most drawn bodies of these are too large to be drawn to their end.
LARGE = [HealthCheck.data_too_large, HealthCheck.too_slow]


@schema.include(path=LONG).parametrize()
@settings(
    max_examples=3,
    derandomize=True,
    deadline=None,
    database=None,
    suppress_health_check=LARGE,
)
def test_what_takes_long_is_answered_as_documented(case: schemathesis.Case) -> None:
    case.call_and_validate()
