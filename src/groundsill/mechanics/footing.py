"""Pressure under a stiff footing on soil that can push but not pull.

In: load and moment on a rectangle ``width`` by ``length`` (the moment turns along the width). Out: the greatest
pressure, the least, and the width still in contact. Statics of any handbook; outside the kern (eccentricity above a
sixth of the width) the pressure is a triangle and part of the footing lifts.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from groundsill.working.errors import OutsideLimits

__all__ = ["Pressure", "pressure_under"]


@dataclass(frozen=True, slots=True)
class Pressure:
    """Pressures in force per area of the units put in; ``contact`` is the width that still touches."""

    greatest: float
    least: float
    contact: float
    eccentricity: float


def pressure_under(load: float, moment: float, width: float, length: float) -> Pressure:
    """The pressure under a footing with load and moment.

    Raises:
        OutsideLimits: when the resultant leaves the footing (it overturns) or nothing presses on it.
    """
    if not (0 < load < inf and 0 < width < inf and 0 < length < inf and -inf < moment < inf):
        raise OutsideLimits(f"a footing {width:g} by {length:g} under {load:g} has no pressure to work out")
    e = abs(moment) / load
    mean = load / (width * length)
    if e <= width / 6:
        return Pressure(mean * (1 + 6 * e / width), mean * (1 - 6 * e / width), width, e)
    if e >= width / 2:
        raise OutsideLimits(f"the resultant stands {e:g} from the middle of a footing {width:g} wide: it overturns")
    contact = 3 * (width / 2 - e)
    return Pressure(2 * load / (length * contact), 0.0, contact, e)
