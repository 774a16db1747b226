"""What is found about the place and the building, where the caller says how they are."""

from __future__ import annotations

from collections.abc import Iterator

from roofing_core.job.found import Change, Finding, broken
from roofing_core.job.layout import Layout
from roofing_core.layers.weight import Weights
from roofing_core.measures.sentences import Amount, say
from roofing_core.ruling import on_places
from roofing_core.ruling.rule import Rule
from roofing_core.site.ventilation import vent_area
from roofing_core.site.wind import conditions_outside, fastest_held, uplift_classes


def of_the_site(layout: Layout, weighed: Weights) -> Iterator[Finding]:
    """Hold what is known of wind, vents and loads against the rules.

    Args:
        layout: The roof with all its layers.
        weighed: What they weigh.

    Returns:
        One entry per breach; none about what is not known.

    Raises:
        Nothing.

    Source:
        Each rule's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.on_site import Wind
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> roof = SingleSlope(eave_length=168, slope_length=112, pitch=0.25)
    >>> shed = plan(Job(roof=roof, wind=Wind(design_speed=120)))
    >>> [found.rule for found in of_the_site(shed, shed.weight)]
    ['wind.class_known', 'wind.nails']
    """
    yield from _of_the_wind(layout)
    yield from _of_the_vents(layout)
    how = layout.choices.loading
    stacked, layers = ("loading.stacked_bundles",), ("loading.layers_left",)
    yield from broken(
        layout, on_places.STACK_HEIGHT, how.stacked_bundles, "deck", fields=stacked
    )  # fmt: skip
    rule = on_places.LAYERS
    yield from broken(
        layout, rule, how.layers_left + 1, "deck", to=rule.limit - 1, fields=layers
    )  # fmt: skip
    allowed = how.dead_load_allowed
    if allowed:
        rule, weight = on_places.DEAD_LOAD, weighed.per_plan_area
        yield from broken(layout, rule, weight, "deck", limit=allowed)


def _of_the_wind(layout: Layout) -> Iterator[Finding]:
    wind, shingle = layout.choices.wind, layout.choices.shingle
    speed = wind.design_speed
    if not speed:
        return
    held = fastest_held(shingle.class_d7158, shingle.class_d3161)
    known = int(held > 0)
    yield from broken(layout, on_places.WIND_CLASS_KNOWN, known, "shingles")
    if known:
        classes = uplift_classes(speed)
        better = tuple(Change(field="shingle.class_d7158", word=name) for name in classes[:1])
        rule = on_places.WIND_CLASS
        yield from broken(layout, rule, held, "shingles", limit=speed, changes=better)
    exposure = "C" if wind.exposure == "unknown" else wind.exposure
    outside = conditions_outside(exposure, roof_height=wind.roof_height, speed_up=wind.speed_up)
    yield from broken(layout, on_places.WIND_CONDITIONS, len(outside), "roof")
    if speed > on_places.HIGH_WIND_NAILS:
        nails = layout.shingles.nails_per_strip
        more = (Change(field="nailing.high_wind", word="true"),)
        yield from broken(layout, on_places.WIND_NAILS, nails, "shingles", changes=more)
    if speed >= on_places.HIGH_WIND_SHEETS:
        yield from _of_sheets_in_wind(layout)


def _of_sheets_in_wind(layout: Layout) -> Iterator[Finding]:
    how = layout.choices.underlaying
    asked: list[tuple[Rule, float, str]] = []
    if not layout.choices.nailing.high_wind:
        asked += [
            (on_places.WIND_LAP_NAILS, how.lap_spacing, "lap_spacing"),
            (on_places.WIND_FIELD_NAILS, how.field_spacing, "field_spacing"),
        ]
    if layout.underlayment.layers == 1:
        asked.append((on_places.WIND_HEAD_LAP, how.head_lap, "head_lap"))
    for rule, value, name in asked:
        yield from broken(layout, rule, value, "underlayment", fields=(f"underlaying.{name}",))


def _of_the_vents(layout: Layout) -> Iterator[Finding]:
    how, place = layout.choices.venting, "vents"
    if not how.vented_area:
        return
    needed = vent_area(how.vented_area, ratio=how.ratio)
    yield from broken(
        layout,
        on_places.VENT_AREA,
        how.high_area + how.low_area,
        place,
        limit=needed,
        to=needed - how.high_area,
        fields=("venting.low_area",),
    )
    if how.ratio == "1/150":
        return
    share = 100 * how.high_area / needed
    for rule in (on_places.VENT_LEAST_HIGH, on_places.VENT_MOST_HIGH):
        enough = Amount(needed * rule.limit / 100, "in2")
        cure = say("Have ", enough, " of it high up, and the rest low.")
        change = Change(field="venting.high_area", values=(enough,))
        yield from broken(layout, rule, share, place, cure=cure, changes=(change,))
