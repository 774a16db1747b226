"""What the tests in a browser share: the service, a page of somebody else, and Chromium itself.

They need the group `browser` and a Chromium of the system, and are skipped without them. Whatever a
page says on its console, and whatever it asks of a host that is not this machine's, fails the test.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from socket import socket
from typing import Any
from urllib.parse import urlsplit
from urllib.request import ProxyHandler, build_opener

import pytest

ROOT = Path(__file__).resolve().parents[2]
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
]
DESKTOP = {"width": 1280, "height": 900}
#: A phone held upright: as narrow as they are still sold.
PHONE = {"width": 360, "height": 740}


def found_chromium() -> str | None:
    return next(filter(None, map(shutil.which, ("chromium", "chromium-browser"))), None)


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """Start Chromium once for all tests."""
    playwright = pytest.importorskip("playwright.sync_api")
    path = found_chromium()
    if path is None:
        pytest.skip("there is no Chromium on this system")
    with playwright.sync_playwright() as driver:
        started = driver.chromium.launch(executable_path=path, args=FLAGS)
        yield started
        started.close()


def free_port() -> int:
    with socket() as asked:
        asked.bind(("127.0.0.1", 0))
        port: int = asked.getsockname()[1]
        return port


@contextmanager
def serving(*options: str) -> Iterator[str]:
    """Run the service with some options; give its address when it answers."""
    port = free_port()
    command = [sys.executable, "-m", "roofing_api", "--port", str(port), "--log-level", "warning"]
    here = build_opener(ProxyHandler({}))
    with subprocess.Popen([*command, *options], cwd=ROOT) as server:
        try:
            for _ in range(400):
                try:
                    here.open(f"http://127.0.0.1:{port}/healthz", timeout=1).close()
                    break
                except OSError:
                    time.sleep(0.05)
            yield f"http://127.0.0.1:{port}"
        finally:
            server.terminate()


@pytest.fixture(scope="session")
def service(host: Host) -> Iterator[str]:
    """Serve; pages of the host may ask."""
    with serving("--allow-origin", host.address) as base:
        yield base


class Host:
    """Somebody else's server: files of the examples, and pages that a test writes."""

    def __init__(self, address: str, pages: dict[str, str]) -> None:
        self.address, self.pages = address, pages

    def page(self, body: str, name: str = "page.html") -> str:
        """Put a page up; give its address."""
        self.pages[f"/{name}"] = body
        return f"{self.address}/{name}"


@pytest.fixture(scope="session")
def host() -> Iterator[Host]:
    """Serve pages from another origin: this machine at another port, under a strict policy."""
    pages: dict[str, str] = {}

    class Pages(SimpleHTTPRequestHandler):
        def log_message(self, *_: Any) -> None:
            pass

        def do_GET(self) -> None:
            text = pages.get(urlsplit(self.path).path)
            if text is None:
                super().do_GET()
                return
            policy, _, body = text.partition("\n")
            content = body.encode()
            self.send_response(200)
            self.send_header("Content-Type", "text/html; charset=utf-8")
            self.send_header("Content-Security-Policy", policy)
            self.send_header("Content-Length", str(len(content)))
            self.end_headers()
            self.wfile.write(content)

    examples = partial(Pages, directory=str(ROOT / "examples"))
    with ThreadingHTTPServer(("127.0.0.1", 0), examples) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield Host(f"http://127.0.0.1:{server.server_port}", pages)
        server.shutdown()


class Watched:
    """A page, what it said on its console, and what it asked for."""

    def __init__(self, page: Any) -> None:
        self.page = page
        self.said: list[str] = []
        self.asked: list[str] = []
        page.on("console", lambda message: self.said.append(f"{message.type}: {message.text}"))
        page.on("pageerror", lambda error: self.said.append(f"error: {error}"))
        page.route("**/*", self._let_through)

    def _let_through(self, route: Any) -> None:
        address = route.request.url
        self.asked.append(address)
        near = urlsplit(address).hostname == "127.0.0.1" or address.startswith(("blob:", "data:"))
        route.continue_() if near else route.abort()

    def strangers(self) -> list[str]:
        """Give what was asked of another machine."""
        return [one for one in self.asked if urlsplit(one).hostname not in ("127.0.0.1", None)]


#: What Chromium itself says where the service refuses, as it should.
REFUSED = "error: Failed to load resource: the server responded with a status of 422"


@pytest.fixture
def watch(browser: Any) -> Iterator[Any]:
    """Open pages; at the end no one may have asked elsewhere, nor complained."""
    opened: list[Watched] = []
    allowed: list[str] = [REFUSED]

    def open_page(size: Any = DESKTOP, *, allow: tuple[str, ...] = (), **more: Any) -> Watched:
        allowed.extend(allow)
        watched = Watched(browser.new_page(viewport=size, **more))
        watched.page.set_default_timeout(10_000)
        opened.append(watched)
        return watched

    yield open_page
    strangers = [one for watched in opened for one in watched.strangers()]
    said = [one for watched in opened for one in watched.said]
    for watched in opened:
        watched.page.close()
    assert strangers == []
    assert [one for one in said if not one.startswith(tuple(allowed))] == []


@pytest.fixture
def violations() -> Any:
    """Check a page's accessibility with axe-core; give the rules that it breaks, and where."""
    axe = pytest.importorskip("axe_playwright_python.sync_playwright").Axe()

    def broken(page: Any) -> list[str]:
        found = axe.run(page).response
        assert len(found["passes"]) > 10, "axe-core found next to nothing to check"
        return [
            f"{one['id']}: {node['target']} {node['failureSummary']}"
            for one in found["violations"]
            for node in one["nodes"]
        ]

    return broken
