"""Write the workbook `sheds.xlsx` and, for web spreadsheets, `sheds.csv`: sheds in, quantities out.

python examples/spreadsheet/make_sheds.py [FOLDER]

One request a row: its answer is one value a line, and the other cells take it apart.
"""

import csv
import sys
from datetime import datetime
from pathlib import Path
from typing import Any

import xlsxwriter

HERE = Path(__file__).parent
SERVER = "http://127.0.0.1:8000"
SHEDS: tuple[tuple[str, str, str, float], ...] = (
    ("tool store", "14 ft", "9 ft 4 in", 3),
    ("bike shed", "8 ft", "5 ft 6 in", 4),
    ("wood store", "3.6 m", "2.1 m", 3.5),
)
FIRST_ROW, ROWS = 7, 30

QUANTITIES = (
    ("Squares", "/squares"),
    ("Shingle bundles", "/order/shingles/packs"),
    ("Underlayment rolls", "/order/underlayment/packs"),
)
#: So many findings are asked for; the job sheet has all there are.
FINDINGS = 10
POINTERS = ",".join(
    (
        *(pointer for _, pointer in QUANTITIES),
        *(f"/findings/{k}/{part}" for k in range(FINDINGS) for part in ("severity", "says")),
    )
)
#: What Excel's WEBSERVICE takes; LibreOffice takes more.
LONGEST_ADDRESS = 2048
LONGEST_LINE = 500

CAUTION = (
    "To order by, not to build by. Read column H before ordering, and the job sheet before "
    "climbing. Local code, the printed instructions of the material and licensed practice govern."
)
HEADINGS = (
    ("Shed", 14),
    ("Eave length", 13),
    ("Slope length", 13),
    ("Pitch (rise in 12)", 10),
    *((heading, 13) for heading, _ in QUANTITIES),
    ("What is wrong, or to know", 70),
    ("Job sheet", 10),
    ("Address of the plan", 30),
    ("Answer", 30),
)


def address(row: int) -> str:
    """Give the formula that writes the address of a row's plan; the decimal point is a point."""
    pitch = f'IF(ISNUMBER($D{row}),SUBSTITUTE($D{row}&"",",",".")&":12",$D{row})'
    return (
        f'$B$1&"/v1/plans?eave_length="&ENCODEURL($B{row}&"")'
        f'&"&slope_length="&ENCODEURL($C{row}&"")&"&pitch="&ENCODEURL({pitch})'
    )


def answer(row: int) -> str:
    """Give the formula that asks, once; an empty row, or an address too long, asks nothing."""
    whole = f'$J{row}&"&problems=text&pointer="&$B$4'
    return (
        f'=IF($B{row}&$C{row}&$D{row}="","",IF($J{row}="",'
        '"Fill in the eave length, the slope length and the pitch",'
        f"IF(LEN({whole})>{LONGEST_ADDRESS},"
        f'"The address is over {LONGEST_ADDRESS} characters: shorten the sizes",'
        f'IFERROR(WEBSERVICE({whole}),"No answer from "&$B$1&": start the service there, '
        'allow this workbook to update its links, and recalculate"))))'
    )


def quantity(row: int, line: int) -> str:
    """Give the formula of one line of the answer as a number; a problem is one line alone."""
    spread = f'SUBSTITUTE($K{row},CHAR(10),REPT(" ",{LONGEST_LINE}))'
    text = f"TRIM(MID({spread},{line * LONGEST_LINE + 1},{LONGEST_LINE}))"
    return (
        f'=IF($K{row}="","",IF(ISNUMBER(FIND(CHAR(10),$K{row})),'
        f'IFERROR(NUMBERVALUE({text},".",","),"no plan"),"no plan"))'
    )


def told(row: int) -> str:
    """Give the formula of what is wrong, or of all findings: what stands after the quantities."""
    marked = f"SUBSTITUTE($K{row},CHAR(10),CHAR(9),{len(QUANTITIES)})"
    rest = f"MID($K{row},FIND(CHAR(9),{marked})+1,5000)"
    return (
        f'=IF($K{row}="","",IF(ISNUMBER(FIND(CHAR(10),$K{row})),'
        f'TRIM(SUBSTITUTE(SUBSTITUTE({rest},CHAR(10)," "),"_"," ")),$K{row}))'
    )


