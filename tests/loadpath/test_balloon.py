"""Balloon framing: spiked joists as found, blocking and clips over each panel as designed."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from groundsill.house.fact import Fact, measured, unknown
from groundsill.loadpath.chain import Link
from groundsill.standards.nds_2018.withdrawal import nail_withdrawal
from groundsill.study import AS_FOUND, run
from groundsill.work.document import House
from groundsill.work.pieces import Piece, TiePiece
from tests.loadpath.asking import links_in
from tests.loadpath.houses import FIR, known_house, with_pieces

JOISTS_IN_LINE = 15  # 240 in. of line at 16 in.


@cache
def balloon(**changes: Any) -> House:
    """The known house with its side wall L2 framed balloon fashion, each joist spiked with three 20d to its stud."""
    house = known_house()
    under = house.survey.underfloor
    spikes = replace(
        under.lines["line2"].floor_connection, kind="nailed to the studs", nail="20d common", nails_each=measured(3.0)
    )
    line = replace(
        under.lines["line2"],
        rim="none",
        floor_connection=replace(spikes, **{k: v for k, v in changes.items() if k in {"kind", "nail", "nails_each"}}),
        **({"framing": "balloon"} | {k: v for k, v in changes.items() if k in {"joists", "framing"}}),
    )
    joists = {
        key: replace(field, breadth_in=measured(1.75), spacing_in=measured(16.0)) for key, field in under.joists.items()
    }
    segments = {
        key: replace(s, stud=replace(s.stud, thickness_in=measured(1.75), species=changes.get("studs", measured(FIR))))
        for key, s in under.segments.items()
    }
    under = replace(under, lines=under.lines | {"line2": line}, joists=joists, segments=segments)
    return replace(house, survey=replace(house.survey, underfloor=under))


def links(house: House, key: str = AS_FOUND) -> dict[str, Link]:
    """The links of L2 by stage and place."""
    found = links_in(run(house, ranges=False))
    return {a.removeprefix("line/line2/"): link for (k, a), link in found.items() if k == key and "/line2/" in a}


def clipped(house: House, from_in: float, to_in: float, adds_rim: bool = True) -> House:
    """The strengthening with L2's clips over one stretch only, on new blocking."""

    def change(key: str, piece: Piece) -> Piece:
        if key == "ti-line2" and isinstance(piece, TiePiece):
            return replace(piece, from_in=from_in, to_in=to_in, count=12, adds_rim=adds_rim)
        return piece

    return with_pieces(house, "strengthen", change)


# --- as found --------------------------------------------------------------------------------------------------------


def test_spiked_joists_hold_by_their_nails_drawn_from_the_studs() -> None:
    link = links(balloon())["floor-to-plate/line2/both"]
    reach = min(4.0 - 1.75, 1.75)
    each = nail_withdrawal(0.50, 0.192) * reach * 1.6
    assert link.capacity == pytest.approx(JOISTS_IN_LINE * 3 * each)
    assert link.clause == "NDS 2018 12.2.3"
    assert "drawn" in link.reason


def test_two_nails_hold_two_thirds_of_three() -> None:
    three, two = (links(balloon(nails_each=measured(n)))["floor-to-plate/line2/both"].capacity for n in (3.0, 2.0))
    assert two == pytest.approx(2 / 3 * (three or 0.0))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"nails_each": unknown()}, "the nails in each joist were not counted"),
        ({"kind": "not seen"}, "how the joists are held to the studs was not seen"),
        ({"joists": "parallel"}, "none is spiked to its studs"),
        ({"studs": Fact(state="absent")}, "the studs' species is not known"),
        ({"nail": "8d common"}, "under 6 D"),
        ({"framing": "ledger", "kind": "not seen"}, "ledger framing"),
    ],
)
def test_what_was_not_seen_of_the_spikes_is_named(change: dict[str, Any], words: str) -> None:
    link = links(balloon(**change))["floor-to-plate/line2/both"]
    assert link.status == "cannot be checked"
    assert words in link.reason


def test_no_plate_drags_the_force_along_and_nothing_else_is_asked_of_it() -> None:
    link = links(balloon())["plate-splices/line2/both"]
    assert link.status == "does not apply"
    assert "over its own length" in link.reason


# --- as designed -----------------------------------------------------------------------------------------------------


def test_each_panel_has_its_clips_over_its_own_length() -> None:
    found = links(clipped(balloon(), 0.0, 240.0), "strengthen")
    for panel, length in (("pn21", 72.0), ("pn22", 72.0)):
        link = found[f"floor-to-plate/{panel}/both"]
        assert link.capacity == pytest.approx(int(12 * length / 240.0 + 1e-9) * 450.0)
    whole = sum(found[f"floor-to-plate/{panel}/both"].demand or 0.0 for panel in ("pn21", "pn22"))
    plain = links_in(run(known_house(), ranges=False))["strengthen", "line/line2/floor-to-plate/line2/both"]
    assert whole == pytest.approx(plain.demand)


def test_a_panel_without_blocking_over_it_has_nothing_at_its_top() -> None:
    found = links(clipped(balloon(), 0.0, 100.0), "strengthen")
    assert found["nailing-top/pn21/both"].status == "passes"
    assert "new blocking between the studs" in found["nailing-top/pn21/both"].reason
    assert (found["nailing-top/pn22/both"].status, found["nailing-top/pn22/both"].capacity) == ("fails", 0.0)
    assert found["floor-to-plate/pn22/both"].status == "fails"
    assert "blocks pass nothing on along the wall" in found["floor-to-plate/pn22/both"].reason


def test_clips_alone_without_blocking_do_not_reach_a_balloon_wall() -> None:
    found = links(clipped(balloon(), 0.0, 240.0, adds_rim=False), "strengthen")
    assert found["floor-to-plate/line2/both"].clause == "NDS 2018 12.2.3"  # the spikes are what there is
    assert found["nailing-top/pn21/both"].status == "fails"


def test_the_floor_boards_carry_the_whole_force_into_the_panels_lengths() -> None:
    plain = links_in(run(known_house(), ranges=False))["strengthen", "line/line2/floor-boards/line2/both"]
    link = links(clipped(balloon(), 0.0, 240.0), "strengthen")["floor-boards/line2/both"]
    assert link.demand == pytest.approx((plain.demand or 0.0) * 240.0 / 144.0)
    assert link.capacity == pytest.approx(plain.capacity)
