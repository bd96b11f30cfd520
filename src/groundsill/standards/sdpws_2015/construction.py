"""What SDPWS 2015 asks of the framing, the sill bolts' washers and toenails: conditions, each answered with its reason.

Each answer is met, not met or not known; not known is never taken for met.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.sdpws_2015 import SOURCE
from groundsill.standards.sdpws_2015.symbols import TabulatedShear
from groundsill.standards.sdpws_2015.tables import (
    table_4_1_7,
    table_4_3_6_4_3,
    table_4_3_7_1,
    table_4_3_7_1_panels,
    table_4_3a_penetration,
    table_4_3b_penetration,
)
from groundsill.standards.sheathing import LOADS, one_of
from groundsill.standards.wall_construction import (
    CATEGORIES,
    Framing,
    PanelDetails,
    Washer,
    framing_asked,
    nails_reach,
    panel_details,
    toenails_within,
    washer_asked,
)
from groundsill.working.equation import Q, procedure

__all__ = [
    "framing_at_panel_edges",
    "nails_in_framing",
    "panels_on_studs",
    "toenails_allowed",
    "washer_on_sill_bolt",
]


@procedure(
    "sdpws-2015/4.3.7.1-5",
    title="3x framing where panels adjoin",
    clause="4.3.7.1 item 5",
    source=SOURCE,
    alias="sdpws.framing-3x",
)
def framing_at_panel_edges(
    nail: str,
    edge_spacing: Annotated[float, Q("in", "s", "spacing of nails along panel edges")],
    penetration: Annotated[float, Q("in", "p", "penetration of the nails into framing")],
    v_n: TabulatedShear,
    category: str,
) -> Framing:
    """Whether framing at adjoining panel edges must be 3x, or two 2x fastened together for the shear.

    Args:
        nail: ``"8d"``, ``"10d"`` ...
        edge_spacing: in.
        penetration: in.
        v_n: nominal seismic unit shear the wall is counted with, plf.
        category: seismic design category, A to F.
    """
    one_of(SOURCE.cite("4.3.3"), "category", category, CATEGORIES)
    table = table_4_3_7_1()
    return framing_asked(
        SOURCE, "4.3.7.1 item 5", table, nail, edge_spacing, penetration, v_n, category, "seismic shear"
    )


@procedure(
    "sdpws-2015/4.3.7.1",
    title="Panels on studs",
    clause="4.3.7.1",
    source=SOURCE,
    alias="sdpws.panels-on-studs",
)
def panels_on_studs(
    thickness: Annotated[float, Q("in", "t", "thickness of the panels", above=0.0)],
    stud_thickness: Annotated[float, Q("in", "b_stud", "thickness of the studs", above=0.0)] = 1.5,
    stud_spacing: Annotated[float, Q("in", "stud spacing", "spacing of the studs", above=0.0)] = 16.0,
) -> PanelDetails:
    """How panels go on studs: nails along studs between the edges, their distance from panel edges, width of a panel.

    Nails along studs stand 12 in. apart, or 6 in. where panels of 7/16 in. or less go on studs 24 in. apart.

    Raises:
        OutsideLimits: studs thinner than 2x, or more than 24 in. apart.
    """
    return panel_details(SOURCE, "4.3.7.1", table_4_3_7_1_panels(), thickness, stud_thickness, stud_spacing)


@procedure(
    "sdpws-2015/4.3A-penetration",
    title="Reach of a panel's nails into the framing",
    clause="Table 4.3A",
    source=SOURCE,
    alias="sdpws.penetration",
)
def nails_in_framing(
    nail: str,
    penetration: Annotated[float, Q("in", "p", "penetration of the nails into framing", at_least=0.0)],
    over_gypsum: bool = False,
) -> float:
    """The penetration of a panel's nails (``"8d"``), in., refused below the least that Table 4.3A asks for.

    Of a panel over gypsum (``over_gypsum``) Table 4.3B says it.

    Raises:
        OutsideLimits: for a shorter reach, or a nail that the table does not have.
    """
    return nails_reach(SOURCE, table_4_3b_penetration() if over_gypsum else table_4_3a_penetration(), nail, penetration)


@procedure(
    "sdpws-2015/4.3.6.4.3",
    title="Washers on the sill bolts of a braced line",
    clause="4.3.6.4.3",
    source=SOURCE,
    alias="sdpws.plate-washer",
)
def washer_on_sill_bolt(
    v_n: TabulatedShear,
    aspect: Annotated[float, Q("1", "h/b_s", "height over length of the segment")],
    hold_downs: bool | None,
    load: str = "seismic",
) -> Washer:
    """What the nut of each sill bolt needs under it.

    Plate washers, unless the wall's ends are held down for the whole overturning with no dead load counted, the
    segment is at most twice as high as long, and its nominal unit shear is at most 980 plf (wind 1,370): then cut
    washers serve. Above 400 plf nominal the plate reaches to within 1/2 in. of the sheathed edge.

    Args:
        v_n: nominal unit shear of the sheathing, plf.
        aspect: height over length.
        hold_downs: True when both ends are held down for the whole overturning, dead load not counted; None unknown.
        load: ``"seismic"`` or ``"wind"``.
    """
    one_of(SOURCE.cite("4.3.3"), "load", load, LOADS)
    return washer_asked(SOURCE, "4.3.6.4.3", table_4_3_6_4_3(), v_n, aspect, hold_downs, f"cut washer {load}")


@procedure(
    "sdpws-2015/4.1.7",
    title="Toenails handing on seismic force",
    clause="4.1.7",
    source=SOURCE,
    alias="sdpws.toenails",
)
def toenails_allowed(
    v: Annotated[float, Q("plf", "v", "seismic unit shear through the toenails", at_least=0.0)],
    category: str,
    level: str = "ASD",
) -> bool:
    """Whether toenails may hand on this seismic force: in categories D to F at most 150 plf (ASD) or 205 plf (LRFD).

    Args:
        v: plf at the level named.
        category: seismic design category, A to F.
        level: ``"ASD"`` or ``"LRFD"``.
    """
    one_of(SOURCE.cite("4.3.3"), "category", category, CATEGORIES)
    one_of(SOURCE.cite("4.3.3"), "level", level, ("ASD", "LRFD"))
    return toenails_within(table_4_1_7().read("toenails", level, symbol="limit"), v, category)
