"""The workbook of sheds in LibreOffice, against the service: what its cells show and ask.

Skipped without LibreOffice and its Python bindings (libreoffice-calc, python3-uno).
"""

from __future__ import annotations

import csv
import importlib.util
import json
import os
import shutil
import subprocess
import sys
import threading
import time
from collections import Counter
from pathlib import Path
from types import SimpleNamespace
from urllib.request import ProxyHandler, build_opener
from zipfile import ZipFile

import pytest
import uvicorn

from roofing_api.app import app
from roofing_core import Job, SingleSlope, plan

ROOT = Path(__file__).resolve().parents[2]
FOLDER = ROOT / "examples" / "spreadsheet"
SYSTEM_PYTHON = "/usr/bin/python3"
NOBODY = "http://127.0.0.1:9"  # the discard port: nothing listens there

_spec = importlib.util.spec_from_file_location("make_sheds", FOLDER / "make_sheds.py")
assert _spec is not None
assert _spec.loader is not None
make_sheds = importlib.util.module_from_spec(_spec)
_spec.loader.exec_module(make_sheds)


def has_libreoffice() -> bool:
    if not shutil.which("soffice") or not Path(SYSTEM_PYTHON).exists():
        return False
    asked = subprocess.run([SYSTEM_PYTHON, "-c", "import uno"], capture_output=True, check=False)
    return asked.returncode == 0


needs_libreoffice = pytest.mark.skipif(
    not has_libreoffice(), reason="needs LibreOffice: libreoffice-calc, python3-uno"
)


@pytest.fixture(scope="module")
def service():
    """Serve, and write down every request: its method and its address."""
    asked: list[tuple[str, str]] = []

    async def counted(scope, receive, send):
        if scope["type"] == "http":
            asked.append((scope["method"], f"{scope['path']}?{scope['query_string'].decode()}"))
        await app(scope, receive, send)

    server = uvicorn.Server(uvicorn.Config(counted, port=0, log_level="error", lifespan="off"))
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.01)
    port = server.servers[0].sockets[0].getsockname()[1]
    yield SimpleNamespace(address=f"http://127.0.0.1:{port}", asked=asked)
    server.should_exit = True
    thread.join(10)


def worked_out(table: Path, *steps: dict, locale: str = "en-US", options: str = "") -> list[dict]:
    """Give what the cells show after each step."""
    own = {
        name: value
        for name, value in os.environ.items()
        if not name.startswith("PYTHON") and not name.lower().endswith("_proxy")
    }
    ran = subprocess.run(
        [SYSTEM_PYTHON, str(Path(__file__).with_name("in_libreoffice.py")),
         str(table), locale, options, json.dumps(steps)],
        env=own, capture_output=True, text=True, timeout=90, check=False,
    )  # fmt: skip
    assert ran.returncode == 0, ran.stderr
    told: list[dict] = json.loads(ran.stdout)
    return told


def fetched(address: str) -> str:
    with build_opener(ProxyHandler({})).open(address, timeout=30) as answer:
        text: str = answer.read().decode()
        return text


def quantities(eave: float, slope: float, rise: float) -> dict:
    planned = plan(Job(roof=SingleSlope(eave_length=eave, slope_length=slope, pitch=rise / 12)))
    order = planned.order
    return {
        "E": planned.squares,
        "F": order.shingles.packs,
        "G": order.underlayment.packs,
    }


def row(cells: dict, number: int, columns: str) -> dict:
    return {column: cells.get(f"{column}{number}") for column in columns}


def copied(tmp_path: Path) -> Path:
    return Path(shutil.copy(FOLDER / "sheds.xlsx", tmp_path))


def test_the_committed_tables_are_what_the_generator_writes(tmp_path):
    subprocess.run([sys.executable, str(FOLDER / "make_sheds.py"), str(tmp_path)], check=True)
    # Byte for byte but for the packing, which another release of zlib may do otherwise.
    with ZipFile(tmp_path / "sheds.xlsx") as made, ZipFile(FOLDER / "sheds.xlsx") as kept:
        assert made.namelist() == kept.namelist()
        for name in made.namelist():
            assert made.read(name) == kept.read(name), name
    assert (tmp_path / "sheds.csv").read_bytes() == (FOLDER / "sheds.csv").read_bytes()


