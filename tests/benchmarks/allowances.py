"""A flat allowance held against the pieces of 1,000 random sheds: prints the table of the README.

The sheds are invented: 4 to 40 square metres, from half as long as wide to four times, on a tape's
sixteenths. Their counts are not timed, and the same everywhere.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from math import ceil, exp, log, sqrt
from random import Random
from statistics import median

from roofing_core import Cutting, Job, SingleSlope, plan

SHEDS, SEED = 1_000, 20
SQUARE_METRE = (1000 * 10 / 254) ** 2


@dataclass(frozen=True)
class Shed:
    """What one shed takes, in shingles: by its area, one for each piece, and offcuts used again."""

    by_area: float
    simply: int
    best: int
    proved: bool
    per_bundle: int


Count = Callable[[Shed], int]


def sheds(many: int = SHEDS) -> Iterator[Shed]:
    """Plan sheds at random, each with a starter cut from its shingles."""
    random = Random(SEED)
    for _ in range(many):
        area = exp(random.uniform(log(4), log(40))) * SQUARE_METRE
        long = random.uniform(0.5, 4)
        eave, slope = (round(16 * size) / 16 for size in (sqrt(area * long), sqrt(area / long)))
        job = Job(roof=SingleSlope(eave_length=eave, slope_length=slope, pitch=4 / 12))
        cut = plan(replace(job, cutting=Cutting(reuse="best"))).cutting
        shingle = job.shingle
        yield Shed(
            by_area=eave * slope / (shingle.length * shingle.exposure),
            simply=cut.simply,
            best=cut.shingles,
            proved=cut.proved,
            per_bundle=shingle.per_bundle,
        )


def spread(found: list[Shed]) -> str:
    """Write how many shingles are used over the area, by each way of counting."""
    ways: dict[str, Count] = {
        "each piece from a shingle of its own": lambda shed: shed.simply,
        "offcuts used again, the fewest": lambda shed: shed.best,
        "the area and 10 %": lambda shed: _flat(shed, 0.10),
        "the area and 15 %": lambda shed: _flat(shed, 0.15),
    }
    rows = ["| shingles by | over the area: least | median | most |", "|---|---|---|---|"]
    for name, count in ways.items():
        over = [100 * (count(shed) / shed.by_area - 1) for shed in found]
        rows.append(f"| {name} | {min(over):.0f} % | {median(over):.0f} % | {max(over):.0f} % |")
    return "\n".join(rows)


def shortfalls(found: list[Shed]) -> str:
    """Write how often a flat allowance is short, and by how much it overbuys where it is not."""
    rows = [
        "| bought | for | too few shingles | too few bundles | a bundle or more too many |"
        " shingles too many, where enough |",
        "|---|---|---|---|---|---|",
    ]
    needs: dict[str, Count] = {
        "pieces from shingles of their own": lambda shed: shed.simply,
        "offcuts used again": lambda shed: shed.best,
    }
    for share in (0.10, 0.15):
        for name, need in needs.items():
            rows.append(f"| the area and {share:.0%} | {name} | {_short(found, share, need)} |")
    return "\n".join(rows)


def _flat(shed: Shed, share: float) -> int:
    return ceil((1 + share) * shed.by_area)


def _short(found: list[Shed], share: float, need: Count) -> str:
    over = [_flat(shed, share) - need(shed) for shed in found]
    bundles = [
        ceil(_flat(shed, share) / shed.per_bundle) - ceil(need(shed) / shed.per_bundle)
        for shed in found
    ]
    enough = [(more, need(shed)) for more, shed in zip(over, found, strict=True) if more >= 0]
    too_many = sum(100 * more / needed for more, needed in enough) / len(enough) if enough else 0
    cells = (
        _share(more < 0 for more in over),
        _share(more < 0 for more in bundles),
        _share(more > 0 for more in bundles),
        f"{too_many:.1f} % on average" if enough else "never enough",
    )
    return " | ".join(cells)


def _share(true: Iterable[bool]) -> str:
    all_of = list(true)
    return f"{100 * sum(all_of) / len(all_of):.1f} %"


if __name__ == "__main__":
    counted = list(sheds())
    print(spread(counted), shortfalls(counted), sep="\n\n")
    print(f"proved to be the fewest: {sum(shed.proved for shed in counted)} of {len(counted)}")
    saved = [shed.simply - shed.best for shed in counted]
    print(f"shingles saved: median {median(saved):g}, most {max(saved)}")
