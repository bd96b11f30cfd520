"""The 2016 proposal for sill bolts in existing footings: each of its conditions, and what is not known."""

from __future__ import annotations

from typing import Any

import pytest

from groundsill.standards.conditions import all_met
from groundsill.standards.seaonc_2016.sill_anchors import existing_sill_bolt

SOUND: dict[str, Any] = {
    "existing": True, "d_a": 0.5, "sill_nominal": 2.0, "concrete_sound": True, "sill_sound": True, "little_rust": True,
    "edge": 1.75, "end": 7.5, "spacing": 6.0, "panels": True, "bolts": 2.0,
}  # fmt: skip


def test_a_sound_old_bolt_meets_every_condition() -> None:
    assert all_met(existing_sill_bolt(**SOUND)) is True


@pytest.mark.parametrize(
    ("fact", "value", "answer"),
    [
        ("existing", False, False),
        ("d_a", 0.4375, False),
        ("d_a", 0.875, False),
        ("sill_nominal", 1.0, False),
        ("sill_nominal", None, None),
        ("concrete_sound", False, False),
        ("concrete_sound", None, None),
        ("sill_sound", None, None),
        ("little_rust", None, None),
        ("edge", 1.7, False),
        ("end", 7.4, False),
        ("spacing", 6.1, False),
        ("bolts", 1.0, False),
    ],
)
def test_each_condition_stands_for_itself(fact: str, value: float | bool | None, answer: bool | None) -> None:
    found = existing_sill_bolt(**(SOUND | {fact: value}))
    assert all_met(found) is answer
    assert sum(c.met is not True for c in found) == (2 if fact == "d_a" and value == 0.875 else 1)


def test_under_old_finishes_bolts_may_stand_ten_feet_apart() -> None:
    assert all_met(existing_sill_bolt(**(SOUND | {"spacing": 10.0, "panels": False}))) is True
    assert all_met(existing_sill_bolt(**(SOUND | {"spacing": 10.1, "panels": False}))) is False
