"""Drift of a braced part: the standard's equation by hand, the give of its ends, and what the limit leaves for it."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from groundsill.house.fact import measured
from groundsill.loadpath.chain import Link
from groundsill.study import run
from groundsill.work.document import House
from groundsill.work.pieces import HoldDownPiece, Piece
from tests.loadpath.asking import links_in, run_named
from tests.loadpath.houses import known_house, with_pieces


@cache
def braced(give_in: float | None = None, holds: bool = True, share: float = 1.0, height_in: float = 24.0) -> House:
    """The strengthened known house with its side wall's hold-downs at both ends of both panels, or with none."""
    house = known_house()
    hazard = house.survey.site.hazard
    assert hazard is not None
    site = replace(house.survey.site, hazard=replace(hazard, S_S=hazard.S_S * share, S_1=hazard.S_1 * share))
    under = house.survey.underfloor
    segments = under.segments | {"sg2": replace(under.segments["sg2"], height_in=measured(height_in))}
    house = replace(house, survey=replace(house.survey, site=site, underfloor=replace(under, segments=segments)))

    def change(key: str, piece: Piece) -> Piece | None:
        if isinstance(piece, HoldDownPiece):
            return replace(piece, give_in=give_in) if holds else None
        return piece

    return with_pieces(house, "strengthen", change)


def drift(house: House, panel: str = "pn21") -> Link:
    return links_in(run(house, ranges=False))["strengthen", f"line/line2/drift/{panel}/both"]


def by_hand(house: House, delta_a: float) -> float:
    """SDPWS 4.3-1 and ASCE 7 12.8.6 long-hand for panel P3: 72 in. of 15/32 panel with 8d at 4 in., plywood."""
    state = run_named(run(house, ranges=False), "strengthen")
    v = state.line_forces["line2"].force_lb * 0.5 / 6.0  # two panels alike share the line, 6 ft each
    h, b, E, A, G_a = 2.0, 6.0, 580_000.0, 1.75 * 3.75, 13.0
    elastic = 8 * v * h**3 / (E * A * b) + v * h / (1000 * G_a) + h * delta_a / b
    return 4.0 * elastic


def test_the_equation_by_hand_where_dead_load_holds_the_ends_down() -> None:
    house = braced(share=0.1)
    link = drift(house)
    assert link.reason == "dead load holds its ends down"
    assert link.demand == pytest.approx(by_hand(house, 0.0), rel=1e-9)
    assert link.capacity == pytest.approx(0.020 * 24.0)
    assert (link.level, link.unit) == ("strength", "in")
    assert "12.12.1" in link.clause


def test_a_hold_down_gives_in_proportion_to_its_pull() -> None:
    none, some, more = (drift(braced(give_in=give)).demand or 0.0 for give in (0.0, 0.05, 0.10))
    assert none < some < more
    assert more - some == pytest.approx(some - none, rel=1e-6)


def test_a_hold_down_whose_give_nobody_entered_is_not_guessed_at() -> None:
    link = drift(braced())
    assert link.status == "cannot be checked"
    assert "is not entered; the limit leaves" in link.reason


def test_what_the_limit_leaves_is_just_what_brings_the_part_to_it() -> None:
    words = drift(braced()).reason
    left = float(words.split("the limit leaves ")[1].split(" in.")[0])
    pull = float(words.split(" gives under ")[1].split(" lb")[0].replace(",", ""))
    link = drift(braced(give_in=left * 3000.0 / pull))  # each hold-down is good for 3,000 lb
    assert link.ratio == pytest.approx(1.0, abs=0.02)


def test_an_end_that_lifts_with_nothing_to_hold_it_is_not_guessed_at() -> None:
    link = drift(braced(holds=False))
    assert link.status == "cannot be checked"
    assert "nothing holds it" in link.reason


def test_a_taller_wall_drifts_more_and_may_drift_more() -> None:
    low, tall = drift(braced(give_in=0.05)), drift(braced(give_in=0.05, height_in=36.0))
    assert (tall.demand or 0.0) > (low.demand or 0.0)
    assert tall.capacity == pytest.approx(1.5 * (low.capacity or 0.0))