def spelled(formula: str) -> str:
    """Spell functions newer than the file format as files hold them."""
    for name in ("WEBSERVICE", "ENCODEURL", "NUMBERVALUE"):
        formula = formula.replace(f"{name}(", f"_xlfn.{name}(")
    return formula


def write_workbook(path: Path) -> None:
    book = xlsxwriter.Workbook(str(path))
    book.set_properties({"title": "Sheds", "created": datetime(2000, 1, 1)})
    sheet = book.add_worksheet("Sheds")
    bold, asked = book.add_format({"bold": True}), book.add_format({"bottom": 1, "num_format": "@"})
    number = book.add_format({"bottom": 1})
    headed = book.add_format({"bold": True, "text_wrap": True, "bottom": 1, "valign": "top"})
    sheet.write_string("A1", "Service", bold)
    sheet.write_string("B1", SERVER)
    sheet.write_string("A2", CAUTION)
    sheet.write_string("A3", "Fill in columns A to D from row 7, lengths with their unit.")
    sheet.write_string("A4", "Asked for", bold)
    sheet.write_string("B4", POINTERS)
    for k, (heading, width) in enumerate(HEADINGS):
        sheet.set_column(k, k, width)
        sheet.write_string(FIRST_ROW - 2, k, heading, headed)
    sheet.freeze_panes(FIRST_ROW - 1, 1)
    for row in range(FIRST_ROW, FIRST_ROW + ROWS):
        for column in "ABC":
            sheet.write_blank(f"{column}{row}", None, asked)
        sheet.write_blank(f"D{row}", None, number)
        _write_formulas(sheet, row)
    for row, (name, eave, slope, pitch) in enumerate(SHEDS, FIRST_ROW):
        for column, text in zip("ABC", (name, eave, slope), strict=True):
            sheet.write_string(f"{column}{row}", text, asked)
        sheet.write_number(f"D{row}", pitch, number)
    book.close()


def _write_formulas(sheet: Any, row: int) -> None:
    link = f'=IF($J{row}="","",HYPERLINK($J{row}&"&format=html","job sheet"))'
    lacking = f'OR($B{row}="",$C{row}="",$D{row}="")'
    formulas = {
        **{column: quantity(row, line) for line, column in enumerate("EFG")},
        "H": told(row),
        "I": link,
        "J": f'=IF({lacking},"",{address(row)})',
        "K": answer(row),
    }
    for column, formula in formulas.items():
        # Without a value of its own a formula would show a 0 until it is worked out.
        sheet.write_formula(f"{column}{row}", spelled(formula), None, "")


def web_rows() -> list[list[str]]:
    """Give the table for web spreadsheets, which ask with IMPORTDATA, from their own servers."""
    numbers = ",".join(pointer for _, pointer in QUANTITIES)
    rows = [["Service", "https://roofing.example"], [], [], [], []]
    headings = [heading for heading, _ in HEADINGS[: 4 + len(QUANTITIES)]]
    rows.append([*headings, "Order list", "Job sheet", "Address of the plan"])
    for row, (name, eave, slope, pitch) in enumerate(SHEDS, FIRST_ROW):
        asked = f'IMPORTDATA($J{row}&"&problems=text&pointer={numbers}")'
        cells = [f"=INDEX({asked},{line},1)" for line in range(1, len(QUANTITIES) + 1)]
        forms = [f'=$J{row}&"&{form}"' for form in ("table=order&problems=text", "format=html")]
        rows.append([name, eave, slope, f"{pitch:g}", *cells, *forms, f"={address(row)}"])
    return rows


def main(folder: Path) -> None:
    write_workbook(folder / "sheds.xlsx")
    with (folder / "sheds.csv").open("w", encoding="utf-8", newline="") as file:
        csv.writer(file, lineterminator="\n").writerows(web_rows())


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else HERE)
