"""Splitting (ACI 318-19, 17.9): how far anchors must stay from edges and each other, and what it costs to come nearer.

No strength is worked out against splitting; distances keep it away. Nearer than those only an anchor's own report, or
(17.9.3) the strength of a thinner one, allows.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.symbols import Diameter, EdgeLeast, Embedment, Thickness
from groundsill.standards.aci318_19.tables import table_17_9_2a, table_17_9_2b, table_17_9_5
from groundsill.standards.conditions import Condition
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import condition, scale

__all__ = [
    "bond_splitting_factor",
    "critical_edge_distance",
    "deepest_embedment",
    "least_distances",
    "splitting_factor",
    "thinner_anchor",
]

CriticalEdge = Annotated[float, Q("in", "c_ac", "critical edge distance", above=0.0)]


@equation(
    "aci318-19/17.6.2.6.1",
    title="Splitting beside a post-installed anchor",
    clause="Eq. 17.6.2.6.1b",
    source=SOURCE,
)
def splitting_factor(
    h_ef: Embedment, c_a_min: EdgeLeast, c_ac: CriticalEdge
) -> Annotated[float, Q("1", "psi_cp_N", "splitting factor of breakout")]:
    """The factor on breakout of a post-installed anchor in uncracked concrete with nothing to hold a split.

    1 from c_ac on; nearer, c_a,min / c_ac, but no less than 1.5 h_ef / c_ac, and no more than 1. Cast-in anchors and
    cracked concrete have 1. Inches. Source: ACI 318-19, Eqs. 17.6.2.6.1a and b, read in public page notes on
    ACI 318M-19 (pages 233 to 260). h_ef 4, c_ac 16, edge 8: 0.5 (our own arithmetic).
    """
    if c_a_min >= c_ac:
        return 1.0
    return min(1.0, max(c_a_min / c_ac, 1.5 * h_ef / c_ac))


@equation(
    "aci318-19/17.6.5.5.1",
    title="Splitting beside an adhesive anchor",
    clause="Eq. 17.6.5.5.1b",
    source=SOURCE,
)
def bond_splitting_factor(
    c_Na: Annotated[float, Q("in", "c_Na", "reach of the bond to either side", above=0.0)],
    c_a_min: EdgeLeast,
    c_ac: CriticalEdge,
) -> Annotated[float, Q("1", "psi_cp_Na", "splitting factor of bond")]:
    """The factor on bond in uncracked concrete with nothing to hold a split; in cracked concrete it is 1.

    1 from c_ac on; nearer, c_a,min / c_ac, but no less than c_Na / c_ac, and no more than 1. Inches. Source: ACI
    318-19, Eqs. 17.6.5.5.1a and b, read in public page notes on ACI 318M-19 (pages 233 to 260). c_Na 4, c_ac 10, edge
    5: 0.5 (our own arithmetic).
    """
    if c_a_min >= c_ac:
        return 1.0
    return min(1.0, max(c_a_min / c_ac, c_Na / c_ac))


@equation(
    "aci318-19/17.9.3",
    title="Thinner anchor whose distances are met",
    clause="17.9.3",
    source=SOURCE,
)
def thinner_anchor(
    d_a: Diameter,
    c_a_min: EdgeLeast,
    n_d: Annotated[float, Q("1", "n_d", "least edge distance in diameters", above=0.0)],
) -> Annotated[float, Q("in", "d'_a", "diameter counted")]:
    """The diameter to count where an anchor that will not be torqued stands nearer to an edge than n_d diameters.

    The forces are then limited to those of that thinner anchor. in. Source: ACI 318-19, 17.9.3, read in public page
    notes on ACI 318M-19 (pages 261 to 283). 5/8 in., 6 diameters, edge 3: 0.5 in. (our own arithmetic).
    """
    return min(d_a, c_a_min / n_d)


@equation(
    "aci318-19/17.9.4",
    title="Deepest embedment in a thin member",
    clause="17.9.4",
    source=SOURCE,
    constants={4: "in"},
)
def deepest_embedment(h_a: Thickness) -> Annotated[float, Q("in", "h_ef,max", "deepest embedment counted")]:
    """The deepest embedment of an expansion, screw or undercut anchor: the greater of 2/3 h_a and h_a less 4 in.

    Not for adhesive or cast-in anchors. in. Source: ACI 318-19, 17.9.4, read in public page notes on ACI 318M-19 (pages
    261 to 283). 12 in.: 8 in., as the notes on chapter 17 at github.com/wcfrobert/wcfrobert.github.io also have it.
    """
    return max(2 / 3 * h_a, h_a - 4)


@procedure(
    "aci318-19/17.9.5",
    title="Critical edge distance of a post-installed anchor",
    clause="17.9.5",
    source=SOURCE,
    alias="aci.critical-edge",
)
def critical_edge_distance(kind: str, h_ef: Embedment) -> float:
    """The edge distance at which splitting no longer cuts breakout or bond in uncracked concrete, in.

    Args:
        kind: row of Table 17.9.5.
        h_ef: embedment, in.
    """
    return scale(h_ef, table_17_9_5().read(kind), symbol="c_ac", label="critical edge distance")


@procedure(
    "aci318-19/17.9.2",
    title="Are anchors far enough from edges and from each other?",
    clause="17.9.2",
    source=SOURCE,
    alias="aci.least-distances",
)
def least_distances(
    d_a: Diameter,
    kind: str,
    c_a_min: EdgeLeast | None = None,
    s: Annotated[float, Q("in", "s", "spacing to the nearest anchor", above=0.0)] | None = None,
    c_of_report: Annotated[float, Q("in", "c_min", "least edge distance of the anchor's report", above=0.0)]
    | None = None,
    s_of_report: Annotated[float, Q("in", "s_min", "least spacing of the anchor's report", above=0.0)] | None = None,
) -> tuple[Condition, ...]:
    """Each distance against splitting, met, not met or not known.

    Args:
        d_a: anchor diameter, in.
        kind: ``"cast in, not torqued"``, ``"cast in, torqued"``, or a row of Table 17.9.2(b) for an anchor set
            afterwards.
        c_a_min: centre of the anchor to the nearest edge, in.; None where nobody knows it.
        s: to the nearest other anchor, in.; None when it stands alone.
        c_of_report: least edge distance of a post-installed anchor by its own report, in.
        s_of_report: least spacing by its own report, in.

    A cast-in anchor that is not torqued keeps the cover of its concrete (20.5.1.3), which is not asked here.
    """
    cast_in = kind.startswith("cast in")
    found = []
    if kind != "cast in, not torqued":
        diameters = table_17_9_2a().read(kind, "edge") if cast_in else table_17_9_2b().read(kind)
        least = scale(d_a, diameters, symbol="c_min", label="least edge distance")
        found.append(_far_enough("edge", c_a_min, least if c_of_report is None else c_of_report, c_of_report))
    if s is not None:
        diameters = table_17_9_2a().read(kind if cast_in else "post-installed", "spacing")
        least = scale(d_a, diameters, symbol="s_min", label="least spacing")
        found.append(_far_enough("nearest anchor", s, least if s_of_report is None else s_of_report, s_of_report))
    return tuple(found)


def _far_enough(what: str, distance: float | None, least: float, of_report: float | None) -> Condition:
    by = "its report" if of_report is not None else "17.9.2"
    text = f"{what} at least {float(least):.3g} in. away ({by})"
    met = None if distance is None else float(distance) >= float(least) - 1e-9
    condition(text, met, *(() if distance is None else (distance, least)), cite=SOURCE.cite("17.9.2"))
    return Condition(text, met)
