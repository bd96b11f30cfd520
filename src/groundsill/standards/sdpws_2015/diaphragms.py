"""Board floors as diaphragms (SDPWS 2015, 4.2): the old floor that hands the force to the braced lines."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import SOURCE
from groundsill.standards.sdpws_2015.symbols import ShearStiffness, WallShear
from groundsill.standards.sdpws_2015.tables import table_4_2_4, table_4_2d
from groundsill.standards.sdpws_2015.unit_shear import RULES
from groundsill.standards.sheathing import SegmentShear, floor_shear
from groundsill.working.equation import Q, equation, procedure

__all__ = ["diaphragm_deflection", "diaphragm_ratio", "lumber_diaphragm_shear"]

SpanLength = Annotated[float, Q("ft", "L", "length of the diaphragm, line to line", above=0.0)]
SpanWidth = Annotated[float, Q("ft", "W", "width of the diaphragm in the direction of force", above=0.0)]


@equation(
    "sdpws-2015/4.2.4-ratio",
    title="Length over width of the diaphragm",
    clause="4.2.4",
    source=SOURCE,
)
def diaphragm_ratio(L: SpanLength, W: SpanWidth) -> Annotated[float, Q("1", "L/W", "length over width")]:
    """The proportions that Table 4.2.4 limits, ft over ft.

    Source: SDPWS 2015, 4.2.4, the clause by public notes on the document (github.com/wcfrobert/wcfrobert.github.io,
    _posts/2022-05-06-seismic.markdown, 8.2; the table is a picture there and was not read). 30 by 20 ft: 1.5 (our own
    arithmetic).
    """
    return L / W


@procedure(
    "sdpws-2015/4.2D-lumber",
    title="Unit shear of a board floor or roof",
    clause="4.2.3, 4.2.4 and Table 4.2D",
    source=SOURCE,
    alias="sdpws.lumber-diaphragm",
)
def lumber_diaphragm_shear(sheathing: str, L: SpanLength, W: SpanWidth, load: str = "seismic") -> SegmentShear:
    """Nominal and design unit shear of a diaphragm of boards.

    Args:
        sheathing: row of Table 4.2D (``"straight lumber sheathing, 1x"``, ``"diagonal lumber sheathing, 1x"``).
        L: length between the braced lines, ft.
        W: width in the direction of the force, ft.
        load: ``"seismic"`` or ``"wind"``.

    Raises:
        OutsideLimits: unknown sheathing, or longer over wide than Table 4.2.4 allows.
    """
    return floor_shear(RULES, (table_4_2d(), table_4_2_4()), diaphragm_ratio, sheathing, L, W, load)


@equation(
    "sdpws-2015/4.2-1",
    title="Deflection of a diaphragm",
    clause="Eq. 4.2-1",
    source=SOURCE,
    witness="0.0973 in. (deck of a canopy in notes of github.com/winedarksea/TypeHaus)",
    constants={5: "in/ft", 1000: "lb/kip"},
)
def diaphragm_deflection(
    v: WallShear,
    L: SpanLength,
    E: Annotated[float, Q("psi", "E", "modulus of elasticity of the chords", above=0.0)],
    A: Annotated[float, Q("in^2", "A", "cross-section of one chord", above=0.0)],
    W: SpanWidth,
    G_a: ShearStiffness,
    Sum_x_Delta: Annotated[
        float,
        Q("ft-in", "Sum_x_Delta_c", "chord splice slips times distance to the nearer support", at_least=0.0),
    ],
) -> Annotated[float, Q("in", "δ_dia", "deflection at midspan")]:
    """The midspan movement: 5 v L^3/(8 E A W) + 0.25 v L/(1000 G_a) + Sum(x Delta_c)/(2 W).

    ``v`` plf at strength level, ``L`` and ``W`` ft, ``E`` psi, ``A`` in2, ``G_a`` kip/in; the 5 holds feet to inches.
    Source: SDPWS 2015, Eq. 4.2-1, as worked in a public note (7d of a canopy's lateral note,
    github.com/winedarksea/TypeHaus); its first and last terms also in IBC Eq. 23-1 at
    https://up.codes/s/diaphragm-deflection . 100 plf, 30 ft, 1.4e6, 10.5, 20 ft, 1.5, 0: 0.506 in. (our arithmetic).
    """
    return 5 * v * L**3 / (8 * E * A * W) + 0.25 * v * L / (1000 * G_a) + Sum_x_Delta / (2 * W)
