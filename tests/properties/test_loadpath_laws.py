"""Laws of the load path: stronger is never worse, the same house in other words answers the same, doubts travel."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from math import inf
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.house.fact import measured
from groundsill.loadpath.case import cannot, checked
from groundsill.loadpath.chain import Chain, Link, Stage
from groundsill.loadpath.headline import concluded
from groundsill.study import Study, run, working
from groundsill.work.document import House
from groundsill.work.pieces import BoltPiece, HoldDownPiece, PanelPiece, Piece, SillBlockingPiece, TiePiece
from groundsill.working.errors import GroundsillError
from groundsill.working.table import Table, TableSource
from groundsill.working.value import Mark
from tests.loadpath.asking import HOUSES, badness, chain_named, chains_in, links_in, run_named, stage_of, study_of
from tests.loadpath.houses import (
    doubtful_house,
    known_house,
    listed_otherwise,
    mirrored,
    run_backward,
    sample_house,
    shifted,
    shuffled,
    turned,
    with_pieces,
)

LINES = ("line1", "line2", "line3", "line4")
WORST_FIRST = ("fails", "cannot be checked", "depends", "indicated", "passes", "does not apply")

# --- stronger is never worse, in any chain ---------------------------------------------------------------------------


def made(n: int, demand: float, capacity: float | None, beyond: bool) -> Link:
    address, title = f"line/l1/s{n}/l1/both", f"link {n}"
    if capacity is None:
        return cannot(address, title, "line", "l1", clause="c", reason="not seen")
    extension = "beyond the tables" if beyond else ""
    return checked(
        address, title, "line", "l1", level="allowable", unit="lb", demand=demand, capacity=capacity, clause="c",
        extension=extension,
    )  # fmt: skip


PARTS = st.tuples(st.floats(1, 5000), st.one_of(st.none(), st.just(0.0), st.floats(0, 5000)), st.booleans())


def chain_of(parts: list[tuple[float, float | None, bool]]) -> Chain:
    stages = tuple(
        Stage(f"s{n}", "x", "every link must pass", (made(n, demand, capacity, beyond),))
        for n, (demand, capacity, beyond) in enumerate(parts)
    )
    return concluded(Chain("l1", "L1", "front", "line", "x", True, "", 1000.0, stages))


@given(st.lists(PARTS, min_size=1, max_size=6), st.data())
@settings(max_examples=200)
def test_at_fixed_demand_more_capacity_in_a_link_never_lowers_the_chain(
    parts: list[tuple[float, float | None, bool]], data: st.DataObject
) -> None:
    place = data.draw(st.integers(0, len(parts) - 1))
    demand, capacity, beyond = parts[place]
    if capacity is None:
        return
    stronger = [*parts]
    stronger[place] = (demand, capacity + data.draw(st.floats(0, 5000)), beyond)
    before, after = chain_of(parts), chain_of(stronger)
    assert WORST_FIRST.index(after.verdict) >= WORST_FIRST.index(before.verdict)
    assert before.percent is None or carried(after) >= before.percent * (1 - 1e-12)


def carried(chain: Chain) -> float:
    """The share a chain carries as far as it was checked: all of it where something was and nothing stopped it."""
    return chain.percent if chain.percent is not None else inf if chain.governing else 0.0


@given(st.lists(PARTS, min_size=1, max_size=6), st.floats(1.0, 4.0))
def test_more_force_on_every_link_never_helps_a_chain(
    parts: list[tuple[float, float | None, bool]], times: float
) -> None:
    before, after = (
        chain_of(parts),
        chain_of([(demand * times, capacity, beyond) for demand, capacity, beyond in parts]),
    )
    assert WORST_FIRST.index(after.verdict) <= WORST_FIRST.index(before.verdict)
    assert before.percent is None or (after.percent is not None and after.percent <= before.percent * (1 + 1e-12))


# --- stronger is never worse, in a whole house -----------------------------------------------------------------------

Change = Callable[[str, Piece], Piece | None]


def bolts(**changes: Any) -> Change:
    return lambda _, piece: replace(piece, **changes) if isinstance(piece, BoltPiece) else piece


def panels(**changes: Any) -> Change:
    return lambda _, piece: replace(piece, **changes) if isinstance(piece, PanelPiece) else piece


def blocking(**changes: Any) -> Change:
    return lambda _, piece: replace(piece, **changes) if isinstance(piece, SillBlockingPiece) else piece


def clips(**changes: Any) -> Change:
    return lambda _, piece: replace(piece, **changes) if isinstance(piece, TiePiece) else piece


def hold_downs(**changes: Any) -> Change:
    return lambda _, piece: replace(piece, **changes) if isinstance(piece, HoldDownPiece) else piece


@cache
def lean_house() -> House:
    """The known house with the strengthening as its only alternative."""
    return replace(known_house(), alternatives={"strengthen": known_house().alternatives["strengthen"]})


STEPS: dict[str, tuple[str, list[Change]]] = {
    "thicker bolts": ("sill-bolts bolts-concrete", [bolts(diameter_in=d) for d in (0.5, 0.625, 0.75, 1.0)]),
    "closer nails": ("sheathing nailing-top nailing-sill", [panels(edge_spacing_in=s) for s in (6.0, 4.0, 3.0, 2.0)]),
    "thicker panels": (
        "sheathing nailing-top nailing-sill",
        [panels(panel=p) for p in ("5/16, 6d", "3/8, 8d", "15/32, 8d", "19/32, 10d")],
    ),
    "closer nails in the blocking": ("nailing-sill", [blocking(spacing_in=s) for s in (12.0, 6.0, 4.0, 2.0)]),
    "more rows of nails in the blocking": ("nailing-sill", [blocking(rows=n, spacing_in=12.0) for n in (1, 2, 3)]),
    "more clips": ("floor-to-plate", [clips(count=n) for n in (4, 8, 12, 40)]),
    "stronger clips": ("floor-to-plate", [clips(capacity_lb=lb) for lb in (100.0, 450.0, 900.0)]),
    "stronger hold-downs": ("overturning", [hold_downs(capacity_lb=lb) for lb in (500.0, 3000.0, 9000.0)]),
}  # fmt: skip


def same(one: float | None, other: float | None) -> bool:
    return one is None or other is None or one == pytest.approx(other, rel=1e-12)


def never_worse(before: Study, after: Study, key: str, stages: str, whatever_demand: bool = False) -> int:
    """At the same demand no link is further from passing, no chain carries less of the force; how many links moved."""
    mine, theirs, moved = links_in(before), links_in(after), 0
    shared_otherwise: set[str] = set()
    for (state, address), link in mine.items():
        if state != key or (state, address) not in theirs:
            continue
        now = theirs[(state, address)]
        if not whatever_demand and not same(now.demand, link.demand):
            shared_otherwise.add(address.split("/")[1])
            continue
        if (link.status == "cannot be checked") != (now.status == "cannot be checked"):
            # of an open line: it no longer fails under the least force, or now holds the most
            assert any("by a rigid floor is not known" in k.reason for k in (link, now)), address
            assert now.status != "fails", address
            assert link.status in ("fails", "cannot be checked"), address
            continue
        assert badness(now) <= badness(link) * (1 + 1e-12), f"{address}: {badness(link)} -> {badness(now)}"
        if badness(now) < badness(link) * (1 - 1e-9):
            moved += 1
            assert stage_of(now) in (*stages.split(), "sill-joints"), address
    for was in chains_in(run_named(before, key)):
        now_chain = chain_named(after, key, was.id)
        assert was.id in shared_otherwise or was.percent is None or carried(now_chain) >= was.percent * (1 - 1e-12), (
            was.id
        )
    return moved


@pytest.mark.parametrize("name", STEPS)
def test_stronger_work_never_lowers_a_link_of_the_small_house(name: str) -> None:
    stages, steps = STEPS[name]
    studies = [run(with_pieces(lean_house(), "strengthen", step), ranges=False) for step in steps]
    moved = sum(never_worse(a, b, "strengthen", stages) for a, b in zip(studies, studies[1:], strict=False))
    assert moved > 0


@pytest.mark.parametrize("name", ["thicker bolts", "closer nails", "more clips"])
def test_stronger_work_never_lowers_a_link_of_larch_street(name: str) -> None:
    house = sample_house()
    (key,) = house.alternatives
    stages, steps = STEPS[name]
    studies = [run(with_pieces(house, key, step), ranges=False) for step in (steps[1], steps[2])]
    assert never_worse(studies[0], studies[1], key, stages) > 0


def test_one_more_bolt_well_apart_from_the_others_never_lowers_a_link() -> None:
    house = lean_house()
    alternative = house.alternatives["strengthen"]
    more = {
        f"extra-{line}": replace(alternative.pieces[f"nb-{line}-0"], station_in=54.0, mark=f"X{line[-1]}")  # type: ignore[arg-type]
        for line in LINES
    }
    stronger = replace(
        house, alternatives=house.alternatives | {"strengthen": replace(alternative, pieces=alternative.pieces | more)}
    )
    study = run(stronger, ranges=False)
    assert run_named(study, "strengthen").misplaced == ()
    # the force on the sill is the same; what one bolt's concrete must hold grows less with their number
    moved = never_worse(study_of("known"), study, "strengthen", "sill-bolts bolts-concrete", whatever_demand=True)
    assert moved == 2 * len(LINES)


@pytest.mark.parametrize("steps", [(2500.0, 3000.0, 4000.0, 6000.0)])
def test_stronger_concrete_never_lowers_a_link(steps: tuple[float, ...]) -> None:
    def poured(psi: float) -> House:
        base = lean_house().survey.foundation
        stems = {key: replace(stem, strength_psi=measured(psi)) for key, stem in base.segments.items()}
        return replace(lean_house(), survey=replace(lean_house().survey, foundation=replace(base, segments=stems)))

    studies = [run(poured(psi), ranges=False) for psi in steps]
    for key in ("as-found", "strengthen"):
        for before, after in zip(studies, studies[1:], strict=False):
            assert never_worse(before, after, key, "bolts-concrete sill-bolts overturning") > 0


def test_more_of_the_force_never_helps_any_link() -> None:
    """The same house and the same sharing: only the share of the force for new buildings rises."""
    studies = []
    for factor in (0.5, 0.75, 1.0):
        choices = replace(lean_house().choices, force_factor=factor, force_reason="a test")
        studies.append(run(replace(lean_house(), choices=choices), ranges=False))
    for less, more in zip(studies, studies[1:], strict=False):
        lighter, heavier = links_in(less), links_in(more)
        for key in lighter.keys() & heavier.keys():
            assert badness(heavier[key]) >= badness(lighter[key]) * (1 - 1e-12), key
        for found in less.runs:
            for chain in chains_in(found):
                now = chain_named(more, found.key, chain.id)
                assert chain.percent is None or now.percent is None or now.percent <= chain.percent * (1 + 1e-12)


# --- the same house in other words -----------------------------------------------------------------------------------

Row = tuple[str, str, str, str, str, str, str, str, str]
TURNED_ROUND = {"+": "-", "-": "+"}


def rows(study: Study, backward: tuple[str, ...] = (), swap: bool = False, name_bodies: bool = True) -> list[Row]:
    """Every link as what it is and what it comes to, to nine digits; directions turned round where a line was."""
    found = []
    for r in study.runs:
        for chain in chains_in(r):
            for link in chain.links:
                way = link.address.split("/")[-1][:4] if chain.kind == "body" else link.direction
                if chain.id in backward:
                    way = TURNED_ROUND.get(way, way)
                if swap:
                    way = {"x": "y", "y": "x"}.get(way, way)
                named = name_bodies or chain.kind == "line"
                # a sill joint is named after the piece on its left, which is on its right from the other end
                scope = link.scope_id if named and stage_of(link) != "sill-joints" else ""
                numbers = [f"{n:.9f}" if n is not None else "" for n in (link.ratio, link.least_favourable)]
                found.append(
                    (r.key, chain.id if named else "", stage_of(link), scope, way, link.status, link.verdict, *numbers)
                )
    return sorted(found)  # type: ignore[arg-type]


MOVES: dict[str, Callable[[House], House]] = {
    "in a mirror": mirrored,
    "drawn elsewhere": lambda house: shifted(house, 1234.5, -678.25),
    "turned by a quarter": turned,
}


@pytest.mark.parametrize("move", MOVES)
def test_a_house_drawn_otherwise_has_the_same_chains(move: str) -> None:
    study = run(MOVES[move](doubtful_house()))
    assert rows(study, swap=move == "turned by a quarter") == rows(study_of("doubtful"))


@pytest.mark.parametrize("move", ["in a mirror", "turned by a quarter"])
def test_larch_street_drawn_otherwise_has_the_same_chains(move: str) -> None:
    here, there = run(sample_house(), ranges=False), run(MOVES[move](sample_house()), ranges=False)
    assert rows(there, swap=move.startswith("turned")) == rows(here)


@pytest.mark.parametrize("line", LINES)
def test_a_line_written_from_its_other_end_swaps_plus_and_minus_and_nothing_else(line: str) -> None:
    study = run(run_backward(doubtful_house(), line))
    assert rows(study, backward=(line,)) == rows(study_of("doubtful"))


def test_every_line_of_larch_street_may_be_written_from_its_other_end() -> None:
    house = sample_house()
    here = run(house, ranges=False)
    for line in house.survey.underfloor.lines:
        house = run_backward(house, line)
    there = run(house, ranges=False)
    every = tuple(house.survey.underfloor.lines)
    assert rows(there, backward=every, name_bodies=False) == rows(here, name_bodies=False)


def symmetric_house() -> House:
    """The known house with its east side the picture of its west side."""
    house = known_house()
    walls = {key: replace(wall, openings={}) for key, wall in house.survey.building.walls.items()}
    under = house.survey.underfloor
    west = replace(under.bolts["bt3"], line="line4", station_in=180.0, mark="A9")  # bt3 stands at 60 on the east line
    front = {"bt1": replace(under.bolts["bt1"], station_in=30.0), "bt2": replace(under.bolts["bt2"], station_in=330.0)}
    under = replace(under, bolts=under.bolts | front | {"bt9": west})
    sills = {
        "si1a": replace(under.sills["si1a"], to_in=180.0),
        "si1b": replace(under.sills["si1b"], from_in=180.0),
    }
    segments = {
        "sg3b": replace(under.segments["sg3b"], height_in=measured(24.0)),
        "sg1a": replace(under.segments["sg1a"], to_in=180.0),
        "sg1b": replace(under.segments["sg1b"], from_in=180.0),
    }
    joint = {"sp1": replace(under.splices["sp1"], station_in=180.0)}
    under = replace(under, sills=under.sills | sills, segments=under.segments | segments, splices=under.splices | joint)
    survey = replace(house.survey, underfloor=under, building=replace(house.survey.building, walls=walls))
    house = replace(house, survey=survey)
    house = with_pieces(house, "strengthen", lambda _, p: None if isinstance(p, SillBlockingPiece) else p)
    house = with_pieces(house, "strengthen", panels(bottom="sill"))
    return with_pieces(house, "strengthen", lambda _, p: None if isinstance(p, HoldDownPiece) else p)


def sides(chain: Chain, flip: bool) -> list[tuple[str, str, str, str]]:
    """A chain as stages, directions, statuses and ratios, for laying two of them on each other."""
    return sorted(
        (
            stage_of(link),
            TURNED_ROUND.get(link.direction, link.direction) if flip else link.direction,
            link.status,
            "" if link.ratio is None else f"{link.ratio:.9f}",
        )
        for link in chain.links
    )


@pytest.mark.parametrize("key", ["as-found", "strengthen"])
def test_a_symmetric_house_has_symmetric_chains(key: str) -> None:
    study = run(symmetric_house())
    east, west = chain_named(study, key, "line2"), chain_named(study, key, "line4")
    assert east.force_lb == pytest.approx(west.force_lb, rel=1e-12)
    assert sides(east, flip=True) == sides(west, flip=False)
    front = chain_named(study, key, "line1")
    assert sides(front, flip=True) == sides(front, flip=False)


@pytest.mark.parametrize("name", ["doubtful", "small"])
def test_the_order_of_the_file_changes_nothing(name: str) -> None:
    here, there = study_of(name), run(shuffled(HOUSES[name](), Random(name)))
    assert there.runs == here.runs
    assert there.forces == here.forces
    assert there.manifest == here.manifest
    assert there.facts == here.facts


@pytest.mark.parametrize("name", ["known", "small", "sample"])
def test_addresses_stay_when_lists_are_put_in_another_order_and_things_are_renamed(name: str) -> None:
    other = run(renamed(listed_otherwise(HOUSES[name](), Random(3))), ranges=False)
    here = run(HOUSES[name](), ranges=False)
    assert {a for _, a in links_in(other)} == {a for _, a in links_in(here)}


def renamed(house: House) -> House:
    """Every line and wall segment under a new mark, and every line under a new name."""
    under = house.survey.underfloor
    lines = {k: replace(x, mark=f"Q{n}", name=f"name {n}") for n, (k, x) in enumerate(under.lines.items())}
    segments = {k: replace(x, mark=f"R{n}") for n, (k, x) in enumerate(under.segments.items())}
    under = replace(under, lines=lines, segments=segments)
    return replace(house, survey=replace(house.survey, underfloor=under))


def test_a_new_mark_changes_words_and_no_figure() -> None:
    here, there = rows(study_of("doubtful")), rows(run(renamed(doubtful_house())))
    assert here == there


# --- a doubt about one cell reaches exactly what read it -------------------------------------------------------------

STATES = ("as-found", "strengthen")


@cache
def cells_read() -> dict[tuple[str, str, int], Table]:
    """Every cell that the known house reads in either state: of which file, which row, which column."""
    found: dict[tuple[str, str, int], Table] = {}
    for key in STATES:
        for step in working(lean_house(), key).steps:
            if step.kind == "lookup":
                table = step.maker
                (_, row), *column = step.inputs
                place = table.columns.index(column[0][1]) if column and column[0][1] in table.columns else 0
                found[(f"{table.cite}, {table.title}", str(row), place)] = table
    return found


def mark_of(table: Table, row: str, place: int) -> Mark:
    cell = f"{row}, {table.columns[place]}" if len(table.columns) > 1 else row
    return Mark("from memory", f"{table.cite}: {cell}")


@pytest.fixture(scope="module")
def all_recalled() -> tuple[dict[tuple[str, str], Link], dict[str, Any]]:
    """Links and sheets of the known house as if every cell it reads were recalled: each leaves a mark of its own."""
    house = lean_house()
    with pytest.MonkeyPatch.context() as patch:
        for (_, row, place), table in cells_read().items():
            patch.setitem(table.sources, "doubt", TableSource("from memory", "a test"))
            patch.setitem(table.exceptions, (row, place), "doubt")
        return links_in(run(house, ranges=False)), {key: working(house, key) for key in STATES}


def moved_by(table: Table, row: str, place: int, patch: pytest.MonkeyPatch) -> dict[tuple[str, str], Link]:
    """The links with the cell two hundredths less, or more where a factor can be no less."""
    whole = table.rows[row]
    for times in (0.98, 1.02):
        figures = tuple(float(figure) * times if n == place else figure for n, figure in enumerate(whole))
        patch.setitem(table.rows, row, figures)
        try:
            return links_in(run(lean_house(), ranges=False))
        except GroundsillError:
            continue
    pytest.fail("the house can be worked out with the printed figure only")


@pytest.mark.parametrize("cell", cells_read(), ids=lambda cell: f"{cell[0].split(',')[0]}: {cell[1]}, {cell[2]}")
def test_a_recalled_cell_marks_every_link_that_its_figure_moves(
    cell: tuple[str, str, int],
    all_recalled: tuple[dict[tuple[str, str], Link], dict[str, Any]],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    table, (_, row, place) = cells_read()[cell], cell
    mark, here, (recalled, sheets) = mark_of(table, row, place), links_in(study_of("known")), all_recalled
    now = moved_by(table, row, place, monkeypatch)
    for key in here.keys() & now.keys():
        if (here[key].demand, here[key].capacity) != (now[key].demand, now[key].capacity):
            assert mark in recalled[key].marks, key
    for (key, address), link in recalled.items():  # nothing is marked that has not the figure in its working
        if mark in link.marks and key in sheets:
            steps = [step for section in (address, *link.working) for step in sheets[key].under(section)]
            assert any(mark in step.marks for step in steps), address


def test_the_cells_are_many_and_from_many_documents() -> None:
    assert len(cells_read()) > 40
    assert len({table.document for table in cells_read().values()}) >= 5
