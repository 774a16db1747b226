"""Programs that ask the service, as the guides have people run them, against a running service."""

from __future__ import annotations

import csv
import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from socket import socket
from time import sleep
from typing import Any

import httpx
import pytest

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = ROOT / "examples"
TYPESCRIPT = EXAMPLES / "typescript"
GUIDE = (EXAMPLES / "README.md").read_text(encoding="utf-8")
#: A command of the guide, and what it prints, where the guide shows that.
COMMANDS = re.findall(r"```sh\n(.*?)```\n(?:\n```text\n(.*?)```)?", GUIDE, re.DOTALL)
WRITTEN_IN_GUIDE = "http://127.0.0.1:8000"


@pytest.fixture(scope="module")
def base() -> Iterator[str]:
    with socket() as asked:
        asked.bind(("127.0.0.1", 0))
        port = asked.getsockname()[1]
    command = [sys.executable, "-m", "roofing_api", "--port", str(port), "--log-level", "warning"]
    with subprocess.Popen(command, cwd=ROOT) as server:
        try:
            with httpx.Client(base_url=f"http://127.0.0.1:{port}", trust_env=False) as client:
                for _ in range(600):
                    try:
                        client.get("/healthz")
                        break
                    except httpx.ConnectError:
                        sleep(0.05)
            yield f"http://127.0.0.1:{port}"
        finally:
            server.terminate()


@pytest.fixture(scope="module")
def service(base: str) -> Iterator[httpx.Client]:
    with httpx.Client(base_url=base, timeout=60, trust_env=False) as client:
        yield client


def ran(*command: str, at: Path, code: int = 0) -> subprocess.CompletedProcess[str]:
    said = {name: value for name, value in os.environ.items() if "proxy" not in name.lower()}
    done = subprocess.run(
        command, cwd=at, env=said, capture_output=True, text=True, check=False, timeout=120
    )
    assert done.returncode == code, done.stdout + done.stderr
    return done


def by_batch(base: str, table: Path, code: int = 0) -> tuple[list[dict[str, str]], Any]:
    """Run the batch script over a table; give the rows that it wrote, and what it said."""
    script, out = str(EXAMPLES / "batch_sheds.py"), table.with_name("out.csv")
    done = ran(sys.executable, script, base, str(table), str(out), at=table.parent, code=code)
    with out.open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(lines)), done


def test_a_batch_has_every_shed_with_the_packs_of_its_own_plan(base, service, tmp_path):
    table = Path(shutil.copy(EXAMPLES / "sheds.csv", tmp_path))
    rows, done = by_batch(base, table)
    with table.open(encoding="utf-8", newline="") as lines:
        asked = list(csv.DictReader(lines))
    assert [row["name"] for row in rows] == [row["name"] for row in asked]
    for shed, row in zip(asked, rows, strict=True):
        answer = service.get("/v1/plans", params={k: v for k, v in shed.items() if v})
        if answer.is_error:
            assert row["refused"] == answer.json()["detail"]
            assert not any(row[name] for name in row if name not in {*shed, "refused"})
            continue
        assert row["refused"] == ""
        packs = {name: int(cell) for name, cell in row.items() if name.endswith(")")}
        order = answer.json()["order"].values()
        wanted = {f"{one['item']} ({one['pack']})": one["packs"] for one in order if one["packs"]}
        assert {name: count for name, count in packs.items() if count} == wanted
    assert "5 sheds planned, 2 refused" in done.stdout
    assert "100%" in done.stderr, "how far it is belongs beside the output, not into it"


def test_a_refused_row_says_what_would_be_right(base, tmp_path):
    table = Path(shutil.copy(EXAMPLES / "sheds.csv", tmp_path))
    told = {row["name"]: row["refused"] for row in by_batch(base, table)[0] if row["refused"]}
    assert told == {
        "Hen house": "eave_length came as 7: a number with its unit: write 7 ft, 7 in or 4.27 m",
        "Lookout": "pitch came as flat: a pitch, such as 4:12, 4/12, 18.43 deg or 33.3 %",
    }


def test_a_batch_reads_what_spreadsheets_save(base, tmp_path):
    table = tmp_path / "saved.csv"
    lines = [
        "eave_length,slope_length,pitch,color",
        "4.2 m,2450 mm,20 %",
        "",
        "14 ft,9 ft,3:12,red",
    ]
    table.write_bytes("\r\n".join(lines).encode("utf-8-sig"))
    fine, coloured = by_batch(base, table)[0]
    assert (fine["eave_length"], fine["refused"]) == ("4.2 m", "")
    assert coloured["refused"].startswith("color came as")


