"""A3.2.7 as proposed: shear of existing sill bolts in existing concrete by the wood table, without a concrete check.

The proposal goes beyond the building code's exception to footings that nobody cored. It was proposed, and is in force
nowhere that this program knows of: what rests on it is a named extension, never more than indicated.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.conditions import Condition
from groundsill.standards.ibc_2021.sill_anchors import table_1905_1_8
from groundsill.standards.seaonc_2016 import SOURCE
from groundsill.working.equation import Q, procedure
from groundsill.working.steps import condition, scale
from groundsill.working.table import Table

__all__ = ["existing_sill_bolt", "table_a3_2_7"]


def table_a3_2_7() -> Table:
    """The limits of the proposal, one column each."""
    return Table.load(__package__, "tables/a3_2_7.toml")


@procedure(
    "seaonc-2016/A3.2.7",
    title="Existing sill bolt by the wood table, in an existing footing",
    clause="A3.2.7",
    source=SOURCE,
    alias="seaonc.existing-sill-bolt",
)
def existing_sill_bolt(
    existing: bool,
    d_a: Annotated[float, Q("in", "d_a", "bolt diameter", above=0.0)] | None = None,
    sill_nominal: Annotated[float, Q("in", "t_nom", "nominal thickness of the sill", above=0.0)] | None = None,
    concrete_sound: bool | None = None,
    sill_sound: bool | None = None,
    little_rust: bool | None = None,
    edge: Annotated[float, Q("in", "c_a1", "distance to the edge along the wall", at_least=0.0)] | None = None,
    end: Annotated[float, Q("in", "c_a2", "distance to the end of the concrete", at_least=0.0)] | None = None,
    spacing: Annotated[float, Q("ft", "s", "widest spacing of the bolts", at_least=0.0)] | None = None,
    panels: bool = True,
    bolts: Annotated[float, Q("1", "n", "bolts that count in the wall segment", at_least=0.0)] | None = None,
) -> tuple[Condition, ...]:
    """Each condition of the proposal for one bolt; None stands for a fact nobody knows yet.

    Args:
        existing: whether the bolt is one found in place; new ones go by the building code.
        d_a: bolt diameter, in.
        sill_nominal: nominal sill thickness, 2 or 3 in.
        concrete_sound: whether the concrete is sound.
        sill_sound: whether the sill is in good condition.
        little_rust: whether the bolt shows no extensive corrosion.
        edge: from the bolt to the concrete's edge that runs along the sill, in.
        end: from the bolt to the end of the concrete, in.
        spacing: widest spacing of the bolts in the wall segment, ft.
        panels: whether wood structural panels sheathe it.
        bolts: how many bolts count in it.

    Nut, washer, a tight fit and a bolt that stands straight are asked of every bolt before it counts at all. Where the
    bolt must lie in the concrete is the building code's: edge and end as in its own exception.
    """
    found = (
        _asked("a bolt found in place", existing),
        _asked("2x or 3x sill", None if sill_nominal is None else sill_nominal in (2, 3), sill_nominal),
        _asked("sound concrete", concrete_sound),
        _asked("sill in good condition", sill_sound),
        _asked("bolt without heavy rust", little_rust),
    )
    return (*found, *_measured(d_a, edge, end), *_in_the_row(spacing, panels, bolts))


def _measured(d_a: float | None, edge: float | None, end: float | None) -> tuple[Condition, ...]:
    """The bolt's size, and where it lies in the concrete."""
    limits, code = table_a3_2_7(), table_1905_1_8()
    thin = limits.read("limit", "bolt diameter, at least", "d_a,min")
    thick = limits.read("limit", "bolt diameter, at most", "d_a,max")
    side = code.read("limit", "edge along the sill, at least", "c_a1,min")
    diameters = code.read("limit", "end distance in diameters, at least", "n")
    far = None if d_a is None else scale(d_a, diameters, symbol="c_a2,min", label="least end distance")
    far_enough = None if end is None or far is None else end >= far
    return (
        _asked("bolt from 1/2 to 3/4 in. thick", None if d_a is None else thin <= d_a <= thick, d_a),
        _asked("at least 1-3/4 in. from the edge along the sill", None if edge is None else edge >= side, edge, side),
        _asked("at least 15 bolt diameters from the end of the concrete", far_enough, end, far),
    )


def _in_the_row(spacing: float | None, panels: bool, bolts: float | None) -> tuple[Condition, ...]:
    """How many bolts the wall segment has, and how far apart."""
    limits = table_a3_2_7()
    which = "spacing under panels, at most" if panels else "spacing under other walls, at most"
    wide = limits.read("limit", which, "s_max")
    few = limits.read("limit", "bolts in each wall segment, at least", "n_min")
    apart = f"bolts at most {float(wide):g} ft apart under {'panels' if panels else 'old finishes'}"
    enough = f"at least {float(few):g} bolts in the wall segment"
    return (
        _asked(apart, None if spacing is None else spacing <= wide, spacing, wide),
        _asked(enough, None if bolts is None else bolts >= few, bolts, few),
    )


def _asked(text: str, met: bool | None, *numbers: float | None) -> Condition:
    condition(text, met, *(n for n in numbers if n is not None), cite=SOURCE.cite("A3.2.7"))
    return Condition(text, met)
