"""The house that a test module of this folder reads: each names its file as ``FILE``."""

from __future__ import annotations

import pytest

from groundsill.doors.decode import decode
from groundsill.house.survey import Survey
from groundsill.work.document import Alternative, House


@pytest.fixture(scope="module")
def house(request: pytest.FixtureRequest) -> House:
    """The house document."""
    file = request.module.FILE
    return decode(file.read_bytes(), file.name)


@pytest.fixture(scope="module")
def survey(house: House) -> Survey:
    """Its survey."""
    return house.survey


@pytest.fixture(scope="module")
def by_hand(house: House) -> Alternative:
    """The first list of work, written by eye."""
    return min(house.alternatives.values(), key=lambda alternative: alternative.order)
