"""The reference house of the worked cases ("computed"): one storey, 30 by 40 ft, eaves of 1.5 ft.

Weights as the case states them, psf: roof 10 and ceiling 10, outside walls of 9 ft 20, partitions 10 over the floor,
floor 10, and the upper 1.5 ft of the cripple wall 12. Its total is 77,910 lb::

    roof, 33 x 43 ft with its eaves            1,419 sq ft x 10 = 14,190
    ceiling, 30 x 40 ft                        1,200 x 10       = 12,000
    outside walls, 140 ft x 9 ft               1,260 x 20       = 25,200
    partitions, 1,200 sq ft of floor x 10                       = 12,000
    floor                                      1,200 x 10       = 12,000
    cripple wall, upper half: 140 ft x 1.5 ft    210 x 12       =  2,520

The case gives partitions by the area of the floor; a survey measures them. Four of 33'-4" by 9 ft at 10 psf, laid out
evenly, weigh the same 12,000 lb. Of a cripple wall 3 ft high the lower half rests on the foundation and shakes nothing.
The case says S_DS 1.2: here it comes of S_S 1.5 on site class D by default.
"""

from __future__ import annotations

from collections.abc import Mapping

from groundsill.house.building import Assembly, Building, Corner, Layer, Partition, Point, RoofPart, Storey, Wall
from groundsill.house.fact import measured
from groundsill.house.foundation import Foundation, FoundationSegment
from groundsill.house.site import Hazard, Site, Soil
from groundsill.house.survey import Survey
from groundsill.house.underfloor import JoistField, Line, Segment, SillPiece, Stud, Underfloor
from groundsill.work.document import Alternative, Basis, Choices, EditionOverride, House
from groundsill.work.pieces import PanelPiece

CORNERS = {"sw0": (0.0, 0.0), "se0": (480.0, 0.0), "ne0": (480.0, 360.0), "nw0": (0.0, 360.0)}
SIDES = [
    ("front", "sw0", "se0", 480.0), ("right", "se0", "ne0", 360.0), ("rear", "ne0", "nw0", 480.0),
    ("left", "nw0", "sw0", 360.0),
]  # fmt: skip
PSF = {"roof": 10.0, "ceiling": 10.0, "wall": 20.0, "partition": 10.0, "floor": 10.0, "cripple wall": 12.0}


def reference_house(
    force_factor: float = 1.0, system: str = "A.15", panels: Mapping[str, float] | None = None
) -> House:
    """The house; ``panels`` lays so many feet of 15/32 panel, 8d at 4 in., in one piece from the start of each line."""
    return House(
        basis=Basis(
            code="ibc-2021",
            overrides={"sdpws": EditionOverride(edition="sdpws-2015", reason="its panel table was read")},
        ),
        choices=Choices(
            system=system,
            force_factor=force_factor,
            force_reason="as the case has it",
            redundancy=1.0,
            redundancy_reason="the case takes rho as 1",
        ),
        survey=Survey(
            name="reference house",
            site=_site(),
            building=_building(),
            underfloor=_underfloor(),
            foundation=_foundation(),
        ),
        alternatives={"work": _work(panels)} if panels else {},
    )


def _site() -> Site:
    return Site(
        hazard=Hazard(S_S=1.5, S_1=0.6, site_class="D-default", source="the worked case"),
        soil=Soil(kind=measured("sand"), fill=measured(False)),
        slope_rise_per_run=measured(0.0),
        snow_psf=measured(0.0),
    )


def _building() -> Building:
    eaves = ((-18.0, -18.0), (498.0, -18.0), (498.0, 378.0), (-18.0, 378.0))
    return Building(
        corners={id: Corner(x_in=x, y_in=y) for id, (x, y) in CORNERS.items()},
        assemblies={
            f"as-{kind.replace(' ', '-')}": Assembly(
                name=kind, kind=kind, layers=(Layer(material="as the case weighs it", psf=measured(psf)),)
            )
            for kind, psf in PSF.items()
        },
        storeys={
            "st1": Storey(
                name="the storey",
                outline=tuple(CORNERS),
                floor_z_in=44.0,
                height_in=108.0,
                floor="as-floor",
                ceiling="as-ceiling",
            )
        },
        walls={f"wl-{key}": Wall(storey="st1", start=a, end=b, assembly="as-wall") for key, a, b, _ in SIDES},
        partitions={
            f"pt{n}": Partition(
                storey="st1", start=Point(x_in=40.0, y_in=y), end=Point(x_in=440.0, y_in=y), assembly="as-partition"
            )
            for n, y in enumerate((60.0, 140.0, 220.0, 300.0))
        },
        roof={
            "rf1": RoofPart(
                outline=tuple(Point(x_in=x, y_in=y) for x, y in eaves),
                assembly="as-roof",
                slope_rise_per_run=0.0,
                storey="st1",
            )
        },
    )


def _underfloor() -> Underfloor:
    return Underfloor(
        joists={"jf1": JoistField(storey="st1", outline=tuple(CORNERS), direction_deg=90.0)},
        lines={
            key: Line(
                order=n, mark=f"L{n}", name=key, start=a, end=b, storey="st1", position="perimeter", above=f"wl-{key}"
            )
            for n, (key, a, b, _) in enumerate(SIDES, start=1)
        },
        segments={
            f"sg-{key}": Segment(
                line=key,
                from_in=0.0,
                to_in=long,
                height_in=measured(36.0),
                stud=Stud(species=measured("Douglas fir-larch")),
                assembly="as-cripple-wall",
            )
            for key, _, _, long in SIDES
        },
        sills={
            f"si-{key}": SillPiece(
                line=key,
                from_in=0.0,
                to_in=long,
                projects_inside_in=measured(0.0),
                thickness_in=measured(1.5),
                species=measured("Douglas fir-larch"),
            )
            for key, _, _, long in SIDES
        },
    )


def _foundation() -> Foundation:
    return Foundation(
        segments={
            f"fs-{key}": FoundationSegment(
                line=key,
                from_in=0.0,
                to_in=long,
                material="poured concrete",
                top_z_in=measured(0.0),
                top_width_in=measured(8.0),
            )
            for key, _, _, long in SIDES
        }
    )


def _work(panels: Mapping[str, float]) -> Alternative:
    return Alternative(
        name="panels",
        pieces={
            f"pn-{line}": PanelPiece(
                segment=f"sg-{line}", from_in=0.0, to_in=12 * feet, panel="15/32, 8d", edge_spacing_in=4.0
            )
            for line, feet in panels.items()
        },
    )
