"""A sheathed segment as every edition of the panel standard puts it together, each from its own tables and equations.

The editions differ in their figures, their numbering and the way from a nominal to a design value; the order of the
steps is one. An edition fills in :class:`WallRules` and its procedures call the functions here, so no edition holds a
second copy of a step. Nothing here knows a figure.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet
from groundsill.working.source import Source
from groundsill.working.steps import condition, scale
from groundsill.working.table import Table

__all__ = [
    "LOADS",
    "Face",
    "SegmentShear",
    "WallRules",
    "both_faces",
    "design_values",
    "finish_shear",
    "floor_shear",
    "one_of",
    "panel_floor_shear",
    "panel_shear",
    "perforated_within",
    "proportions_of",
    "within_proportions",
]

LOADS = ("seismic", "wind")
SHARING = ("stiffness", "strength", "perforated")

# a segment at the very limit must not fail by the last digit of a conversion; a thousandth of a foot is 1/80 in.
_CLOSE_FT = 0.001

Figure = Callable[..., float]


@dataclass(frozen=True, slots=True)
class SegmentShear:
    """Unit shear of one segment, all in plf.

    ``nominal`` as tabulated, ``adjusted`` after every factor, ``asd`` and ``lrfd`` the design values; ``factor`` is
    adjusted over nominal. ``expected`` is what the sheathing itself is expected to hold, for the order in which links
    fail: the adjusted nominal value for wind, which every edition prints alike. What an edition prints for earthquake
    may be less by a part of its safety (1.4 in 2015), and the same wall does not break sooner for that.
    """

    nominal: float
    factor: float
    adjusted: float
    asd: float
    lrfd: float
    expected: float


Face = tuple[SegmentShear, float]
"""One sheathed face: its unit shear, and its apparent shear stiffness in kip/in."""


_FIBREBOARD = "structural fibreboard"


@dataclass(frozen=True, slots=True)
class WallRules:
    """What one edition says of a sheathed segment.

    Attributes:
        source: the edition.
        unit_shears: clause of the unit shears.
        no_blocking: clause of the factor for panels without blocking.
        panels: the table of panels for a load.
        over_gypsum: the same of panels that go over gypsum board.
        pressed: the same of particleboard and structural fibreboard.
        thicker: panels that may take the value of a thicker one with the same nails, and that one.
        columns: for each load the column of the tables of boards and plaster, and the symbol of its figures.
        unblocked: the table of the factor for panels without blocking.
        gravity_factor: factor of the framing's specific gravity.
        with_15_32_value: the note by which thinner panels take the value of thicker ones.
        require_aspect: refuses proportions beyond the edition's limits.
        by_stiffness: factor of a slender segment where force is shared by stiffness.
        by_strength: the same where it is shared by strength.
        slender_fibreboard: factor of a segment of structural fibreboard higher than it is long.
        design: for each load what makes the allowable and the factored value of an adjusted nominal one.
        alike: combined nominal unit shear of two faces of one material, from each face's unit shear and stiffness.
        unlike: the same of two unlike materials, from their unit shears.
        stiffer: stiffness of both faces together.
    """

    source: Source
    unit_shears: str
    no_blocking: str
    panels: Callable[[str], Table]
    over_gypsum: Callable[[str], Table]
    pressed: Callable[[str], Table]
    thicker: Mapping[str, str]
    columns: Mapping[str, tuple[str, str]]
    unblocked: Callable[[], Table]
    gravity_factor: Figure
    with_15_32_value: Figure
    require_aspect: Figure
    by_stiffness: Figure
    by_strength: Figure
    slender_fibreboard: Figure
    design: Mapping[str, tuple[Figure, Figure]]
    alike: Figure
    unlike: Figure
    stiffer: Figure


# what the tables of greatest proportions call each row of the tables of boards and plaster
_PROPORTIONS = {
    "horizontal lumber sheathing, 1x": "horizontal lumber",
    "diagonal lumber sheathing, 1x": "diagonal lumber",
    "double diagonal lumber sheathing, 1x": "diagonal lumber",
    "vertical board siding, 1x": "vertical board siding",
    "portland cement plaster 7/8 in. on metal lath": "portland cement plaster",
}


def proportions_of(material: str) -> str:
    """What an edition's table of proportions calls a row of its tables of boards and plaster.

    Gypsum is told apart by its blocking: sheets whose edges are not all on framing count only in shorter walls.
    """
    return _PROPORTIONS.get(material, f"gypsum, {'blocked' if ', blocked' in material else 'unblocked'}")


def one_of(cite: str, argument: str, word: str, allowed: tuple[str, ...]) -> None:
    """Refuse a word that is none of those allowed, by name."""
    if word not in allowed:
        raise OutsideLimits(f"{cite}: {argument} = {word!r}; must be one of {', '.join(allowed)}")


def panel_shear(
    rules: WallRules,
    panel: str,
    edge_spacing: float,
    h: float,
    b_s: float,
    G: float,
    load: str,
    sharing: str,
    blocking: str,
    studs_close: bool,
    stud_spacing: float,
    over_gypsum: bool = False,
    further: float | None = None,
) -> SegmentShear:
    """Nominal, adjusted and design unit shear of a segment with panels on one side, by an edition's rules.

    ``further`` is one more factor on the tabulated value, where the edition knows one that applies. In a perforated
    wall the lengths of slender parts are cut, not the unit shear.
    """
    cite = rules.source.cite(rules.unit_shears)
    one_of(cite, "load", load, LOADS)
    one_of(cite, "sharing", sharing, SHARING)
    tables = rules.over_gypsum if over_gypsum else rules.panels
    tabulated = _tabulated(rules, tables(load), panel, edge_spacing, studs_close)
    light = rules.gravity_factor(G)
    if sharing == "perforated":
        one_of(cite, "blocking", blocking, ("blocked",))
        other = 1.0
    elif blocking == "blocked":
        rules.require_aspect("wood structural panel, blocked", h, b_s)
        other = rules.by_stiffness(h, b_s) if sharing == "stiffness" else rules.by_strength(h, b_s)
    else:
        rules.require_aspect("wood structural panel, unblocked", h, b_s)
        other = _unblocked(rules, blocking, edge_spacing, stud_spacing)
    factor = scale(light, other, symbol="C", label="all factors on the tabulated unit shear")
    if further is not None:
        factor = scale(factor, further, symbol="C", label="all factors on the tabulated unit shear")
    with quiet():
        for_wind = _tabulated(rules, tables("wind"), panel, edge_spacing, studs_close)
    return design_values(rules, tabulated, factor, load, for_wind)


def pressed_shear(
    rules: WallRules, material: str, edge_spacing: float, h: float, b_s: float, G: float, load: str
) -> SegmentShear:
    """Nominal and design unit shear of a segment with particleboard or structural fibreboard, by an edition's rules."""
    one_of(rules.source.cite(rules.unit_shears), "load", load, LOADS)
    tabulated = rules.pressed(load).read(material, edge_spacing)
    kind = _FIBREBOARD if material.startswith(_FIBREBOARD) else "particleboard"
    rules.require_aspect(kind, h, b_s)
    factor = rules.gravity_factor(G)
    if kind == _FIBREBOARD:
        factor = scale(factor, rules.slender_fibreboard(h, b_s), symbol="C", label="all factors on the tabulated value")
    with quiet():
        for_wind = rules.pressed("wind").read(material, edge_spacing)
    return design_values(rules, tabulated, factor, load, for_wind)


