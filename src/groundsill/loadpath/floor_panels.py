"""A floor of wood structural panels as a diaphragm: its cell of the tables by what the survey holds of its nailing."""

from __future__ import annotations

from dataclasses import dataclass, replace

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import JoistField
from groundsill.loadpath.case import LineCase, species_of
from groundsill.standards.sheathing import SegmentShear
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given

__all__ = ["PanelFloor", "lacking_of", "panels_of"]

_THREE_BY_IN = 2.5  # dressed thickness of 3x lumber
_TAPE_IN = 0.05
_CASE_1, _OTHERWISE = "case 1", "cases 2 to 6"
_STAGGERED = "staggered, across the joists"


@dataclass(frozen=True, slots=True)
class PanelFloor:
    """A floor of panels: its unit shear, what to call it, its table, and what was not seen and counts against it."""

    shear: SegmentShear
    title: str
    table: str
    doubt: str


def lacking_of(case: LineCase, id: str, field: JoistField) -> str:
    """What the survey lacks of a floor of panels, without which it has no unit shear; empty when nothing."""
    name = field.mark or id
    if not field.panel:
        return f"panels on joists {name}: their grade, thickness and nail are not in the survey"
    if field.panel_boundary_in.value is None or field.panel_edge_in.value is None:
        return f"panels on joists {name}: the spacing of their nails was not measured, and the unit shear goes by that"
    if field.breadth_in.value is None:
        return f"panels on joists {name}: how wide the joists are was not measured"
    if not field.species.value:
        return f"panels on joists {name}: the wood of the joists is not known"
    return ""


def panels_of(case: LineCase, id: str, field: JoistField, L: float, W: float) -> PanelFloor:
    """The unit shear of a floor of panels whose nailing is known.

    Raises:
        OutsideLimits: what the tables have no cell for, or a floor too long for its depth.
    """
    path = f"survey.underfloor.joists.{id}"
    wood, told = species_of(case, path, field.species, f"joists {field.mark or id}")
    G = doubted(case.nds.specific_gravity(wood), told)
    measured = case.reading.noted(
        f"the nailing of the panels on joists {field.mark or id}", path, "panel_boundary_in", "panel_edge_in",
        "panel_blocked", "breadth_in",
    )  # fmt: skip
    framing = "3x" if (field.breadth_in.value or 0.0) >= _THREE_BY_IN else "2x"
    blocked = field.panel_blocked.value is True
    nails, unseen = _column(case, field) if blocked else _layout(case, field)
    if not blocked and field.panel_blocked.value is None:
        unseen = ("whether its edges are blocked", *unseen)
    shear = case.sdpws.panel_diaphragm_shear(
        field.panel, nails, L, W, G, case.load, framing, "blocked" if blocked else "unblocked"
    )
    shear = replace(shear, asd=doubted(shear.asd, measured))
    title = f"floor of panels, {field.panel}, {'blocked' if blocked else 'unblocked'}, {nails}"
    doubt = f"{' and '.join(unseen)} was not seen: the lesser is taken" if unseen else ""
    return PanelFloor(shear, title, f"Table {'4.2A' if blocked else '4.2C'}", doubt)


def _column(case: LineCase, field: JoistField) -> tuple[str, tuple[str, ...]]:
    """The column of the blocked table that the nails reach in every place.

    Raises:
        OutsideLimits: nails farther apart than the table's widest.
    """
    at_boundary, at_edges = field.panel_boundary_in.value or 0.0, field.panel_edge_in.value or 0.0
    columns = [str(column) for column in case.sdpws.panel_floors().columns]
    reached = [c for c in columns if _reaches(c, at_boundary, at_edges)]
    given("s", at_boundary, "in", "nails over the walls below")
    given("s_e", at_edges, "in", "nails at the other edges")
    if not reached:
        raise OutsideLimits(
            f"{case.sdpws.clauses.panel_floors}: nails {at_boundary:g} in. apart at boundaries and {at_edges:g} in. at "
            f"other edges; must be at most {columns[0].replace('/', ' and ')} in."
        )
    return reached[-1], ()


def _reaches(column: str, at_boundary: float, at_edges: float) -> bool:
    boundary, edges = (float(text) for text in column.split("/"))
    return at_boundary <= boundary + _TAPE_IN and at_edges <= edges + _TAPE_IN


def _layout(case: LineCase, field: JoistField) -> tuple[str, tuple[str, ...]]:
    """The column of the unblocked table: case 1 only where the force runs along joists that staggered panels cross.

    Raises:
        OutsideLimits: nails more than 6 in. apart.
    """
    at_boundary, at_edges = field.panel_boundary_in.value or 0.0, field.panel_edge_in.value or 0.0
    if not _reaches("6/6", at_boundary, at_edges):
        raise OutsideLimits(
            f"{case.sdpws.clauses.panel_floors}: nails {at_boundary:g} and {at_edges:g} in. apart; unblocked floors of "
            "panels count with 6 in. at most"
        )
    if field.panel_joints == "not seen" or case.line.joists == "not seen":
        return _OTHERWISE, ("how its panels lie",)
    return (_CASE_1 if field.panel_joints == _STAGGERED and case.line.joists == "parallel" else _OTHERWISE), ()
