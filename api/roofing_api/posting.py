"""Posting: a calculation asked for with a JSON body; the query only says how to answer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from fastapi import Request
from pydantic import create_model

from roofing_api.calculation import Asked, Calculation, settled
from roofing_api.forms import Form
from roofing_api.inputs import Inputs, inputs_of, measures
from roofing_api.manner import Bearing, Manner
from roofing_api.queries import QueryForm
from roofing_api.strict import read_json, read_query


@dataclass(frozen=True, slots=True)
class Bodied:
    """A calculation, the forms of its query and its body, and bodies as examples."""

    calculation: Calculation
    manner: QueryForm
    body: Form
    examples: Mapping[str, Any]


class Posted(Bodied):
    """A calculation as a body asks for it, with one worked example for each form of roof."""

    def __init__(self, calculation: Calculation, examples: Mapping[str, Any]) -> None:
        inputs = inputs_of(calculation.takes, body=True)
        # A job stands in a price request too, where it says nothing of the unit of bare numbers.
        stem = inputs.__name__.removesuffix("Input")
        super().__init__(
            calculation,
            manner=QueryForm(Inputs, Manner, *calculation.forms),
            body=Form(create_model(f"{stem}BodyInput", __base__=(Bearing, inputs))),
            examples={form: {"value": body} for form, body in examples.items()},
        )

    async def read(self, request: Request) -> Asked:
        """Read how to answer from the query, then what is asked from the body."""
        given = read_query(request)
        asked = settled(Asked(request, self.manner, given, self.calculation.offers), given)
        asked.form, asked.tree = self.body, await read_json(request)
        asked.measures = measures(asked.taken())
        asked.within = self.calculation.within
        return asked