def _tabulated(rules: WallRules, table: Table, panel: str, edge_spacing: float, studs_close: bool) -> float:
    """A panel's value in a table, that of a thicker one where the studs stand close."""
    tabulated = table.read(panel, edge_spacing)
    if studs_close and panel in rules.thicker:
        return rules.with_15_32_value(tabulated, table.read(rules.thicker[panel], edge_spacing))
    return tabulated


def _unblocked(rules: WallRules, nailing: str, edge_spacing: float, stud_spacing: float) -> float:
    if float(edge_spacing) != 6.0:
        cite = rules.source.cite(rules.no_blocking)
        raise OutsideLimits(f"{cite}: edge nails at {float(edge_spacing):g} in.; unblocked panels count with 6 in.")
    return rules.unblocked().read(nailing, stud_spacing)


def finish_shear(
    rules: WallRules, table: Table, material: str, proportions: str, h: float, b_s: float, load: str
) -> SegmentShear:
    """Nominal and design unit shear of a segment with boards or plaster, by an edition's rules and one of its tables.

    ``proportions`` is what the edition's table of proportions calls the material.
    """
    one_of(rules.source.cite(rules.unit_shears), "load", load, LOADS)
    column, symbol = rules.columns[load]
    tabulated = table.read(material, column, symbol=symbol)
    rules.require_aspect(proportions, h, b_s)
    return design_values(rules, tabulated, 1.0, load, _for_wind(rules, table, material))


def _for_wind(rules: WallRules, table: Table, material: str) -> float:
    """What a table of boards or plaster prints for wind."""
    with quiet():
        return table.read(material, rules.columns["wind"][0])


def floor_shear(
    rules: WallRules,
    tables: tuple[Table, Table],
    ratio_of: Figure,
    sheathing: str,
    L: float,
    W: float,
    load: str,
) -> SegmentShear:
    """Nominal and design unit shear of a board floor; ``tables`` are its unit shears and its greatest proportions.

    Raises:
        OutsideLimits: longer over wide than the edition allows.
    """
    one_of(rules.source.cite(rules.unit_shears), "load", load, LOADS)
    column, symbol = rules.columns[load]
    tabulated = tables[0].read(sheathing, column, symbol=symbol)
    _floor_within(rules, (tables[1], ratio_of, sheathing), L, W)
    return design_values(rules, tabulated, 1.0, load, _for_wind(rules, tables[0], sheathing))


