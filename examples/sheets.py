"""A potting shed on paper, with the library alone: no server, no network.

python examples/sheets.py [FOLDER]    writes the job sheet, a workbook, tables and drawings there
"""

import sys
from pathlib import Path

from roofing_core import (
    Job,
    SingleSlope,
    drawings,
    job_sheet_html,
    job_sheet_pdf,
    plan,
    plan_csv,
    plan_workbook,
    read_length,
    read_pitch,
)

roof = SingleSlope(
    eave_length=read_length("3.6 m"), slope_length=read_length("2.4 m"), pitch=read_pitch("20 deg")
)
notes = "The water butt stands at the left corner: move it first.\nLadder in the garage."
planned = plan(Job(roof=roof, name="Potting shed", notes=notes))

folder = Path(sys.argv[1] if len(sys.argv) > 1 else "potting_shed")
folder.mkdir(parents=True, exist_ok=True)
folder.joinpath("job_sheet.pdf").write_bytes(job_sheet_pdf(planned, system="metric"))
folder.joinpath("plan.xlsx").write_bytes(plan_workbook(planned, system="metric"))
texts = {
    "job_sheet.html": job_sheet_html(planned, system="metric"),
    "order.csv": plan_csv(planned, "order", system="metric"),
    "courses.csv": plan_csv(planned, "courses", system="metric"),
}
for kind in ("plane", "sections"):
    for drawing in drawings(planned, kind, system="metric"):
        texts[f"{drawing.name}.svg"] = drawing.svg
for name, text in texts.items():
    # CSV ends its lines its own way, on every system.
    folder.joinpath(name).write_text(text, encoding="utf-8", newline="")
print(*sorted(path.name for path in folder.iterdir()), sep="\n")
