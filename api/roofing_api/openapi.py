"""Keeps the OpenAPI document under `openapi/`, byte for byte as the routes make it.

python -m roofing_api.openapi [--check]
"""

from __future__ import annotations

import sys
from pathlib import Path

from roofing_api.app import app
from roofing_api.document import written

#: Beside the package, in the repository.
COMMITTED = Path(__file__).parents[2].joinpath("openapi", "openapi.json")


def main(arguments: list[str]) -> int:
    """Write the document, or with --check say whether the committed one is up to date."""
    if arguments not in ([], ["--check"]):
        return _told(__doc__ or "")
    if not COMMITTED.parents[1].joinpath("pyproject.toml").exists():
        return _told("This package is not in its repository, where the document is kept.")
    text = written(app)
    if arguments == ["--check"]:
        if COMMITTED.exists() and COMMITTED.read_text(encoding="utf-8") == text:
            return 0
        print(f"{COMMITTED} is out of date: python -m roofing_api.openapi", file=sys.stderr)
        return 1
    COMMITTED.parent.mkdir(exist_ok=True)
    COMMITTED.write_text(text, encoding="utf-8", newline="\n")
    return 0


def _told(why: str) -> int:
    print(why, file=sys.stderr)
    return 2


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