def _floor_within(rules: WallRules, proportions: tuple[Table, Figure, str], L: float, W: float) -> None:
    """Refuse a floor longer over wide than an edition allows."""
    table, ratio_of, sheathing = proportions
    limit, ratio = table.read(sheathing, symbol="limit"), ratio_of(L, W)
    met = float(ratio) <= float(limit) * (1 + 1e-9)  # not to fail by the last digit of a conversion
    place = f"Table {table.number}"
    condition(f"length over width of {sheathing} within the limit of {place}", met, ratio, limit)
    if not met:
        raise OutsideLimits(
            f"{rules.source.cite(place)}: {sheathing} {float(L):g} ft long and {float(W):g} ft wide: "
            f"L/W = {float(ratio):.3g}; must be at most {float(limit):g}"
        )


def panel_floor_shear(
    rules: WallRules,
    tables: Callable[[str], Table],
    cell: tuple[str, str],
    gravity_factor: float,
    proportions: tuple[Table, Figure, str],
    L: float,
    W: float,
    load: str,
) -> SegmentShear:
    """Nominal and design unit shear of a floor of panels.

    ``cell`` are row and column in the table of the load, ``proportions`` the table of greatest proportions, the
    equation of the ratio and the row.

    Raises:
        OutsideLimits: a row or column that the table has not, or longer over wide than the edition allows.
    """
    one_of(rules.source.cite("4.2"), "load", load, LOADS)
    tabulated = tables(load).read(*cell)
    _floor_within(rules, proportions, L, W)
    with quiet():
        for_wind = tables("wind").read(*cell)
    return design_values(rules, tabulated, gravity_factor, load, for_wind)


def design_values(rules: WallRules, tabulated: float, factor: float, load: str, for_wind: float) -> SegmentShear:
    """The adjusted nominal unit shear (tabulated times factor, plf) with its allowable and factored values.

    ``for_wind`` is what is tabulated for wind.
    """
    adjusted = scale(tabulated, factor, symbol="v_n", label="adjusted nominal unit shear")
    allowable, factored = rules.design[load]
    expected = float(for_wind) * float(factor)
    return SegmentShear(tabulated, factor, adjusted, allowable(adjusted), factored(adjusted), expected)


def both_faces(
    rules: WallRules,
    one: tuple[SegmentShear, float],
    other: tuple[SegmentShear, float],
    same: bool,
    load: str = "seismic",
) -> tuple[SegmentShear, float]:
    """Unit shear and stiffness of a segment sheathed on both faces; each face as its unit shear and its stiffness."""
    (first, G_1), (second, G_2) = one, other
    if same:
        v = rules.alike(first.adjusted, G_1, second.adjusted, G_2)
    else:
        v = rules.unlike(first.adjusted, second.adjusted)
    with quiet():
        if same:
            expected = rules.alike(first.expected, float(G_1), second.expected, float(G_2))
        else:
            expected = rules.unlike(first.expected, second.expected)
    return design_values(rules, v, 1.0, load, expected), rules.stiffer(G_1, G_2)


def perforated_within(source: Source, clause: str, table: Table, v_n: float, h: float, load: str) -> float:
    """The nominal unit shear of a perforated wall's sheathing, refused above an edition's limits.

    Raises:
        OutsideLimits: naming the unit shear or the height, and its limit.
    """
    cite, row = source.cite(clause), "perforated wall"
    one_of(cite, "load", load, LOADS)
    most, tallest = table.read(row, load, symbol="v_n"), table.read(row, "height", symbol="h")
    strong = float(v_n) <= float(most) * (1 + 1e-9)
    low = float(h) <= float(tallest) + _CLOSE_FT
    condition("nominal unit shear within the limit for perforated walls", strong, v_n, most, cite=cite)
    condition("height within the limit for perforated walls", low, h, tallest, cite=cite)
    if not strong:
        raise OutsideLimits(
            f"{cite}: nominal unit shear of a perforated wall {float(v_n):,.0f} plf; must be at most "
            f"{float(most):,.0f} plf"
        )
    if not low:
        raise OutsideLimits(f"{cite}: a perforated wall {float(h):g} ft high; must be at most {float(tallest):g} ft")
    return v_n


def within_proportions(
    source: Source, table: Table, ratio_of: Figure, sheathing: str, h: float, b_s: float, length: str
) -> float:
    """Height over length of a segment, refused above the limit of an edition's table.

    ``length`` is the edition's symbol for the length of a segment.

    Raises:
        OutsideLimits: naming the ratio and the limit.
    """
    place = f"Table {table.number}"
    limit = table.read(sheathing, symbol="limit")
    ratio = ratio_of(h, b_s)
    met = float(h) - float(limit) * float(b_s) <= _CLOSE_FT
    condition(f"height over length of {sheathing} within the limit of {place}", met, ratio, limit)
    if not met:
        raise OutsideLimits(
            f"{source.cite(place)}: {sheathing} {float(h):g} ft high and {float(b_s):g} ft long: "
            f"h/{length} = {float(ratio):.3g}; must be at most {float(limit):g}"
        )
    return ratio
