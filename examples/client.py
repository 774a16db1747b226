"""The same tool store over HTTP from a program of your own: a plan, a figure, a sheet, a mistake.

python examples/client.py http://127.0.0.1:8000 [SHEET.pdf]

Needs httpx. `Roofs` is short enough to be copied into another program.
"""

import json
import sys
from pathlib import Path
from types import TracebackType
from typing import Any, Self

import httpx

TOOL_STORE = Path(__file__).with_name("tool_store.json")


class RefusedError(Exception):
    """What the service answered instead of a plan: each fault names its place and what would do."""

    def __init__(self, problem: dict[str, Any]) -> None:
        super().__init__(problem["detail"])
        self.status: int = problem["status"]
        self.faults: list[dict[str, str]] = problem["errors"]


class Roofs:
    """A running service."""

    def __init__(self, base: str) -> None:
        # One connection for all requests. A proxy for the outside does not know this machine: where
        # the service is behind one, leave trust_env out.
        self._client = httpx.Client(base_url=base, timeout=30, trust_env=False)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        raised: BaseException | None,
        at: TracebackType | None,
    ) -> None:
        self._client.close()

    def plan(self, job: dict[str, Any], **query: str) -> dict[str, Any]:
        """Plan a job; give the whole answer."""
        planned: dict[str, Any] = self._asked("POST", "/v1/plans", query, job).json()
        return planned

    def job_sheet(self, job: dict[str, Any], **query: str) -> bytes:
        """Give the sheet to carry up the ladder, as PDF."""
        return self._asked("POST", "/v1/plans", {**query, "format": "pdf"}, job).content

    def figure(self, path: str, pointer: str, **query: str) -> str:
        """Give one value of an answer, as people write it."""
        query = {**query, "pointer": pointer, "value": "text"}
        return self._asked("GET", path, query).text

    def _asked(
        self, method: str, path: str, query: dict[str, str], body: dict[str, Any] | None = None
    ) -> httpx.Response:
        answer = self._client.request(method, path, params=query, json=body)
        if answer.headers.get("content-type", "").startswith("application/problem+json"):
            raise RefusedError(answer.json())
        return answer.raise_for_status()


def main(base: str, sheet: Path | None) -> None:
    """Ask for each kind of thing once, and print what came."""
    job = json.loads(TOOL_STORE.read_text(encoding="utf-8"))
    with Roofs(base) as roofs:
        planned = roofs.plan(job)
        for line in planned["order"].values():
            if line["packs"]:
                print(f"{line['packs']:4d} {line['pack']:10s} {line['item']}")
        for finding in planned["findings"]:
            print(f"{finding['severity']}: {finding['says']}")

        slope = {"eave_length": "14 ft", "slope_length": "9 ft 4 in", "pitch": "3:12"}
        top = roofs.figure("/v1/plans", "/courses/19/butt", **slope)
        print(f"Butt of course 20 on a slope of 9 ft 4 in: {top}")

        if sheet:
            print(f"{sheet.write_bytes(roofs.job_sheet(job, page_size='a4')) // 1024} KiB of sheet")

        try:
            roofs.plan({**job, "shingle": {"material": "metric_strip", "exposure": "6 in"}})
        except RefusedError as refusal:
            for fault in refusal.faults:
                print(f"{refusal.status} at {fault['pointer']}: {fault['wanted']}")


if __name__ == "__main__":
    main(sys.argv[1], Path(sys.argv[2]) if sys.argv[2:] else None)
