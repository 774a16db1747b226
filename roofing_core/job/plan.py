"""The whole job: from a roof as measured to the order of work, the findings and the order list."""

from __future__ import annotations

from dataclasses import dataclass, fields
from math import sqrt

from roofing_core.job.cautions import Caution, cautions
from roofing_core.job.checking import check_wording
from roofing_core.job.choices import Job
from roofing_core.job.findings import findings
from roofing_core.job.found import Finding
from roofing_core.job.layout import Layout, lay_out
from roofing_core.job.order import Order, loads, order
from roofing_core.job.work import Step, steps
from roofing_core.layers.weight import Weights, lifting_limit, weights
from roofing_core.measures.faults import together
from roofing_core.roof.planes import Roof


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan(Layout):
    """The plan of a whole job: the layers as laid, and what follows from them.

    Attributes:
        name: What the job is called.
        notes: What else is to be read on the sheets.
        weight: What lies on the deck, and what is carried up.
        order: The order list in whole packs.
        steps: The order of work, one entry per step.
        findings: What breaks a rule or is worth knowing.
        cautions: What hurts people on such a job.
    """

    name: str
    notes: str
    weight: Weights
    order: Order
    steps: tuple[Step, ...]
    findings: tuple[Finding, ...]
    cautions: tuple[Caution, ...]

    def _repr_html_(self) -> str:
        """Show a drawing and the order list in a notebook, which asks a result for this name."""
        # Sheets read plans and not the other way. A notebook has nothing but the plan, so this one
        # line looks up, once it is asked; the import rules name it.
        from roofing_core.sheets.notebook import plan_html  # noqa: PLC0415 - plans load first

        return plan_html(self)


_LAYOUT = tuple(field.name for field in fields(Layout))


def plan(job: Job) -> Plan:
    """Plan a whole job: lay every layer, count, order, and say what to do and to look out for.

    Args:
        job: The roof and, where they differ from the defaults, its materials and how it is done.

    Returns:
        Everything: each layer's rows, runs and pieces, nails, sealant, weights, the order list,
        the order of work, findings and cautions. The inputs are repeated, defaults and all.

    Raises:
        Refused: Something cannot be built; names the fields as the caller knows them.
        TooManyPieces: The roof would need more pieces than the limit; nothing was laid.

    Source:
        The layers' own.

    >>> from roofing_core.roof.planes import SingleSlope
    >>> job = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=3 / 12))
    >>> planned = plan(job)
    >>> planned.shingles.courses, planned.shingles.shingles, planned.order.shingles.packs
    (20, 100, 5)
    """
    layout, _ = together(lambda: lay_out(job), lambda: check_wording(job))
    ordered = order(layout)
    weighed = weights(loads(ordered), slope_area=layout.roof.area, pitch=_even_pitch(layout.roof))
    return Plan(
        **{name: getattr(layout, name) for name in _LAYOUT},
        name=job.name,
        notes=job.notes,
        weight=weighed,
        order=ordered,
        steps=steps(layout, ordered),
        findings=findings(layout, ordered, weighed),
        cautions=cautions(
            layout.roof.steepest_pitch,
            heaviest=weighed.heaviest,
            lifting_limit=lifting_limit(),
            working=layout.choices.working,
        ),
    )


def _even_pitch(roof: Roof) -> float:
    """Give the pitch of a roof, or of an even one with its area over the same plan."""
    if roof.lowest_pitch == roof.steepest_pitch:
        return roof.pitch
    return sqrt((roof.area / roof.plan_area) ** 2 - 1)
