"""A new footing on soil that swells and shrinks: how it is founded there is for a report to say (IBC 1808.6).

A footing on such soil has to be designed for it, or the soil is taken out, or the footing stands below the active zone.
None of these designs is made here: the piece says which it is, and whose report says so.
"""

from __future__ import annotations

from collections.abc import Iterator

from groundsill.forces.reading import Reading
from groundsill.loadpath.case import LineCase, cannot, checked
from groundsill.loadpath.chain import Link
from groundsill.loadpath.ground import shrinks, soil_class
from groundsill.work.inner import InnerFoundationPiece
from groundsill.working.sheet import section
from groundsill.working.steps import given

__all__ = ["expansive_links"]

_CLAUSE = "IBC 2021 1808.6"
_CLAY = "5"
_AT = "survey.site.soil"


def expansive_links(case: LineCase, piece: InnerFoundationPiece) -> Iterator[Link]:
    """How a new footing is founded where the soil is expansive or clay that nobody tested; nothing elsewhere."""
    asks = _asks(case.reading)
    if not asks:
        return
    address, title = f"line/{case.id}/footing/expansive/both", "new footing on expansive soil"
    with section(address):
        marks = case.reading.noted("whether the soil is expansive", _AT, "kind", "plasticity_index", "expansion_index")
        if piece.on_expansive == "below the active zone" and piece.expansive_report and piece.active_zone_in:
            deep = given("d", piece.depth_in, "in", "bottom of the footing below the soil inside")
            zone = given("d_z", piece.active_zone_in, "in", f"depth of the active zone, by {piece.expansive_report}")
            yield checked(
                address, title, "line", case.id, level="allowable", unit="in", demand=zone, capacity=deep,
                clause="IBC 2021 1808.6.1", reason="founded below the active zone", marks=marks, minimum=True,
            )  # fmt: skip
            return
    wanting = _wanting(case.reading, piece)
    if wanting:
        yield cannot(
            address, title, "line", case.id, clause=_CLAUSE, reason=f"{asks}; {wanting}", marks=marks
        )  # fmt: skip
        return
    reason = f"{asks}; {piece.on_expansive}, by {piece.expansive_report}: that design is not checked here"
    yield cannot(address, title, "line", case.id, clause=_CLAUSE, reason=reason, applies=False, marks=marks)


def _asks(reading: Reading) -> str:
    """Why a new footing there is asked how it is founded, in words; empty where it is not."""
    soil = reading.house.survey.site.soil
    if shrinks(reading):
        return "the soil is expansive"
    untested = soil.plasticity_index.value is None and soil.expansion_index.value is None
    return "clay that nobody tested may be expansive" if soil_class(reading) == _CLAY and untested else ""


def _wanting(reading: Reading, piece: InnerFoundationPiece) -> str:
    """What is missing of the answer, in words; empty where it is whole."""
    if piece.on_expansive == "not told":
        return "a report must say how it is founded: designed for it, the soil taken out, or below the active zone"
    if not piece.expansive_report:
        return "whose report says how it is founded is not told"
    if piece.on_expansive == "below the active zone":
        return "how deep the active zone goes is not told"
    if piece.on_expansive == "the soil is taken out" and reading.house.survey.site.soil.bearing_psf.value is None:
        return "what is put in its place has no presumptive value: the report must give its bearing"
    return ""
