"""A printed table as data with a birth certificate.

The file beside the module looks like the printed page: document, edition, number, units, rows, columns, a checksum,
and for every figure how we know it. Reading outside a table is an error, never an extrapolation. A figure that was
recalled and not seen carries its mark into everything that is worked out from it.

The file (TOML)::

    document = "SDPWS 2015"       # as cited on paper
    number = "4.3A"               # the table's own number
    title = "..."
    row_key = "panel, nail"       # what names a row; rows are text keys
    column_key = "edge nail spacing"
    column_unit = "in"            # when the columns are numbers; a recorded figure must come in it
    unit = "plf"                  # of the figures (or units = ["plf", "kip/in", ...] one for each column)
    symbol = "v_s"
    beyond = "error"              # or "hold": the document says that end columns hold flat beyond
    columns = [6, 4, 3, 2]        # numbers or texts
    checksum = "sha256:..."       # of rows and columns, by Table.digest
    source = "scan"               # the default source of every figure
    [sources.scan]
    how = "seen"                  # seen | from memory | computed
    where = "document, place, address"
    [rows]
    "15/32, 8d" = [520, 760, 980, 1280]
    [[exception]]                 # figures known otherwise than by the default
    row = "15/32, 8d"
    columns = [2]                 # left out: the whole row
    source = "memory"

A cell may hold a text instead of a figure: then the table prints no figure there, and reading it is an error that
says the text.
"""

from __future__ import annotations

import hashlib
import json
import tomllib
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from typing import Any

from groundsill.working.errors import GroundsillError, OutsideLimits, UnitError
from groundsill.working.sheet import open_sheet
from groundsill.working.source import READ_IN_PLACE, read_in_place_of
from groundsill.working.unit import unit
from groundsill.working.value import Mark, Value, marks_of

__all__ = ["Table", "TableSource"]


