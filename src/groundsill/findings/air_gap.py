"""A retained air gap: planks on stakes, set off from the wall, that hold back the soil it is freed from.

Planks and stakes of a common kit are bent by the code's soil load and the stakes stand as the code's rule for posts
asks, with its margin of one and a half for what holds back soil. Wood is treated, incised, wet, of the lower grade
value of the two woods it is sold in, and loaded for good. Plastic stakes are not offered: nobody here has read a
long-term strength for them.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import sqrt
from typing import Final

from groundsill.findings.worked import lines_of_sheet
from groundsill.standards.ibc_2021.earth import post_depth
from groundsill.standards.ibc_2021.soils import retaining_resistance
from groundsill.standards.nds_2018.adjustment import table_2_3_2
from groundsill.standards.nds_2018.bending import adjusted_bending, beam_moment, incised, table_4_3_8, table_4a_bending
from groundsill.standards.nds_2018.compression import table_4a_wet
from groundsill.standards.statics.earth import earth_push, plank_moment, stake_moment
from groundsill.working.sheet import Sheet

__all__ = ["DEEPEST_STAKE_IN", "PLANK_IN", "STAKE_IN", "Fence", "fence_for", "working_of", "works_to_in"]

PLANK_IN: Final = (7.25, 1.5)
"""Width and thickness of a plank, actual, in.; set with its width upright."""

STAKE_IN: Final = 3.5
"""Side of a square stake, actual, in."""

DEEPEST_STAKE_IN: Final = 36.0
"""What is dug or driven by hand beside a footing; our choice."""

_SPACINGS_IN: Final = (48.0, 36.0, 24.0)
_STEP_IN: Final = 3.0
_WOODS: Final = ("Douglas fir-larch", "Hem-fir")
_GRADE: Final = "No. 2"
_UNSIZED: Final = 1.0  # neither the size nor the flat-use factor, both of which raise the value, is counted
_HIGHEST_IN: Final = 60


@dataclass(frozen=True, slots=True)
class Fence:
    """A fence of planks on stakes that holds: spacing and depth of its stakes (in), and how hard it works.

    ``plank`` and ``stake`` are moment over moment carried; ``depth_needed_in`` is what the rule for posts asks.
    """

    held_in: float
    spacing_in: float
    depth_in: float
    depth_needed_in: float
    plank: float
    stake: float


def fence_for(held_in: float, load_pcf: float, bearing_pcf: float) -> Fence | None:
    """The fence with the fewest stakes, and of these the shortest, that holds soil back; None where none does.

    Args:
        held_in: from the trench's bottom to the top of the soil, in.
        load_pcf: lateral soil load, psf for each foot of depth.
        bearing_pcf: lateral bearing of the ground, psf for each foot of depth.
    """
    return next((fence for fence in _fences(held_in, load_pcf, bearing_pcf) if _holds(fence)), None)


def works_to_in(load_pcf: float, bearing_pcf: float) -> float:
    """The greatest height of soil, whole inches, that any fence of the kit holds back; 0 where it holds none."""
    heights = (float(h) for h in range(1, _HIGHEST_IN + 1))
    return max((h for h in heights if fence_for(h, load_pcf, bearing_pcf)), default=0.0)


def _holds(fence: Fence) -> bool:
    return max(fence.plank, fence.stake) <= 1 and fence.depth_needed_in <= fence.depth_in


def _fences(held_in: float, load_pcf: float, bearing_pcf: float) -> Iterator[Fence]:
    """Every fence of the kit for a height, the fewest stakes first, the shortest first."""
    for spacing in _SPACINGS_IN:
        for steps in range(4, int(DEEPEST_STAKE_IN / _STEP_IN) + 1):
            yield _fence(held_in, load_pcf, bearing_pcf, spacing, steps * _STEP_IN)


def _fence(held_in: float, load_pcf: float, bearing_pcf: float, spacing_in: float, depth_in: float) -> Fence:
    """One fence of the kit, worked out."""
    held, spacing, depth, (wide, thick) = held_in / 12, spacing_in / 12, depth_in / 12, PLANK_IN
    push, strength = earth_push(load_pcf, held, spacing), _bending_psi()
    needed = post_depth(retaining_resistance(push), held / 3, STAKE_IN * sqrt(2) / 12, bearing_pcf, depth)
    plank, carried = plank_moment(load_pcf, held, wide / 12, spacing), beam_moment(strength, wide, thick)
    stake, held_up = stake_moment(push, held, depth), beam_moment(strength, STAKE_IN, STAKE_IN)
    return Fence(
        held_in=held_in,
        spacing_in=spacing_in,
        depth_in=depth_in,
        depth_needed_in=12 * float(needed),
        plank=12 * float(plank) / float(carried),
        stake=12 * float(stake) / float(held_up),
    )


def working_of(fence: Fence, load_pcf: float, bearing_pcf: float) -> tuple[str, ...]:
    """A fence worked out again, line by line."""
    with Sheet() as sheet:
        _fence(fence.held_in, load_pcf, bearing_pcf, fence.spacing_in, fence.depth_in)
    return lines_of_sheet(sheet)


def _bending_psi() -> float:
    """What treated, incised lumber of the kit carries in bending for good in wet soil, psi."""
    weaker = min(float(table_4a_bending().read(wood, _GRADE)) for wood in _WOODS)
    for_good, wet = table_2_3_2().read("permanent (dead)"), table_4a_wet().read("F_b", "wet in service")
    return incised(adjusted_bending(weaker, for_good, wet, _UNSIZED), table_4_3_8().read("F_b"))
