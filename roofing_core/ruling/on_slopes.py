"""Rules on slopes: how flat and how steep a roof of asphalt shingles may be."""

from __future__ import annotations

from roofing_core.ruling.rule import residential, rule

SHINGLE_PITCH = rule(
    "shingles.least_pitch",
    "Asphalt shingles lie on a pitch of {} or steeper.",
    applies="Every plane.",
    at_least=2 / 12,
    unit="pitch",
    severity="stops_the_job",
    sources=residential("R905.2.2"),
    cure="Use a covering made for low slopes, or a roof of {} or steeper.",
    checked="refusal",
)

SINGLE_UNDERLAYMENT_PITCH = rule(
    "underlayment.single_layer_pitch",
    "Below a pitch of {} the underlayment is laid in two layers.",
    applies="Every plane.",
    at_least=4 / 12,
    unit="pitch",
    severity="worth_knowing",
    sources=residential("R905.1.1", restated=("2024",)),
    cure="The plan lays two layers everywhere; order and lap them as listed.",
)

STEEP_PITCH = rule(
    "shingles.steep_pitch",
    "Above a pitch of {} strips get six nails and are sealed by hand.",
    applies="Every plane.",
    at_most=21 / 12,
    unit="pitch",
    severity="worth_knowing",
    sources=residential("R905.2.6"),
    cure="The plan has six nails a strip and the dabs; follow the instructions on the shingle.",
)

RULES = (SHINGLE_PITCH, SINGLE_UNDERLAYMENT_PITCH, STEEP_PITCH)
"""All of these, the flattest first."""
