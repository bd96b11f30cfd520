"""Words of a house file that are looked up in a table, and that no table has: a nail, a wood, a sheathing, a material.

None is a fault of the file, since a survey says what is there; but what no table knows cannot be counted, and often it
is a slip of the pen. Each is told with the nearest names there are.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from difflib import get_close_matches
from functools import lru_cache

from groundsill.forces.assemblies import known_materials
from groundsill.house.missing import Missing
from groundsill.house.survey import Survey, in_order
from groundsill.loadpath.editions import panel_standard
from groundsill.loadpath.panel_details import over_gypsum
from groundsill.standards.nds_2018.bearing import table_12_3_3a, table_12_3_3b
from groundsill.standards.nds_2018.nails import table_l4
from groundsill.standards.sdpws import Sdpws
from groundsill.work.document import House
from groundsill.work.pieces import PanelPiece, SillBlockingPiece

__all__ = ["unread"]

_ALIKE = 0.5


def unread(house: House) -> tuple[Missing, ...]:
    """Every word that is looked up and not found, in the order of the file."""
    sdpws = panel_standard(house)
    return (*_materials(house.survey), *_under(house.survey, sdpws), *_pieces(house, sdpws))


@lru_cache(maxsize=1)
def _woods() -> tuple[str, ...]:
    return (*table_12_3_3a().rows, *table_12_3_3b().rows)


@lru_cache(maxsize=1)
def _nails() -> tuple[str, ...]:
    return tuple(table_l4().rows)


def _ask(
    path: str, word: str | None, what: str, known: Callable[[], tuple[str, ...]], needed_for: str
) -> Iterator[Missing]:
    names = known()
    if not word or word in names:
        return
    folded = {name.lower(): name for name in reversed(names)}
    begun = [name for name in names if name.lower().startswith(word.lower())]
    near = begun or [folded[name] for name in get_close_matches(word.lower(), list(folded), n=3, cutoff=_ALIKE)]
    nearest = f"; nearest: {', '.join(repr(name) for name in near[:3])}" if near else ""
    yield Missing(path, f"{what}, {word!r}, is in no table{nearest}", needed_for)


def _materials(survey: Survey) -> Iterator[Missing]:
    """Layers of assemblies that have no weight of their own."""
    for id, assembly in in_order(survey.building.assemblies):
        for n, layer in enumerate(assembly.layers):
            if layer.psf.value is None:
                path = f"survey.building.assemblies.{id}.layers.{n}.material"
                what = f"a layer of {assembly.name}"
                yield from _ask(path, layer.material, what, known_materials, "its weight in psf has to be given")


def _under(survey: Survey, sdpws: Sdpws) -> Iterator[Missing]:
    def sheathings() -> tuple[str, ...]:
        return (*sdpws.boards().rows, *sdpws.plaster().rows, *sdpws.pressed().rows)

    under, base = survey.underfloor, "survey.underfloor"
    no_nail, no_wood = "what the nails hold cannot be worked out", "what is fastened to it cannot be worked out"
    for id, field in in_order(under.joists):
        yield from _ask(
            f"{base}.joists.{id}.species", field.species.value, f"the wood of {field.mark or id}", _woods, no_wood
        )
    for id, line in in_order(under.lines):
        path, name = f"{base}.lines.{id}", line.mark or id
        nail, wood = line.floor_connection.nail, line.top_plate.species.value
        yield from _ask(
            f"{path}.floor_connection.nail", nail, f"the nail that holds the floor to {name}", _nails, no_nail
        )
        yield from _ask(f"{path}.top_plate.species", wood, f"the wood of the top plate of {name}", _woods, no_wood)
    for id, segment in in_order(under.segments):
        path, name = f"{base}.segments.{id}", segment.mark or id
        yield from _ask(
            f"{path}.stud.species", segment.stud.species.value, f"the wood of the studs of {name}", _woods, no_wood
        )
        for side, face in (("outside", segment.outside), ("inside", segment.inside)):
            if face.material != "none":
                where, what = f"{path}.{side}.material", f"the sheathing of {name}, {side}"
                yield from _ask(where, face.material, what, sheathings, "it is not counted as bracing")
    for id, joint in in_order(under.splices):
        yield from _ask(f"{base}.splices.{id}.nail", joint.nail, f"the nail of {joint.mark or id}", _nails, no_nail)
    for id, sill in in_order(under.sills):
        yield from _ask(
            f"{base}.sills.{id}.species", sill.species.value, f"the wood of {sill.mark or id}", _woods, no_wood
        )


def _pieces(house: House, sdpws: Sdpws) -> Iterator[Missing]:
    """Panels and nails of the work."""
    on_studs, on_gypsum = (lambda: tuple(sdpws.nominal().rows)), (lambda: tuple(sdpws.over_gypsum().rows))
    for key, alternative in in_order(house.alternatives):
        for id, piece in in_order(alternative.pieces):
            path, name = f"alternatives.{key}.pieces.{id}", piece.mark or id
            if isinstance(piece, PanelPiece):
                rows = on_gypsum if over_gypsum(piece) else on_studs
                yield from _ask(f"{path}.panel", piece.panel, f"the panel of {name}", rows, "it is not counted")
            elif isinstance(piece, SillBlockingPiece):
                yield from _ask(f"{path}.nail", piece.nail, f"the nail of {name}", _nails, "it holds nothing")
