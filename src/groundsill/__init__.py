"""Groundsill: from a crawlspace survey to checked, drawn and priced strengthening of an old wood-framed house.

The rooms, from the ground up; a room imports only from those below it:
``working`` (values, equations, tables, units), ``mechanics`` and ``standards`` (our statics; the published formulas),
``house`` (the survey), ``work`` (pieces of work laid on it), ``forces`` (weights, base shear, each line's share),
``loadpath`` (the chain of links from floor to soil), ``papers`` (documents and drawings and their writers),
``doors`` (JSON in and out), ``cli`` (the commands).

The commands as a library, each imported when it is first asked for::

    import groundsill

    house = groundsill.read_house(Path("house.json"))
    study = groundsill.run(house)
    groundsill.formula("nds.sill-bolt", D="5/8 in", l_s=1.5).value

Their types stand in ``__init__.pyi``; this module imports nothing above ``working``, so that the engine stays alone.
"""

from __future__ import annotations

from typing import Any

from groundsill.working.version import VERSION as __version__  # noqa: N811

__all__ = [
    "BadSurvey",
    "GroundsillError",
    "House",
    "Study",
    "__version__",
    "check_house",
    "formula",
    "open_house",
    "read_house",
    "run",
    "show_working",
    "study_text",
    "write_house",
]

_HOMES = {
    "BadSurvey": "groundsill.working.errors",
    "GroundsillError": "groundsill.working.errors",
    "House": "groundsill.work.document",
    "Study": "groundsill.study",
    "check_house": "groundsill.work.checks",
    "formula": "groundsill.doors.formulas",
    "open_house": "groundsill.doors.files",
    "read_house": "groundsill.doors.files",
    "run": "groundsill.study",
    "show_working": "groundsill.study",
    "study_text": "groundsill.doors.study_json",
    "write_house": "groundsill.doors.files",
}


def __getattr__(name: str) -> Any:
    """A public name, imported from its room when it is first asked for."""
    if name not in _HOMES:
        raise AttributeError(f"groundsill has no {name!r}; it has {', '.join(__all__)}")
    from importlib import import_module

    # the room ``working`` has the plain name already
    return getattr(import_module(_HOMES[name]), "working" if name == "show_working" else name)


def __dir__() -> list[str]:
    return sorted(__all__)
