"""Forms: a query or a body as a whole, and where in it a fault lies."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from difflib import get_close_matches
from typing import Any, NamedTuple, get_args, get_origin

from pydantic import BaseModel, Tag, ValidationError

from roofing_api.inputs import Inputs, schema_of
from roofing_api.problems import MOST_ERRORS, fragment, shown
from roofing_api.variants import Variants, kinds_in
from roofing_core.measures.faults import Fault, Refused
from roofing_core.measures.sentences import say

Path = tuple[str | int, ...]

#: So many names are listed where one came that is not known, and is like none; of more, none.
MOST_NAMES = 32

#: What pydantic checks itself, in our words.
_SHAPES = {
    "model_type": "a JSON object",
    "tuple_type": "a JSON list",
    "too_long": "a list of at most {max_length}",
    "too_short": "a list of at least {min_length}",
}


class Form:
    """A model, and the names of the places in the tree that it takes."""

    def __init__(self, model: type[BaseModel]) -> None:
        self.model = model

    def taken(self, tree: Any) -> Any:
        """Read a tree into the model; every fault in it is refused at once."""
        try:
            return self.model.model_validate(tree, context=self.context(tree))
        except ValidationError as invalid:
            raise Refused(*self._faults(invalid)) from None

    def context(self, tree: Any) -> Any:
        """Give what every value of a tree is read with: the unit of its bare numbers."""
        return tree.get("number_unit") if isinstance(tree, dict) else None

    def place(self, at: Path, tree: Any) -> tuple[dict[str, str], str | None]:
        """Give where a fault lies, as the caller names it, and the text that came there, if any."""
        found, came = walked(tree, at)
        return {"pointer": fragment(found)}, came

    def names_beside(self, model: type[BaseModel]) -> list[str]:
        """Give the names that could stand where one of a model's fields stands."""
        return list(model.model_fields)

    def _faults(self, invalid: ValidationError) -> Iterator[Fault]:
        for one in invalid.errors(include_url=False)[: MOST_ERRORS + 1]:
            spot = spot_of(self.model, one["loc"])
            came, at = one["input"], spot.at
            match one["type"]:
                case "value_error":
                    yield from (replace(each, at=at) for each in one["ctx"]["error"].faults)
                case "missing":
                    about = _about(spot.model, str(at[-1]))
                    yield Fault(at, "nothing", say("it is needed. ", about))
                case "extra_forbidden":
                    yield Fault(at, shown(came), say(self._known(spot)))
                case "union_tag_invalid" | "union_tag_not_found" if isinstance(came, dict):
                    yield _untold(spot, came)
                case "union_tag_not_found":
                    yield Fault(at, shown(came), say(_SHAPES["model_type"]))
                case "too_short" if len(came) >= one["ctx"]["min_length"]:
                    pass  # entries that were refused, each by itself, are not counted
                case kind:
                    wanted = _SHAPES.get(kind, one["msg"]).format_map(one.get("ctx", {}))
                    yield Fault(at, shown(came), say(wanted))

    def _known(self, spot: Spot) -> str:
        """Say which names are known where one came that is not."""
        name, variants = str(spot.at[-1]), getattr(spot.model, "variants", None)
        if variants is not None:
            others = variants.words_with(name)
            if others:
                return _of_others(spot.model, variants, others)
        names = self.names_beside(spot.model)
        near = get_close_matches(name[:100], names, n=3) or _within(spot.at, names)
        if near or len(names) <= MOST_NAMES:
            return f"one of the names known here, the nearest: {', '.join(near or names)}"
        return f"one of the names known here: /docs lists all {len(names)}"


def _within(at: Path, names: Sequence[str]) -> list[str]:
    """Give the names in the group that is named before the first dot, or in one spelt like it."""
    heads = {name: name.partition(".")[0] for name in names if "." in name}
    group = get_close_matches(str(at[0]).partition(".")[0][:100], set(heads.values()), n=1)
    return [name for name, head in heads.items() if head in group][:MOST_NAMES]


class Spot(NamedTuple):
    """Where pydantic found a fault: the place in the tree, and the models there."""

    at: Path
    model: Any
    kind: Any


def spot_of(model: type[BaseModel], loc: Path) -> Spot:
    """Walk a model down to a fault of pydantic's, which names in its way the variants too."""
    at: list[str | int] = []
    around: Any = model
    kind: Any = model
    for part in loc:
        options = models_by_word(kind)
        if options:
            kind = options[str(part)]
            continue
        at.append(part)
        if get_origin(kind) is tuple:
            kind = _bare(get_args(kind)[0])
        else:
            around, field = kind, kind.model_fields.get(part)
            kind = field and field.annotation
    return Spot(tuple(at), around, kind)


def _bare(kind: Any) -> Any:
    """Give a type without what is annotated to it."""
    return kind.__origin__ if hasattr(kind, "__metadata__") else kind


def models_by_word(kind: Any) -> dict[str, type[Inputs]]:
    """Give the models of variants by their words; none for any other type."""
    return {
        note.tag: _bare(one)
        for one in kinds_in(kind)
        for note in getattr(one, "__metadata__", ())
        if isinstance(note, Tag)
    }


def _untold(spot: Spot, came: dict[str, Any]) -> Fault:
    """Give the fault of an object that does not say which of several it is, or says another."""
    variants: Any = next(iter(models_by_word(spot.kind).values())).variants
    at, wanted = (*spot.at, variants.told_by), f"one of {', '.join(variants.words)}"
    if variants.told_by not in came:
        return Fault(at, "nothing", say("it is needed: ", wanted))
    if variants.elsewhere:
        wanted += f", or in the JSON body of a POST {', '.join(variants.elsewhere)}"
    return Fault(at, shown(came[variants.told_by]), say(wanted))


def _of_others(model: type[Inputs], variants: Variants, others: list[str]) -> str:
    word, names = variants.word_of(model.made_of), ", ".join(model.model_fields)
    unsaid = f", which it is without `{variants.told_by}`," if word == variants.unsaid else ""
    return f"left out: it belongs to {', '.join(others)}; {word}{unsaid} has {names}"


def _about(model: type[BaseModel], name: str) -> str:
    described: str = schema_of(model)["properties"][name].get("description", "a value")
    return described


def walked(tree: Any, at: Path) -> tuple[Path, str | None]:
    """Walk down what came as far as it goes, into a list with commas too.

    Where an object or a list came, or nothing, the library's own words say more than that.
    """
    for depth, part in enumerate(at):
        if isinstance(tree, str) and str(part).isdigit():
            tree = [one.strip() for one in tree.split(",")]
        if isinstance(tree, dict) and part in tree:
            tree = tree[part]
        elif isinstance(tree, list) and str(part).isdigit() and int(part) < len(tree):
            tree = tree[int(part)]
        else:  # a text stands for all that could be below it
            return (at[:depth], shown(tree)) if isinstance(tree, str) else (at, None)
    return at, None if isinstance(tree, dict | list) else shown(tree)
