"""The tool store's shingles, counted three ways: simply, offcuts used again, and the best trims.

python examples/fewest_shingles.py
"""

from dataclasses import replace

from roofing_core import (
    Cutting,
    Job,
    SingleSlope,
    best_trims,
    plan,
    read_length,
    read_pitch,
    write_length,
)

roof = SingleSlope(
    eave_length=read_length("13 ft 6 in"),
    run=read_length("9 ft 4 in"),
    pitch=read_pitch("3:12"),
)
job = Job(roof=roof, cutting=Cutting(reuse="best"))
cut = plan(job).cutting
print(f"Each piece from a shingle of its own: {cut.simply}.")
print(f"Offcuts used again: {cut.shingles}; {cut.least} at least are needed.")

trims = best_trims(job).best.count
best = plan(replace(job, shingle=replace(job.shingle, sequence=trims.sequence))).cutting
print(f"Trims of {', '.join(map(write_length, trims.sequence))} instead: {best.shingles}.")

print("Which offcut serves where:")
for shingle in best.cut:
    if len(shingle.pieces) > 1:
        pieces = (
            f"{piece.row} {piece.course} piece {piece.number} ({write_length(piece.width)})"
            for piece in shingle.pieces
        )
        print(f"  {', then '.join(pieces)}")
