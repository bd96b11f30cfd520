"""The samples by the panel standard that their building code goes by, beside the edition before it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from groundsill.doors.decode import decode
from groundsill.loadpath.chain import Link
from groundsill.study import Study, run
from groundsill.work.document import Basis, EditionOverride, House

SAMPLES = Path(__file__).resolve().parents[2] / "samples"
NAMES = ("larch-street", "quarry-lane", "ferry-hill")  # heron-walk takes long and has no stucco
STUCCO = "portland cement plaster 7/8 in. on metal lath"


@cache
def house(name: str) -> House:
    """A sample as it stands."""
    file = SAMPLES / name / "house.json"
    return decode(file.read_bytes(), file.name)


@cache
def study(name: str, by_its_code: bool) -> Study:
    """Its study at the best values, by the edition of its code or by the one before."""
    asked = house(name)
    override = EditionOverride(edition="sdpws-2015", reason="to see what it makes of the house")
    earlier = Basis(code=asked.basis.code, overrides={"sdpws": override})
    return run(asked if by_its_code else replace(asked, basis=earlier), ranges=False)


def links(found: Study) -> Iterator[tuple[tuple[str, str], Link]]:
    """Every link by state and address."""
    for state in found.runs:
        for chain in (*state.chains, *state.bodies):
            for link in chain.links:
                yield (state.key, link.address), link


@pytest.mark.parametrize("name", NAMES)
def test_a_sample_runs_by_the_edition_of_its_code_and_names_no_other(name: str) -> None:
    assert house(name).basis.overrides == {}
    found = study(name, by_its_code=True)
    assert found.manifest.editions["sdpws"] == "sdpws-2021"
    assert found.manifest.edition_reasons == {}
    said = [f"{link.clause} {link.reason} {' '.join(m.what for m in link.marks)}" for _, link in links(found)]
    said += [f"{c.clause} {c.reason}" for state in found.runs for storey in state.storeys for c in storey.checks]
    assert any("SDPWS 2021" in text for text in said)
    assert not [text for text in said if "SDPWS 2015" in text]


@pytest.mark.parametrize("name", NAMES)
def test_panels_and_boards_stand_as_they_stood_and_no_verdict_of_theirs_turns(name: str) -> None:
    old, new = (dict(links(study(name, by_its_code=choice))) for choice in (False, True))
    assert old.keys() == new.keys()
    for key, link in old.items():
        if "/sheathing/" in key[1] and link.capacity and STUCCO not in link.title:
            assert new[key].capacity == pytest.approx(link.capacity, rel=0.01), key
            assert new[key].status == link.status, key


def test_old_stucco_carries_1_4_times_less_by_the_edition_of_2021() -> None:
    old, new = (dict(links(study("ferry-hill", by_its_code=choice))) for choice in (False, True))
    walls = [key for key, link in old.items() if link.title.startswith(STUCCO) and link.capacity]
    assert walls
    for key in walls:
        capacity = old[key].capacity
        assert capacity is not None
        assert new[key].capacity == pytest.approx(capacity / 1.4)
