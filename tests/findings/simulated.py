"""Readings made up with a known truth: a rate, a season, a temperature, a scatter that may follow itself."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from datetime import date, timedelta

import numpy as np

from groundsill.findings.trend import Timed, trend_of

DIVISION, STILL = 0.02, 0.01


def readings(
    seed: int,
    count: int,
    rate: float = 0.0,
    *,
    scatter: float = 0.008,
    follow: float = 0.0,
    season: float = 0.012,
    half_year: float = 0.0,
    heat: bool = True,
) -> list[Timed]:
    """One gauge read once a season by a hand that is up to a week early or late, to 0.005 in."""
    random = np.random.default_rng(seed)
    left, told = 0.0, []
    for i in range(count):
        day = i * 91 + (int(random.integers(-7, 8)) if i else 0)
        fresh = random.normal() * scatter
        left = follow * left + fresh * np.sqrt(1 - follow**2) if i else fresh
        turn = 2 * np.pi * (318 + day) / 365.25
        warm = 55 - 16 * np.cos(turn) + random.normal() * 4
        value = 0.25 + rate * day / 365.25 + season * np.cos(turn - 0.6) + half_year * np.cos(2 * turn)
        value += -2e-4 * (warm - 55) + left
        when = (date(2020, 11, 14) + timedelta(days=day)).isoformat()
        told.append(Timed(when, round(float(value) / 0.005) * 0.005, round(float(warm)) if heat else None))
    return told


def verdicts(seeds: Iterable[int], count: int, rate: float, **kind: float) -> Counter[str]:
    """How often each verdict comes."""
    found: Counter[str] = Counter()
    for seed in seeds:
        trend = trend_of(readings(seed, count, rate, **kind), DIVISION, STILL)  # type: ignore[arg-type]
        assert trend is not None
        found[trend.moves] += 1
    return found
