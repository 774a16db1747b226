"""What the README and the examples show is what the project does."""

import doctest
import json
import os
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path
from socket import socket
from urllib.request import urlopen

import pytest
from fastapi.testclient import TestClient

from roofing_api.app import app

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
EXAMPLES = ROOT / "examples"
ASKED = re.compile(r"```http\nGET (\S+)\n```\n\n```(json|text)\n(.*?)```", re.DOTALL)

client = TestClient(app)


def tool_store(**headers: str) -> str:
    body = (EXAMPLES / "tool_store.json").read_bytes()
    said = {"Content-Type": "application/json", **headers}
    return client.post("/v1/plans", content=body, headers=said).text


def tool_store_order() -> str:
    body = (EXAMPLES / "tool_store_prices.json").read_bytes()
    said = {"Content-Type": "application/json", "Accept": "text/plain"}
    return client.post("/v1/orders", content=body, headers=said).text


def shown(kind: str) -> list[str]:
    """Give the blocks of a kind that are not the answer to a request shown before them."""
    alone = ASKED.sub("", README)
    return re.findall(rf"```{kind}\n(.*?)```", alone, re.DOTALL)


def test_the_python_shown_gives_what_is_shown(monkeypatch):
    monkeypatch.chdir(ROOT)
    code = "\n".join(shown("python"))
    parsed = doctest.DocTestParser().get_doctest(code, {}, "README", "README.md", 0)
    runner = doctest.DocTestRunner()
    runner.run(parsed)
    assert runner.summarize().attempted > 15
    assert runner.summarize().failed == 0


@pytest.mark.parametrize(("path", "kind", "answer"), ASKED.findall(README))
def test_each_request_shown_is_answered_as_shown(path, kind, answer):
    given = client.get(path)
    if kind == "json":
        assert given.json() == json.loads(answer)
    else:
        assert given.text == answer.rstrip("\n")


def test_requests_of_each_kind_are_shown():
    answers = [(kind, answer) for _, kind, answer in ASKED.findall(README)]
    assert {kind for kind, _ in answers} == {"json", "text"}
    shown_as_json = [json.loads(answer) for kind, answer in answers if kind == "json"]
    assert any(answer.get("status") == 422 for answer in shown_as_json)


def test_the_plan_shown_is_the_tool_stores():
    texts = (tool_store(Accept="text/plain"), tool_store_order())
    blocks = shown("text")
    assert [sum(block in text for block in blocks) for text in texts] == [3, 1]
    assert len(blocks) == 4


@pytest.mark.parametrize("path", re.findall(r"^\| `(/v1/\w+)` \|", README, re.MULTILINE))
def test_each_path_of_the_table_is_there(path):
    assert path in app.openapi()["paths"]


def test_the_table_names_every_path():
    named = set(re.findall(r"^\| `(/v1/\w+)` \|", README, re.MULTILINE))
    assert named == {path for path in app.openapi()["paths"] if path.startswith("/v1/")}


def test_the_example_over_http_gives_its_committed_output():
    written = (EXAMPLES / "outputs" / "tool_store.txt").read_text(encoding="utf-8")
    assert tool_store(Accept="text/plain") == written


