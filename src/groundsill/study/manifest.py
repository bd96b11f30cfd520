"""What a study was made with: the program, a fingerprint of the house, the editions, and every figure in doubt."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict
from types import MappingProxyType
from typing import Any

from groundsill.standards import asce7, nds, sdpws
from groundsill.standards.basis import adoptions
from groundsill.study.result import Manifest
from groundsill.work.basis import basis_of
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey, Fault
from groundsill.working.value import Mark
from groundsill.working.version import VERSION

__all__ = ["CHECKED_BY", "editions_of", "fingerprint", "manifest_of"]


def manifest_of(house: House, marks: Iterable[Mark]) -> Manifest:
    """The manifest of a study of this house, given every mark that stands on its sheet."""
    by_kind: dict[str, list[str]] = {}
    for mark in sorted(marks):
        by_kind.setdefault(mark.kind, []).append(mark.what)
    return Manifest(
        program=f"groundsill {VERSION}",
        house_hash=fingerprint(house),
        code=house.basis.code,
        editions=editions_of(house),
        edition_reasons={family: o.reason for family, o in sorted(house.basis.overrides.items())},
        from_memory=tuple(by_kind.get("from memory", ())),
        unverified=tuple(by_kind.get("unverified", ())),
        assumed=tuple(what for kind in ("assumed range", "estimated", "extension") for what in by_kind.get(kind, ())),
    )


CHECKED_BY: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {"asce7": asce7.EDITIONS, "sdpws": sdpws.EDITIONS, "nds": nds.EDITIONS, "aci318": ("aci318-19",)}
)


def editions_of(house: House) -> dict[str, str]:
    """The edition of every document under the house's basis.

    Raises:
        BadSurvey: when the basis names an edition that the checks are not made by, without a printed reason to mix.
    """
    basis = basis_of(house)
    faults = []
    for family, editions in CHECKED_BY.items():
        if basis.edition(family) not in editions:
            those = "that edition" if len(editions) == 1 else "one of them"
            allowed = (
                f"the checks are made by {' or '.join(editions)}: give basis.overrides.{family} {those} and a reason "
                "to mix"
            )
            faults.append(Fault(f"basis.overrides.{family}", basis.edition(family), allowed))
    if faults:
        raise BadSurvey(tuple(faults))
    return {a.family: basis.edition(a.family) for a in adoptions(house.basis.code)}


def fingerprint(house: House) -> str:
    """A short fingerprint of the document's content: the same whether a figure was written 7 or 7.0."""

    def same(thing: Any) -> Any:
        if isinstance(thing, dict):
            return {key: same(value) for key, value in thing.items()}
        if isinstance(thing, (list, tuple)):
            return [same(item) for item in thing]
        return float(thing) if isinstance(thing, int) and not isinstance(thing, bool) else thing

    return hashlib.sha256(json.dumps(same(asdict(house)), sort_keys=True).encode()).hexdigest()[:16]
