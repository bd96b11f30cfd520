"""What SDPWS 2015 asks of the framing, the sill bolts' washers and toenails: conditions, each answered with its reason.

Each answer is met, not met or not known; not known is never taken for met.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.sdpws_2015 import SOURCE
from groundsill.standards.sdpws_2015.symbols import TabulatedShear
from groundsill.standards.sdpws_2015.tables import table_4_1_7, table_4_3_6_4_3, table_4_3_7_1
from groundsill.standards.sdpws_2015.unit_shear import one_of
from groundsill.working.equation import Q, procedure
from groundsill.working.steps import condition

__all__ = ["Framing", "Washer", "framing_at_panel_edges", "toenails_allowed", "washer_on_sill_bolt"]

_CATEGORIES = ("A", "B", "C", "D", "E", "F")
_HIGH = ("D", "E", "F")


@dataclass(frozen=True, slots=True)
class Framing:
    """Whether adjoining panel edges need 3x framing (or two 2x stitched), and each condition that asks for it."""

    needs_3x: bool
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Washer:
    """What sill bolts of a braced line need under the nut: None is "cannot tell from what is known".

    ``plate``: a plate washer; ``to_sheathed_edge``: its edge within 1/2 in. of the sill's sheathed edge.
    """

    plate: bool | None
    to_sheathed_edge: bool
    reasons: tuple[str, ...]


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
    one_of("category", category, _CATEGORIES)
    table, row = table_4_3_7_1(), "3x framing"
    close = table.read(row, "edge nails at or below")
    close_10d, deep = table.read(row, "10d nails at or below"), table.read(row, "10d penetration above")
    strong = table.read(row, "nominal seismic shear above")
    tests = (
        (f"edge nails {float(close):g} in. apart or closer", edge_spacing <= close),
        (
            f"10d nails {float(close_10d):g} in. apart or closer, more than {float(deep):g} in. into the framing",
            nail == "10d" and edge_spacing <= close_10d and penetration > deep,
        ),
        (
            f"nominal seismic unit shear above {float(strong):g} plf in category D, E or F",
            category in _HIGH and v_n > strong,
        ),
    )
    for text, met in tests:
        condition(text, met, cite=SOURCE.cite("4.3.7.1 item 5"))
    reasons = tuple(text for text, met in tests if met)
    return Framing(bool(reasons), reasons)


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
    one_of("load", load, ("seismic", "wind"))
    table, row = table_4_3_6_4_3(), "plate washer"
    most = table.read(row, f"cut washer {load}")
    slender = table.read(row, "cut washer h/b")
    edge_from = table.read(row, "edge rule above")
    cite = SOURCE.cite("4.3.6.4.3")
    tests = (
        ("ends held down for the whole overturning, dead load not counted", hold_downs),
        (f"segment at most {float(slender):g} times as high as long", aspect <= slender),
        (f"nominal unit shear at most {float(most):,.0f} plf", v_n <= most),
    )
    for text, met in tests:
        condition(text, met, cite=cite)
    edge = bool(v_n > edge_from)
    condition(f"nominal unit shear above {float(edge_from):g} plf: plate to the sheathed edge", edge, cite=cite)
    failed = tuple(f"not so: {text}" for text, met in tests if met is False)
    unknown = tuple(f"not known: {text}" for text, met in tests if met is None)
    if failed:
        return Washer(True, edge, failed)
    if unknown:
        return Washer(None, edge, unknown)
    return Washer(False, edge, ("cut washers serve: every condition of the exception is met",))


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
    one_of("category", category, _CATEGORIES)
    one_of("level", level, ("ASD", "LRFD"))
    most = table_4_1_7().read("toenails", level, symbol="limit")
    met = category not in _HIGH or v <= most
    condition(f"category {category}: at most {float(most):g} plf through toenails where D to F", met, v, most)
    return met
