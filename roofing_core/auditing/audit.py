"""Auditing: every question asked of a finished plan, and the answer to all of them together."""

from __future__ import annotations

from collections.abc import Mapping

from roofing_core.auditing.bounds import refuse_too_much
from roofing_core.auditing.capping import ask_caps
from roofing_core.auditing.closed_valleys import ask_cut_edge
from roofing_core.auditing.coverage import ask_coverage
from roofing_core.auditing.covers import covers_of
from roofing_core.auditing.finished import AnyPlan, FinishedPlan, finished
from roofing_core.auditing.fitting import ask_fits
from roofing_core.auditing.gauges import Gauge, gauges
from roofing_core.auditing.joints import ask_joints
from roofing_core.auditing.laying_order import ask_order
from roofing_core.auditing.metalling import ask_metal
from roofing_core.auditing.nailing import ask_nailing
from roofing_core.auditing.nails import Bare, ask_nails
from roofing_core.auditing.numbering import ask_numbers
from roofing_core.auditing.openings import ask_openings
from roofing_core.auditing.pitches import ask_pitches
from roofing_core.auditing.questions import AuditLimits
from roofing_core.auditing.rows import planes_laid
from roofing_core.auditing.sealing import ask_sealing
from roofing_core.auditing.sheeting import ask_sheets
from roofing_core.auditing.sound import refuse_unsound
from roofing_core.auditing.sound_covers import refuse_unsound_covers
from roofing_core.auditing.sound_words import refuse_unknown_words
from roofing_core.auditing.stating import ask_stated
from roofing_core.auditing.unjudged import not_judged
from roofing_core.auditing.valleys import ask_valleys, run_through, under_shingles
from roofing_core.auditing.verdicts import Asked, Audit
from roofing_core.auditing.walls import ask_walls
from roofing_core.measures.sentences import Sentence, say


def audit(plan: AnyPlan, *, limits: AuditLimits | None = None) -> Audit:
    """Judge from a finished plan alone whether the roof sheds water.

    Asks of every point of the deck, every joint, nail, lap and edge, layer by layer, what covers
    it and by how much; nothing is sampled. The planes, openings and materials are taken as the
    plan gives them; nothing else that it says of itself is believed.

    Args:
        plan: A finished plan: as `plan` gives it, or as it was read, edited or not.
        limits: How much keeps water out; the published least unless given.

    Returns:
        Whether it sheds water, the least margins found, the first places where water can get in,
        and what the plan does not say enough of to be judged.

    Raises:
        Refused: What is given is no plan: a piece of no width, a course on no plane; names each.
        TooManyPieces: It has more planes, corners or layers over one point than the limits.

    Source:
        Each question's own.

    >>> from roofing_core.job.choices import Job
    >>> from roofing_core.job.plan import plan
    >>> from roofing_core.roof.planes import SingleSlope
    >>> found = audit(plan(Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))))
    >>> found.sheds_water, found.margins[0].says.written()[:56]
    (True, 'slope, course 1 at 0 in along and 12 3/4 in up: headlap ')
    """
    given = finished(plan)
    refuse_too_much(given)
    refuse_unsound(given)
    refuse_unsound_covers(given)
    refuse_unknown_words(given)
    seen = gauges(AuditLimits() if limits is None else limits)
    _ask(given, seen)
    asked = tuple(gauge.asked() for gauge in seen.values())
    breaches = sum(one.breaches for one in asked)
    return Audit(
        sheds_water=not breaches,
        says=_verdict(asked, breaches),
        asked=asked,
        margins=tuple(margin for gauge in seen.values() for margin in gauge.margin()),
        breaches=tuple(breach for gauge in seen.values() for breach in gauge.found()),
        breaches_found=breaches,
        not_judged=not_judged(given),
    )


def _ask(given: FinishedPlan, seen: Mapping[str, Gauge]) -> None:
    """Ask everything, plane by plane and then of the whole roof."""
    covers = covers_of(given)
    bare: list[Bare] = []
    planes = planes_laid(given)
    through = run_through(given, planes)
    unders = under_shingles(given, through)
    for laid in planes:
        name = laid.plane.name
        over = covers[name]
        own = ask_coverage(laid, over, seen, unders=unders[name])
        for one in through[name]:
            ask_cut_edge(one, laid, over, seen, own=own)
        ask_joints(laid, seen)
        bare += ask_nails(laid, over, seen)
        ask_nailing(given, laid, seen)
        ask_sheets(given, laid, seen)
    ask_pitches(given, seen)
    ask_fits(given, planes, seen)
    ask_stated(given, seen)
    ask_numbers(given, seen)
    ask_metal(given, seen)
    ask_valleys(given, planes, seen)
    ask_order(given, seen)
    ask_walls(given, seen)
    ask_sealing(given, bare, seen, open_nails=ask_caps(given, seen) + ask_openings(given, seen))


def _verdict(asked: tuple[Asked, ...], breaches: int) -> Sentence:
    looked_at = sum(one.looked_at for one in asked)
    if not breaches:
        return say(f"The roof sheds water as it is planned: {looked_at} places looked at.")
    if all(one.question.startswith("plan.") for one in asked if one.breaches):
        where = "at one place" if breaches == 1 else f"at {breaches} places"
        return say(
            f"The plan contradicts itself {where} of {looked_at} looked at; which of the two would"
            " be laid, and whether that sheds water, cannot be told."
        )
    places = "one place" if breaches == 1 else f"{breaches} places"
    return say(f"Water can get in at {places} of {looked_at} looked at.")
