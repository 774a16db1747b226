"""Many sheds at once: read them from a table, write what to buy for each beside it.

python examples/batch_sheds.py http://127.0.0.1:8000 examples/sheds.csv quantities.csv

Every column of the table is a parameter of /v1/plans, by its name; an empty cell leaves it out.
What is written has the same rows in the same order, with the packs of every item that any of them
needs.
A row that is refused stays, with the reason in the column `refused`, and the next one is asked.
Needs httpx and rich. The exit code is 1 where no row could be planned.
"""

import argparse
import csv
import sys
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import httpx
from rich.console import Console
from rich.progress import track

#: A row of the table: what stands under each heading.
Row = dict[str, str]


def quantities(client: httpx.Client, row: Row) -> Row:
    """Ask for one shed: its squares and its packs by item, or why there is no plan of it."""
    asked = {name: cell.strip() for name, cell in row.items() if cell.strip()}
    try:
        answer = client.get("/v1/plans", params=asked)
        if answer.headers.get("content-type") != "application/problem+json":
            answer.raise_for_status()
        said: dict[str, Any] = answer.json()
    except (httpx.HTTPError, ValueError) as lost:
        return {"refused": f"no answer of the service: {type(lost).__name__}"}
    if answer.is_error:
        faults = [fault["detail"] for fault in said["errors"]]
        return {"refused": "; ".join(faults) or said["detail"]}
    bought = [line for line in said["order"].values() if line["packs"]]
    return {
        "squares": f"{said['squares']:.3f}",
        **{f"{line['item']} ({line['pack']})": str(line["packs"]) for line in bought},
    }


def rows_of(table: Path) -> tuple[list[str], list[Row]]:
    """Read the headings and rows of a table, as spreadsheets save it: with or without a mark."""
    with table.open(encoding="utf-8-sig", newline="") as lines:
        headings, *rows = (row for row in csv.reader(lines) if any(row))
    for number, row in enumerate(rows, 1):
        if len(row) > len(headings):
            sys.exit(f"{table}, shed {number}: {len(row)} cells under {len(headings)} headings")
    return headings, [dict(zip(headings, row, strict=False)) for row in rows]


def write(table: Path, headings: list[str], rows: list[Row], answers: list[Row]) -> None:
    """Write each row with its answer; a cell is 0 where others need an item and it does not."""
    items = list(dict.fromkeys(name for answer in answers for name in answer))
    items = [name for name in items if name not in ("squares", "refused")]
    with table.open("w", encoding="utf-8", newline="") as lines:
        out = csv.writer(lines)
        out.writerow([*headings, "squares", *items, "refused"])
        for row, answer in zip(rows, answers, strict=True):
            empty = "" if "refused" in answer else "0"
            counts = (answer.get(item, empty) for item in items)
            given = (row.get(name, "") for name in headings)
            out.writerow([*given, answer.get("squares", ""), *counts, answer.get("refused", "")])


def counted(rows: list[Row]) -> Iterable[Row]:
    """Give the rows one by one, and show on the terminal how many are done."""
    return track(rows, "sheds", console=Console(stderr=True))


def main() -> int:
    """Plan every shed of the table."""
    words = argparse.ArgumentParser(description="Plan every shed of a table.")
    words.add_argument("base", help="where the service runs, such as http://127.0.0.1:8000")
    words.add_argument("sheds", type=Path, help="comma-separated, with headings")
    words.add_argument("quantities", type=Path, help="the table to write")
    given = words.parse_args()
    headings, rows = rows_of(given.sheds)
    # A proxy for the outside does not know this machine: where the service is behind one, leave
    # trust_env out.
    with httpx.Client(base_url=given.base, timeout=60, trust_env=False) as client:
        answers = [quantities(client, row) for row in counted(rows)]
    write(given.quantities, headings, rows, answers)
    refused = sum("refused" in answer for answer in answers)
    print(f"{len(rows) - refused} sheds planned, {refused} refused: {given.quantities}")
    return int(refused == len(rows))


if __name__ == "__main__":
    sys.exit(main())
