"""A panel's edge nailing: to the plate, to the sill, or to blocking on a sill that stands out past the studs."""

from __future__ import annotations

from collections.abc import Iterable

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.balloon import blocked, own_chain
from groundsill.loadpath.case import (
    Brace,
    LineCase,
    cannot,
    checked,
    expected_at,
    moisture_of,
    part_length,
    sill_at,
    species_of,
    working_of,
)
from groundsill.loadpath.chain import Expected, Link, ScopeKind
from groundsill.loadpath.plate import NAIL_SPREAD
from groundsill.work.pieces import PanelPiece, SillBlockingPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import divide, given, least, multiply
from groundsill.working.value import Mark

__all__ = ["at_plate", "at_sill", "blocking", "panel_expected"]

FLUSH_IN = 0.125  # a sill within this of the studs' face takes a panel's nails
_SPREAD_PANEL = (0.85, 1.15)
_NOMINAL = "nominal unit shear, 15 % either way (common practice, no source)"
_EVERY_EDGE = "the tabulated unit shear is that of the edge nailing at every edge"
_NAILS = "12.3.1, 11.3"

Place = tuple[str, str, ScopeKind, str]


def _panel(brace: Brace) -> PanelPiece:
    assert brace.panel is not None
    return brace.panel


def _place(case: LineCase, stage: str, brace: Brace, title: str, tail: str = "") -> Place:
    return (f"line/{case.id}/{stage}/{brace.id}/both{tail}", title, "segment", brace.segment_id)


def _edge(
    case: LineCase,
    brace: Brace,
    place: Place,
    v: float,
    clause: str,
    reason: str,
    holds: bool = True,
    marks: Iterable[Mark] = (),
) -> Link:
    """An edge whose nailing is the tabulated one, or that has nothing to be nailed to."""
    return checked(
        *place,
        level="allowable",
        unit="plf",
        demand=v,
        capacity=brace.capacity_plf if holds else 0.0,
        clause=clause,
        reason=reason,
        marks=marks,
        working=working_of(case, brace),
        expected=panel_expected(brace) if holds else None,
    )


def panel_expected(brace: Brace) -> Expected | None:
    """The line force at which a sheathed part is expected to give, its edge nailing with it: the nominal unit shear."""
    strength = float(brace.nominal_plf or 0.0) * brace.sheathed_in / 12
    return expected_at(strength, brace.share, _SPREAD_PANEL, "ductile", _NOMINAL)


def at_plate(case: LineCase, brace: Brace, v: float) -> Link:
    """The panel's top edge: to the top plate, where there is one."""
    place = _place(case, "nailing-top", brace, f"edge nailing of {brace.name} to the plate")
    if case.line.framing == "not seen":
        return cannot(*place, clause=case.sdpws.clauses.panel_edges, reason="how the wall is framed was not seen")
    if own_chain(case):
        if blocked(case, brace.from_in, brace.to_in):
            return _edge(case, brace, place, v, brace.cite, f"to the new blocking between the studs; {_EVERY_EDGE}")
        reason = f"{case.line.framing} framing: nothing runs between the studs for the panel's top edge to be nailed to"
        return _edge(case, brace, place, v, case.sdpws.clauses.panel_edges, reason, holds=False)
    if case.line.top_plate.layers == 0:
        return _edge(case, brace, place, v, brace.cite, "there is no top plate to nail to", holds=False)
    return _edge(case, brace, place, v, brace.cite, _EVERY_EDGE)


