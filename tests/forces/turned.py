"""The same house drawn elsewhere, turned, seen in a mirror, to another scale, heavier, or written in another order."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields, is_dataclass, replace
from typing import Any, TypeVar

from groundsill.house.building import Chimney, Corner, Layer, Point
from groundsill.house.fact import Fact
from groundsill.work.document import House

T = TypeVar("T")
XY = tuple[float, float]


def everywhere(thing: T, change: Callable[[Any], Any]) -> T:
    """The thing made anew, with every dataclass inside it (innermost first) passed through ``change``."""
    if isinstance(thing, dict):
        return {key: everywhere(item, change) for key, item in thing.items()}  # type: ignore[return-value]
    if isinstance(thing, tuple):
        return tuple(everywhere(item, change) for item in thing)  # type: ignore[return-value]
    if is_dataclass(thing) and not isinstance(thing, type):
        inner = {f.name: everywhere(getattr(thing, f.name), change) for f in fields(thing)}
        return change(replace(thing, **inner))  # type: ignore[no-any-return]
    return thing


def drawn(house: House, place: Callable[[XY], XY], angle: Callable[[float], float], swap: bool = False) -> House:
    """The house with every place and every direction on its plan changed."""

    def change(thing: Any) -> Any:
        if isinstance(thing, Point | Corner):
            x, y = place((thing.x_in, thing.y_in))
            return replace(thing, x_in=x, y_in=y)
        if isinstance(thing, Chimney) and swap:
            return replace(thing, x_size_in=thing.y_size_in, y_size_in=thing.x_size_in)
        turned = {
            name: angle(getattr(thing, name)) % 360
            for name in ("span_deg", "ceiling_span_deg", "direction_deg")
            if hasattr(thing, name)
        }
        return replace(thing, **turned) if turned else thing

    return everywhere(house, change)


def moved(house: House, dx: float, dy: float) -> House:
    """Drawn elsewhere on the sheet."""
    return drawn(house, lambda p: (p[0] + dx, p[1] + dy), lambda a: a)


def quarter_turn(house: House) -> House:
    """Turned a quarter, against the clock."""
    return drawn(house, lambda p: (-p[1], p[0]), lambda a: a + 90, swap=True)


def mirrored(house: House) -> House:
    """Seen in a mirror that stands along y. Outlines then run with the clock."""
    return drawn(house, lambda p: (-p[0], p[1]), lambda a: 180 - a)


def scaled(house: House, k: float) -> House:
    """Every length of the house times ``k``; weights per square foot as they are."""

    def change(thing: Any) -> Any:
        lengths = {}
        for f in fields(thing):
            value = getattr(thing, f.name)
            if f.name.endswith("_in") and isinstance(value, Fact) and value.value is not None:
                lengths[f.name] = replace(value, value=value.value * k)
            elif f.name.endswith("_in") and isinstance(value, float | int):
                lengths[f.name] = value * k
        return replace(thing, **lengths) if lengths else thing

    return everywhere(house, change)


def heavier(house: House, k: float, kinds: frozenset[str] | None = None) -> House:
    """Every layer of the assemblies (of some kinds, or of all) ``k`` times over."""
    building = house.survey.building
    assemblies = {
        id: replace(a, layers=tuple(_times(layer, k) for layer in a.layers)) if kinds is None or a.kind in kinds else a
        for id, a in building.assemblies.items()
    }
    return replace(house, survey=replace(house.survey, building=replace(building, assemblies=assemblies)))


def _times(layer: Layer, k: float) -> Layer:
    return replace(layer, times=layer.times * k)


def backwards(house: House) -> House:
    """Every collection written in the opposite order; a map has none, so nothing may change."""
    return everywhere_maps(house)


def everywhere_maps(thing: T) -> T:
    """Every map inside turned round."""
    if isinstance(thing, dict):
        return {key: everywhere_maps(thing[key]) for key in reversed(thing)}  # type: ignore[return-value]
    if isinstance(thing, tuple):
        return tuple(everywhere_maps(item) for item in thing)  # type: ignore[return-value]
    if is_dataclass(thing) and not isinstance(thing, type):
        return replace(thing, **{f.name: everywhere_maps(getattr(thing, f.name)) for f in fields(thing)})
    return thing
