"""Is a house document sound: the survey by its own checks, and what is laid on it field by field.

Whether a piece of work still has its place is not a fault of the file: :func:`groundsill.work.apply.apply` reports such
pieces, and the rest of the house is worked out all the same.
"""

from __future__ import annotations

from collections.abc import Iterator

from groundsill.house.checks import check_survey, field_faults, reference_faults, type_faults
from groundsill.work.document import House
from groundsill.working.errors import Fault

__all__ = ["check_house"]


def check_house(house: House) -> tuple[Fault, ...]:
    """Every fault of a house document, the survey's first. Never raises."""
    beside = {"basis": house.basis, "choices": house.choices}
    wrong = [fault for name, part in beside.items() for fault in type_faults(part, name)]
    for name in ("alternatives", "record", "acceptances"):
        for key, item in getattr(house, name).items():
            wrong += type_faults(item, f"{name}.{key}")
    faults = [*check_survey(house.survey), *wrong]
    if wrong:
        return tuple(faults)
    for name, part in beside.items():
        faults += field_faults(part, name)
    return (*faults, *_alternative_faults(house), *_record_faults(house), *_acceptance_faults(house))


def _alternative_faults(house: House) -> Iterator[Fault]:
    """Fields of the pieces, stretches that end before they begin, ids used for two different things."""
    kinds: dict[str, tuple[str, str]] = {}
    for name, alternative in house.alternatives.items():
        yield from field_faults(alternative, f"alternatives.{name}")
        for key, piece in alternative.pieces.items():
            path = f"alternatives.{name}.pieces.{key}"
            start, end = getattr(piece, "from_in", None), getattr(piece, "to_in", None)
            if start is not None and end is not None and end <= start:
                yield Fault(f"{path}.to_in", f"{end:g}", f"a station beyond its start at {start:g}")
            kind, first = kinds.setdefault(key, (piece.kind, path))
            if kind != piece.kind:
                yield Fault(path, "this id", f"an id of its own; {first} is a {kind}, and one piece keeps its kind")


def _record_faults(house: House) -> Iterator[Fault]:
    """The record of the work: its fields, the photographs and the pieces it names."""
    pieces = {key for alternative in house.alternatives.values() for key in alternative.pieces}
    for key, record in house.record.items():
        yield from field_faults(record, f"record.{key}")
        yield from reference_faults(record, house.survey, f"record.{key}")
        if record.piece not in pieces:
            yield Fault(f"record.{key}.piece", f'"{record.piece[:60]}"', "the id of a piece of work of an alternative")


def _acceptance_faults(house: House) -> Iterator[Fault]:
    """Decisions of engineers: signed, dated and reasoned, each for one link of one state of the house."""
    for key, found in house.acceptances.items():
        path = f"acceptances.{key}"
        yield from field_faults(found, path)
        for name in ("by", "licence", "when", "reason"):
            if not getattr(found, name).strip():
                yield Fault(f"{path}.{name}", "nothing", "a decision counts only with name, licence, date and reason")
        if found.link.split("/")[0] not in ("line", "body") or found.link.count("/") != 4:
            allowed = "the address of a link as the load path prints it: line/<line>/sill-bolts/<sill>/both"
            yield Fault(f"{path}.link", f'"{found.link[:60]}"', allowed)
        if found.alternative is not None and found.alternative not in house.alternatives:
            yield Fault(f"{path}.alternative", f'"{found.alternative[:60]}"', "the id of an alternative, or nothing")
