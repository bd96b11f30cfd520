"""A wall of the house above as it was found: its stretches between openings, and what its old finishes may carry.

The layers of an assembly are told for their weight, so a finish is known by the name of a row of the weight tables, by
the name of a row of the shear tables, or not at all. Plaster on wood lath has no value in the standard for new walls:
the existing-building code's figure stands in for it, an extension, and never counts as a pass.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from groundsill.forces.reading import XY, Reading
from groundsill.house.building import Layer, Wall
from groundsill.loadpath.chain import LoadLevel
from groundsill.loadpath.editions import panel_standard
from groundsill.mechanics.plan import length
from groundsill.standards.old_materials.crosswalls import require_crosswall
from groundsill.standards.old_materials.existing import existing_strength
from groundsill.standards.sdpws import Sdpws
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet
from groundsill.working.steps import add, convert, given
from groundsill.working.value import Mark

__all__ = [
    "Finish", "Known", "Strength", "finishes_of", "known_of", "piers_of", "strength_of", "stretches_of", "wall_ends",
]  # fmt: skip

Kind = Literal["boards", "cement plaster", "existing"]

_NAILS = "old boards taken to be nailed as the table asks; their nails were not seen"
_LATH = "old stucco taken as cement plaster on metal lath, nailed as the table asks; its lath and nails were not seen"
_IEBC = "the value of IEBC Appendix A1, written for masonry buildings, used on a wood house"
# what a layer that was told for its weight may carry: the kind of check, its row, the named extension, what is assumed
_BY_WEIGHT_ROW: dict[str, tuple[Kind, str, str, str]] = {
    "1x straight sheathing or shiplap": ("boards", "horizontal lumber sheathing, 1x", "", _NAILS),
    "diagonal boards 1x": ("boards", "diagonal lumber sheathing, 1x", "", _NAILS),
    "stucco 7/8 in.": ("cement plaster", "portland cement plaster 7/8 in. on metal lath", _LATH, _LATH),
    "ceiling: plaster on wood lath": ("existing", "crosswall, plaster on wood or metal lath, one side", _IEBC, ""),
    "ceiling: gypsum board, each 1/8 in.": ("existing", "crosswall, gypsum board", _IEBC, ""),
}
_GYPSUM_LAYERS = 4.0  # eighths of an inch: thinner board is not what the appendix has a value for


@dataclass(frozen=True, slots=True)
class Finish:
    """One layer of a wall that a table has a strength for: its name in the survey, and how it is checked.

    ``extension`` names what is stretched beyond a standard, ``assumed`` what nobody saw; both may be empty. ``sdpws``
    is the panel standard that the house goes by.
    """

    layer: str
    kind: Kind
    row: str
    extension: str
    assumed: str
    sdpws: Sdpws

    @property
    def level(self) -> LoadLevel:
        """The level of load its strength is given at."""
        return "strength" if self.kind == "existing" else "allowable"

    @property
    def clause(self) -> str:
        """Where its strength is from."""
        if self.kind == "existing":
            return "IEBC Appendix A1, existing materials"
        return self.sdpws.clauses.boards if self.kind == "boards" else self.sdpws.clauses.plaster

    @property
    def marks(self) -> tuple[Mark, ...]:
        """The doubt of what nobody saw."""
        return (Mark("assumed range", self.assumed),) if self.assumed else ()


@dataclass(frozen=True, slots=True)
class Known:
    """What is known of a wall: height, full-height stretches, finishes, and the stretches each finish counts on.

    Lengths in inches. ``others`` are the layers that no table here has a strength for.
    """

    sdpws: Sdpws

    height_in: float
    piers_in: tuple[float, ...]
    finishes: tuple[tuple[Finish, tuple[float, ...]], ...]
    others: tuple[str, ...]

    @property
    def counts(self) -> bool:
        """Whether it has a stretch that can be counted, or, with finishes unknown, one no table would refuse."""
        if not self.finishes:
            steepest = max(float(row[0]) for row in self.sdpws.proportions().rows.values())
            return any(self.height_in <= steepest * pier for pier in self.piers_in)
        return any(piers for _, piers in self.finishes)


@dataclass(frozen=True, slots=True)
class Strength:
    """The unit shear one finish may carry, plf at its own level, over the length of wall that counts, ft."""

    finish: Finish
    capacity_plf: float
    length_ft: float


def wall_ends(reading: Reading, wall: Wall) -> tuple[XY, XY]:
    """The two ends of a wall on the plan, inches."""
    corners = reading.house.survey.building.corners
    a, b = corners[wall.start], corners[wall.end]
    return (a.x_in, a.y_in), (b.x_in, b.y_in)


def piers_of(wall: Wall, length_in: float) -> tuple[float, ...]:
    """The lengths of the full-height stretches between a wall's openings, inches, from its start on."""
    return tuple(end - start for start, end in stretches_of(wall, length_in))


