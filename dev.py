#!/usr/bin/env python3
"""Everyday commands, with nothing installed but Python 3.11 or newer.

    python3 dev.py run [--once]    start the service, print the example job, stay up until Ctrl+C
    python3 dev.py test [ARGS]     run the tests; ARGS go to pytest
    python3 dev.py check           lint, format, types, import rules, the committed OpenAPI document
    python3 dev.py lock [ARGS]     write requirements.lock again; ARGS go to uv, such as --upgrade

The first command makes .venv from requirements.lock; the next ones find it there. When the lock,
pyproject.toml, the Python version or the folder changes, the next command makes it again.
With --once, `run` stops the service as soon as the example is printed.
"""

import hashlib
import http.client
import os
import signal
import socket
import subprocess
import sys
import time
from pathlib import Path
from typing import NoReturn

# Old Pythons must be able to read this file, to say that they are too old: hence quoted types.

ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
WINDOWS = os.name == "nt"
BIN = VENV / ("Scripts" if WINDOWS else "bin")
EXE = ".exe" if WINDOWS else ""
PYTHON = str(BIN / f"python{EXE}")
LOCK = ROOT / "requirements.lock"
PROJECT = ROOT / "pyproject.toml"
STAMP = VENV / "made-from"

HOST = "127.0.0.1"
FIRST_PORT, LAST_PORT = 8000, 8099
SECONDS_TO_START = 30
SECONDS_TO_STOP = 10

NO_VENV = """\
Python could not make a virtual environment with pip in it.
On Debian and Ubuntu: sudo apt-get install python3-venv, then the same command again."""


def ask(*command: str) -> int:
    """Run a command in the project's folder; give its exit code."""
    return subprocess.run(command, cwd=ROOT, check=False).returncode


def wanted() -> str:
    """Name what .venv must have been made from."""
    made_from = hashlib.sha256(LOCK.read_bytes() + PROJECT.read_bytes()).hexdigest()
    return f"{made_from} {sys.version_info[0]}.{sys.version_info[1]} {VENV}"


def ready() -> bool:
    """Say whether .venv is whole, up to date and still where it was made."""
    if not Path(PYTHON).exists() or not STAMP.exists():
        return False
    return STAMP.read_text(encoding="utf-8") == wanted()


def set_up() -> None:
    """Make .venv from the lock, unless it is there already. The stamp is written last."""
    if ready():
        return
    if Path(sys.prefix) == VENV:
        sys.exit("The .venv is out of date and cannot replace itself: deactivate it, then again.")
    print("Making .venv from requirements.lock ...", file=sys.stderr, flush=True)
    make_venv()
    pip = (PYTHON, "-m", "pip", "--disable-pip-version-check", "install", "-qq")
    locked = ("--require-hashes", "-r", str(LOCK))
    project = ("--no-deps", "--no-build-isolation", "-e", ".")
    if ask(*pip, *locked) or ask(*pip, *project):
        sys.exit("pip could not install that; its message is above. The same command tries again.")
    STAMP.write_text(wanted(), encoding="utf-8")


def make_venv() -> None:
    """Make an empty .venv with pip in it, over whatever was left there."""
    try:
        import venv  # noqa: PLC0415 - left out of some systems' Python, and needed only here

        venv.EnvBuilder(with_pip=True, clear=True, symlinks=not WINDOWS).create(VENV)
    except (ImportError, subprocess.CalledProcessError):
        sys.exit(NO_VENV)


def test(arguments: "list[str]") -> int:
    """Run the tests: all of them on several processors, or those that the words name on one."""
    shared = ("-n", "auto", "--maxprocesses", "8", "--dist", "worksteal")
    return ask(PYTHON, "-m", "pytest", "-q", *(arguments or shared))


def check(arguments: "list[str]") -> int:
    """Run every check, also after one has failed, and name those that did."""
    checks = {
        "lint": (PYTHON, "-m", "ruff", "check"),
        "format": (PYTHON, "-m", "ruff", "format", "--check"),
        "types": (PYTHON, "-m", "mypy"),
        "import rules": (str(BIN / f"lint-imports{EXE}"), "--no-logo"),
        "OpenAPI document": (PYTHON, "-m", "roofing_api.openapi", "--check"),
    }
    if arguments:
        usage()
    failed = [name for name, command in checks.items() if ask(*command)]
    print(f"Failed: {', '.join(failed)}." if failed else "All checks passed.")
    return 1 if failed else 0


