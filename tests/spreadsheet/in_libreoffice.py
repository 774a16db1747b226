"""Open a table in LibreOffice, change cells, work all out again, and print what the cells show.

/usr/bin/python3 in_libreoffice.py FILE LOCALE OPTIONS STEPS

OPTIONS are those of the filter for CSV, empty for a workbook; STEPS is a JSON list of steps, each
the cells to set before all is worked out. It runs with the Python that LibreOffice's own bindings
(`uno`) are installed for. Links are allowed by a profile of its own, thrown away at the end.
"""

import json
import subprocess
import sys
import tempfile
import time
from pathlib import Path

try:
    import uno  # type: ignore[import-not-found, unused-ignore]
    from com.sun.star.beans import PropertyValue  # type: ignore[import-not-found, unused-ignore]
except ImportError:  # where tests are collected; what runs this checks that they are there
    uno = PropertyValue = None

CONFIGURED = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Common/Security/Scripting">
<prop oor:name="SecureURL" oor:op="fuse"><value><it>{folder}</it></value></prop></item>
<item oor:path="/org.openoffice.Office.Calc/Content/Update">
<prop oor:name="Link" oor:op="fuse"><value>0</value></prop></item>
<item oor:path="/org.openoffice.Setup/L10N">
<prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>{locale}</value></prop></item>
</oor:items>"""
LINKS_UPDATED = 3
SECONDS_TO_START = 40


def named(name, value):
    pair = PropertyValue()
    pair.Name, pair.Value = name, value
    return pair


def connected(pipe):
    """Give LibreOffice's context as soon as it answers."""
    here = uno.getComponentContext()
    resolver = "com.sun.star.bridge.UnoUrlResolver"
    found = here.ServiceManager.createInstanceWithContext(resolver, here)
    until = time.monotonic() + SECONDS_TO_START
    while True:
        try:
            return found.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
        except Exception:
            if time.monotonic() > until:
                raise
            time.sleep(0.1)


def opened(context, table, options):
    services = context.ServiceManager
    desktop = services.createInstanceWithContext("com.sun.star.frame.Desktop", context)
    how = [named("Hidden", True), named("UpdateDocMode", LINKS_UPDATED)]
    if options:
        how += [named("FilterName", "Text - txt - csv (StarCalc)"), named("FilterOptions", options)]
    document = desktop.loadComponentFromURL(table.as_uri(), "_blank", 0, tuple(how))
    toolkit = services.createInstanceWithContext("com.sun.star.awt.Toolkit", context)
    toolkit.processEventsToIdle()  # lets the permission to follow links settle
    return desktop, document


def shown(sheet):
    cursor = sheet.createCursor()
    cursor.gotoEndOfUsedArea(False)
    end = cursor.RangeAddress
    cells = {}
    for row in range(end.EndRow + 1):
        for column in range(end.EndColumn + 1):
            cell = sheet.getCellByPosition(column, row)
            if cell.Formula:
                kind = cell.FormulaResultType2 if cell.Formula.startswith("=") else 0
                value = cell.Value if kind == 1 else cell.String
                cells[f"{chr(65 + column)}{row + 1}"] = value
    return cells


def stepped(document, steps):
    sheet = document.Sheets.getByIndex(0)
    for step in steps:
        for place, value in step.items():
            cell = sheet.getCellRangeByName(place)
            if isinstance(value, str):
                cell.String = value
            else:
                cell.Value = value
        document.calculateAll()
        yield shown(sheet)


def main(table, locale, options, steps):
    with tempfile.TemporaryDirectory(prefix="lo-", ignore_cleanup_errors=True) as folder:
        profile = Path(folder)
        (profile / "user").mkdir()
        told = CONFIGURED.format(folder=table.parent.as_uri(), locale=locale)
        (profile / "user" / "registrymodifications.xcu").write_text(told, encoding="utf-8")
        command = ["soffice", f"-env:UserInstallation={profile.as_uri()}", "--headless"]
        command += ["--norestore", "--nologo", "--nodefault"]
        command += [f"--accept=pipe,name={profile.name};urp;"]
        quiet = subprocess.DEVNULL
        with subprocess.Popen(command, stdout=quiet, stderr=quiet) as office:
            try:
                desktop, document = opened(connected(profile.name), table, options)
                print(json.dumps(list(stepped(document, steps))))
                document.close(True)
                desktop.terminate()
                office.wait(20)
            finally:
                if office.poll() is None:
                    office.kill()


if __name__ == "__main__":
    main(Path(sys.argv[1]).resolve(), sys.argv[2], sys.argv[3], json.loads(sys.argv[4]))
