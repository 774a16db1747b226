"""A table: cells under headings, as numbers with their unit for a machine, as text for a person.

Each cell is what the plan has. Which unit system it is shown in, and whether as a number or as
feet, inches and sixteenths, is settled when the table is written: no figure is worked out twice.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Literal

from roofing_core.measures.sentences import Amount, write
from roofing_core.measures.units import SHOWN, System, convert


@dataclass(frozen=True, slots=True)
class UnitName:
    """A cell that names the unit of the amounts beside it.

    Attributes:
        unit: The unit inside.
    """

    unit: str


#: A cell; an empty text where there is nothing to say.
Cell = str | int | float | Amount | UnitName

#: For whom a column is: only for people to read, only for machines to reckon with, or for both.
ForWhom = Literal["everyone", "people", "machines"]

#: Units as headings spell them.
_SPELT: Mapping[str, str] = MappingProxyType({"count": "pieces", "fl_oz": "fl oz"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One column of a table.

    Attributes:
        heading: Over it, without its unit.
        unit: The unit inside of its numbers; none for words, counts, and amounts of several units.
        whom: For whom it is.
    """

    heading: str
    unit: str = ""
    whom: ForWhom = "everyone"

    def headed(self, system: System) -> str:
        """Give the heading with the unit that its numbers are shown in."""
        if not self.unit:
            return self.heading
        unit = SHOWN[self.unit][system].unit
        return f"{self.heading} ({_SPELT.get(unit, unit)})"

    def number(self, cell: Cell, system: System) -> str | int | float:
        """Give a cell for a machine: a number as it is, in the unit of the heading."""
        if isinstance(cell, Amount):
            return convert(cell.value, cell.unit, system)
        if isinstance(cell, UnitName):
            unit = SHOWN[cell.unit][system].unit
            return _SPELT.get(unit, unit)
        if self.unit and not isinstance(cell, str):
            return convert(cell, self.unit, system)
        return cell

    def text(self, cell: Cell, system: System) -> str:
        """Give a cell for a person."""
        if isinstance(cell, Amount):
            return cell.written(system)
        if self.unit and isinstance(cell, int | float):
            return write(cell, self.unit, system)
        return str(self.number(cell, system))


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A table of a plan.

    Attributes:
        name: What it is asked for by.
        title: What stands over it.
        columns: Its columns.
        rows: One entry per row, each with a cell per column.
        note: What a person has to know to read it; none for most.
    """

    name: str
    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    note: str = field(default="")

    def for_whom(self, whom: ForWhom) -> Table:
        """Give the table with the columns that are for people, or for machines, alone."""
        kept = [k for k, one in enumerate(self.columns) if one.whom in {"everyone", whom}]
        return replace(
            self,
            columns=tuple(self.columns[k] for k in kept),
            rows=tuple(tuple(row[k] for k in kept) for row in self.rows),
        )

    def by_plane(self) -> Iterator[Table]:
        """Give a table of each plane, its name in the title; of one plane the whole."""
        at = next((k for k, one in enumerate(self.columns) if one.heading == "plane"), None)
        planes = [] if at is None else list(dict.fromkeys(row[at] for row in self.rows))
        if at is None or not planes:
            yield self
            return
        columns = (*self.columns[:at], *self.columns[at + 1 :])
        for plane in planes:
            rows = tuple((*row[:at], *row[at + 1 :]) for row in self.rows if row[at] == plane)
            title = self.title if len(planes) == 1 else f"{self.title}: {plane}"
            yield replace(self, title=title, columns=columns, rows=rows)
