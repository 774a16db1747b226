"""The table of flat allowances in the README is what the sheds come to."""

from __future__ import annotations

from tests.benchmarks.allowances import sheds, shortfalls, spread
from tests.readme.test_readme import README


def test_the_tables_shown_are_counted_from_the_sheds():
    found = list(sheds())
    assert spread(found) in README
    assert shortfalls(found) in README
    assert all(shed.proved for shed in found)
