"""The old foundation, stretch by stretch, with its breaks and its tests."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.house.fact import Fact, about, unknown

__all__ = ["Foundation", "FoundationBreak", "FoundationSegment", "FoundationTest"]


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundationSegment:
    """A stretch of foundation under a line, of one material and section."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    material: Literal["poured concrete", "brick", "stone", "block", "none", "not seen"] = about("Material")
    year: Fact[float] = about("Year it was made, where not with the house", least=1700, most=2100, factory=unknown)
    top_width_in: Fact[float] = about("Width at the top", unit="in", least=2, most=60, factory=unknown)
    top_z_in: Fact[float] = about("Top above the height datum", unit="in", least=-600, most=600, factory=unknown)
    top_slope: Fact[float] = about("Slope of the top along the line, rise over run", least=-2, most=2, factory=unknown)
    above_inside_soil_in: Fact[float] = about(
        "Top above the soil inside", unit="in", least=-120, most=240, factory=unknown
    )
    above_outside_soil_in: Fact[float] = about(
        "Top above the soil outside",
        unit="in",
        help="negative: soil stands above the top, against the wood",
        least=-120,
        most=240,
        factory=unknown,
    )
    siding_above_soil_in: Fact[float] = about(
        "Lowest siding above the soil outside",
        unit="in",
        help="negative: soil stands against the siding",
        least=-120,
        most=240,
        factory=unknown,
    )
    outside_use: Fact[str] = about(
        "What the ground within six feet outside carries",
        choices=("level garden", "slope", "driveway or parking", "stored load"),
        factory=unknown,
    )
    drains_to_daylight: Fact[bool] = about(
        "A trench along it could drain to lower open ground",
        measure="level and tape from a foot below the sill to where the ground is lower",
        factory=unknown,
    )
    footing_width_in: Fact[float] = about(
        "Width of the footing",
        unit="in",
        measure="dig at one place inside; mostly unknown",
        least=2,
        most=96,
        factory=unknown,
    )
    footing_thickness_in: Fact[float] = about("Thickness of the footing", unit="in", least=0, most=60, factory=unknown)
    depth_in: Fact[float] = about(
        "Bottom of the footing below the soil outside", unit="in", least=0, most=240, factory=unknown
    )
    paved_outside: Fact[bool] = about("Paved against it outside", factory=unknown)
    strength_psi: Fact[float] = about(
        "Concrete strength",
        unit="psi",
        measure="core, or rebound with cores; a probe says only whether it is soft",
        least=100,
        most=12000,
        factory=unknown,
    )
    pour: Fact[str] = about(
        "Which pour it is of",
        help="stretches with the same word, year and condition are one concrete: cores of one speak for all",
        measure="same aggregate, colour and board marks, no joint between; say in how what you saw",
        factory=unknown,
    )
    condition: Fact[str] = about("Condition", choices=("sound", "weathered", "crumbling"), factory=unknown)
    lean_in_per_ft: Fact[float] = about(
        "Lean, inches in a foot of height",
        help="positive: its top leans outward",
        unit="in/ft",
        least=-6,
        most=6,
        factory=unknown,
    )
    lean_moving: Fact[bool] = about(
        "Its lean still grows", measure="plumb marks read over a wet and a dry season", factory=unknown
    )
    lean_signs: Fact[str] = about(
        "What tells how old the lean is",
        help="work on the house that was made to fit it as it leans is older than that work",
        choices=("later work fits it", "old paint or dirt in its gaps", "fresh gaps"),
        measure="paint, trim, siding and floors where they meet it",
        factory=unknown,
    )
    drainage_mended_year: Fact[float] = about(
        "Year in which the drainage there was mended", least=1850, most=2100, factory=unknown
    )
    wet_side: Fact[str] = about(
        "Side on which the ground there is wet",
        choices=("outside", "inside", "both", "neither"),
        measure="look after rain and in a dry month: stains, moss, soft ground, leaders, drains",
        factory=unknown,
    )
    load_added: Fact[bool] = about(
        "Load added over it since it was built",
        help="a storey, a dormer, a heavier roof, a tub, a chimney",
        factory=unknown,
    )
    reinforced: Fact[bool] = about("Reinforced", factory=unknown)
    edge_bar: Fact[bool] = about(
        "A No. 4 bar or larger along its top, between the bolts and the face",
        measure="cover meter along the top, and one place opened to see the bar",
        factory=unknown,
    )
    wythes: Fact[float] = about("Wythes of brick", least=1, most=6, factory=unknown)
    mortar: Fact[str] = about(
        "Mortar", choices=("hard", "soft", "missing"), measure="scratch with a screwdriver", factory=unknown
    )
    header_course: Fact[bool] = about("Header courses seen", factory=unknown)
    header_percent: Fact[float] = about(
        "Headers, percent of the face", measure="count bricks over a square yard", least=0, most=100, factory=unknown
    )
    header_clear_in: Fact[float] = about(
        "Clear distance between headers",
        unit="in",
        help="up and down or along, whichever is more",
        least=0,
        most=240,
        factory=unknown,
    )
    collar_joint_filled: Fact[bool] = about("Collar joint filled", factory=unknown)


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundationBreak:
    """A place where the foundation is cut through: it parts one foundation body from the next."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    station_in: float = about("Station", unit="in", least=0, most=6000)
    kind: Literal["full-depth crack", "crack", "cold joint", "step", "gap"] = "crack"
    width_in: Fact[float] = about(
        "Width", unit="in", help="where it is widest", measure="feeler or crack card", least=0, most=24, factory=unknown
    )
    bottom_width_in: Fact[float] = about(
        "Width at its lower end",
        unit="in",
        help="a taper tells which way the ground gave",
        least=0,
        most=24,
        factory=unknown,
    )
    offset_in: Fact[float] = about(
        "Offset across it, up and down",
        unit="in",
        measure="straightedge along the top, or the sill's underside",
        least=0,
        most=24,
        factory=unknown,
    )
    lateral_offset_in: Fact[float] = about(
        "Offset across it, out of the wall's face",
        unit="in",
        measure="straightedge along the face",
        least=0,
        most=24,
        factory=unknown,
    )
    pattern: Fact[str] = about(
        "How it runs", choices=("vertical", "diagonal", "horizontal", "stepped"), factory=unknown
    )
    section_lost: Fact[bool] = about("Concrete crushed, loose or missing along it", factory=unknown)
    signs: Fact[str] = about(
        "What its faces tell of its age",
        choices=("old paint or dirt in it", "filled and still closed", "filled and open again", "clean and sharp"),
        factory=unknown,
    )
    moving: Fact[bool] = about(
        "Still moving", measure="a gauge across it, read over a wet and a dry season", factory=unknown
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundationTest:
    """A probe, rebound reading, core, mortar shear test or anchor test."""

    order: float = 0
    mark: str = ""
    segment: str = about("Foundation segment", refers="foundation.segments")
    station_in: float = about("Station", unit="in", least=0, most=6000)
    kind: Literal["probe", "rebound", "core", "mortar shear", "anchor pull", "anchor shear", "torque"] = "probe"
    result: float = about("Result", help="in the unit named beside it", least=0, most=1000000)
    unit: str = about("Unit of the result", help="in, rebound number, psi, lb, lb-ft")
    displacement_in: float | None = about("Displacement at that result", unit="in", least=0, most=12, default=None)
    count: int = about("How many were tested alike; the result is the least of them", least=1, most=500, default=1)
    anchor: Literal["", "old", "new"] = about("Anchor tested: one found in place, or a new one", default="")
    anchor_kind: Literal[
        "", "cast-in", "adhesive", "expansion", "screw", "grouted", "through-bolt", "embedded at 22.5 degrees"
    ] = about("Kind of that anchor", default="")
    anchor_diameter_in: float | None = about("Diameter of that anchor", unit="in", least=0.25, most=1.5, default=None)
    anchor_embedment_in: float | None = about(
        "Embedment of that anchor", unit="in", help="left out where nobody knows it", least=0, most=36, default=None
    )
    anchor_edge_in: float | None = about(
        "That anchor's centre to the nearest face of the concrete", unit="in", least=0, most=24, default=None
    )
    # cores of concrete, read in house/cores.py
    core_diameter_in: float | None = about("Diameter of that core", unit="in", least=1, most=12, default=None)
    core_length_in: float | None = about(
        "Length of that core as tested, with its caps", unit="in", least=1, most=24, default=None
    )
    core_moisture: Literal["", "as received", "soaked", "dried"] = about(
        "How that core was kept before the test",
        help="soaked: 48 hours in water; left out counts as received",
        default="",
    )
    core_corrected: bool = about("The result is already corrected for the length of that core", default=False)
    bed_joints_in2: float | None = about(
        "Mortar shear: area of the bed joints above and below the brick",
        unit="in^2",
        help="then the result is the load in lb at the first movement",
        least=4,
        most=400,
        default=None,
    )
    axial_psi: float | None = about(
        "Mortar shear: stress of the load on those joints",
        unit="psi",
        help="left out: what the gravity take-down brings there; 0 where the result has it taken off already",
        least=0,
        most=500,
        default=None,
    )
    by: str = about("Who", default="")
    when: str = about("When", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Foundation:
    """The foundation as found."""

    segments: dict[str, FoundationSegment] = about("Foundation segments", factory=dict)
    breaks: dict[str, FoundationBreak] = about("Cracks, joints, steps", factory=dict)
    tests: dict[str, FoundationTest] = about("Tests", factory=dict)
