"""What the page on the weakest link says happens when concrete, edge distance and bolt size move, line by line."""

from __future__ import annotations

from functools import cache

import pytest

from docs.running import HERE
from docs.weakest_link import LINES, PICTURE, SWEEPS, Moved, moved

STRENGTHS, EDGES, BOLTS = (1000.0, 2500.0, 4000.0), (1.5, 3.0, 8.0), (0.5, 0.75, 1.0)

every_line = pytest.mark.parametrize("sample", LINES)
not_glued = pytest.mark.parametrize("sample", [sample for sample in LINES if sample != "heron-walk"])
BREAKOUT = ("breakout beside the bolt", "breakout toward the end of the concrete")
GLUED = "heron-walk"  # its bolts pry out by the bond of their adhesive, which the concrete's strength does not move


@cache
def at(sample: str, axis: str) -> tuple[Moved, ...]:
    return moved(sample, axis, {"strength": STRENGTHS, "edge": EDGES, "bolt": BOLTS}[axis])


@not_glued
def test_breakout_follows_the_root_of_the_strength_and_wood_only_up_to_2500_psi(sample: str) -> None:
    weak, middle, strong = at(sample, "strength")
    assert weak.concrete / strong.concrete == pytest.approx((4000 / 1000) ** 0.5)
    assert weak.concrete / middle.concrete == pytest.approx((2500 / 1000) ** 0.5)
    assert middle.wood == strong.wood < weak.wood < 1.25 * strong.wood
    assert len({m.way for m in (weak, middle, strong)}) == 1
    assert weak.way in BREAKOUT


def test_bond_sets_a_floor_that_stronger_concrete_does_not_move() -> None:
    weak, middle, strong = at(GLUED, "strength")
    assert [m.way for m in (weak, middle, strong)] == ["breakout beside the bolt", "pryout", "pryout"]
    assert weak.concrete > middle.concrete == strong.concrete > weak.concrete / (4000 / 1000) ** 0.5


@not_glued
def test_near_the_face_the_concrete_governs_and_far_from_it_the_wood(sample: str) -> None:
    near, between, far = at(sample, "edge")
    assert near.weaker == "concrete"
    assert near.way == "breakout beside the bolt"
    assert near.concrete > between.concrete > far.concrete
    if between.way == near.way:  # twice as far, to the power 1.5
        assert near.concrete / between.concrete == pytest.approx(2**1.5, rel=0.01)
    if far.way == "steel":  # no end of the concrete is near
        assert far.weaker == "wood"
    assert near.wood == between.wood == far.wood


@every_line
def test_far_from_the_face_breakout_beside_the_bolt_no_longer_governs(sample: str) -> None:
    """Something else in the concrete does: the bolt's steel, breakout toward the end of the foundation, its bond."""
    far = at(sample, "edge")[-1]
    assert far.way in (("pryout",) if sample == GLUED else ("steel", "breakout toward the end of the concrete"))


@every_line
def test_a_bigger_bolt_helps_the_wood_and_hardly_the_concrete(sample: str) -> None:
    thin, middle, thick = at(sample, "bolt")
    assert thin.wood > 1.7 * middle.wood > 1.7 * thick.wood
    assert thin.concrete / middle.concrete == pytest.approx(1.2, abs=0.02)
    assert middle.concrete == pytest.approx(thick.concrete)  # the limit without the diameter


def test_where_the_wood_must_yield_first_a_bigger_bolt_asks_more_of_the_concrete() -> None:
    """Its force is then that of the wood joint, which grows with the bolt faster than breakout does."""
    thin, _, thick = moved("heron-walk", "bolt", BOLTS, wood_yields_first=True)
    assert thick.concrete > 1.5 * thin.concrete
    assert thick.wood < thin.wood


@every_line
def test_what_gives_first_turns_with_the_bolt_and_the_edge(sample: str) -> None:
    """A thicker bolt never makes the wood give first; a thin one far enough from the face does."""
    order = ("wood", "too close", "concrete")
    thin, middle, thick = (order.index(m.first) for m in at(sample, "bolt"))
    assert thin <= middle <= thick
    assert thin < thick
    assert at(sample, "edge")[-1].first in ("wood", "not known")  # no expected strength is held for steel
    assert at(sample, "edge")[0].first != "wood"


@every_line
def test_what_else_a_line_has_does_not_move_with_its_sill_bolts(sample: str) -> None:
    thin, middle, thick = at(sample, "bolt")
    assert thin.rest == middle.rest == thick.rest > 1


def test_the_page_shows_the_picture_and_names_every_line_on_it() -> None:
    page = (HERE / "validation" / "weakest-link.md").read_text("utf-8")
    drawn = PICTURE.read_text("utf-8")
    assert f"../pictures/{PICTURE.name}" in page
    for sample, line in LINES.items():
        assert f"{sample} {line}" in page
        assert sample in drawn
    assert all(sweep.title in drawn for sweep in SWEEPS.values())
