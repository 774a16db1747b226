"""Print what a request, a plan, a piece, an audit and an import cost, as ratios of one run."""

import http.client
import math
import random
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from contextlib import contextmanager
from dataclasses import replace
from functools import partial
from importlib import import_module
from itertools import count
from pathlib import Path
from socket import socket

from roofing_core import (
    Between,
    Footprint,
    Hip,
    Job,
    Plan,
    Ranges,
    SingleSlope,
    audit,
    drawings,
    fit,
    job_sheet_html,
    job_sheet_pdf,
    margins,
    plan,
    plan_csv,
    plan_workbook,
    surfaces,
)
from roofing_core.job.choices import Valleying
from roofing_core.layers.coursing.best_sequences import best_sequence
from roofing_core.layers.coursing.needs import NeededPiece, needed_pieces
from roofing_core.layers.coursing.reuse import Reuse, reuse
from roofing_core.layers.metal.shared import shared_metal

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
JSON = {"Content-Type": "application/json"}
EXAMPLE = (ROOT / "examples" / "tool_store.json").read_bytes()
SMALL = {
    "pitch": "/v1/pitch?pitch=4:12",
    "courses": "/v1/courses?slope_length=9ft4in&shingle_height=13.25in&exposure=5.625in",
    "weight": "/v1/weight?area=130ft2&pitch=3:12&strips=105",
}
ROUNDS, REQUESTS, PLANS = 15, 200, 60

Ask = Callable[[], bytes]


def free_port() -> int:
    with socket() as asked:
        asked.bind(("127.0.0.1", 0))
        return int(asked.getsockname()[1])


@contextmanager
def served(payloads: Path):
    """Run the server with its echoes; give an open connection to it."""
    port = free_port()
    command = [sys.executable, str(HERE / "echo.py"), str(port), str(payloads)]
    with subprocess.Popen(command) as server:
        try:
            connection = http.client.HTTPConnection("127.0.0.1", port)
            for _ in range(200):
                try:
                    connection.connect()
                    break
                except OSError:
                    time.sleep(0.05)
            yield connection
        finally:
            server.terminate()


def asker(connection: http.client.HTTPConnection, method: str, path: str, body: bytes = b"") -> Ask:
    headers = JSON if body else {}

    def ask() -> bytes:
        connection.request(method, path, body or None, headers)
        answer = connection.getresponse()
        read = answer.read()
        assert answer.status == http.client.OK, read
        return read

    return ask


def asker_of_new_jobs(connection: http.client.HTTPConnection) -> Ask:
    """Ask for the example with an eave a little longer each time, so that nothing is remembered."""
    longer = count()

    def ask() -> bytes:
        eave = f"{12.5 + next(longer) / 100_000:.5f} ft".encode()
        return asker(connection, "POST", "/v1/plans", EXAMPLE.replace(b"12 ft 6 in", eave))()

    return ask


def cost(connection: http.client.HTTPConnection, ask: Ask, times: int) -> tuple[float, float]:
    """Give the server's processor time and the clock's time for so many requests."""
    cpu = asker(connection, "GET", "/cpu")
    used, clock = float(cpu()), time.perf_counter()
    for _ in range(times):
        ask()
    return float(cpu()) - used, time.perf_counter() - clock


def ratio(connection: http.client.HTTPConnection, echo: Ask, ours: Ask, times: int) -> str:
    cost(connection, echo, times), cost(connection, ours, times)
    rounds = [(cost(connection, echo, times), cost(connection, ours, times)) for _ in range(ROUNDS)]
    cpu = statistics.median(e[0] / o[0] for e, o in rounds)
    clock = statistics.median(e[1] / o[1] for e, o in rounds)
    each = statistics.median(o[0] for _, o in rounds) / times
    return f"{cpu:.2f} of processor time, {clock:.2f} on the clock ({each * 1e6:.0f} us of server)"


def service() -> None:
    with tempfile.TemporaryDirectory() as folder:
        payloads = Path(folder)
        with served(payloads) as connection:
            for name, path in SMALL.items():
                (payloads / name).write_bytes(asker(connection, "GET", path)())
            plan = asker(connection, "POST", "/v1/plans", EXAMPLE)()
            (payloads / "plan").write_bytes(plan)
        with served(payloads) as connection:
            for name, path in SMALL.items():
                echo, ours = (asker(connection, "GET", p) for p in (f"/echo/{name}", path))
                print(f"GET {name} over echo: {ratio(connection, echo, ours, REQUESTS)}")
            echo = asker(connection, "POST", "/echo/plan", EXAMPLE)
            size = f"{len(EXAMPLE)} bytes in, {len(plan)} out"
            for what, ours in (
                ("a new job each time", asker_of_new_jobs(connection)),
                ("the same job again", asker(connection, "POST", "/v1/plans", EXAMPLE)),
            ):
                told = ratio(connection, echo, ours, PLANS)
                print(f"POST plan over echo ({size}), {what}: {told}")


