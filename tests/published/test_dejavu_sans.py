"""DejaVu Sans 2.37 and DejaVu Sans Bold 2.37: the widths of their letters.

From the fonts' own tables (hmtx), in 1/2048 of the size of letters. They are whole numbers there,
so nothing is lost; room for a text is never less than they ask for.
"""

import pytest

from roofing_core.sheets.drawings.lettering import width_of

UNITS = 2048

REGULAR = {
    465: "′", 563: "'", 569: "ijl", 604: "IJ", 651: " ,.", 690: "/:;\\|", 721: "f", 739: "-",
    765: "″", 799: "()[]", 803: "t", 821: "!", 842: "r", 942: '"', 1024: "*_`°–", 1067: "s",
    1075: "z", 1087: "?", 1126: "c", 1141: "L", 1178: "F", 1186: "k", 1212: "vxy", 1235: "P",
    1251: "TY", 1253: "o", 1255: "a", 1260: "e", 1294: "E", 1298: "hnu", 1300: "Sbdgpq",
    1303: "$0123456789{}", 1343: "K", 1401: "AV", 1403: "XZ", 1405: "B", 1423: "R", 1430: "C",
    1499: "U", 1532: "N", 1540: "H", 1577: "D", 1587: "G", 1597: "&", 1612: "OQ", 1675: "w",
    1716: "#+<=>^~×", 1767: "M", 1946: "%", 1995: "m", 2025: "W", 2048: "@",
}  # fmt: skip

BOLD = {
    627: "'", 702: "ijl", 713: " ", 748: "/\\|", 762: "IJ", 778: ",.", 819: ":;", 850: "-",
    891: "f", 934: "!", 936: "()[]", 979: "t", 1010: "r", 1024: "_`", 1067: '"', 1071: "*",
    1188: "?", 1192: "z", 1214: "c", 1219: "s", 1305: "L", 1321: "x", 1335: "vy", 1362: "k",
    1382: "a", 1389: "e", 1397: "T", 1399: "EF", 1407: "o", 1425: "$0123456789", 1458: "hnu{}",
    1466: "bdgpq", 1475: "S", 1483: "Y", 1485: "Z", 1501: "P", 1503: "C", 1561: "B", 1577: "R",
    1579: "X", 1585: "AV", 1587: "K", 1663: "U", 1681: "G", 1700: "D", 1714: "HN",
    1716: "#+<=>^~", 1741: "OQ", 1786: "&", 1892: "w", 2038: "M", 2048: "@", 2052: "%", 2134: "m",
    2259: "W",
}  # fmt: skip

#: A size of letters at which one unit of the fonts is one millimetre.
SIZE = float(UNITS)


@pytest.mark.parametrize(("printed", "bold"), [(REGULAR, False), (BOLD, True)])
def test_no_letter_of_the_widest_common_font_takes_more_room_than_is_kept(printed, bold):
    short = [
        letter
        for units, letters in printed.items()
        for letter in letters
        if width_of(letter, SIZE, bold=bold) < units
    ]
    assert short == []


def test_the_room_kept_is_not_much_more_than_that_font_takes():
    asked = sum(units * len(letters) for units, letters in REGULAR.items())
    kept = sum(width_of(letter, SIZE) for letters in REGULAR.values() for letter in letters)
    assert asked < kept < 1.06 * asked


def test_every_letter_of_ascii_is_listed():
    assert {letter for letters in REGULAR.values() for letter in letters} >= set(
        map(chr, range(32, 127))
    )
