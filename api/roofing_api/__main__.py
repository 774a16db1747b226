"""python -m roofing_api [--host HOST] [--port PORT] [--allow-origin ORIGIN]: serve the application.

With --help it tells all its options.
"""

from __future__ import annotations

import argparse

import uvicorn

from roofing_api.app import make_app
from roofing_api.origins import origin


def main() -> None:
    """Serve until stopped."""
    parser = argparse.ArgumentParser(prog="roofing_api", description="Serve roofing calculations.")
    parser.add_argument("--host", default="127.0.0.1", help="address to listen at (%(default)s)")
    parser.add_argument("--port", default=8000, type=int, help="port to listen at (%(default)s)")
    levels = ("debug", "info", "warning", "error")
    parser.add_argument("--log-level", default="info", choices=levels, help="(%(default)s)")
    parser.add_argument(
        "--allow-origin",
        default=[],
        type=origin,
        action="append",
        metavar="ORIGIN",
        help="let pages of this origin ask from a browser, such as https://example.org, or * for "
        "all; can be given several times (nobody's)",
    )
    asked = parser.parse_args()
    uvicorn.run(
        make_app(tuple(asked.allow_origin)),
        host=asked.host,
        port=asked.port,
        access_log=False,
        log_level=asked.log_level,
        server_header=False,
    )


if __name__ == "__main__":
    main()
