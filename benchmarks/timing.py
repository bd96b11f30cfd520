"""Timing one thing fairly: the best of several rounds, each long enough to measure."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from time import perf_counter

ROUNDS = 5
LEAST_ROUND_S = 0.02


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the report: what was timed, seconds for one run, what it is compared with, and the aim in words."""

    what: str
    seconds: float
    against: str = ""
    against_seconds: float = 0.0
    aim: str = ""

    def line(self) -> str:
        """The row as printed."""
        ratio = f"{self.seconds / self.against_seconds:.2f} x {self.against}" if self.against_seconds else ""
        return f"  {self.what:<58} {readable(self.seconds):>9}  {ratio:<34} {self.aim}".rstrip()


def readable(seconds: float) -> str:
    """Seconds in the unit a reader expects: 1.25 us, 18.3 ms, 2.40 s."""
    for factor, unit in ((1.0, "s"), (1e3, "ms"), (1e6, "us")):
        if seconds * factor >= 1.0:
            return f"{seconds * factor:.3g} {unit}"
    return f"{seconds * 1e9:.3g} ns"


def seconds_for(run: Callable[[], object], rounds: int = ROUNDS) -> float:
    """Seconds for one run: the best of ``rounds``, each repeated until it lasts at least 20 ms."""
    repeat = 1
    while True:
        spent = _spent(run, repeat)
        if spent >= LEAST_ROUND_S:
            break
        repeat = max(repeat * 2, int(repeat * LEAST_ROUND_S / max(spent, 1e-9)))
    return min(spent, *(_spent(run, repeat) for _ in range(rounds - 1))) / repeat


def _spent(run: Callable[[], object], repeat: int) -> float:
    began = perf_counter()
    for _ in range(repeat):
        run()
    return perf_counter() - began