@pytest.mark.parametrize(
    ("example", "output"),
    [
        ("tool_store.py", "tool_store_python.txt"),
        ("fewest_shingles.py", "fewest_shingles.txt"),
        ("price_list.py", "price_list.txt"),
    ],
)
def test_the_examples_in_python_give_their_committed_output(example, output):
    written = (EXAMPLES / "outputs" / output).read_text(encoding="utf-8")
    said = {**os.environ, "PYTHONPATH": str(ROOT)}
    ran = subprocess.run(
        [sys.executable, str(EXAMPLES / example)],
        env=said, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert ran.stdout == written


def test_the_sheets_of_the_example_are_written_without_a_server(tmp_path):
    said = {**os.environ, "PYTHONPATH": str(ROOT)}
    ran = subprocess.run(
        [sys.executable, str(EXAMPLES / "sheets.py"), str(tmp_path / "shed")],
        env=said, capture_output=True, text=True, check=True,
    )  # fmt: skip
    begin = {
        "courses.csv": b"plane,kind,course,butt (mm),", "job_sheet.html": b"<!doctype html>",
        "job_sheet.pdf": b"%PDF-1.7", "order.csv": b"item,material,buy,packs,",
        "plan.xlsx": b"PK", "plane.svg": b"<svg ", "sections.svg": b"<svg ",
    }  # fmt: skip
    assert ran.stdout.split() == list(begin)
    for name, beginning in begin.items():
        assert (tmp_path / "shed" / name).read_bytes().startswith(beginning)
    assert b"Potting shed" in (tmp_path / "shed" / "job_sheet.html").read_bytes()


def test_the_order_list_as_a_table_gives_its_committed_output():
    written = (EXAMPLES / "outputs" / "tool_store_order.csv").read_bytes()
    assert tool_store(Accept="text/csv").encode() == written


def test_the_priced_order_gives_its_committed_output():
    written = (EXAMPLES / "outputs" / "tool_store_prices.txt").read_text(encoding="utf-8")
    assert tool_store_order() == written
    asked = json.loads((EXAMPLES / "tool_store_prices.json").read_text(encoding="utf-8"))
    store = json.loads((EXAMPLES / "tool_store.json").read_text(encoding="utf-8"))
    del store["eave_metal"]  # the price list says which lengths there are
    assert asked["job"] == store


def test_the_drawn_roof_gives_its_committed_output():
    written = (EXAMPLES / "outputs" / "drawn_roof.txt").read_text(encoding="utf-8")
    said = {**os.environ, "PYTHONPATH": str(ROOT)}
    ran = subprocess.run(
        [sys.executable, str(EXAMPLES / "drawn_roof.py")],
        env=said, capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert ran.stdout == written
    plan, model = written.split("cottage.city.json\n")
    assert plan == f"cottage.geojson\n{model}"


def test_the_example_as_text_and_as_data_are_one_plan():
    planned = json.loads(tool_store())
    text = tool_store(Accept="text/plain")
    for line in planned["order"].values():
        if line["packs"]:
            row = rf"^{line['item']} +{line['packs']} +{line['pack']}"
            assert re.search(row, text, re.MULTILINE)
    for caution in planned["cautions"]:
        assert caution["about"].capitalize() in text


@pytest.fixture(scope="module")
def base():
    with socket() as asked:
        asked.bind(("127.0.0.1", 0))
        port = asked.getsockname()[1]
    command = [sys.executable, "-m", "roofing_api", "--port", str(port)]
    with subprocess.Popen(command, cwd=ROOT) as server:
        address = f"http://127.0.0.1:{port}"
        for _ in range(600):
            try:
                urlopen(f"{address}/healthz", timeout=1).close()
                break
            except OSError:
                time.sleep(0.05)
        yield address
        server.terminate()


def ran(*command: str) -> str:
    said = {name: value for name, value in os.environ.items() if "proxy" not in name.lower()}
    done = subprocess.run(command, env=said, capture_output=True, text=True, check=True)
    return done.stdout


@pytest.mark.skipif(not shutil.which("curl"), reason="the shell example calls curl")
def test_the_example_in_the_shell_gives_its_committed_output(base):
    written = (EXAMPLES / "outputs" / "tool_store_shell.txt").read_text(encoding="utf-8")
    assert ran("sh", str(EXAMPLES / "tool_store.sh"), base) == written


def test_the_plan_shown_on_the_first_run_is_the_tool_stores(base):
    shown_first = ran(sys.executable, str(EXAMPLES / "show_plan.py"), base)
    assert shown_first == tool_store(Accept="text/plain")
    in_metric = ran(sys.executable, str(EXAMPLES / "show_plan.py"), base, "--units", "metric")
    assert "4115 mm" in in_metric  # 13 ft 6 in
    assert " in " not in in_metric.partition("ORDER OF WORK")[0].partition("METAL")[2]
