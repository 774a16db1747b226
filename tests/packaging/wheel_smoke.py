"""Try the wheel as a stranger would: installed in an empty environment, away from the sources.

    python wheel_smoke.py library    where only the library is installed
    python wheel_smoke.py service    where the extras `api` and `sheets` are installed too

Run by .ci/run with the Python of that environment. Beside the wheel it needs the standard library
alone. It prints what it found and ends with 0, or says what is wrong and ends with 1.
"""

import json
import re
import subprocess
import sys
import sysconfig
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from html.parser import HTMLParser
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path
from socket import socket
from urllib.parse import urljoin, urlsplit

from roofing_core import Job, SingleSlope, plan

# 14 ft by 9 ft 4 in is 14 * 28 / 3 = 130 2/3 ft2, by hand; a square is 100 ft2.
SQUARES = 1.306667
TO_A_MILLIONTH = 1e-6
SECONDS_TO_START = 30

# What makes a browser fetch more, beside the attributes of tags.
FETCHED_BY_SCRIPT = re.compile(
    rb"""(?:\bfrom|\bimport|\bimport\()\s*["']((?:[./]|https?:)[^"'\s]+)["']"""
)
FETCHED_BY_STYLE = re.compile(rb"""url\(\s*["']?(?!data:|#)([^"')\s]+)""")

# Loopback is asked directly, whatever proxy the surroundings name.
DIRECT = urllib.request.build_opener(urllib.request.ProxyHandler({}))


def demand(holds: object, otherwise: str) -> None:
    """End with a message unless something holds; unlike assert, under -O too."""
    if not holds:
        sys.exit(f"wheel smoke test: {otherwise}")


def try_library() -> None:
    """Plan a job, with nothing of the service within reach."""
    for name in ("fastapi", "pydantic", "uvicorn", "numpy", "typst", "xlsxwriter"):
        demand(find_spec(name) is None, f"{name} came with the library alone")
    demand_installed("roofing_core")
    job = Job(roof=SingleSlope(eave_length=168, slope_length=112, pitch=4 / 12))
    squares = plan(job).roof.squares
    demand(abs(squares - SQUARES) < TO_A_MILLIONTH, f"a plan of 14 ft by 9 ft 4 in has {squares}")
    print(f"library: {squares:.4f} squares planned")


def demand_installed(package: str) -> None:
    """Make sure that a package is the installed one, not one lying beside this file."""
    where = Path(str(import_module(package).__file__)).parent
    demand(where.is_relative_to(sysconfig.get_path("purelib")), f"{package} is from {where}")
    demand((where / "py.typed").exists(), f"{package} has no py.typed")


def try_service() -> None:
    """Start the installed command and ask it for its health, an area and its documentation."""
    demand_installed("roofing_api")
    with service() as base:
        area = json.loads(get(f"{base}/v1/area?eave_length=14ft&slope_length=9ft4in")[1])
        squares = area["squares"]
        demand(abs(squares - SQUARES) < TO_A_MILLIONTH, f"14 ft by 9 ft 4 in came as {area}")
        for form, begins in (("xlsx", b"PK"), ("pdf", b"%PDF-")):
            shed = f"{base}/v1/plans?eave_length=14ft&run=9ft&pitch=4:12&format={form}"
            kind, made = get(shed)
            demand(made.startswith(begins), f"{form} came as {kind}, {made[:40]!r}")
        pages = {page: len(demand_whole(base, page)) for page in ("/docs", "/", "/embed.js")}
        assets = ", ".join(f"{page} and {count} assets" for page, count in pages.items())
        print(f"service: {squares:.4f} squares; {assets}")


@contextmanager
def service() -> Iterator[str]:
    """Run the roofing-api command on a free port; give its address."""
    with socket() as asked:
        asked.bind(("127.0.0.1", 0))
        port = asked.getsockname()[1]
    command = Path(sysconfig.get_path("scripts")) / "roofing-api"
    with subprocess.Popen([command, "--host", "127.0.0.1", "--port", str(port)]) as server:
        try:
            base = f"http://127.0.0.1:{port}"
            wait_until_healthy(base, server)
            yield base
        finally:
            server.terminate()


def wait_until_healthy(base: str, server: subprocess.Popen[bytes]) -> None:
    """Return when /healthz answers."""
    last_try = time.monotonic() + SECONDS_TO_START
    while True:
        try:
            get(f"{base}/healthz")
        except OSError as error:
            demand(server.poll() is None, f"roofing-api ended with {server.returncode}")
            demand(time.monotonic() < last_try, f"/healthz did not answer: {error}")
            time.sleep(0.05)
        else:
            return


def get(url: str) -> tuple[str, bytes]:
    """Get a 200 answer; give its content type and its body."""
    with DIRECT.open(url, timeout=10) as answer:
        return answer.headers.get_content_type(), answer.read()


class Assets(HTMLParser):
    """What a page makes a browser fetch: every src, and every href that is not a link to follow."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        wanted = {"src", "srcset", "poster", "data"} | ({"href"} if tag == "link" else set())
        self.found += [value for name, value in attrs if name in wanted and value]


def fetched_by(kind: str, body: bytes) -> list[str]:
    """Give the addresses that a page, a script or a style sheet makes a browser fetch."""
    found: list[str] = []
    if kind == "text/html":
        found += Assets(body.decode()).found
    if kind in ("text/html", "text/javascript", "application/javascript"):
        found += [match.decode() for match in FETCHED_BY_SCRIPT.findall(body)]
    if kind in ("text/html", "text/css"):
        found += [match.decode() for match in FETCHED_BY_STYLE.findall(body)]
    return [address for address in found if not address.startswith("data:")]


def demand_whole(base: str, page: str) -> set[str]:
    """Fetch a page with all that it needs, as a browser would; give what was fetched beside it."""
    seen: set[str] = set()
    todo = [base + page]
    while todo:
        url = todo.pop()
        seen.add(url)
        demand(urlsplit(url).netloc == urlsplit(base).netloc, f"{page} needs another host: {url}")
        todo += {urljoin(url, address) for address in fetched_by(*get(url))} - seen
    return seen - {base + page}


if __name__ == "__main__":
    {"library": try_library, "service": try_service}[sys.argv[1]]()
