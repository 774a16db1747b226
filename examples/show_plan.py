"""Send a request for a plan to a running service and print the answer as people read it.

    python examples/show_plan.py http://127.0.0.1:8000 [REQUEST.json] [--units metric]

Needs nothing but Python. Without a request it sends the community garden's tool store.
"""

import argparse
import sys
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import ProxyHandler, Request, build_opener

TOOL_STORE = Path(__file__).with_name("tool_store.json")


def main() -> int:
    """Send the request, print the plan; on a problem print what is wrong and give 1."""
    words = argparse.ArgumentParser(description="Print a plan.")
    words.add_argument("base", help="where the service runs, such as http://127.0.0.1:8000")
    words.add_argument("request", nargs="?", type=Path, default=TOOL_STORE, help="a JSON file")
    words.add_argument("--units", choices=("us", "metric"), default="us")
    given = words.parse_args()
    asked = Request(
        f"{given.base.rstrip('/')}/v1/plans?units={given.units}",
        data=given.request.read_bytes(),
        headers={"Content-Type": "application/json", "Accept": "text/plain"},
    )
    here = build_opener(ProxyHandler({}))  # a proxy for the outside does not know this machine
    try:
        with here.open(asked, timeout=30) as answer:
            print(answer.read().decode(), end="")
    except HTTPError as problem:
        print(problem.read().decode(), file=sys.stderr)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