def test_a_batch_that_nobody_answers_says_so_in_each_row(tmp_path):
    table = Path(shutil.copy(EXAMPLES / "sheds.csv", tmp_path))
    with socket() as taken:  # bound, and not listening: nobody can be reached there
        taken.bind(("127.0.0.1", 0))
        rows, _ = by_batch(f"http://127.0.0.1:{taken.getsockname()[1]}", table, code=1)
    assert {row["refused"] for row in rows} == {"no answer of the service: ConnectError"}


def test_the_python_client_prints_the_order_and_the_fault(base, service, tmp_path):
    sheet = tmp_path / "sheet.pdf"
    printed = ran(
        sys.executable, str(EXAMPLES / "client.py"), base, str(sheet), at=tmp_path
    ).stdout.splitlines()
    job = json.loads((EXAMPLES / "tool_store.json").read_text(encoding="utf-8"))
    planned = service.post("/v1/plans", json=job).json()
    bought = [line for line in planned["order"].values() if line["packs"]]
    assert [line.split(maxsplit=2) for line in printed[: len(bought)]] == [
        [str(line["packs"]), line["pack"], line["item"]] for line in bought
    ]
    assert "Butt of course 20 on a slope of 9 ft 4 in: 8 ft 10 3/8 in" in printed
    assert printed[-1].startswith("422 at #/shingle/exposure: at most 5 5/8 in")
    assert sheet.read_bytes().startswith(b"%PDF-1.7")


# What the generated types must not let through: each line below an expectation is an error, and one
# that is none is an error of the compiler's too.
WRONG = """
import createClient from "openapi-fetch";
import type { components, paths } from "./api.js";

type Job = components["schemas"]["JobBodyInput"];
const service = createClient<paths, "application/json" | "application/problem+json">({});

export const fine: Job = { roof: { form: "hip", length: "8 m", width: "5 m", pitch: "30 deg" } };
// @ts-expect-error: no such form
export const form: Job = { roof: { form: "dome", length: "8 m", width: "5 m", pitch: "30 deg" } };
// @ts-expect-error: the pitch is needed
export const pitch: Job = { roof: { form: "hip", length: "8 m", width: "5 m" } };
// @ts-expect-error: no such path
void service.GET("/v1/domes");
const { data, error } = await service.POST("/v1/plans", { body: fine });
if (data) {
  const packs: number = data.order.shingles.packs;
  // @ts-expect-error: no such line
  const none = data.order.shingle.packs;
  // @ts-expect-error: a number
  const text: string = packs;
} else {
  const where: string | undefined = error.errors[0]?.pointer;
  // @ts-expect-error: no such field
  error.message;
}
"""


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the TypeScript example away from the sources, as its package says."""
    if not shutil.which("npm") or not (TYPESCRIPT / "node_modules").is_dir():
        pytest.skip("needs Node, and `npm ci` in examples/typescript")
    project = tmp_path_factory.mktemp("project")
    (project / "openapi").mkdir()
    shutil.copy(ROOT / "openapi" / "openapi.json", project / "openapi")
    there = project / "examples" / "typescript"
    (there / "src").mkdir(parents=True)
    for name in ("package.json", "tsconfig.json", "src/order.ts"):
        shutil.copy(TYPESCRIPT / name, there / name)
    (there / "node_modules").symlink_to(TYPESCRIPT / "node_modules", target_is_directory=True)
    (there / "src" / "wrong.ts").write_text(WRONG, encoding="utf-8")
    ran("npm", "run", "build", at=there)
    return there / "build" / "order.js"


def test_the_typescript_client_is_compiled_strictly_and_gives_the_services_figures(
    built, base, service
):
    settings = json.loads((TYPESCRIPT / "tsconfig.json").read_text(encoding="utf-8"))
    assert settings["compilerOptions"]["strict"] is True
    printed = ran("node", str(built), base, at=built.parent).stdout
    store, fault, pitches = (part.splitlines()[1:] for part in printed.split("# ")[1:])
    asked = {"eave_length": "13ft6in", "run": "9ft4in", "pitch": "3:12", "shingle.per_bundle": "22"}
    order = service.get("/v1/plans", params=asked).json()["order"].values()
    bought = [f"{one['packs']} x {one['pack']} of {one['item']}" for one in order if one["packs"]]
    assert [line.partition(",")[0] for line in store] == bought
    assert fault == [
        "refused: #/roof/length came as 16: a number with its unit: write 16 ft, 16 in or 4.27 m"
    ]
    for line in pitches:
        pitch = line.partition(": ")[0]
        gable = {"form": "gable", "length": "16ft", "width": "12ft", "pitch": pitch}
        planned = service.get("/v1/plans", params=gable).json()
        bundles = planned["order"]["shingles"]["packs"]
        assert line == f"{pitch}: {planned['squares']:.2f} squares, {bundles} bundles"
    assert len(pitches) == 3


def test_the_lock_of_the_typescript_client_pins_all_and_names_no_registry():
    lock = json.loads((TYPESCRIPT / "package-lock.json").read_text(encoding="utf-8"))
    package = json.loads((TYPESCRIPT / "package.json").read_text(encoding="utf-8"))
    installed = {name: one for name, one in lock["packages"].items() if name}
    assert len(installed) > 3
    for one in installed.values():
        assert one["version"]
        assert one["integrity"].startswith("sha512-")
        assert "resolved" not in one
    for name, version in {**package["dependencies"], **package["devDependencies"]}.items():
        assert installed[f"node_modules/{name}"]["version"] == version


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give what somebody's folder of the project has, to run the guide's commands in."""
    there = tmp_path_factory.mktemp("guide")
    leave = shutil.ignore_patterns("node_modules", "build")
    shutil.copytree(EXAMPLES, there / "examples", ignore=leave)
    return there


