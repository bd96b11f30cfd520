"""How a sheathed wall is put together, as every edition of the panel standard asks, each by its own figures.

Framing where panels meet, studs and nails under panels, washers on sill bolts, toenails: conditions, each answered with
its reason. Nothing here knows a figure.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.working.errors import OutsideLimits
from groundsill.working.source import Source
from groundsill.working.steps import condition
from groundsill.working.table import Table

__all__ = [
    "CATEGORIES",
    "Framing",
    "PanelDetails",
    "Washer",
    "framing_asked",
    "nails_reach",
    "panel_details",
    "toenails_within",
    "washer_asked",
]

CATEGORIES = ("A", "B", "C", "D", "E", "F")
HIGH_CATEGORIES = ("D", "E", "F")

_CLOSE_IN = 0.005  # what two tapes may differ by at a limit


@dataclass(frozen=True, slots=True)
class Framing:
    """Whether adjoining panel edges need 3x framing (or two 2x stitched), and each condition that asks for it.

    Nails that stitch two 2x stand in two staggered rows where they are closer than ``stagger_below_in``.
    """

    needs_3x: bool
    reasons: tuple[str, ...]
    stagger_below_in: float


@dataclass(frozen=True, slots=True)
class PanelDetails:
    """How panels are put on a wall, inches: nails along studs away from the edges, nail to panel edge, panel width, and
    the widest spacing of studs.
    """

    field_nails_in: float
    nail_to_edge_in: float
    panel_width_in: float
    widest_studs_in: float


@dataclass(frozen=True, slots=True)
class Washer:
    """What sill bolts of a braced line need under the nut: None is "cannot tell from what is known".

    ``plate``: a plate washer; ``to_sheathed_edge``: its edge within 1/2 in. of the sill's sheathed edge.
    """

    plate: bool | None
    to_sheathed_edge: bool
    reasons: tuple[str, ...]


def framing_asked(
    source: Source, clause: str, table: Table, nail: str, edge_spacing: float, penetration: float, v_n: float,
    category: str, nominal: str,
) -> Framing:  # fmt: skip
    """Whether adjoining panel edges need 3x framing by an edition's bounds; ``nominal`` names its unit shear."""
    row = "3x framing"
    close = table.read(row, "edge nails at or below")
    close_10d, deep = table.read(row, "10d nails at or below"), table.read(row, "10d penetration above")
    strong = table.read(row, f"nominal {nominal} above")
    tests: tuple[tuple[str, bool], ...] = (
        (f"edge nails {float(close):g} in. apart or closer", edge_spacing <= close),
        (
            f"10d nails {float(close_10d):g} in. apart or closer, more than {float(deep):g} in. into the framing",
            nail == "10d" and edge_spacing <= close_10d and penetration > deep,
        ),
        (
            f"nominal {nominal.replace('shear', 'unit shear')} above {float(strong):g} plf in category D, E or F",
            category in HIGH_CATEGORIES and v_n > strong,
        ),
    )
    for text, met in tests:
        condition(text, met, cite=source.cite(clause))
    reasons = tuple(text for text, met in tests if met)
    return Framing(bool(reasons), reasons, float(table.read(row, "stitch nails staggered below")))


def panel_details(
    source: Source, clause: str, table: Table, thickness: float, stud_thickness: float, stud_spacing: float
) -> PanelDetails:
    """How panels go on studs by an edition's figures.

    Raises:
        OutsideLimits: studs too thin, or too far apart, for any value of the table.
    """
    row = "sheathing"
    thinnest, widest = table.read(row, "least stud thickness"), table.read(row, "greatest stud spacing")
    thick = float(stud_thickness) >= float(thinnest) - _CLOSE_IN
    near = float(stud_spacing) <= float(widest) + _CLOSE_IN
    cite = source.cite(clause)
    condition(f"studs at least {float(thinnest):g} in. thick", thick, stud_thickness, thinnest, cite=cite)
    condition(f"studs at most {float(widest):g} in. apart", near, stud_spacing, widest, cite=cite)
    if not thick or not near:
        raise OutsideLimits(
            f"{cite}: studs {float(stud_thickness):g} in. thick and {float(stud_spacing):g} in. apart; must be at "
            f"least {float(thinnest):g} in. thick and at most {float(widest):g} in. apart"
        )
    thin_panel = float(thickness) <= float(table.read(row, "thin panel up to")) + _CLOSE_IN
    wide = float(stud_spacing) >= float(table.read(row, "wide studs from")) - _CLOSE_IN
    nails = "field nails, thin panel on wide studs" if thin_panel and wide else "field nails"
    field, edge, width = (table.read(row, column) for column in (nails, "nail to panel edge", "panel width"))
    return PanelDetails(float(field), float(edge), float(width), float(widest))


def nails_reach(source: Source, table: Table, nail: str, penetration: float) -> float:
    """The penetration of a panel's nails, refused below the least of an edition's table.

    Raises:
        OutsideLimits: naming the nail, the penetration and the least.
    """
    least_in = table.read(nail, symbol="p_min")
    met = float(penetration) >= float(least_in) - _CLOSE_IN
    condition(f"{nail} nails reach at least {float(least_in):g} in. into the framing", met, penetration, least_in)
    if not met:
        raise OutsideLimits(
            f"{source.cite(f'Table {table.number}')}: {nail} nails reach {float(penetration):.3g} in. into the "
            f"framing; must be at least {float(least_in):g} in."
        )
    return penetration


def washer_asked(
    source: Source, clause: str, table: Table, v_n: float, aspect: float, hold_downs: bool | None, most: str
) -> Washer:
    """What the nut of each sill bolt needs by an edition's bounds; ``most`` is the column of the cut-washer's limit."""
    row = "plate washer"
    limit = table.read(row, most)
    slender = table.read(row, "cut washer h/b")
    edge_from = table.read(row, "edge rule above")
    cite = source.cite(clause)
    tests = (
        ("ends held down for the whole overturning, dead load not counted", hold_downs),
        (f"segment at most {float(slender):g} times as high as long", aspect <= slender),
        (f"nominal unit shear at most {float(limit):,.0f} plf", v_n <= limit),
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


def toenails_within(most: float, v: float, category: str) -> bool:
    """Whether toenails may hand on a seismic unit shear: in categories D to F no more than ``most``."""
    met = category not in HIGH_CATEGORIES or v <= most
    condition(f"category {category}: at most {float(most):g} plf through toenails where D to F", met, v, most)
    return met
