"""How a bolt in shear levers itself out of the concrete or breaks out its end, and whether it stands clear of edges.

Pryout goes with breakout always (ACI 318-19 17.7.3): by the cone the bolt would draw in tension between both faces of
the stem and its end, and for an adhesive anchor by its bond where that is less.
"""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.adhesives import apart, glue_of
from groundsill.loadpath.bolts_counted import Anchor
from groundsill.loadpath.case import LineCase
from groundsill.loadpath.ends import to_end, wedges
from groundsill.loadpath.faces import across
from groundsill.standards.aci318_19.bond import bond_of
from groundsill.standards.aci318_19.pryout import pryout_of
from groundsill.standards.aci318_19.shear_breakout import breakout_toward_edge
from groundsill.working.steps import given, greatest

__all__ = ["PLAIN_FORCE", "SPLITTING", "pried", "too_near", "toward_end"]

PLAIN_FORCE = ("A", "B")  # ACI 318-19 17.10.1: the rules for earthquake hold in categories C to F
SPLITTING = {
    "cast-in": "cast in, not torqued",
    "adhesive": "adhesive",
    "expansion": "torque-controlled",
    "screw": "screw",
}


def pried(case: LineCase, anchor: Anchor, id: str, stem: FoundationSegment, f_c: float) -> tuple[float, float, str]:
    """Design and nominal pryout of a bolt, lb, and the extension that rests on its bond where bond is what governs."""
    assert anchor.embedment_in is not None and anchor.edge_in is not None
    h_ef = given("h_ef", anchor.embedment_in, "in", "embedment", anchor.marks)
    near, far = across(case, id, stem, anchor.edge_in, anchor.edge_marks)
    end = to_end(case, anchor.station_in)
    installed = "cast in" if anchor.kind == "cast-in" else "post-installed"
    if anchor.kind != "adhesive":
        prise = pryout_of(h_ef, f_c, end, c_near=near, c_far=far, anchor=installed)
        return prise.design, prise.nominal, ""
    quake = case.lateral == "earthquake" and case.forces.category not in PLAIN_FORCE
    glue = glue_of(anchor.adhesive, f_c, quake)
    d_a = given("d_a", anchor.diameter_in, "in", "bolt diameter", anchor.marks)
    bond = bond_of(d_a, h_ef, glue.cracked, glue.reach, c_left=end, c_near=near, c_far=far, failure=glue.failure)
    prise = pryout_of(h_ef, f_c, end, c_near=near, c_far=far, anchor=installed, N_a=bond.nominal)
    return prise.design, prise.nominal, glue.extension


def toward_end(
    case: LineCase, anchor: Anchor, id: str, stem: FoundationSegment, f_c: float, h_a: float
) -> tuple[float, float]:
    """Design and nominal breakout of a bolt toward the end of the concrete, lb: at a corner the return's outer face."""
    assert anchor.embedment_in is not None and anchor.edge_in is not None
    d_a = given("d_a", anchor.diameter_in, "in", "bolt diameter", anchor.marks)
    h_ef = given("h_ef", anchor.embedment_in, "in", "embedment", anchor.marks)
    faces = across(case, id, stem, anchor.edge_in, anchor.edge_marks)
    told = wedges(case, anchor.station_in, *faces)
    words = ("bolt to the end of the concrete", "nearer, so that the wedge keeps within the return wall")
    found = [
        breakout_toward_edge(d_a, h_ef, f_c, given("c_a1", c_a1, "in", label), h_a, c_a2=c_a2, c_a2_far=c_far)
        for (c_a1, c_a2, c_far), label in zip(told, words, strict=False)
    ]
    if len(found) == 1:
        return found[0].design, found[0].nominal
    label = "neither wedge holds more than there is"
    return (
        greatest(*(one.design for one in found), symbol="φV_cb", label=label),
        greatest(*(one.nominal for one in found), symbol="V_cb", label=label),
    )


def too_near(anchor: Anchor, of_line: Sequence[Anchor]) -> str:
    """The extension where a bolt stands nearer to an edge or another than 17.9.2 allows; nothing where it does not."""
    if anchor.kind not in SPLITTING:
        return ""
    others = (abs(other.station_in - anchor.station_in) for other in of_line if other.id != anchor.id)
    spacing = min((s for s in others if s > 0), default=None)
    return apart(anchor.adhesive, anchor.diameter_in, anchor.edge_in, spacing, SPLITTING[anchor.kind])[1]
