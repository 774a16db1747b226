"""python -m roofing_api [--host HOST] [--port PORT] [--log-level LEVEL]: serve the application."""

from __future__ import annotations

import argparse

import uvicorn


def main() -> None:
    """Serve until stopped."""
    parser = argparse.ArgumentParser(prog="roofing_api", description="Serve roofing calculations.")
    parser.add_argument("--host", default="127.0.0.1", help="address to listen at (%(default)s)")
    parser.add_argument("--port", default=8000, type=int, help="port to listen at (%(default)s)")
    levels = ("debug", "info", "warning", "error")
    parser.add_argument("--log-level", default="info", choices=levels, help="(%(default)s)")
    asked = parser.parse_args()
    uvicorn.run(
        "roofing_api.app:app",
        host=asked.host,
        port=asked.port,
        access_log=False,
        log_level=asked.log_level,
        server_header=False,
    )


if __name__ == "__main__":
    main()
