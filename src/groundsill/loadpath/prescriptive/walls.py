"""What the prescriptive way measures of a line: stories above, heights of walls and studs, finishes, openings.

A cripple wall is as high as from the top of the foundation to the underside of the floor framing, its sill included;
its studs are lower than the wall the survey measures by the top plates.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from groundsill.forces.assemblies import material_psf
from groundsill.forces.levels import levels_of, ordered_storeys, storeys_under
from groundsill.forces.reading import Reading, line_length_in
from groundsill.house.building import Layer
from groundsill.house.underfloor import Line, Segment, VentOpening
from groundsill.standards.iebc_2021.rules import table_a304_3_1_roof
from groundsill.working.value import Mark

__all__ = [
    "TAPE_IN",
    "Measures",
    "heavy_finishes",
    "height_marks",
    "measures_of",
    "perimeter",
    "sill_thickness_in",
    "stories_above",
    "stories_of_house",
    "stories_words",
    "stud_height_in",
    "wall_height_in",
]

TAPE_IN = 1 / 16  # two lengths nearer than this are one by the tape
_BRACED = ("cripple wall", "open")
_TILE = ("clay tile", "cement tile", "concrete tile")


@dataclass(frozen=True, slots=True)
class Measures:
    """A line as the prescriptive way measures it; inches.

    ``length_in`` is the part of it that stands on cripple walls, openings and gaps included; ``stud_in`` and
    ``wall_in`` are the tallest in it, None while one height is not known; ``stud_spacing_in`` the closest.
    ``unbraced`` says why a line without cripple walls has nothing to brace.
    """

    stories: int
    length_in: float
    stud_in: float | None
    wall_in: float | None
    stud_spacing_in: float | None
    walls: tuple[tuple[str, Segment], ...]
    unbraced: str
    openings: tuple[tuple[str, VentOpening], ...]
    marks: frozenset[Mark]


def perimeter(reading: Reading) -> list[tuple[str, Line]]:
    """The perimeter lines, in order."""
    lines = reading.in_order(reading.house.survey.underfloor.lines)
    return [(id, line) for id, line in lines if line.position == "perimeter"]


def measures_of(reading: Reading, id: str) -> Measures:
    """A line's own measures."""
    underfloor = reading.house.survey.underfloor
    segments = sorted(reading.on_line(underfloor.segments, id), key=lambda pair: pair[1].from_in)
    walls = tuple((key, segment) for key, segment in segments if segment.kind in _BRACED)
    length = sum(segment.to_in - segment.from_in for _, segment in walls)
    line, standing = underfloor.lines[id], [segment for _, segment in walls if segment.kind == "cripple wall"]
    studs = [stud_height_in(line, segment) for segment in standing]
    high = [wall_height_in(reading, segment) for segment in standing]
    spacings = [s.stud.spacing_in.value for s in standing if s.stud.spacing_in.value is not None]
    return Measures(
        stories_above(reading, line),
        min(length, line_length_in(reading.house, line)),
        _tallest(studs),
        _tallest(high),
        min(spacings, default=None),
        walls,
        _unbraced({segment.kind for _, segment in segments}),
        tuple(reading.on_line(underfloor.openings, id)),
        height_marks(reading, (key for key, _ in walls))
        | reading.marked(f"survey.underfloor.lines.{id}.top_plate.thickness_in"),
    )


def _unbraced(kinds: set[str]) -> str:
    if kinds & set(_BRACED):
        return ""
    if "posts" in kinds:
        return "the line stands on posts, without a cripple wall"
    return "joists stand straight on the sill" if kinds else "no wall was surveyed on this line"


def _tallest(heights: Sequence[float | None]) -> float | None:
    known = [height for height in heights if height is not None]
    return max(known) if known and len(known) == len(heights) else None


def height_marks(reading: Reading, ids: Iterable[str]) -> frozenset[Mark]:
    """The marks of the heights of some wall segments."""
    return frozenset[Mark]().union(*(reading.marked(f"survey.underfloor.segments.{id}.height_in") for id in ids))


def stud_height_in(line: Line, segment: Segment) -> float | None:
    """Height of a segment's studs: the wall's less the top plates; the wall's own where their thickness is unknown."""
    height, plate = segment.height_in.value, line.top_plate.thickness_in.value
    return None if height is None else max(0.0, height - line.top_plate.layers * (plate or 0.0))


def sill_thickness_in(reading: Reading, line: str, low: float, high: float) -> float:
    """The thickest sill under a stretch of a line; 0 where none is known."""
    sills = reading.on_line(reading.house.survey.underfloor.sills, line)
    under = [sill.thickness_in.value or 0.0 for _, sill in sills if sill.from_in < high and sill.to_in > low]
    return max(under, default=0.0)


def wall_height_in(reading: Reading, segment: Segment) -> float | None:
    """Height of a cripple wall as the scope measures it, from the foundation's top to the underside of the framing."""
    height = segment.height_in.value
    if height is None:
        return None
    return height + sill_thickness_in(reading, segment.line, segment.from_in, segment.to_in)


def stories_above(reading: Reading, line: Line) -> int:
    """How many stories stand over a line: its own, and all that stand on it, wholly or in part."""
    return reading.once(("stories above", line.storey), lambda: _stories_over(reading, line.storey))


def _stories_over(reading: Reading, storey: str) -> int:
    levels = levels_of(reading)
    over = {storey}
    for id, _ in ordered_storeys(reading):
        if any(below in over for below in storeys_under(reading, id)):
            over.add(id)
    return max(levels[id] for id in over) - levels[storey] + 1


def stories_words(stories: int) -> str:
    """A number of stories: ``1 story``, ``2 stories``."""
    return f"{stories} stor{'y' if stories == 1 else 'ies'}"


def stories_of_house(reading: Reading) -> int:
    """How many stories the house has above its cripple walls."""
    return max(levels_of(reading).values(), default=-1) + 1


def heavy_finishes(reading: Reading) -> bool:
    """Whether walls finished with stucco stand under a roof of clay or concrete tile heavier than the table's bound."""
    building = reading.house.survey.building
    walls = {wall.assembly for wall in building.walls.values()}
    roofs = {part.assembly for part in building.roof.values()}
    stucco = any(_stucco(layer) for id in walls for layer in building.assemblies[id].layers)
    if not stucco:
        return False
    bound = float(table_a304_3_1_roof().read("clay or concrete tile, more than"))
    return any(sum(map(_tile_psf, building.assemblies[id].layers)) > bound for id in roofs)


def _stucco(layer: Layer) -> bool:
    words = layer.material.lower()
    return "stucco" in words or "cement plaster" in words


def _tile_psf(layer: Layer) -> float:
    """What a layer of roof tile weighs; 0 for what is no tile."""
    if not any(tile in layer.material.lower() for tile in _TILE):
        return 0.0
    own = layer.psf.value
    psf = float(own) if own is not None else float(material_psf(layer.material) or 0.0)
    return psf * layer.times
