"""What the prescriptive way asks of the floor's hold on the wall: joists that cannot roll, toenails or clips."""

from __future__ import annotations

from groundsill.forces.reading import line_length_in
from groundsill.loadpath.prescriptive.asking import Asking, by_number
from groundsill.loadpath.prescriptive.result import Answer, Requirement
from groundsill.standards.iebc_2021.bracing import table_a304_lengths
from groundsill.standards.iebc_2021.floor_ties import clips_asked, table_a304_1
from groundsill.work.pieces import TiePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import given

__all__ = ["tie_requirements"]


def tie_requirements(asking: Asking) -> tuple[Requirement, ...]:
    """Blocking or rim, then how its lower edge is held."""
    return _blocking(asking), _held(asking)


def _blocking(asking: Asking) -> Requirement:
    line = asking.line
    rule = "joists-along" if line.joists == "parallel" else "joists-across"
    if any(tie.adds_rim for _, tie in asking.of_kind(TiePiece)):
        return asking.told("blocking", rule, "meets", "the new clips come with blocking between the joists")
    if line.joists == "not seen" or line.rim == "not seen":
        reason = "which way the joists run to the line, or what closes their ends, was not seen"
        return asking.told("blocking", rule, "cannot tell", reason)
    if line.rim == "none":
        return asking.told("blocking", rule, "short", f"joists {line.joists}, with neither rim nor blocking")
    if line.rim == "blocking" and line.joists == "across":
        reason = f"blocking {_bays(asking)}: which bays are blocked is not in the survey"
        return asking.told("blocking", rule, "cannot tell", reason)
    return asking.told("blocking", rule, "meets", f"joists {line.joists}, {line.rim}")


def _bays(asking: Asking) -> str:
    """How often blocking is asked, in words."""
    with quiet():
        try:
            bays = float(table_a304_1().read(str(asking.measures.stories), "joist bays to one block, most", "n"))
        except OutsideLimits:
            return "is asked for"
    often = "every bay" if bays == 1 else "every other bay"
    return f"is asked in {often}" + (
        ", and above each braced panel in every bay" if asking.measures.stories > 1 else ""
    )


def _held(asking: Asking) -> Requirement:
    """Toenails as the rule asks, or clips; in houses of one story nobody has to look."""
    if asking.measures.stories == 1:
        reason = "to be verified in houses of more than one story only"
        return asking.told("clips", "floor-to-plate-nails", "does not apply", reason)
    connection = asking.line.floor_connection
    with quiet():
        most = float(table_a304_lengths().read("toenails along a rim, most"))
    spacing = connection.spacing_in.value
    path = f"survey.underfloor.lines.{asking.id}.floor_connection.spacing_in"
    nails = connection.kind == "toenails" and connection.nail.startswith("8d") and asking.line.rim == "rim joist"
    if nails and spacing is not None and spacing <= most:
        reason = f"{connection.nail} toenails {spacing:g} in. apart along the rim"
        return asking.told("clips", "floor-to-plate-nails", "meets", reason, marks=asking.reading.marked(path))
    return _clips(asking, _seen(asking, spacing))


def _seen(asking: Asking, spacing: float | None) -> str:
    """What is there instead of the toenails asked for, in words; empty where nobody looked."""
    connection = asking.line.floor_connection
    if connection.kind == "not seen" or (connection.kind == "toenails" and spacing is None):
        return ""
    apart = "" if spacing is None else f" {spacing:g} in. apart"
    return f"{connection.nail} {connection.kind}".strip() + apart


def _clips(asking: Asking, seen: str) -> Requirement:
    """The supplementary clips where the toenails are not what is asked; new ones over the line are counted."""
    length = line_length_in(asking.reading.house, asking.line)
    try:
        with section(asking.address("clips")):
            L = given("L", length, "in", "length of the line")
            asked = clips_asked(float(asking.measures.stories), L)
            least = table_a304_1().read(str(asking.measures.stories), "one clip, least", "P_least")
    except OutsideLimits as refused:
        return asking.told("clips", "floor-to-plate-nails", "cannot tell", str(refused))
    has = sum(tie.count for _, tie in asking.of_kind(TiePiece) if tie.capacity_lb >= float(least))
    answer: Answer = by_number(float(asked), has)
    if answer == "short" and not seen:
        answer = "cannot tell"
    said = [f"found: {seen}" if seen else "the toenails there were not seen", f"clips of {float(least):g} lb or more"]
    return asking.told("clips", "floor-to-plate-nails", answer, "; ".join(said), asked, has)