@dataclass(frozen=True, slots=True)
class TableSource:
    """How the figures of a table are known: seen in a named public place, recalled, or computed by us."""

    how: str
    where: str


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """One printed table, read by row key and column."""

    document: str
    number: str
    title: str
    row_key: str
    column_key: str
    column_unit: str
    units: tuple[str, ...]
    symbol: str
    beyond: str
    columns: tuple[float | str, ...]
    rows: dict[str, tuple[float | str, ...]]
    sources: dict[str, TableSource]
    default_source: str
    exceptions: dict[tuple[str, int], str]
    checksum: str

    @staticmethod
    @lru_cache(maxsize=256)
    def load(package: str, path: str) -> Table:
        """Read a table that lies beside a module: ``Table.load(__package__, "tables/4_3a.toml")``."""
        return Table.parse((files(package) / path).read_text("utf-8"), path)

    @staticmethod
    def parse(text: str, name: str) -> Table:
        """Read a table from its TOML text.

        Raises:
            GroundsillError: when a row's length is wrong, a source is unknown or the checksum does not fit the figures.
        """
        data = tomllib.loads(text)
        columns = tuple(data["columns"])
        rows = {key: tuple(cells) for key, cells in data["rows"].items()}
        units = tuple(data["units"]) if "units" in data else (data["unit"],) * len(columns)
        table = Table(
            document=data["document"],
            number=data["number"],
            title=data["title"],
            row_key=data["row_key"],
            column_key=data["column_key"],
            column_unit=data.get("column_unit", ""),
            units=units,
            symbol=data.get("symbol", ""),
            beyond=data.get("beyond", "error"),
            columns=columns,
            rows=rows,
            sources={key: TableSource(s["how"], s["where"]) for key, s in data["sources"].items()},
            default_source=data["source"],
            exceptions=_exceptions(data, columns),
            checksum=data["checksum"],
        )
        table._check(name)
        return table

    def _check(self, name: str) -> None:
        wrong = [key for key, cells in self.rows.items() if len(cells) != len(self.columns)]
        if wrong or len(self.units) != len(self.columns):
            raise GroundsillError(f"{name}: rows {wrong} do not have one figure for each column")
        unknown = ({self.default_source} | set(self.exceptions.values())) - set(self.sources)
        if unknown:
            raise GroundsillError(f"{name}: sources {sorted(unknown)} are not described")
        if self.checksum != self.digest():
            raise GroundsillError(
                f"{name}: the checksum does not fit the figures; if the change is meant, it is {self.digest()}"
            )

    def digest(self) -> str:
        """The checksum of columns and figures as they stand."""
        content = json.dumps([list(self.columns), {k: list(v) for k, v in self.rows.items()}], separators=(",", ":"))
        return "sha256:" + hashlib.sha256(content.encode()).hexdigest()[:16]

    @property
    def cite(self) -> str:
        """The table as cited on paper, in the edition that is read."""
        later = read_in_place_of(self.document)
        return f"{self.document if later is None else later.by.short} Table {self.number}"

    def source_of(self, row: str, column: int) -> TableSource:
        """How the figure in a row and a column (by place) is known."""
        return self.sources[self.exceptions.get((row, column), self.default_source)]

    def read(self, row: str, column: float | str | None = None, symbol: str = "") -> float:
        """The figure in a row and a column; a table of one column needs no column.

        Raises:
            OutsideLimits: when there is no such row or column, or the document prints no figure there.
            UnitError: when a recorded figure for the column is not in the unit of the columns.
        """
        if (later := READ_IN_PLACE.get()) is not None and later.of.short == self.document:
            return later.answer(self).read(row, column, symbol)  # type: ignore[no-any-return]  # a Table too
        if isinstance(column, Value):
            self._same_unit(column)
        cells = self._row(row)
        place = 0 if column is None and len(self.columns) == 1 else self._place(column)
        figure = cells[place]
        if isinstance(figure, str):
            raise OutsideLimits(f"{self.cite}: no figure for {row}, {self.column_key} {self.columns[place]}: {figure}")
        return self._answer(float(figure), row, (place,), symbol, column)

    def interpolate(self, row: str, at: float, symbol: str = "") -> float:
        """The figure at a value between two numbered columns, by a straight line.

        Raises:
            OutsideLimits: outside the columns, unless the document says that the end columns hold.
            UnitError: when a recorded figure is not in the unit of the columns.
        """
        if (later := READ_IN_PLACE.get()) is not None and later.of.short == self.document:
            return later.answer(self).interpolate(row, at, symbol)  # type: ignore[no-any-return]  # a Table too
        self._same_unit(at)
        cells, heads = self._row(row), self._heads()
        x = float(at)
        if self.beyond == "hold":
            x = min(max(x, heads[0]), heads[-1])
        if not heads[0] <= x <= heads[-1]:
            raise OutsideLimits(
                f"{self.cite}: {self.column_key} = {x:g} lies outside the table ({heads[0]:g} to {heads[-1]:g})"
            )
        upper = next(i for i, head in enumerate(heads) if head >= x)
        lower = upper if heads[upper] == x else upper - 1
        low, high = cells[lower], cells[upper]
        for figure, place in ((low, lower), (high, upper)):
            if isinstance(figure, str):
                raise OutsideLimits(f"{self.cite}: no figure for {row} at {self.column_key} {heads[place]:g}: {figure}")
        assert not isinstance(low, str) and not isinstance(high, str)
        share = 0.0 if upper == lower else (x - heads[lower]) / (heads[upper] - heads[lower])
        return self._answer(low + (high - low) * share, row, (lower, upper), symbol, at)

    def _same_unit(self, at: float) -> None:
        if isinstance(at, Value) and self.column_unit and not unit(at.unit).same_as(unit(self.column_unit)):
            raise UnitError(
                f"{self.cite}: {self.column_key} is asked for in {self.column_unit}, given in {at.unit} ({at!r})"
            )

    def _heads(self) -> list[float]:
        heads = [head for head in self.columns if not isinstance(head, str)]
        if len(heads) < len(self.columns):
            raise OutsideLimits(f"{self.cite}: nothing lies between its columns, which are words ({self.column_key})")
        return heads

    def _row(self, row: str) -> tuple[float | str, ...]:
        if row not in self.rows:
            raise OutsideLimits(f"{self.cite}: no row {row!r} ({self.row_key}); it has {', '.join(self.rows)}")
        return self.rows[row]

    def _place(self, column: float | str | None) -> int:
        for place, head in enumerate(self.columns):
            if head == column or (
                not isinstance(head, str)
                and not isinstance(column, str)
                and column is not None
                and float(column) == head
            ):
                return place
        shown = ", ".join(str(c) for c in self.columns)
        raise OutsideLimits(f"{self.cite}: no column {column!r} ({self.column_key}); it has {shown}")

    def _marks(self, row: str, places: tuple[int, ...]) -> frozenset[Mark]:
        marks = set()
        for place in places:
            source = self.source_of(row, place)
            if source.how == "from memory":
                cell = f"{row}, {self.columns[place]}" if len(self.columns) > 1 else row
                marks.add(Mark("from memory", f"{self.cite}: {cell}"))
        return frozenset(marks)

    def _answer(
        self, number: float, row: str, places: tuple[int, ...], symbol: str, column: float | str | None
    ) -> float:
        sheet = open_sheet()
        if sheet is None:
            return number
        inputs: tuple[tuple[str, object], ...] = ((self.row_key, row),)
        if column is not None:
            inputs += ((self.column_key, column),)
        marks = self._marks(row, places) | marks_of(v for _, v in inputs)
        outcome = (number, self.units[places[0]], symbol or self.symbol)
        got = sheet.record("lookup", f"table {self.number}", self.title, self.cite, inputs, outcome, self, marks)
        assert got is not None
        return got


def _exceptions(data: dict[str, Any], columns: tuple[float | str, ...]) -> dict[tuple[str, int], str]:
    found = {}
    for exception in data.get("exception", []):
        for column in exception.get("columns", columns):
            if column not in columns or exception["row"] not in data["rows"]:
                raise GroundsillError(f"exception for {exception['row']}, {column}: no such cell")
            found[(exception["row"], columns.index(column))] = exception["source"]
    return found
