"""Older survey files opened: each step turns one format into the next, on plain maps, before anything is decoded.

A file names its format (``groundsill.house/1``). A file from a later program is refused in words, never guessed at:
what a newer field meant cannot be known here.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any, Final

from groundsill.working.errors import BadSurvey, Fault

__all__ = ["STEPS", "Step", "migrate"]

Step = Callable[[dict[str, Any]], dict[str, Any]]

# From the number of a format to the step that makes the next one of it. Version 1 is the first.
STEPS: Final[Mapping[int, Step]] = MappingProxyType({})

_FORMAT = re.compile(r"groundsill\.house/([0-9]{1,6})")


def migrate(raw: Mapping[str, Any], current: str, steps: Mapping[int, Step]) -> dict[str, Any]:
    """The document in the current format; the one given is left as it is.

    Args:
        raw: the file as plain maps.
        current: the format this program writes, ``groundsill.house/1``.
        steps: the known steps, by the number of the format they start from.

    Raises:
        BadSurvey: no format, a format of another kind, a newer one, or one no step leads on from.
    """
    target = _number(current)
    if target is None:
        raise ValueError(f"{current!r} is not the name of a format")
    written = raw.get("format")
    number = _number(written)
    if written is None:
        raise BadSurvey((Fault("format", "nothing", f'it must be given: "{current}"'),))
    shown = f'"{written[:60]}"' if isinstance(written, str) else str(written)[:60]
    if number is None:
        raise BadSurvey((Fault("format", shown, f'this program reads "{current}" and older'),))
    if number > target:
        newer = f'this program reads "{current}" and older; the file was written by a newer program, so update this one'
        raise BadSurvey((Fault("format", shown, newer),))
    document = dict(raw)
    while number < target:
        step = steps.get(number)
        if step is None:
            raise BadSurvey((Fault("format", shown, f'no way is known from it to "{current}"'),))
        document = step(document)
        number += 1
        document["format"] = f"groundsill.house/{number}"
    return document


def _number(written: object) -> int | None:
    """The version number in the name of a format."""
    found = _FORMAT.fullmatch(written) if isinstance(written, str) else None
    return int(found[1]) if found else None