def stretches_of(wall: Wall, length_in: float) -> tuple[tuple[float, float], ...]:
    """Where the full-height stretches between a wall's openings begin and end, inches from its start."""
    found, reached = [], 0.0
    for opening in sorted(wall.openings.values(), key=lambda o: o.from_in):
        if opening.from_in > reached + 1e-6:
            found.append((reached, opening.from_in))
        reached = max(reached, opening.to_in)
    if length_in > reached + 1e-6:
        found.append((reached, length_in))
    return tuple(found)


def finishes_of(sdpws: Sdpws, layers: Sequence[Layer]) -> tuple[tuple[Finish, ...], tuple[str, ...]]:
    """The layers that a table has a strength for, and the names of those that none has."""
    found: dict[str, Finish] = {}
    others = []
    for layer in layers:
        finish = _finish(sdpws, layer)
        if finish is None:
            others.append(layer.material)
        else:
            found.setdefault(finish.row, finish)
    return tuple(found.values()), tuple(dict.fromkeys(others))


def _finish(sdpws: Sdpws, layer: Layer) -> Finish | None:
    name = layer.material
    if name in sdpws.boards().rows:
        return Finish(name, "boards", name, "", "", sdpws)
    if name in sdpws.plaster().rows:
        return Finish(name, "cement plaster", name, "", "", sdpws)
    if name not in _BY_WEIGHT_ROW or (name.startswith("ceiling: gypsum") and layer.times < _GYPSUM_LAYERS):
        return None
    word = name.removeprefix("ceiling: ")  # the weight table's word, not this wall's
    return Finish(word, *_BY_WEIGHT_ROW[name], sdpws)


def known_of(reading: Reading, wall: Wall) -> Known:
    """What is known of a wall. Its height is the storey's, or its own where that is lower: a gable braces nothing."""
    building = reading.house.survey.building
    storey = building.storeys[wall.storey].height_in
    height = storey if wall.height_in is None else min(storey, wall.height_in)
    piers = piers_of(wall, length(*wall_ends(reading, wall))) if height > 0 else ()
    sdpws = panel_standard(reading.house)
    finishes, others = finishes_of(sdpws, building.assemblies[wall.assembly].layers)
    with quiet():  # a first look: the stretches that count are written down where the wall is checked
        counted = tuple((finish, tuple(_counting(finish, height, piers))) for finish in finishes)
    return Known(sdpws, height, piers, counted, others)


def _counting(finish: Finish, height_in: float, piers_in: Sequence[float]) -> Iterator[float]:
    """The stretches that are long enough for their height."""
    for pier in piers_in:
        try:
            _unit_shear(finish, height_in / 12, pier / 12)
        except OutsideLimits:
            continue
        yield pier


def strength_of(known: Known, finish: Finish, piers_in: Sequence[float], name: str) -> Strength:
    """What a finish of a wall may carry, written on the open sheet.

    The shortest stretch that counts stands for all: none of these finishes loses strength by its proportions.
    """
    h = convert(given("h", known.height_in, "in", f"height of {name}"), "in", "ft")
    feet = [
        convert(given(f"b_{n}", pier, "in", f"full-height stretch {n} of {name}"), "in", "ft")
        for n, pier in enumerate(sorted(piers_in), start=1)
    ]
    capacity = _unit_shear(finish, h, feet[0])
    total = add(*feet, symbol="b", label=f"length of {name} that counts", unit="ft")
    return Strength(finish, capacity, total)


def _unit_shear(finish: Finish, h: float, b: float) -> float:
    """Unit shear at the finish's own level, plf.

    Raises:
        OutsideLimits: a stretch too slender for the table.
    """
    if finish.kind == "existing":
        require_crosswall(h, b)
        return existing_strength(finish.row)
    shear = finish.sdpws.lumber_unit_shear if finish.kind == "boards" else finish.sdpws.plaster_unit_shear
    return shear(finish.row, h, b, "seismic").asd