def pieces() -> None:
    for feet in (14, 60, 200, 600):
        job = Job(roof=SingleSlope(eave_length=12.0 * feet, slope_length=8.0 * feet, pitch=0.5))
        times = max(1, 200 // feet)
        best = min(_clocked(partial(plan, job), times) for _ in range(5))
        laid = plan(job).shingles.pieces
        each, speed = best * 1e3, laid / best / 1e6
        print(f"{laid:7d} pieces: {each:8.2f} ms a plan, {speed:6.2f} M pieces/s")


#: 3,000 ft2 on the slopes at 6:12: a main roof and two wings, twelve eaves, four valleys.
TWO_WINGS = Footprint(
    corners=((0, 0), (220, 0), (220, -170), (400, -170), (400, 0), (800, 0), (800, 380),
             (640, 380), (640, 600), (430, 600), (430, 380), (0, 380)),
    pitch=0.5,
)  # fmt: skip


def whole_roofs() -> None:
    """Plan a hip roof with two wings, and roofs of one shape in five sizes."""
    job = Job(roof=TWO_WINGS)
    best = min(_clocked(partial(plan, job), 1) for _ in range(15))
    made = plan(job)
    print(
        f"hip roof with two wings, {made.roof.area / 144:,.0f} ft2, {len(made.planes)} planes,"
        f" {made.shingles.pieces} pieces: {best * 1e3:.0f} ms a plan"
    )
    for feet in (8, 24, 80, 180, 300):
        hip = Job(roof=Hip(length=18.0 * feet, width=12.0 * feet, pitch=0.5))
        best = min(_clocked(partial(plan, hip), 1) for _ in range(3))
        laid = plan(hip).shingles.pieces
        print(f"{laid:7d} pieces of a hip roof: {best / laid * 1e6:6.1f} us a piece")


def audits() -> None:
    """Print what the audit of a plan takes; what it is held to is 2,000 pieces in 100 ms."""
    slopes = (
        SingleSlope(eave_length=12.0 * wide, slope_length=12.0 * high, pitch=0.5)
        for wide, high in ((14, 9), (63, 45), (200, 133))
    )
    hip = Hip(length=740, width=480, pitch=0.5)
    closed = Valleying(method="closed_cut")
    for name, job in (
        *(("one slope", Job(roof=roof)) for roof in slopes),
        ("hip", Job(roof=hip)),
        ("hip with two wings", Job(roof=TWO_WINGS)),
        ("the same, valleys closed", Job(roof=TWO_WINGS, valleying=closed)),
    ):
        planned = plan(job)
        times = max(1, 1_000 // planned.shingles.pieces)
        best = min(_clocked(partial(audit, planned), times) for _ in range(7))
        made = min(_clocked(partial(plan, job), times) for _ in range(7))
        told = f"{best * 1e3:7.1f} ms an audit, {best / made:.1f} times its plan"
        print(f"{planned.shingles.pieces:7d} pieces, {name}: {told}")


def sheets() -> None:
    """Print what each form of a plan takes, in time and bytes; each job has a name of its own."""
    forms: dict[str, Callable[[Plan], str | bytes]] = {
        "plane drawings": lambda made: "".join(one.svg for one in drawings(made, "plane")),
        "job sheet, HTML": job_sheet_html,
        "job sheet, PDF": job_sheet_pdf,
        "workbook": plan_workbook,
        "pieces, CSV": lambda made: plan_csv(made, "pieces"),
    }
    for wide, high in ((14, 9), (80, 36)):
        roof = SingleSlope(eave_length=12.0 * wide, slope_length=12.0 * high, pitch=0.5)
        made = plan(Job(roof=roof))
        for form, write in forms.items():
            calls = (partial(write, replace(made, name=f"job {number}")) for number in range(7))
            best = min(_clocked(call, 1) for call in calls)
            told = f"{best * 1e3:6.1f} ms, {len(write(made)) / 1024:5.0f} KiB"
            print(f"{made.shingles.pieces:7d} pieces, {form:15}: {told}")


def _needed(roof: SingleSlope | Hip) -> list[NeededPiece]:
    return [
        needed
        for course in plan(Job(roof=roof)).courses
        for needed in needed_pieces(course.laid, plane=course.plane, course=course.number)
    ]


def _caps(many: int) -> list[NeededPiece]:
    """Caps of a third of a shingle, which meet no other piece."""
    return [
        NeededPiece(
            plane="ridge",
            row="cap",
            course=1,
            number=k + 1,
            width=13.125,
            keeps="neither",
            shingle_from=0,
        )
        for k in range(many)
    ]


def offcuts() -> None:
    for name, roof_of, caps in (
        ("one slope", _slope, 0),
        ("hip", _hip, 0),
        ("hip and caps", _hip, 7),
    ):
        for feet in (9, 30, 136):
            needed = _needed(roof_of(12.0 * feet)) + _caps(caps * feet)
            found: Reuse = reuse(needed, shingle_length=39.375)
            took = _clocked(partial(reuse, needed, shingle_length=39.375), 1)
            proved = "proved" if found.proved else f"{found.least} at least"
            print(
                f"offcuts, {name}: {len(needed):6d} pieces from {found.shingles:6d} shingles,"
                f" {proved}: {took * 1e3:9.2f} ms"
            )


def _slope(size: float) -> SingleSlope:
    return SingleSlope(eave_length=1.5 * size, slope_length=size, pitch=0.5)


def _hip(size: float) -> Hip:
    return Hip(length=1.5 * size, width=size, pitch=0.5)


def sequences() -> None:
    for feet, courses in ((14, 20), (60, 60), (200, 200)):
        width = 12.0 * feet + 0.5
        trims = (0.0, 6.0, 11.0, 17.0)
        search = partial(
            best_sequence, width, shingle_length=39.375, courses=courses, sequence=trims
        )
        found = search()
        print(
            f"best sequence, {courses} courses of {feet} ft: {found.asked.simply} simply,"
            f" {found.asked.shingles} shared, {found.best.count.shingles} with the best"
            f" {len(found.best.count.sequence)} trims, {found.least} at least:"
            f" {_clocked(search, 1) * 1e3:.0f} ms"
        )


def shared() -> None:
    """Buy metal for 1 to 12 runs, up to 40 pieces, from 1 to 4 stock lengths; then for more."""
    sys.path.insert(0, str(ROOT))
    recount = import_module("tests.recount.shared_metal")
    for most, cases in ((12, 400), (40, 20)):
        chance, took, proved, pieces = random.Random(most), [], 0, 0
        for case in range(cases):
            runs = recount.random_runs(chance, most)
            offers = recount.random_offers(chance, priced=bool(case % 2))
            buy = partial(shared_metal, runs, offers=offers)
            took.append(_clocked(buy, 1))
            found = buy()
            recount.check_shared(found, runs, offers)
            proved += found.proved
            pieces = max(pieces, sum(len(run.lengths) for run in found.runs))
        print(
            f"metal for up to {most} runs, {pieces} pieces: {proved} of {cases} proved,"
            f" {statistics.median(took) * 1e3:.1f} ms in the middle, {max(took) * 1e3:.0f} at worst"
        )


def _clocked(call: Callable[[], object], times: int) -> float:
    started = time.perf_counter()
    for _ in range(times):
        call()
    return (time.perf_counter() - started) / times


def sizes() -> None:
    """Print what many sizes at once take, against a plan of each, and the margins of two roofs."""
    shed = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=0.25))
    ranges = Ranges(
        eave_length=Between(least=150, most=186), slope_length=Between(least=94, most=130), step=0.5
    )
    took = min(_clocked(partial(fit, shed, ranges=ranges), 1) for _ in range(7))
    each = min(_clocked(partial(plan, shed), 20) for _ in range(7))
    count = fit(shed, ranges=ranges).sizes_looked_at
    print(
        f"better sizes: {count} in {took * 1e3:.0f} ms, {count / took:,.0f} a second,"
        f" {count * each / took:.0f} times as many as plans of each"
    )
    for name, job in (
        ("shed", shed),
        ("hip roof", Job(roof=Hip(length=432, width=288, pitch=0.5))),
    ):
        found = margins(job)
        took = min(_clocked(partial(margins, job), 1) for _ in range(1 + 4 * found.at_once))
        how = "counted" if found.at_once else "planned"
        print(f"margins of a {name}: {found.sizes_looked_at} sizes {how} in {took * 1e3:.0f} ms")


