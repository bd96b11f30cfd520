"""Sheathing on both faces, or two layers (SDPWS 2015, 4.3.3.3): what may be added, and what may not.

Nominal values in plf. Boards under panels on one face are unlike materials: they do not simply add.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import SOURCE
from groundsill.working.equation import Q, equation

__all__ = ["added_stiffness", "panel_with_gypsum_wind", "same_material", "unlike_materials"]

OneFace = Annotated[float, Q("plf", "v_1", "nominal unit shear of one face", above=0.0)]
OtherFace = Annotated[float, Q("plf", "v_2", "nominal unit shear of the other face", above=0.0)]
OneStiffness = Annotated[float, Q("kip/in", "G_a1", "apparent shear stiffness of one face", above=0.0)]
OtherStiffness = Annotated[float, Q("kip/in", "G_a2", "apparent shear stiffness of the other face", above=0.0)]


@equation(
    "sdpws-2015/4.3-3",
    title="Stiffness of two faces of one material",
    clause="4.3.3.3.1, Eq. 4.3-3",
    source=SOURCE,
    how="from memory",
)
def added_stiffness(
    G_a1: OneStiffness, G_a2: OtherStiffness
) -> Annotated[float, Q("kip/in", "G_ac", "combined apparent shear stiffness")]:
    """The apparent shear stiffness of a wall with the same kind of sheathing on both faces: the sum, kip/in.

    Source: SDPWS 2015, Eq. 4.3-3 (number from memory). 13 and 19: 32 kip/in (our own arithmetic).
    """
    return G_a1 + G_a2


@equation(
    "sdpws-2015/4.3-4",
    title="Strength of two faces of one material",
    clause="4.3.3.3.1, Eq. 4.3-4",
    source=SOURCE,
    how="from memory",
)
def same_material(
    v_1: OneFace, G_a1: OneStiffness, v_2: OtherFace, G_a2: OtherStiffness
) -> Annotated[float, Q("plf", "v_sc", "combined nominal unit shear")]:
    """The nominal unit shear of the same kind of sheathing on both faces, when nailing or thickness differ.

    The face that is strained to its strength first stops the other: the lesser v/G_a times the summed stiffness.
    Equal faces give twice one face. plf. Source: SDPWS 2015, Eq. 4.3-4 (number from memory). 520 plf at 13 and 760 at
    19 kip/in: 1,280 plf (our own arithmetic).
    """
    return min(v_1 / G_a1, v_2 / G_a2) * (G_a1 + G_a2)


@equation(
    "sdpws-2015/4.3.3.3.2",
    title="Strength of two unlike materials",
    clause="4.3.3.3.2",
    source=SOURCE,
    witness="670 and 350 plf: 700 plf (fixture G9 of a public plan)",
)
def unlike_materials(v_1: OneFace, v_2: OtherFace) -> Annotated[float, Q("plf", "v_sc", "combined nominal unit shear")]:
    """The nominal unit shear of a wall with unlike materials on its faces: twice the lesser, or the greater alone.

    plf. Source: SDPWS 2015, 4.3.3.3.2, which is 4.3.5.4.2 of 2021 as quoted in github.com/rohreng/anderson-rohr-calcs,
    docs/stacked-wood-qaqc-2026-09/B-shearwall-code-audit.md
    (there also for a blocked and an unblocked face). Panels of 760 with boards of 100: 760 plf; 670 with 350: 700 plf.
    """
    return max(2 * min(v_1, v_2), v_1, v_2)


@equation(
    "sdpws-2015/4.3.3.3.2-exception",
    title="Panels with gypsum, wind",
    clause="4.3.3.3.2, exception",
    source=SOURCE,
    witness="670 and 350 plf: 1,020 plf (fixture G9 of a public plan)",
)
def panel_with_gypsum_wind(
    v_1: OneFace, v_2: OtherFace
) -> Annotated[float, Q("plf", "v_wc", "combined nominal unit shear, wind")]:
    """Against wind only, panels on one face and gypsum on the other add, plf.

    Source: exception to SDPWS 2015, 4.3.3.3.2, which is that of 4.3.5.4.2 of 2021, as quoted in
    github.com/rohreng/anderson-rohr-calcs, docs/stacked-wood-qaqc-2026-09/B-shearwall-code-audit.md. 670 and 350:
    1,020 plf (fixture G9 of its gypsum plan).
    """
    return v_1 + v_2