@pytest.mark.skipif(not shutil.which("curl") or os.name == "nt", reason="written for a shell")
@pytest.mark.parametrize(("command", "shown"), COMMANDS)
def test_each_command_of_the_guides_works_as_written(command, shown, base, folder):
    """Only the port and the place of Python are put in; what is shown must be what is printed."""
    here = command.replace(WRITTEN_IN_GUIDE, base).replace(".venv/bin/python", sys.executable)
    assert here != command
    before = set(folder.iterdir())
    printed = ran("sh", "-e", "-c", here.replace("curl -s", "curl -sf"), at=folder).stdout
    written = [path for path in folder.iterdir() if path not in before]
    if shown:
        assert printed.strip() == shown.strip()
    assert printed.strip() or written
    for path in written:
        assert path.stat().st_size > 500
        begin = {".pdf": b"%PDF", ".xlsx": b"PK", ".csv": b"name,"}[path.suffix]
        assert path.read_bytes().startswith(begin)


def test_there_is_a_page_for_each_kind_of_user_with_commands_that_are_run():
    pages = dict(re.findall(r"^## (.*?)\n(.*?)(?=^## |\Z)", GUIDE, re.DOTALL | re.MULTILINE))
    kinds = ["A script", "A spreadsheet", "A web page", "A lumberyard counter"]
    assert list(pages) == [*kinds, "A kit configurator"]
    for name, page in pages.items():
        assert "```sh\n" in page or "```html\n" in page, name
    assert len(COMMANDS) >= 9


def test_what_the_guides_point_to_is_there():
    links = re.findall(r"\]\(([^)#]+)(?:#[^)]*)?\)", GUIDE)
    assert len(links) > 8
    assert [link for link in links if not (EXAMPLES / link).exists()] == []


class Tag(HTMLParser):
    """What the tag of a page asks for, and the scripts of the page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.asked: dict[str, str] = {}
        self.scripts: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag == "roof-order":
            self.asked = {name.replace("-", "_"): value for name, value in given.items()}
        elif tag == "script":
            self.scripts.append(given["src"])


def test_the_page_of_the_guide_asks_for_what_the_service_has(service):
    """That a browser then shows it is tests/browser's to say."""
    page = Tag(re.findall(r"```html\n(.*?)```", GUIDE, re.DOTALL)[0])
    (script,) = page.scripts
    assert "roof-order" in service.get(script.replace(WRITTEN_IN_GUIDE, "")).text
    drawn = service.get("/v1/plans", params=page.asked)
    assert drawn.status_code == 200
    assert drawn.text.startswith("<svg")


def test_the_cell_of_the_guide_asks_what_its_command_asks():
    """A1 to A3 as the guide fills them, put into the formula, are the address shown after it."""
    formula = re.findall(r"^=WEBSERVICE\((.*)\)$", GUIDE, re.MULTILINE)[0]
    cells = {"A1": "14 ft", "A2": "9 ft 4 in", "A3": "3:12"}
    address = "".join(
        text or str(httpx.QueryParams({"x": cells[cell]}))[2:].replace("+", "%20")
        for text, cell in re.findall(r'"([^"]*)"|ENCODEURL\((\w+)\)', formula)
    )
    assert any(address in command for command, _ in COMMANDS)
