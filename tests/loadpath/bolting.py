"""The small house with its sills and bolts in order, and the links from sill to concrete that come of it.

Every wall line stands on cored concrete of 3,000 psi, each sill piece has two cast-in bolts that count, and nothing is
in doubt; a test then spoils or adds one thing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from typing import Any

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import work_out
from groundsill.house.fact import measured
from groundsill.house.foundation import FoundationBreak, FoundationTest
from groundsill.house.settle import prepare
from groundsill.house.underfloor import Bolt
from groundsill.loadpath.case import pieces_on
from groundsill.loadpath.chain import Link
from groundsill.loadpath.path import chain_of
from groundsill.work.apply import apply
from groundsill.work.document import Acceptance, Alternative, House
from groundsill.work.pieces import Adhesive, BoltPiece, HoldDownPiece, PanelPiece, Piece, SplicePiece
from tests.fixtures.small_house import small_house

FIR = "Douglas fir-larch"
BOARDS = "horizontal lumber sheathing, 1x"
WORK = "bolting"
EPOXY = Adhesive(
    report="report 5", category=1, cracked_psi=1000.0, uncracked_psi=1700.0, hole="rotary impact or rock drill",
    warm=True, least_edge_in=1.75, least_spacing_in=3.0,
)  # fmt: skip
STATIONS = {
    "line1": {"si1a": (48.0, 144.0), "si1b": (240.0, 312.0)},
    "line2": {"si2": (60.0, 180.0)},
    "line3": {"si3a": (48.0, 132.0), "si3b": (228.0, 312.0)},
    "line4": {"si4": (60.0, 180.0)},
}


@cache
def sound_house() -> House:
    """Nothing in doubt from sill to soil."""
    house = small_house()
    under, base = house.survey.underfloor, house.survey.foundation
    sills = {
        key: replace(sill, species=measured(FIR), thickness_in=measured(1.5), gap_in=measured(0.0))
        for key, sill in under.sills.items()
    }
    bolts = {
        f"{sill}-{n}": a_bolt(line, station, mark=f"{sill}-{n}")
        for line, pieces in STATIONS.items()
        for sill, stations in pieces.items()
        for n, station in enumerate(stations)
    }
    stems = {
        key: replace(
            stem,
            material="poured concrete",
            strength_psi=measured(3000.0),
            depth_in=measured(12.0),
            above_inside_soil_in=measured(10.0),
            above_outside_soil_in=measured(10.0),
        )
        for key, stem in base.segments.items()
        if stem.line != "line5"
    }
    cores = {f"core-{key}": a_core(key, stem.from_in + 20.0, 3000.0) for key, stem in stems.items()}
    steps = {key: found for key, found in base.breaks.items() if found.kind == "step"}
    walls = {
        key: replace(
            wall, stud=replace(wall.stud, species=measured(FIR)), outside=replace(wall.outside, material=BOARDS)
        )
        for key, wall in under.segments.items()
    }
    under = replace(under, segments=walls, sills=sills, bolts=bolts, openings={}, obstructions={})
    base = replace(base, segments=stems, breaks=steps, tests=cores)
    survey = replace(house.survey, underfloor=under, foundation=base)
    work = Alternative(order=1, mark="A", name="Bolting", pieces={})
    return replace(house, survey=survey, alternatives={WORK: work}, record={})


def a_bolt(line: str, station: float, **changes: Any) -> Bolt:
    """An old bolt that counts."""
    plain: dict[str, Any] = {
        "kind": "cast-in", "diameter_in": measured(0.5), "embedment_in": measured(7.0), "edge_in": measured(3.0),
        "hole_in": measured(0.5625), "nut": measured("tight"), "washer": "cut", "rust": measured("none"),
    }  # fmt: skip
    return Bolt(line=line, station_in=station, **(plain | changes))


def a_core(segment: str, station: float, psi: float) -> FoundationTest:
    """A core of the concrete."""
    return FoundationTest(segment=segment, station_in=station, kind="core", result=psi, unit="psi", by="lab")


def a_shear_test(segment: str, station: float, load: float, **changes: Any) -> FoundationTest:
    """An old bolt like those of the house, loaded in shear where it stands."""
    plain: dict[str, Any] = {
        "kind": "anchor shear", "unit": "lb", "displacement_in": 0.05, "by": "R. Tam", "when": "2026-05-01",
        "anchor": "old", "anchor_kind": "cast-in", "anchor_diameter_in": 0.5, "anchor_embedment_in": 7.0,
        "anchor_edge_in": 3.0,
    }  # fmt: skip
    return FoundationTest(segment=segment, station_in=station, result=load, **(plain | changes))


def a_new_bolt(line: str, station: float, **changes: Any) -> BoltPiece:
    """A new adhesive anchor with its report."""
    plain: dict[str, Any] = {
        "mark": f"A{station:g}", "diameter_in": 0.625, "embedment_in": 7.0, "edge_in": 3.0, "report": "report 1",
        "adhesive": EPOXY,
    }  # fmt: skip
    return BoltPiece(line=line, station_in=station, **(plain | changes))


def a_panel(segment: str, start: float, end: float, spacing: float = 4.0) -> PanelPiece:
    """A panel nailed to the sill."""
    return PanelPiece(
        mark=f"P-{segment}", segment=segment, from_in=start, to_in=end, panel="15/32, 8d", edge_spacing_in=spacing
    )


def a_hold_down(segment: str, station: float, **changes: Any) -> HoldDownPiece:
    """A hold-down with a 10 in. anchor, 3 in. from the face."""
    plain: dict[str, Any] = {"mark": f"H{station:g}", "capacity_lb": 6000.0, "anchor_edge_in": 3.0, "adhesive": EPOXY}
    return HoldDownPiece(segment=segment, station_in=station, **(plain | changes))


def a_splice(line: str, station: float, capacity: float) -> SplicePiece:
    """A strap across a joint of the sill."""
    return SplicePiece(mark="S1", line=line, station_in=station, member="sill", capacity_lb=capacity, report="report 3")


# --- one thing changed -----------------------------------------------------------------------------------------------


def with_sill(house: House, id: str, **changes: Any) -> House:
    """One sill piece changed."""
    return _under(house, "sills", {id: replace(house.survey.underfloor.sills[id], **changes)})


def with_bolts(house: House, bolts: Mapping[str, Bolt | None]) -> House:
    """Bolts added or put in another's place, or taken away where there is None."""
    return _under(house, "bolts", bolts)