def lock(arguments: "list[str]") -> int:
    """Write requirements.lock again: every extra and group, for every system."""
    uv = (PYTHON, "-m", "uv", "pip", "compile", "--universal", "--python-version", "3.11")
    what = ("--generate-hashes", "--all-extras", "--group", "test", "--group", "dev")
    form = ("--no-header", "--no-annotate", "--quiet", PROJECT.name, "-o", LOCK.name)
    return ask(*uv, *what, *form, *arguments)


def run(arguments: "list[str]") -> int:
    """Start the service, print the example job, and stay up until Ctrl+C (or not, with --once)."""
    if arguments not in ([], ["--once"]):
        usage()
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(128 + signal.SIGTERM))
    port = free_port()
    base = f"http://{HOST}:{port}"
    quietly = ("--log-level", "warning")  # the plan is what is read here
    serve = (PYTHON, "-m", "roofing_api", "--host", HOST, "--port", str(port), *quietly)
    with subprocess.Popen(serve, cwd=ROOT) as server:
        try:
            wait_until_up(server, port)
            shown = ask(PYTHON, str(ROOT / "examples" / "show_plan.py"), base)
            if shown or arguments:
                return shown
            print(f"\nThe service runs at {base}")
            print(f"Web form: {base}/")
            print(f"Documentation: {base}/docs")
            print("Stop it with Ctrl+C.", flush=True)
            return server.wait()
        except KeyboardInterrupt:
            return 0
        finally:
            stop(server)


def free_port() -> int:
    """Find the first port from 8000 on that nobody listens at."""
    for port in range(FIRST_PORT, LAST_PORT + 1):
        with socket.socket() as asked:
            if not WINDOWS:  # there it would let two services share the port
                asked.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            try:
                asked.bind((HOST, port))
            except OSError:
                continue
            return port
    sys.exit(f"Every port from {FIRST_PORT} to {LAST_PORT} is taken on {HOST}.")


def wait_until_up(server: "subprocess.Popen[bytes]", port: int) -> None:
    """Return when /healthz answers 200; end with a message when the service does not get there."""
    last_try = time.monotonic() + SECONDS_TO_START
    while time.monotonic() < last_try:
        if server.poll() is not None:
            sys.exit(f"The service ended with exit code {server.returncode}; its message is above.")
        if healthy(port):
            return
        time.sleep(0.05)
    sys.exit(f"The service did not answer at /healthz within {SECONDS_TO_START} s.")


def healthy(port: int) -> bool:
    """Ask /healthz once."""
    connection = http.client.HTTPConnection(HOST, port, timeout=1)
    try:
        connection.request("GET", "/healthz")
        return connection.getresponse().status == http.client.OK
    except (OSError, http.client.HTTPException):
        return False
    finally:
        connection.close()


def stop(server: "subprocess.Popen[bytes]") -> None:
    """Stop the service, kindly first."""
    server.terminate()
    try:
        server.wait(SECONDS_TO_STOP)
    except subprocess.TimeoutExpired:
        server.kill()


def usage() -> NoReturn:
    """Say which commands there are."""
    sys.exit(__doc__)


def main() -> int:
    """Set up what is missing, then run the command asked for."""
    if sys.version_info < (3, 11):  # noqa: UP036 - this file also runs where that is not yet known
        sys.exit(f"Python 3.11 or newer is needed; this is {sys.version.split()[0]}.")
    commands = {"run": run, "test": test, "check": check, "lock": lock}
    asked = commands.get(sys.argv[1]) if len(sys.argv) > 1 else None
    if asked is None:
        usage()
    set_up()
    return asked(sys.argv[2:])


if __name__ == "__main__":
    try:
        sys.exit(main())
    except KeyboardInterrupt:
        sys.exit(128 + signal.SIGINT)
