"""Old sheathing on both faces of a cripple wall, as found, by either edition of the panel standard."""

from __future__ import annotations

from dataclasses import replace

import pytest

from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.underfloor import Sheathing
from groundsill.loadpath.chain import Link
from groundsill.standards.sdpws import EDITIONS
from groundsill.work.document import Basis, EditionOverride, House
from tests.loadpath.bolting import links, sound_house

LINE, SEGMENT = "line2", "sg2"
BOARDS, DIAGONAL = "horizontal lumber sheathing, 1x", "diagonal lumber sheathing, 1x"
STUCCO = "portland cement plaster 7/8 in. on metal lath"
NONE = "none"


def wall(
    outside: str,
    inside: str,
    edition: str,
    height_in: float = 36.0,
    decayed: bool = False,
    nails_in: float | None = None,
) -> Link:
    """The sheathing of line 2 with these two faces, ``nails_in`` apart along their edges."""
    apart: Fact[float] = unknown() if nails_in is None else measured(nails_in)
    house: House = sound_house()
    under = house.survey.underfloor
    faces = {
        "outside": Sheathing(
            material=outside, condition=measured("decayed" if decayed else "sound"), edge_spacing_in=apart
        ),
        "inside": Sheathing(material=inside, condition=measured("sound"), edge_spacing_in=apart),
    }
    segment = replace(under.segments[SEGMENT], height_in=measured(height_in), **faces)
    under = replace(under, segments={**under.segments, SEGMENT: segment})
    basis = Basis(code="ibc-2021", overrides={"sdpws": EditionOverride(edition=edition, reason="a test")})
    house = replace(house, survey=replace(house.survey, underfloor=under), basis=basis)
    found = [link for key, link in links(house, LINE).items() if key.startswith("sheathing/")]
    (link,) = [link for link in found if link.scope_id == SEGMENT]
    return link


@pytest.mark.parametrize("edition", EDITIONS)
def test_one_material_on_both_faces_counts_twice(edition: str) -> None:
    both = wall(BOARDS, BOARDS, edition)
    assert both.capacity == pytest.approx(100.0)
    assert both.title.startswith(f"{BOARDS}, both faces, ")
    assert wall(BOARDS, NONE, edition).capacity == pytest.approx(50.0)
    assert wall(NONE, BOARDS, edition).capacity == pytest.approx(50.0)


@pytest.mark.parametrize("edition", EDITIONS)
def test_weak_boards_behind_strong_plaster_add_nothing(edition: str) -> None:
    short = edition.removeprefix("sdpws-")
    alone, both = wall(STUCCO, NONE, edition), wall(STUCCO, BOARDS, edition)
    assert both.capacity == alone.capacity == pytest.approx({"2015": 180.0, "2021": 360 / 2.8}[short])
    assert both.title == alone.title
    assert both.clause == f"SDPWS {short} Table 4.3C"


def test_unlike_faces_of_like_strength_count_for_twice_the_lesser() -> None:
    """By 2015: boards on the diagonal 600, stucco 360 nominal: 720, over 2.0. By 2021: 840 and 360: 840 alone."""
    pair = wall(DIAGONAL, STUCCO, "sdpws-2015")
    assert pair.capacity == pytest.approx(360.0)
    assert pair.title.startswith(f"{DIAGONAL} and {STUCCO}, ")
    assert pair.clause == "SDPWS 2015 Table 4.3D and SDPWS 2015 Table 4.3C"
    later = wall(DIAGONAL, STUCCO, "sdpws-2021")
    assert later.capacity == pytest.approx(840 / 2.8)
    assert later.clause == "SDPWS 2021 Table 4.3D"


@pytest.mark.parametrize("edition", EDITIONS)
def test_a_decayed_face_leaves_the_other_to_itself(edition: str) -> None:
    assert wall(BOARDS, BOARDS, edition, decayed=True).capacity == pytest.approx(50.0)
    gone = wall(BOARDS, NONE, edition, decayed=True)
    assert gone.capacity == 0.0
    assert f"{BOARDS}, decayed" in gone.reason


@pytest.mark.parametrize("edition", EDITIONS)
def test_a_wall_too_high_for_its_stucco_still_has_its_boards(edition: str) -> None:
    tall = 240.0 * 1.6  # the wall is 20 ft long: plaster ends at 1.5, boards at 2
    assert wall(STUCCO, BOARDS, edition, height_in=tall).capacity == pytest.approx(50.0)
    refused = wall(STUCCO, NONE, edition, height_in=tall)
    assert refused.status == "cannot be checked"
    assert "portland cement plaster" in refused.reason
    assert "must be at most 1.5" in refused.reason


FIBREBOARD = "structural fibreboard 1/2 in., 11 gauge roofing nails"


@pytest.mark.parametrize(
    ("edition", "material", "nails_in", "asd"),
    [
        ("sdpws-2015", FIBREBOARD, 4.0, 340 / 2),
        ("sdpws-2021", FIBREBOARD, 4.0, 475 / 2.8),
        ("sdpws-2021", FIBREBOARD, 3.5, 475 / 2.8),
        ("sdpws-2021", FIBREBOARD, 3.0, 645 / 2.8),
        ("sdpws-2015", "particleboard 1/2 in., 8d nails", 6.0, 280 / 2),
        ("sdpws-2021", "particleboard 5/8 in., 10d nails", 4.0, 855 / 2.8),
    ],
)
def test_fibreboard_and_particleboard_go_by_their_rows_and_the_next_wider_nailing(
    edition: str, material: str, nails_in: float, asd: float
) -> None:
    found = wall(material, NONE, edition, nails_in=nails_in)
    assert found.capacity == pytest.approx(asd)
    assert found.clause == f"SDPWS {edition.removeprefix('sdpws-')} Table 4.3A"


def test_pressed_boards_wait_for_their_nailing_and_refuse_what_no_column_has() -> None:
    unmeasured = wall(FIBREBOARD, NONE, "sdpws-2021")
    assert unmeasured.status == "cannot be checked"
    assert unmeasured.reason == (
        f"how far apart the edge nails of {FIBREBOARD} stand was not measured (SDPWS 2021 Table 4.3A)"
    )
    wide = wall("particleboard 1/2 in., 8d nails", NONE, "sdpws-2021", nails_in=8.0)
    assert "edge nails of particleboard 1/2 in., 8d nails 8 in. apart; 6 in. at most" in wide.reason
    assert not wide.capacity


def test_boards_beside_fibreboard_whose_nails_nobody_measured_count_alone() -> None:
    assert wall(BOARDS, FIBREBOARD, "sdpws-2021").capacity == pytest.approx(50.0)
