"""What a house's joints ask of the NDS, by edition: the same questions, each edition's own answers.

In: the edition that the basis goes by. Out: its rules, ready to call with the same arguments whichever edition it is.
With them come the general dowel equations and the extensions of common practice that are made of NDS's own parts.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields
from typing import Any, Final

from groundsill.standards import nds_2018, nds_2024
from groundsill.standards.awc_tr12 import general_dowel
from groundsill.standards.nds_2018 import (
    adjustment,
    bearing,
    bending,
    compression,
    expected,
    geometry,
    group_action,
    nails,
    screws,
    sill_bolt,
    tension,
    withdrawal,
)
from groundsill.standards.nds_2018.expected import ExpectedYield
from groundsill.standards.nds_2018.nails import Nail, NailLateral
from groundsill.standards.nds_2018.shear import Lateral
from groundsill.standards.nds_2024.restating import IN_PLACE
from groundsill.working.errors import UnknownFormula
from groundsill.working.source import Source
from groundsill.working.steps import given
from groundsill.working.value import Mark

__all__ = ["EDITIONS", "Nds", "rules_of"]


@dataclass(frozen=True, slots=True)
class Nds:
    """The rules of one edition: its procedures by their own names, and tables that are read row by row."""

    source: Source
    specific_gravity: Callable[[str], float]
    sill_bolt: Callable[..., Lateral]
    sill_bolt_weak_concrete: Callable[..., Lateral]
    sill_bolt_with_gap: Callable[..., general_dowel.GapJoint]
    sill_bolt_with_gap_beyond: Callable[..., general_dowel.GapJoint]
    across_gap: Callable[[Lateral, float], general_dowel.GapJoint]
    nail: Callable[..., NailLateral]
    nail_size: Callable[[str], Nail]
    toenail: Callable[..., NailLateral]
    nail_steel_plate: Callable[..., NailLateral]
    wood_screw_steel_plate: Callable[..., Lateral]
    lag_screw_steel_plate: Callable[..., Lateral]
    screw_diameter: Callable[[str], float]
    adjusted_lateral: Callable[..., float]
    group_action_factor: Callable[..., float]
    slip_modulus_wood: Callable[[float], float]
    slip_modulus_metal: Callable[[float], float]
    geometry_factor: Callable[..., float]
    edge_distance_met: Callable[..., float]
    end_distance_factor: Callable[..., float]
    end_distance: Callable[[str, str], float]
    toenail_factor: Callable[[str], float]
    wet_service_factor: Callable[[str], float]
    expected_of: Callable[[Lateral | NailLateral], ExpectedYield]
    nail_withdrawal: Callable[[float, float], float]
    adjusted_withdrawal: Callable[..., float]
    perpendicular_value: Callable[..., float]
    post_value: Callable[..., float]
    pulled_post: Callable[..., tension.PulledPost]
    beam_values: Callable[..., bending.Beam]
    stability_modulus: Callable[[str, str], float]
    slip_modulus_wood_concrete: Callable[[float], float]

    @property
    def document(self) -> str:
        """The id of the edition."""
        return self.source.id

    def cite(self, clause: str) -> str:
        """Edition and clause, as printed: ``NDS 2018 12.3.1``."""
        return self.source.cite(clause)


def _end_distance(load: str, which: str) -> float:
    """The end distance in diameters, ``"full"`` or ``"least"`` (Table 12.5.1A)."""
    return geometry.table_12_5_1a().read(load, which, symbol="n_min" if which == "least" else "n_full")


def _toenail_factor(driven: str) -> float:
    """The toenail factor C_tn (12.5.4)."""
    return adjustment.table_12_5_4().read(driven)


def _wet_service_factor(moisture: str) -> float:
    """The wet service factor C_M of dowels loaded laterally (Table 11.3.3)."""
    return adjustment.table_11_3_3_lateral().read(moisture)


def _stability_modulus(species: str, grade: str) -> float:
    """The modulus for stability E_min, psi; the least of the table for a species that it does not hold (Table 4A)."""
    table = compression.table_4a_modulus()
    if species in table.rows:
        return table.read(species, grade, symbol="E")
    least = min(table.rows, key=lambda row: float(table.rows[row][table.columns.index(grade)]))
    doubt = Mark("assumed range", "wood that the table of moduli does not hold: its least modulus")
    return given("E", float(table.read(least, grade, symbol="E")), "psi", "the least modulus of the table", (doubt,))


def _screw_diameter(number: str) -> float:
    """The nominal diameter of a wood screw by its number, in. (Table L3)."""
    return screws.screw_size(number).D


_2018: Final = Nds(
    nds_2018.SOURCE,
    bearing.specific_gravity,
    sill_bolt.sill_bolt,
    sill_bolt.sill_bolt_weak_concrete,
    general_dowel.sill_bolt_with_gap,
    general_dowel.sill_bolt_with_gap_beyond,
    general_dowel.across_gap,
    nails.nail,
    nails.nail_size,
    nails.toenail,
    nails.nail_steel_plate,
    screws.wood_screw_steel_plate,
    screws.lag_screw_steel_plate,
    _screw_diameter,
    adjustment.adjusted_lateral,
    group_action.group_action_factor,
    group_action.slip_modulus_wood,
    group_action.slip_modulus_metal,
    geometry.geometry_factor,
    geometry.edge_distance_met,
    geometry.end_distance_factor,
    _end_distance,
    _toenail_factor,
    _wet_service_factor,
    expected.expected_of,
    withdrawal.nail_withdrawal,
    adjustment.adjusted_withdrawal,
    compression.perpendicular_value,
    compression.post_value,
    tension.pulled_post,
    bending.beam_values,
    _stability_modulus,
    group_action.slip_modulus_wood_concrete,
)


def _later() -> Nds:
    """The rules of the 2024 edition: those of 2018, each run with the later edition read in its place."""
    rules: dict[str, Any] = {f.name: IN_PLACE.running(getattr(_2018, f.name)) for f in fields(Nds)[1:]}
    return Nds(nds_2024.SOURCE, **rules)


_RULES: Final = (_2018, _later())

EDITIONS: Final = tuple(rules.document for rules in _RULES)


def rules_of(document: str) -> Nds:
    """The rules of an edition (``nds-2018``).

    Raises:
        UnknownFormula: for an edition that is not in the program; the message names those there are.
    """
    for rules in _RULES:
        if rules.document == document:
            return rules
    raise UnknownFormula(f"no joint is worked out by {document}; it is one of {', '.join(EDITIONS)}")
