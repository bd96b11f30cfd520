"""Writes docs/reference/formulas.md (every formula and table) and docs/validation/witnesses.md (what holds them)."""

from __future__ import annotations

import tomllib
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from groundsill.doors.formulas import list_formulas
from groundsill.standards.catalogue import call, find
from groundsill.working.equation import Equation

__all__ = ["formulas", "witnesses"]

WITNESSES = Path(__file__).resolve().parent.parent / "tests" / "published" / "witnesses"

_FORMULAS = """
# Every formula and table

`groundsill formula NAME` shows one with its limits, source and errata; `groundsill formula NAME name=value ...` works
it out with all its steps ([how](../how-to/look-up-a-formula.md)). A name of the trade (`nds.sill-bolt`) means the
edition of the building code; an id means one edition.

How each is known:

- *seen*: read in a named public source, and held to a value that others printed
  ([the values](../validation/witnesses.md));
- *unverified*: read in a named public source; no printed value to hold it to;
- *from memory*: recalled, not yet seen in a named public source: to be confirmed before anything rests on it;
- *partly from memory*: a table some of whose figures are;
- *composed*: a rule made of others on this page; each of its steps says how it is known;
- *computed*: worked out from other printed figures.
"""


def formulas() -> str:
    """The page of formulas."""
    return "\n".join(_formula_lines()) + "\n"


def _formula_lines() -> Iterator[str]:
    found = list_formulas()
    counts = Counter(line.status for line in found.formulas)
    yield _FORMULAS
    yield f"{len(found.formulas)} in all: {'; '.join(f'{n} {status}' for status, n in counts.most_common())}."
    known = {document.id: document for document in found.documents}
    for id in dict.fromkeys(line.document for line in found.formulas):
        document = known.get(id)
        yield f"\n## {document.short if document else id}\n"
        if document:
            newer = f" Superseded by {document.superseded_by}." if document.superseded_by else ""
            yield f"{document.title}. {document.publisher}.{newer}\n"
        yield "| Name | What it is | Where in the document | How known |\n| --- | --- | --- | --- |"
        for line in found.formulas:
            if line.document == id:
                name = f"`{line.alias}`, `{line.id}`" if line.alias else f"`{line.id}`"
                yield f"| {name} | {_cell(line.title)} | {_cell(line.cite)} | {line.status} |"


# ---- Witnesses ------------------------------------------------------------------------------------------------------

_WITNESSES = """
# Values printed by others, and ours

Every value here is run through the program's public formula call on every test run, and this page is written by the
same call. *Printed* is what the source says, *ours* what the program gives for the same inputs, *off by* the difference
as a share of the printed value, and *why* what may part the two (mostly how far the source rounded).
"""
_KINDS = {
    "seen": ("Printed by others", "Read in a named public source. Only these count as proof from outside."),
    "computed": (
        "Worked out by another route",
        "Our own arithmetic, done a second time. It finds slips of the pen and proves nothing about the documents.",
    ),
    "from memory": ("Recalled", "Remembered values of printed tables, to be confirmed. Not counted as proof."),
}


def witnesses() -> str:
    """The page of witnesses."""
    return "\n".join(_witness_lines()) + "\n"


def _witness_lines() -> Iterator[str]:
    cases = [case for path in sorted(WITNESSES.glob("*.toml")) for case in _cases(path)]
    values = {how: sum(len(_compared(c)) for c in cases if c["how"] == how) for how in _KINDS}
    yield _WITNESSES
    seen = {each for case in cases if case["how"] == "seen" for each in (case["formula"], *case.get("covers", ()))}
    held = sum(1 for each in seen if isinstance(find(each).maker, Equation))
    yield f"{values['seen']} values printed by others, which hold {held} equations; {values['computed']} worked out by"
    yield f"another route; {values['from memory']} recalled."
    for how, (title, words) in _KINDS.items():
        yield f"\n## {title}\n\n{words}"
        for document in dict.fromkeys(str(c["document"]) for c in cases if c["how"] == how):
            yield f"\n**{document}**\n"
            yield f"| Formula | Where | Value | Printed | Ours | Off by | Why |\n|{' --- |' * 7}"
            for case in (c for c in cases if c["how"] == how and c["document"] == document):
                for name, printed, ours in _compared(case):
                    yield (
                        f"| `{case['formula']}` | {_cell(case['place'])} | {name} | {_shown(printed)} | {_shown(ours)} "
                        f"| {_off(printed, ours)} | {_cell(case['reason'])} |"
                    )


def _cases(path: Path) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = tomllib.loads(path.read_text("utf-8")).get("case", [])
    return found


def _compared(case: dict[str, Any]) -> list[tuple[str, Any, Any]]:
    """Each value of a case: its name in the result, what was printed, what the program gives."""
    return list(_parts("", call(case["formula"], case["inputs"]), case["expected"]))


def _parts(name: str, got: Any, expected: Any) -> Iterator[tuple[str, Any, Any]]:
    if not isinstance(expected, dict):
        yield name, expected, got
        return
    for path, printed in expected.items():
        yield from _parts(f"{name}.{path}".lstrip("."), _part(got, path), printed)


def _part(thing: Any, path: str) -> Any:
    for step in path.split("."):
        thing = thing[int(step)] if step.isdigit() else getattr(thing, step)
    return thing


def _shown(value: Any) -> str:
    """A figure to five digits, the same on every machine; a truth or a word as it is."""
    if value is None:
        return "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if not isinstance(value, (int, float)):
        return _cell(str(value))
    return f"{float(value):,.0f}" if abs(value) >= 99_999.5 else f"{float(value):.5g}"


def _off(printed: Any, ours: Any) -> str:
    if not isinstance(printed, (int, float)) or isinstance(printed, bool) or not isinstance(ours, (int, float)):
        return "the same" if _shown(printed) == _shown(ours) else "not the same"
    if printed == 0:
        return "nothing" if abs(ours) < 1e-9 else f"{float(ours):.2g}"
    off = 100 * abs(float(ours) - printed) / abs(printed)
    return "nothing" if off < 5e-4 else f"{off:.3f} %" if off < 0.1 else f"{off:.2f} %"


def _cell(text: str) -> str:
    return " ".join(text.replace("|", "\\|").split())