# The second step makes the first shed longer, so that its order grows: the plans themselves say to
# what. The pitch 3.5 has a decimal comma in German.
@needs_libreoffice
@pytest.mark.parametrize("locale", ["en-US", "de-DE"])
def test_quantities_follow_the_sizes(service, tmp_path, locale):
    service.asked.clear()
    steps = ({"B1": service.address}, {"B7": "16 ft 6 in"})
    first, longer = worked_out(copied(tmp_path), *steps, locale=locale)
    sheds = {7: (168, 112, 3), 8: (96, 66, 4), 9: (3600 / 25.4, 2100 / 25.4, 3.5)}
    for number, sizes in sheds.items():
        assert row(first, number, "EFG") == pytest.approx(quantities(*sizes), rel=1e-12)
    assert row(longer, 7, "EFG") == pytest.approx(quantities(198, 112, 3), rel=1e-12)
    assert longer["F7"] > first["F7"]
    assert row(longer, 8, "EFG") == row(first, 8, "EFG")
    assert first["H7"].startswith("worth knowing Below a pitch of 4:12 the underlayment is laid")
    # One address a row, and one more for the row that changed; each is asked for once.
    asked = Counter(service.asked)
    gets = [address for method, address in asked if method == "GET"]
    assert len(gets) == 4
    assert all(times == 1 for (method, _), times in asked.items() if method == "GET")
    # LibreOffice asks OPTIONS and HEAD before each GET, and again where one of them is refused.
    assert Counter(method for method, _ in service.asked) == {"OPTIONS": 4, "HEAD": 4, "GET": 4}
    assert max(map(len, gets)) + len(service.address) < make_sheds.LONGEST_ADDRESS


@needs_libreoffice
def test_what_is_wrong_stands_in_the_row(service, tmp_path):
    service.asked.clear()
    wrong = {"B1": service.address, "B7": 14, "D8": 1, "C9": ""}
    mended = {"B7": "14 ft", "D8": "18 deg", "C9": "210 cm"}
    asked_for = {"B4": "/squarez,/squares"}
    long = {"B4": "/squares," * 250}
    nobody = {"B1": NOBODY, "B4": make_sheds.POINTERS}
    steps = worked_out(copied(tmp_path), wrong, mended, asked_for, long, nobody)
    for number in (7, 8, 9):
        assert row(steps[0], number, "EFG") == dict.fromkeys("EFG", "no plan")
        assert all(isinstance(value, float) for value in row(steps[1], number, "EFG").values())
    assert steps[0]["H7"].endswith("14: a number with its unit: write 14 ft, 14 in or 4.27 m")
    assert steps[0]["H8"].startswith("pitch came as 1:12: 2:12 or more")
    assert steps[0]["H9"] == "Fill in the eave length, the slope length and the pitch"
    assert not any("came as" in steps[1].get(f"H{number}", "") for number in (7, 8, 9))
    assert steps[2]["H7"].startswith("pointer came as /squarez: a place in the answer; here there")
    assert steps[3]["H7"] == "The address is over 2048 characters: shorten the sizes"
    assert steps[4]["H7"].startswith(f"No answer from {NOBODY}: start the service there")
    # Rows without a shed ask nothing, and what is too long is not asked: 2 rows, then 3, and 3.
    assert len({address for method, address in service.asked if method == "GET"}) == 8


#: Comma, double quotes, UTF-8, from the first line, English numbers, formulas worked out.
AS_WEB_SPREADSHEETS = "44,34,76,1,,1033,false,true,false,false,false,-1,true"


@needs_libreoffice
def test_a_web_spreadsheet_is_given_addresses_of_comma_separated_text(service, tmp_path):
    # IMPORTDATA is of web spreadsheets alone: their part, to fetch and to split, is done here.
    table = Path(shutil.copy(FOLDER / "sheds.csv", tmp_path))
    steps = ({"B1": service.address}, {"B7": "14"})
    good, bad = worked_out(table, *steps, options=AS_WEB_SPREADSHEETS)
    order = list(csv.reader(fetched(good["H7"]).splitlines()))
    packs = {line[0]: float(line[2]) for line in order[1:]}
    wanted = quantities(168, 112, 3)
    assert (packs["shingles"], packs["underlayment"]) == (wanted["F"], wanted["G"])
    numbers = make_sheds.web_rows()[make_sheds.FIRST_ROW - 1][4].split('"')[1]
    lines = fetched(good["J7"] + numbers).splitlines()
    assert list(map(float, lines)) == list(wanted.values())
    assert fetched(good["I7"]).startswith("<!doctype html>")
    for address in (bad["H7"], bad["J7"] + numbers):
        assert fetched(address).startswith("eave_length came as 14: a number with its unit")
