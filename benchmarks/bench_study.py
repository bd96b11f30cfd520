"""How a study grows with its doubtful facts and its alternatives, and what its working and its JSON cost."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from functools import partial
from pathlib import Path
from typing import Any

from benchmarks.timing import Row, seconds_for
from groundsill.doors.decode import decode
from groundsill.doors.study_json import study_text
from groundsill.house.fact import Fact
from groundsill.house.settle import prepare
from groundsill.study import AS_FOUND, run, working
from groundsill.work.document import House

SAMPLE = Path(__file__).parents[1] / "samples" / "larch-street" / "house.json"


def rows() -> Iterator[Row]:
    """The sample as found at best values, its working, over more and more of its ranges; then with alternatives."""
    house = decode(SAMPLE.read_bytes(), SAMPLE.name)
    found = replace(house, alternatives={})
    best = seconds_for(partial(run, found, ranges=False), rounds=3)
    yield Row("study as found, best values only", best)
    asked = seconds_for(partial(working, found, AS_FOUND), rounds=3)
    yield Row("its working alone, when somebody asks", asked, "the study", best, "aim: under 100 ms")
    count, before, against = len(prepare(found).facts), best, "best values"
    for share in (4, 2, 1):
        fewer = with_facts(found, count // share)
        spent = seconds_for(partial(run, fewer), rounds=2)
        aim = "" if share == 4 else "aim: no more than 2 x"
        yield Row(f"study over both ends of {len(prepare(fewer).facts)} facts", spent, against, before, aim)
        before, against = spent, "half as many"
    (alternative,) = house.alternatives.values()
    for times in (1, 2, 4):
        more = replace(house, alternatives={f"alternative-{n}": alternative for n in range(times)})
        spent = seconds_for(partial(run, more, ranges=False), rounds=3)
        aim = "" if times == 1 else "aim: no more than 2 x"
        against = "as found" if times == 1 else "half as many"
        yield Row(f"study with {times} alternatives, best values", spent, against, best if times == 1 else before, aim)
        before = spent
    study = run(house, ranges=False)
    yield Row("the sample's study as JSON text", seconds_for(partial(study_text, study), rounds=3), "the study", best)


def with_facts(house: House, count: int) -> House:
    """The house with only its first doubtful facts in doubt: all others are settled at their best."""
    settling = prepare(house)
    kept = {fact.path for fact in settling.facts[:count]}
    survey = _mixed(house.survey, settling.best.house.survey, kept, "survey")
    return replace(house, survey=survey)


def _mixed(doubtful: Any, settled: Any, kept: set[str], path: str) -> Any:
    """The settled survey with the facts at these paths as the doubtful one has them."""
    if isinstance(settled, Fact):
        return doubtful if path in kept else settled
    if isinstance(settled, dict):
        return {key: _mixed(doubtful[key], item, kept, f"{path}.{key}") for key, item in settled.items()}
    if isinstance(settled, tuple):
        pairs = zip(doubtful, settled, strict=True)
        return tuple(_mixed(before, item, kept, f"{path}.{n}") for n, (before, item) in enumerate(pairs))
    if not is_dataclass(settled) or isinstance(settled, type):
        return settled
    names = [f.name for f in fields(settled)]
    parts = {n: _mixed(getattr(doubtful, n), getattr(settled, n), kept, f"{path}.{n}") for n in names}
    return replace(settled, **parts)
