"""The taint test, end to end: one table cell said to be from memory shows on exactly the links that stand on it.

Which links stand on a cell is found without asking the marks: the cell's figure is halved and doubled, and the links
whose demand or capacity moves are counted. Those, and no others, must carry the mark, in the study and on paper.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace

import pytest

from groundsill.loadpath.chain import Link
from groundsill.study import Study, run, working
from groundsill.work.document import House
from groundsill.work.pieces import PanelPiece
from groundsill.working.table import Table, TableSource
from groundsill.working.value import Mark
from tests.forces.balance import larch_street
from tests.forces.reference_house import reference_house
from tests.papers.reading_pdf import page_texts, squeezed

STANDARDS = "groundsill.standards"


@dataclass(frozen=True)
class Cell:
    """One cell of a table file, and what a mark on it says."""

    package: str
    path: str
    row: str
    column: float | str | None
    says: str

    @property
    def mark(self) -> Mark:
        return Mark("from memory", self.says)


PANELS = Cell("sdpws_2021", "tables/4_3a.toml", "15/32, 8d", 4, "SDPWS 2021 Table 4.3A: 15/32, 8d, 4")
PANELS_OF_2015 = Cell("sdpws_2015", "tables/4_3a_seismic.toml", "15/32, 8d", 4, "SDPWS 2015 Table 4.3A: 15/32, 8d, 4")
BOARDS = Cell("sdpws_2021", "tables/4_2d.toml", "straight lumber sheathing, 1x", "v_n",
              "SDPWS 2021 Table 4.2D: straight lumber sheathing, 1x, v_n")  # fmt: skip
REDWOOD = Cell("nds_2018", "tables/12_3_3a.toml", "Redwood", None, "NDS 2018 Table 12.3.3A: Redwood")
PLASTER = Cell("asce7_16", "tables/c3_1_1.toml", "ceiling: plaster on wood lath", "psf",
               "ASCE 7-16 Table C3.1-1: ceiling: plaster on wood lath, psf")  # fmt: skip
RESPONSE = Cell("asce7_16", "tables/12_2_1.toml", "A.15 bearing walls, light-frame wood, wood structural panels", "R",
                "ASCE 7-16 Table 12.2-1: A.15 bearing walls, light-frame wood, wood structural panels, R")  # fmt: skip


@contextmanager
def planted(cell: Cell, times: float = 1.0, from_memory: bool = False) -> Iterator[None]:
    """The program with one figure changed, or with its source said to be memory."""
    real = Table.load
    package = f"{STANDARDS}.{cell.package}"
    table = real(package, cell.path)
    place = 0 if cell.column is None else table.columns.index(cell.column)
    figures = list(table.rows[cell.row])
    figures[place] = float(figures[place]) * times
    changed = replace(table, rows=table.rows | {cell.row: tuple(figures)})
    known = replace(
        table,
        sources=table.sources | {"seen": TableSource("seen", "this test")},
        exceptions=table.exceptions | {(cell.row, place): "seen"},
    )
    doubtful = replace(
        changed,
        sources=table.sources | {"recalled": TableSource("from memory", "this test")},
        exceptions=table.exceptions | {(cell.row, place): "recalled"},
    )
    shown = doubtful if from_memory else replace(known, rows=changed.rows)

    def load(package_: str, path: str) -> Table:
        return shown if (package_, path) == (package, cell.path) else real(package_, path)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Table, "load", staticmethod(load))
        yield


def links_of(study: Study) -> dict[tuple[str, str], Link]:
    return {(r.key, link.address): link for r in study.runs for c in (*r.chains, *r.bodies) for link in c.links}


def counts(link: Link) -> bool:
    """A link that is checked: it applies, and has a figure that moves with what it stands on.

    How many bolts have their washer leaps or stays, so its link carries the marks of all that could make it leap.
    """
    return link.status != "does not apply" and (link.demand, link.capacity) != (None, None) and link.unit != "bolts"


def figures(link: Link | None) -> tuple[float | None, float | None] | None:
    return None if link is None else (link.demand, link.capacity)


def standing_on(house: House, cell: Cell) -> set[tuple[str, str]]:
    """Links whose demand or capacity moves with the cell; nothing says that it is from memory."""
    with planted(cell):
        study = run(house, ranges=False)
    assert cell.says not in study.manifest.from_memory
    base = links_of(study)
    moved = set()
    for times in (0.5, 2.0):
        with planted(cell, times):
            other = links_of(run(house, ranges=False))
        moved |= {key for key, link in base.items() if counts(link) and figures(other.get(key)) != figures(link)}
    return moved


def marked(house: House, cell: Cell) -> tuple[set[tuple[str, str]], Study]:
    """Links that carry the mark of the cell, once it is said to be from memory, of those that are checked."""
    with planted(cell, from_memory=True):
        study = run(house, ranges=False)
    links = links_of(study)
    return {key for key, link in links.items() if cell.mark in link.marks and counts(link)}, study


@pytest.mark.parametrize(
    "cell", [PANELS, BOARDS, REDWOOD, PLASTER, RESPONSE],
    ids=["panels", "boards", "redwood", "plaster", "response"],
)  # fmt: skip
def test_exactly_the_links_that_stand_on_a_cell_carry_its_mark(cell):
    stand = standing_on(larch_street(), cell)
    carry, study = marked(larch_street(), cell)
    assert stand
    assert carry == stand
    assert cell.says in study.manifest.from_memory


def test_a_panel_that_shares_with_another_stands_on_the_others_cell_too():
    """Two panels in one line, nailed at 4 and at 6 in.: how much either takes comes of both figures."""
    house = reference_house(panels={"front": 16.0})
    (key,) = house.alternatives
    wider = PanelPiece(segment="sg-front", from_in=240.0, to_in=400.0, panel="15/32, 8d", edge_spacing_in=6.0)
    work = replace(house.alternatives[key], pieces=house.alternatives[key].pieces | {"pn-wider": wider})
    house = replace(house, alternatives={key: work})
    stand = standing_on(house, PANELS_OF_2015)
    assert (key, "line/front/sheathing/pn-wider/both") in stand
    assert marked(house, PANELS_OF_2015)[0] == stand


def test_the_mark_reaches_the_paper_and_no_paper_without_it():
    """In the text of the PDF, as a reader copies it."""
    from groundsill.papers.views.calculations import calculation_package
    from groundsill.papers.writers.typst import to_pdf

    house = reference_house(panels={"front": 16.0})

    def paper() -> str:
        study = run(house, ranges=False)
        sheets = {r.key: working(house, r.key) for r in study.runs}
        return squeezed(" ".join(page_texts(to_pdf(calculation_package(house, study, sheets)))))

    with planted(PANELS_OF_2015):
        assert squeezed(PANELS_OF_2015.says) not in paper()
    with planted(PANELS_OF_2015, from_memory=True):
        assert squeezed(PANELS_OF_2015.says) in paper()
