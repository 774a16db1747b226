"""Helvetica: the widths of its letters, from Adobe's metrics of the core 14 fonts (Helvetica.afm).

In 1/1000 of the size of letters, whole numbers there; Arial and Liberation Sans are made to them.
Room for a text is never less than they ask for.
"""

from roofing_core.sheets.drawings.lettering import width_of

UNITS = 1000.0

WIDTHS = {
    191: "'", 222: "ijl", 260: "|", 278: " !,./:;I[\\]ft", 333: "()-`r", 334: "{}", 355: '"',
    389: "*", 469: "^", 500: "Jcksvxyz", 556: "#$0123456789?L_abdeghnopqu", 584: "+<=>~",
    611: "FTZ", 667: "&ABEKPSVXY", 722: "CDHNRUw", 778: "GOQ", 833: "Mm", 889: "%", 944: "W",
    1015: "@",
}  # fmt: skip


def test_no_letter_takes_more_room_than_is_kept():
    short = [
        letter
        for units, letters in WIDTHS.items()
        for letter in letters
        if width_of(letter, UNITS) < units
    ]
    assert short == []


def test_every_letter_of_ascii_is_listed():
    listed = {letter for letters in WIDTHS.values() for letter in letters}
    assert listed == set(map(chr, range(32, 127)))
