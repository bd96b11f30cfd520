"""The small house made plain, with one storey more: a box of 30 by 20 ft whose walls can be worked out by hand.

Front and rear walls are 30 ft long, the side walls 20 ft; both storeys are 9 ft high. Nothing inside, no chimney, so
that each wall takes half of what stands above its floor.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces, work_out
from groundsill.house.building import Layer, Storey, Wall, WallOpening
from groundsill.house.fact import measured
from groundsill.house.settle import prepare
from groundsill.loadpath.storey_above import StoreyAbove, storeys_above
from groundsill.work.document import House
from tests.fixtures.small_house import small_house

PLASTER, BOARDS, STUCCO = "ceiling: plaster on wood lath", "1x straight sheathing or shiplap", "stucco 7/8 in."
SIDES = (("sw0", "se0"), ("se0", "ne0"), ("ne0", "nw0"), ("nw0", "sw0"))


def two_storeys(
    layers: tuple[str, ...] = (BOARDS,), openings: Mapping[str, Mapping[str, WallOpening]] | None = None
) -> House:
    """The box with these layers on its outside walls and these openings, by the id of the wall."""
    house = small_house()
    building = house.survey.building
    first = building.storeys["st1"]
    second = Storey(
        order=2, name="Upper floor", outline=first.outline, floor_z_in=first.floor_z_in + 108.0, height_in=108.0,
        floor=first.floor, ceiling=first.ceiling, ceiling_span_deg=90.0,
    )  # fmt: skip
    walls = {
        f"w{floor}{n}": Wall(
            order=10 * floor + n, mark=f"E{floor}{n}", storey=f"st{floor}", start=a, end=b, assembly="as-wall",
            openings=dict((openings or {}).get(f"w{floor}{n}", {})),
        )
        for floor in (1, 2)
        for n, (a, b) in enumerate(SIDES, start=1)
    }  # fmt: skip
    outside = replace(
        building.assemblies["as-wall"], layers=tuple(Layer(material=m, psf=measured(6.0)) for m in layers)
    )
    roof = {id: replace(part, storey="st2") for id, part in building.roof.items()}
    bare = replace(
        building, storeys={"st1": replace(first, ceiling=None), "st2": second}, walls=walls, partitions={}, chimneys={},
        assemblies={**building.assemblies, "as-wall": outside}, roof=roof,
    )  # fmt: skip
    lines = {id: replace(line, above=None) for id, line in house.survey.underfloor.lines.items()}
    under = replace(house.survey.underfloor, lines=lines)
    return replace(house, survey=replace(house.survey, building=bare, underfloor=under), alternatives={}, record={})


def above(house: House) -> tuple[Forces, tuple[StoreyAbove, ...]]:
    """The forces of a house and its storeys, at the best value of every fact."""
    best = prepare(house).best
    reading = Reading(best.house, best.marks)
    forces = work_out(reading)
    return forces, storeys_above(reading, forces)