def at_sill(case: LineCase, brace: Brace, v: float) -> Link:
    """The panel's bottom edge: straight to the sill only where the sill is flush with the studs on that face."""
    panel, title = _panel(brace), f"edge nailing of {brace.name} at the bottom"
    place = _place(case, "nailing-sill", brace, title)
    if panel.bottom == "blocking on sill":
        reason = "nailed to blocking on the sill; its fastening is the next link"
        return _edge(case, brace, (place[0], f"{title} to blocking", *place[2:]), v, brace.cite, reason)
    sills = _sills(case, brace)
    if any(sill.cast_in for _, sill in sills):
        reason = "the sill is cast into the concrete and shows no face to nail to: blocking on it would take the panel"
        return _edge(case, brace, place, v, case.sdpws.clauses.panel_edges, reason, holds=False)
    off = [(s.projects_inside_in if panel.face == "inside" else s.projects_outside_in).value for _, s in sills]
    name = f"projects_{panel.face}_in"
    with section(place[0]):
        doubts = frozenset[Mark]().union(
            *(
                case.reading.noted(f"how far sill {s.mark or id} stands out", f"survey.underfloor.sills.{id}.{name}")
                for id, s in sills
            )
        )
    if not off or any(value is None for value in off):
        reason = "how far the sill stands out past the studs was not measured"
        return cannot(*place, clause=case.sdpws.clauses.panel_edges, reason=reason)
    worst = max((value for value in off if value is not None), key=abs)
    if abs(worst) > FLUSH_IN:
        reason = (
            f"the sill stands {'out' if worst > 0 else 'back'} {abs(worst):g} in. "
            "from the face of the studs: a panel on the studs cannot be nailed to it without blocking"
        )
        return _edge(case, brace, place, v, case.sdpws.clauses.panel_edges, reason, holds=False, marks=doubts)
    return _edge(case, brace, place, v, brace.cite, _EVERY_EDGE, marks=doubts)


def _sills(case: LineCase, brace: Brace) -> list[tuple[str, SillPiece]]:
    """Every sill piece under a brace."""
    return [(id, sill) for id, sill in case.sills if part_length(brace, sill.from_in, sill.to_in) > 0]


def blocking(case: LineCase, brace: Brace, v: float) -> Link:
    """The blocking's own fastening to the sill, by NDS nails over its length."""
    place = _place(case, "nailing-sill", brace, f"blocking of {brace.name} nailed to the sill", "-blocking")
    blocks = [
        p
        for _, p in case.of_kind(SillBlockingPiece)
        if isinstance(p, SillBlockingPiece)
        and p.segment == brace.segment_id
        and part_length(brace, p.from_in, p.to_in) > 0
    ]
    covered = sum(part_length(brace, p.from_in, p.to_in) for p in blocks)
    if not blocks or covered < brace.length_in - 1:
        reason = f"blocking covers {covered:.0f} of {brace.length_in:.0f} in. of the panel"
        return _edge(case, brace, place, v, case.nds.cite(_NAILS), reason, holds=False)
    at = sill_at(case, (brace.from_in + brace.to_in) / 2)
    if at is None or not at[1].species.value or at[1].thickness_in.value is None:
        return cannot(*place, clause=case.nds.cite(_NAILS), reason="the sill's species or thickness is not known")
    try:
        with section(place[0]):
            rows = [_row(case, block, *at) for block in blocks]
            capacity = least(*(held for held, _ in rows), symbol="v_n", label="the weakest piece of blocking")
    except OutsideLimits as refused:
        return cannot(*place, clause=case.nds.cite(_NAILS), reason=str(refused))
    return checked(
        *place,
        level="allowable",
        unit="plf",
        demand=v,
        capacity=capacity,
        clause=case.nds.cite(_NAILS),
        working=working_of(case, brace),
        expected=expected_at(
            min(yields for _, yields in rows) * brace.length_in / 12,
            brace.share,
            NAIL_SPREAD,
            "ductile",
            "yield of every nail, 25 % either way (common practice, no source)",
        ),
    )


def _row(case: LineCase, block: SillBlockingPiece, id: str, sill: SillPiece) -> tuple[float, float]:
    """What one piece of blocking holds for each foot of sill, plf, and at what it is expected to yield."""
    path = f"survey.underfloor.sills.{id}"
    depth = case.reading.number(f"{path}.thickness_in", sill.thickness_in, "t_m", "in", "thickness of the sill")
    assert depth is not None  # blocking is checked on a sill of known thickness alone
    thick = given("l_s", block.thickness_in, "in", f"thickness of blocking {block.mark}")
    wood, doubts = species_of(case, path, sill.species, f"sill {sill.mark or id}")
    one = case.nds.nail(block.nail, thick, main=wood, t_m=depth)
    doubts |= case.reading.marked(f"{path}.damp")
    each = doubted(case.nds.adjusted_lateral(one.Z, moisture=moisture_of(sill.damp.value)), doubts)
    count = given("n", 12.0 * block.rows / block.spacing_in, "1", "nails in a foot of blocking")
    total = multiply(each, count, symbol="Z'n", unit="lb")
    held = divide(total, given("L", 1.0, "ft", "a foot of sill"), symbol="v_n", unit="plf")
    return held, float(case.nds.expected_of(one).P) * float(count)
