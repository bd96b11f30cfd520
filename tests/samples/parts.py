"""What the tests of every sample house ask of a survey."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from groundsill.house.fact import Fact
from groundsill.house.model import places
from groundsill.house.survey import Survey


def mark_of(survey: Survey, on_line: Any) -> str:
    """The mark of the line an object stands on."""
    return survey.underfloor.lines[on_line.line].mark


def facts(survey: Survey) -> Iterator[Fact[Any]]:
    """Every fact of the survey."""
    return (place.value for place in places(survey, "survey") if isinstance(place.value, Fact))
