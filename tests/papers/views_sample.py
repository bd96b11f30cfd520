"""Chains made by hand, one for each thing a view must be able to say, and the small house worked out for real."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from groundsill.loadpath.chain import Chain, Expected, Link, Stage, Verdict
from groundsill.loadpath.headline import first_to_fail
from groundsill.papers.document import Block, Document, GroupRow, Inline, TableBlock, plain_text
from groundsill.papers.views.calculations import calculation_package
from groundsill.study import Study, run, working
from groundsill.work.document import House
from groundsill.working.sheet import Sheet
from groundsill.working.value import Mark
from tests.fixtures.small_house import small_house

WEIGHTS_DOUBT = Mark("from memory", "weight of the old floor")
BOLT_DOUBT = Mark("from memory", "bearing strength of redwood")
DUCTILE = Expected(1500.0, 2000.0, 2500.0, "ductile", "yield of every nail")
BRITTLE = Expected(1800.0, 2300.0, 2800.0, "brittle", "mean of breakout tests")


def link(stage: str, verdict: Verdict, title: str = "", **more: object) -> Link:
    """A link with figures that bear out its verdict."""
    status = "passes" if verdict == "depends" else verdict
    facts: dict[str, object] = {
        "address": f"line/l1/{stage}/{title or stage}/both",
        "title": title or stage,
        "scope": "line",
        "scope_id": "l1",
        "direction": "both",
        "level": "allowable",
        "unit": "lb",
        "status": status,
        "verdict": verdict,
        "clause": "NDS 2018 12.3.1",
    }
    figures = {
        "passes": (500.0, 1000.0, 0.5),
        "depends": (900.0, 1000.0, 0.9),
        "indicated": (400.0, 1000.0, 0.4),
        "fails": (2000.0, 1000.0, 2.0),
    }
    if verdict in figures:
        facts["demand"], facts["capacity"], facts["ratio"] = figures[verdict]
        facts["least_favourable"] = facts["ratio"]
    return Link(**{**facts, **more})  # type: ignore[arg-type]


def stage(key: str, *links: Link, title: str = "") -> Stage:
    return Stage(key, title or key.replace("-", " ").capitalize(), "every link must pass", links)


def chain(*stages: Stage, **more: object) -> Chain:
    facts: dict[str, object] = {
        "id": "l1",
        "mark": "L1",
        "name": "front",
        "kind": "line",
        "direction": "x",
        "relied_on": True,
        "relied_reason": "perimeter line on a continuous foundation",
        "force_lb": 3420.0,
        "stages": stages,
        "verdict": "fails",
        "headline": "carries 50 % of the required force; then sill bolts stops it",
        "percent": 50.0,
    }
    return Chain(**{**facts, **more})  # type: ignore[arg-type]


def one_of_each() -> Chain:
    """A chain with every verdict in it; the sill bolts govern."""
    found = chain(
        stage("floor", link("floor", "passes", marks=(WEIGHTS_DOUBT,), expected=DUCTILE)),
        stage("plate", link("plate", "does not apply", reason="no joint in the plate")),
        stage("sheathing", link("sheathing", "depends", least_favourable=1.25, depends_on=("Stud spacing (W3)",))),
        stage(
            "sill-bolts",
            link("sill-bolts", "fails", "bolts in sill K1", marks=(BOLT_DOUBT, WEIGHTS_DOUBT), expected=BRITTLE),
            link("sill-bolts", "passes", "bolts in sill K2", marks=(WEIGHTS_DOUBT,)),
        ),
        stage("concrete", link("concrete", "indicated", extension="concrete under 2,500 psi", reason="never tested")),
        stage("joints", link("joints", "cannot be checked", reason="the joint was not seen", demand=None)),
        governing="line/l1/sill-bolts/bolts in sill K1/both",
    )
    return replace(found, first_to_fail=first_to_fail(found.links))


@cache
def small_study() -> tuple[House, Study, dict[str, Sheet]]:
    """The small house, its study and the sheet of each of its states."""
    house = small_house()
    study = run(house)
    return house, study, {state.key: working(house, state.key) for state in study.runs}


@cache
def small_package() -> Document:
    """The calculation package of the small house."""
    return calculation_package(*small_study())


def words(text: Inline) -> str:
    """The words of a cell or paragraph."""
    return plain_text(text)


def rows_of(table: TableBlock) -> list[tuple[str, ...]]:
    """A table's rows as words; a row that names others as one cell."""
    return [
        (words(row.text),) if isinstance(row, GroupRow) else tuple(words(cell) for cell in row) for row in table.rows
    ]


def tables(blocks: tuple[Block, ...]) -> list[TableBlock]:
    return [block for block in blocks if isinstance(block, TableBlock)]


def captioned(document: Document, caption: str) -> TableBlock:
    """The one table of a document with this caption."""
    (found,) = [table for table in tables(document.blocks) if table.caption == caption]
    return found
