"""One of several dataclasses, told apart by a word: read, refused, described and answered.

The dataclasses are the test's own, so that nothing here knows which forms of roof there are.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Annotated, Any, Literal

import pytest
from openapi_schema_validator import OAS31Validator
from orjson import dumps, loads

from roofing_api.answering import rendered
from roofing_api.describing import answer_of
from roofing_api.forms import Form
from roofing_api.inputs import inputs_of, measures, schema_of
from roofing_api.pointing import value_at
from roofing_api.queries import QueryForm
from roofing_api.variants import variants_of
from roofing_core.measures.faults import Refused, fault
from roofing_core.measures.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Flue:
    """A round pipe.

    Attributes:
        note: A word that tells nothing apart, since only one of them has it.
        kind: What it is.
        across: From side to side.
        collar: Height of its collar.
    """

    note: Literal["round"] = "round"
    kind: Literal["flue"] = "flue"
    across: Inches
    collar: Inches | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Hatch:
    """A hatch of any outline.

    Attributes:
        kind: What it is.
        corners: Its corners (u, v).
        hinges: The names of its hinges.
    """

    kind: Literal["hatch"] = "hatch"
    corners: tuple[tuple[Inches, Inches], ...]
    hinges: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Stack:
    """A square stack.

    Attributes:
        kind: What it is.
        across: Its front.
        faces: Its faces by what they meet.
    """

    kind: Literal["stack"] = "stack"
    across: Inches
    faces: tuple[Literal["apron", "cricket"], ...] = ("apron",)

    def __post_init__(self) -> None:
        if self.across <= 0:
            raise Refused(fault("across", "little", "more"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Lid:
    """What is asked for, and answered.

    Attributes:
        first: One of them, always.
        others: More of them.
    """

    first: Flue | Stack = field(default=Flue(across=4.0, collar=1.0))
    others: tuple[Flue | Hatch | Stack, ...] = ()


BODY = Form(inputs_of(Lid, body=True))
QUERY = QueryForm(inputs_of(Lid, body=False), lifted="first")
SCHEMA = schema_of(BODY.model)


def made(form, tree):
    """Make what a tree asks for."""
    return Lid(**measures(form.taken(tree)))


GOOD = [
    ({}, Lid()),
    ({"first": {"kind": "stack", "across": "2 ft"}}, Lid(first=Stack(across=24.0))),
    (
        {"others": [{"kind": "hatch", "corners": [["0 in", "1 ft"]], "hinges": ["", "a b"]}]},
        Lid(others=(Hatch(corners=((0.0, 12.0),), hinges=("", "a b")),)),
    ),
    (
        {
            "others": [
                {"kind": "flue", "across": "3 in", "note": "round"},
                {"kind": "stack", "across": "254 mm", "faces": ["cricket", "apron"]},
                {"kind": "hatch", "corners": []},
            ]
        },
        Lid(
            others=(
                Flue(across=3.0),
                Stack(across=10.0, faces=("cricket", "apron")),
                Hatch(corners=()),
            )
        ),
    ),
]


@pytest.mark.parametrize(("tree", "lid"), GOOD)
def test_the_word_says_which_one_is_made(tree, lid):
    assert made(BODY, tree) == lid
    validator = OAS31Validator({**SCHEMA, "components": {"schemas": SCHEMA["$defs"]}})
    validator.validate(tree)


def test_what_is_left_out_is_as_in_the_default_where_that_is_the_same_kind():
    assert made(BODY, {"first": {"kind": "flue", "across": "5 in"}}).first.collar == 1.0
    assert made(BODY, {"others": [{"kind": "flue", "across": "5 in"}]}).others[0].collar is None


KINDS = "one of flue, hatch, stack"
LENGTH = "a length with its unit, such as"
#: A tree, the place of its fault, what came there as far as the form says, and what is wanted.
BAD = [
    ({"others": [{"across": "3 in"}]}, ("others", 0, "kind"), "nothing", f"it is needed: {KINDS}"),
    ({"others": [{"kind": "pipe"}]}, ("others", 0, "kind"), "pipe", KINDS),
    ({"others": [{"kind": ["flue"]}]}, ("others", 0, "kind"), "a list of 1", KINDS),
    ({"others": [{"kind": None}]}, ("others", 0, "kind"), "null", KINDS),
    ({"others": [{"kind": ""}]}, ("others", 0, "kind"), "an empty text", KINDS),
    ({"others": ["flue"]}, ("others", 0), "flue", "a JSON object"),
    ({"others": [[]]}, ("others", 0), "a list of 0", "a JSON object"),
    ({"others": {"kind": "flue"}}, ("others",), "an object", "a JSON list"),
    ({"first": "flue"}, ("first",), "flue", "a JSON object"),
    (
        {"first": {"kind": "hatch", "corners": []}},
        ("first", "kind"),
        "hatch",
        "one of flue, stack",
    ),
    ({"first": {"kind": "stack"}}, ("first", "across"), "nothing", "it is needed. Its front."),
    (
        {"others": [{"kind": "stack", "across": "1 in", "collar": "1 in"}]},
        ("others", 0, "collar"),
        "1 in",
        "left out: it belongs to flue; stack has kind, across, faces",
    ),
    (
        {"others": [{"kind": "flue", "across": "1 in", "corners": []}]},
        ("others", 0, "corners"),
        "a list of 0",
        "left out: it belongs to hatch; flue has note, kind, across, collar",
    ),
    (
        {"others": [{"kind": "flue", "across": "1 in", "acros": "x"}]},
        ("others", 0, "acros"),
        "x",
        "one of the names known here, the nearest: across",
    ),
    (
        {"others": [{"kind": "hatch", "corners": [["1 in", "1 in", "1 in"]]}]},
        ("others", 0, "corners", 0),
        "a list of 3",
        "a list of at most 2",
    ),
    (
        {"others": [{"kind": "hatch", "corners": [["1 in"]]}]},
        ("others", 0, "corners", 0),
        "a list of 1",
        "a list of at least 2",
    ),
    (
        {"others": [{"kind": "hatch", "corners": [["1 in", "up"]]}]},
        ("others", 0, "corners", 0, 1),
        "up",
        LENGTH,
    ),
    (
        {"others": [{"kind": "hatch", "corners": ["1 in"]}]},
        ("others", 0, "corners", 0),
        "1 in",
        "a JSON list",
    ),
    (
        {"others": [{"kind": "stack", "across": "1 in", "faces": ["apron", "side"]}]},
        ("others", 0, "faces", 1),
        "side",
        "one of apron, cricket",
    ),
    (
        {"others": [{"kind": "hatch", "corners": [], "hinges": ["x" * 61]}]},
        ("others", 0, "hinges", 0),
        f"{'x' * 57}...",
        "a text of 0 to 60 printable characters",
    ),
    ({"others": [{"kind": "flue", "across": "1 in"}] * 201}, ("others",), None, "a list of at m"),
]


@pytest.mark.parametrize(("tree", "at", "came", "wanted"), BAD)
def test_what_cannot_be_read_is_named_by_its_place_without_the_word(tree, at, came, wanted):
    with pytest.raises(Refused) as refusal:
        made(BODY, tree)
    [fault_] = refusal.value.faults
    assert fault_.at == at
    assert came is None or fault_.came == came
    assert fault_.wanted.written().startswith(wanted)


def test_a_dataclass_that_refuses_is_named_by_its_place_in_the_list():
    tree = {"others": [{"kind": "stack", "across": f"{size} in"} for size in (1, 0, 2, 0)]}
    with pytest.raises(Refused) as refusal:
        made(BODY, tree)
    places = [one.at for one in refusal.value.faults]
    assert places == [("others", 1, "across"), ("others", 3, "across")]


def test_all_faults_of_a_list_are_told_at_once():
    tree = {"others": [{"kind": "flue", "across": "x"}, {"kind": "y"}, {"kind": "stack", "z": 1}]}
    with pytest.raises(Refused) as refusal:
        made(BODY, tree)
    assert [one.at for one in refusal.value.faults] == [
        ("others", 0, "across"),
        ("others", 1, "kind"),
        ("others", 2, "across"),
        ("others", 2, "z"),
    ]


def test_the_schema_takes_what_the_form_takes_and_no_other():
    validator = OAS31Validator({**SCHEMA, "components": {"schemas": SCHEMA["$defs"]}})
    for tree in (
        {"others": [{"across": "3 in"}]},
        {"others": [{"kind": "stack", "across": "1 in", "collar": "1 in"}]},
        {"others": [{"kind": "hatch", "corners": [["1 in"]]}]},
        {"first": {"kind": "hatch", "corners": []}},
    ):
        assert list(validator.iter_errors(tree)), tree
    told = SCHEMA["properties"]["others"]["items"]
    assert told == {
        "oneOf": [
            {"$ref": "#/components/schemas/FlueInput"},
            {"$ref": "#/components/schemas/HatchInput"},
            {"$ref": "#/components/schemas/StackInput"},
        ],
        "discriminator": {
            "propertyName": "kind",
            "mapping": {
                "flue": "#/components/schemas/FlueInput",
                "hatch": "#/components/schemas/HatchInput",
                "stack": "#/components/schemas/StackInput",
            },
        },
    }


def test_a_query_has_what_is_flat_and_each_name_once():
    assert list(QUERY.leaves) == ["note", "kind", "across", "collar", "faces"]
    assert QUERY.leaves["kind"].schema["enum"] == ["flue", "stack"]
    assert "default" not in QUERY.leaves["kind"].schema
    assert QUERY.leaves["across"].schema == {
        "description": "For flue (needed): From side to side. For stack (needed): Its front."
        f" Written as {LENGTH} 14 ft, 14' 6 1/2\", 9'-4\", 4.27 m or 1270 mm.",
        "type": "string",
        "x-unit": "in",
    }
    lid = made(QUERY, QUERY.tree({"kind": "stack", "across": "2 ft", "faces": "cricket, apron"}))
    assert lid == Lid(first=Stack(across=24.0, faces=("cricket", "apron")))
    with pytest.raises(Refused) as refusal:
        QUERY.taken(QUERY.tree({"across": "2 ft", "others": "flue"}))
    told = {one.at: one.wanted.written() for one in refusal.value.faults}
    assert told["first", "kind"] == "it is needed: one of flue, stack"
    assert told["others",].startswith("one of the names known here")


LID = Lid(
    first=Stack(across=24.0),
    others=(Flue(across=3.0, collar=2.0), Flue(across=3.0), Hatch(corners=((1.0, 2.0),))),
)
ANSWER: dict[str, Any] = {
    "first": {"kind": "stack", "across": 609.6, "faces": ["apron"]},
    "others": [
        {"note": "round", "kind": "flue", "across": 76.2, "collar": 50.8},
        {"note": "round", "kind": "flue", "across": 76.2, "collar": None},
        {"kind": "hatch", "corners": [[25.4, 50.8]], "hinges": []},
    ],
}


def test_an_answer_repeats_each_by_its_own_fields():
    told = loads(dumps(rendered(LID, "metric")))
    assert told.pop("units")["length"] == "mm"
    assert told == ANSWER
    assert value_at(LID, "/others/0/collar", "metric", "number") == "50.8"
    assert value_at(LID, "/others/0/collar", "metric", "text") == "51 mm"
    assert value_at(LID, "/others/1/collar", "metric", "number") == "null"
    assert value_at(LID, "/others/2/corners/0/1", "metric", "number") == "50.8"
    assert value_at(LID, "/first/across", "metric", "text") == "610 mm"


def test_an_answer_is_described_with_the_word_that_tells():
    schema = schema_of(answer_of(Lid))
    told = schema["properties"]["others"]["items"]
    assert [one["$ref"].rpartition("/")[2] for one in told["oneOf"]] == ["Flue", "Hatch", "Stack"]
    mapping = {word: f"#/components/schemas/{word.title()}" for word in ("flue", "hatch", "stack")}
    assert told["discriminator"] == {"propertyName": "kind", "mapping": mapping}
    whole = {**schema, "components": {"schemas": schema["$defs"]}}
    units = rendered(LID, "metric")["units"]
    OAS31Validator(whole).validate({"units": units, **ANSWER})
    broken = {**ANSWER, "first": {**ANSWER["first"], "kind": "flue"}}
    assert list(OAS31Validator(whole).iter_errors({"units": units, **broken}))
    about = schema["$defs"]["Flue"]["properties"]["collar"]["description"]
    assert about == "Height of its collar. (in; metric: mm)"


def test_dataclasses_that_nothing_tells_apart_are_no_variants():
    @dataclass(frozen=True)
    class Other:
        kind: Literal["flue"] = "flue"

    for kinds in ((Flue, Other), (Flue, Lid)):
        with pytest.raises(TypeError, match="apart"):
            variants_of(kinds)


def test_a_list_of_this_and_that_is_no_list():
    @dataclass(frozen=True)
    class Mixed:
        pair: tuple[Annotated[float, "in"], str]

    with pytest.raises(TypeError, match="a list holds"):
        inputs_of(Mixed, body=True)