def outlines() -> None:
    """Print how much longer the planes over an outline of many corners take than those of a box."""
    box = min(_clocked(partial(surfaces, _star(4)), 20) for _ in range(5))
    for corners in (20, 100):
        took = min(_clocked(partial(surfaces, _star(corners)), 1) for _ in range(5))
        print(f"planes over a star of {corners} corners: {took / box:.0f} times those of 4")


def _star(corners: int) -> Footprint:
    turns = [2 * math.pi * k / corners for k in range(corners)]
    reaches = [700 - 400 * (k % 2) for k in range(corners)]
    return Footprint(
        corners=tuple(
            (reach * math.cos(turn), reach * math.sin(turn))
            for reach, turn in zip(reaches, turns, strict=True)
        ),
        pitch=0.5,
    )


def imports() -> None:
    def took(code: str) -> float:
        command = [sys.executable, "-I", "-c", code]
        return min(_clocked(lambda: subprocess.run(command, check=True), 1) for _ in range(15))

    bare = took("")
    for name, code in (
        ("import roofing_core", "import roofing_core"),
        ("and a first plan", "from roofing_core import *; plan(Job(roof=SingleSlope("
         "eave_length=168, slope_length=112, pitch=0.25)))"),
    ):  # fmt: skip
        whole = took(code)
        print(f"{name}: {(whole - bare) * 1e3:.0f} ms over bare Python's {bare * 1e3:.0f} ms")


if __name__ == "__main__":
    service()
    pieces()
    whole_roofs()
    audits()
    sheets()
    offcuts()
    sequences()
    shared()
    sizes()
    outlines()
    imports()
