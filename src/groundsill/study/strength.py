"""What is known of the strength of the old concrete, and which tests would settle it: plain data of a study."""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.loadpath.chain import Verdict
from groundsill.working.value import Mark

__all__ = ["ConcreteStrength", "CoreSite", "MeanWanted", "Place", "SettlingTest", "Threshold"]


@dataclass(frozen=True, slots=True)
class ConcreteStrength:
    """One stretch of poured concrete: the strength counted with its ends, psi, and what tests say of it.

    ``low`` to ``high`` are what the checks run at, ``why`` where that comes from; all None when nothing stands in for
    it. ``cores`` are the marks of those that speak for it, ``counted`` how many of them have their measures;
    ``code`` is the equivalent specified strength by ACI 562, ``guide`` that by ACI 214.4R; ``mean`` belongs to the
    order in which links fail and to no check. ``rebound`` is the mean rebound number, which is no strength;
    ``remarks`` say what the hammer, the probe and the eye add.
    """

    segment: str
    mark: str
    line: str
    low: float | None
    best: float | None
    high: float | None
    why: str
    cores: tuple[str, ...] = ()
    counted: int = 0
    mean: float | None = None
    spread: float | None = None
    variation: float | None = None
    code: float | None = None
    guide: float | None = None
    rebound: float | None = None
    remarks: tuple[str, ...] = ()
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True)
class Place:
    """A place to test at: the stretch of foundation by its mark, and the station on its line, inches."""

    stretch: str
    station_in: float


@dataclass(frozen=True, slots=True)
class CoreSite:
    """One concrete under a line: its stretches by their marks, the cores that count already, those still wanted.

    ``also`` are stretches of the same pour under other lines, which the cores serve too.
    """

    stretches: tuple[str, ...]
    also: tuple[str, ...]
    on_record: int
    wanted: int
    places: tuple[Place, ...]


@dataclass(frozen=True, slots=True)
class Threshold:
    """The least equivalent strength, psi, found by running a link again as if cores had given it.

    ``holds_at`` is where it no longer fails, ``passes_at`` where it passes outright; None where no strength tried does
    that, and ``beyond`` then says by what extension it stays indicated. ``at_worst`` says that every other uncertain
    fact stood at its worse end; else no strength was enough there, and all others stood at their best.
    """

    link: str
    title: str
    verdict: Verdict
    holds_at: float | None
    passes_at: float | None
    beyond: str = ""
    at_worst: bool = True


@dataclass(frozen=True, slots=True)
class MeanWanted:
    """The mean at which so many cores must break to give the strength wanted, were they to scatter as foreseen."""

    cores: int
    mean_psi: float


@dataclass(frozen=True, slots=True)
class SettlingTest:
    """Which tests would settle a line whose verdict depends on the strength of its concrete.

    ``holds_psi`` is the equivalent strength from which no link that strength moves fails, ``needs_psi`` that from which
    all of them pass that any strength lets pass; None where no strength does it. ``highest_psi`` is the least of the
    high ends that the concretes of the line have now: a strength above it is not to be looked for. ``means`` are for
    ``needs_psi``. ``anchor_lb`` is the load on one anchor that tests in place would have to prove instead, None where
    no bolt in concrete is in doubt.
    """

    line: str
    mark: str
    holds_psi: float | None
    needs_psi: float | None
    highest_psi: float | None
    means: tuple[MeanWanted, ...]
    sites: tuple[CoreSite, ...]
    thresholds: tuple[Threshold, ...]
    anchor_lb: float | None