def with_bolt(house: House, id: str, **changes: Any) -> House:
    """One bolt changed."""
    return with_bolts(house, {id: replace(house.survey.underfloor.bolts[id], **changes)})


def with_stem(house: House, id: str, **changes: Any) -> House:
    """One stretch of foundation changed."""
    return _base(house, "segments", {id: replace(house.survey.foundation.segments[id], **changes)})


def with_tests(house: House, **tests: FoundationTest | None) -> House:
    """Tests added, or taken away where there is None."""
    return _base(house, "tests", {key.replace("_", "-"): test for key, test in tests.items()})


def with_break(house: House, line: str, station: float, kind: Any) -> House:
    """A break in the foundation."""
    return _base(house, "breaks", {f"break-{station:g}": FoundationBreak(line=line, station_in=station, kind=kind)})


def without_cores(house: House) -> House:
    """Nobody has taken a core."""
    return _base(house, "tests", {key: None for key in house.survey.foundation.tests if key.startswith("core-")})


def with_choices(house: House, **changes: Any) -> House:
    """Other choices of the designer."""
    return replace(house, choices=replace(house.choices, **changes))


def with_hazard(house: House, **changes: Any) -> House:
    """Other ground motion."""
    site = house.survey.site
    assert site.hazard is not None
    return replace(house, survey=replace(house.survey, site=replace(site, hazard=replace(site.hazard, **changes))))


def with_pieces(house: House, *pieces: Piece) -> House:
    """Work laid on the house, as its one alternative."""
    named = {f"piece-{n}": piece for n, piece in enumerate(pieces)}
    return replace(house, alternatives={WORK: replace(house.alternatives[WORK], pieces=named)})


def with_acceptance(house: House, link: str, **changes: Any) -> House:
    """An engineer's decision on record."""
    plain: dict[str, Any] = {"by": "M. Osei", "licence": "WA S.E. 1", "when": "2026-06-01", "reason": "seen at site"}
    return replace(house, acceptances={"acc-1": Acceptance(link=link, **(plain | changes))})


def _under(house: House, name: str, changes: Mapping[str, Any]) -> House:
    under = house.survey.underfloor
    made = replace(under, **{name: _changed(getattr(under, name), changes)})
    return replace(house, survey=replace(house.survey, underfloor=made))


def _base(house: House, name: str, changes: Mapping[str, Any]) -> House:
    base = house.survey.foundation
    made = replace(base, **{name: _changed(getattr(base, name), changes)})
    return replace(house, survey=replace(house.survey, foundation=made))


def _changed(collection: Mapping[str, Any], changes: Mapping[str, Any]) -> dict[str, Any]:
    return {key: thing for key, thing in {**collection, **changes}.items() if thing is not None}


# --- what comes of it ------------------------------------------------------------------------------------------------


def links(house: House, line: str, work: bool = False) -> dict[str, Link]:
    """The links of a line by the last three parts of their address, as found or with the work laid on."""
    settled = prepare(house).best
    reading = Reading(settled.house, settled.marks)
    forces = work_out(reading)
    laid = apply(settled.house, WORK if work else None)
    assert laid.misplaced == ()
    chain = chain_of(reading, forces, line, pieces_on(reading, line, laid.pieces))
    return {"/".join(link.address.split("/")[2:]): link for link in chain.links}


def wood(house: House, sill: str = "si2", line: str = "line2", work: bool = False) -> Link:
    """The bolts of a sill piece in wood."""
    return links(house, line, work)[f"sill-bolts/{sill}/both"]


def in_concrete(house: House, sill: str = "si2", line: str = "line2", work: bool = False) -> Link:
    """The bolts of a sill piece in the foundation."""
    return links(house, line, work)[f"bolts-concrete/{sill}/both"]
