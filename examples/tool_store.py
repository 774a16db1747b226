"""The community garden's tool store, planned with the library alone: no server, no network.

python examples/tool_store.py
"""

from dataclasses import replace

from roofing_core import (
    Choices,
    Decking,
    Job,
    Shingle,
    SingleSlope,
    material,
    plan,
    read_length,
    read_pitch,
    write_length,
)

roof = SingleSlope(
    eave_length=read_length("12 ft 6 in"),
    run=read_length("8 ft"),
    pitch=read_pitch("3:12"),
    measured="walls",
    eave_overhang=read_length("10 in"),
    ridge_overhang=read_length("6 in"),
    rake_overhang=read_length("6 in"),
)
job = Job(
    roof=roof,
    shingle=replace(material(Shingle, "metric_strip"), bundle_weight=68.0),
    eave_metal=replace(Choices().eave_metal, stock_lengths=(96.0, 120.0)),
    decking=Decking(lay=True, support_spacing=24.0),
)

planned = plan(job)

print(f"Deck: {write_length(planned.roof.eave_length)} along the eave,")
print(f"      {write_length(planned.roof.slope_length)} up the slope.")
count = planned.shingles
print(f"Shingles: {count.shingles} and {count.starter_shingles} for the starter;")
print(f"          the area alone would say {count.least_by_area}.")
for line in planned.order.lines():
    print(f"{line.packs:4d} {line.pack:10s} {line.item}")
