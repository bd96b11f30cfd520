"""What chapter 17 of ACI 318-19 covers, and where old concrete lies outside it.

The chapter computes with f'c up to 10,000 psi (cast-in) or 8,000 psi (post-installed), and structural concrete starts
at 2,500 psi. Old foundations are often weaker or of unknown strength. Their breakout is still worked out by the same
equations, as a named extension: such a value is *indicated*, never *passes*, until tests or an engineer's decision say
more. :func:`anchor_scope` answers which it is, and hands over the marks that travel with the strength.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.symbols import ConcreteStrength
from groundsill.standards.aci318_19.tables import table_17_3_1
from groundsill.working.equation import procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition
from groundsill.working.value import Mark

__all__ = ["AnchorScope", "anchor_scope"]


@dataclass(frozen=True, slots=True)
class AnchorScope:
    """Whether a computed anchor strength lies within the chapter.

    ``within`` is True only when every condition is met; ``reasons`` names each one that is not; ``extension`` names
    the extension under which the value may still be worked out, "" when none is needed; ``marks`` go with f'c.
    """

    within: bool
    reasons: tuple[str, ...]
    extension: str
    marks: tuple[Mark, ...]


@procedure(
    "aci318-19/17.3.1",
    title="Does the chapter cover this concrete and anchor?",
    clause="17.3.1 and 19.2.1.1",
    source=SOURCE,
    alias="aci.anchor-scope",
)
def anchor_scope(f_c: ConcreteStrength, installed: str = "cast in", strength: str = "tested") -> AnchorScope:
    """Whether a strength worked out by chapter 17 stands within it, or only as a named extension.

    Args:
        f_c: concrete strength, psi.
        installed: ``"cast in"`` or ``"post-installed"``.
        strength: ``"tested"`` when cores or in-place tests gave it, ``"specified"`` for new concrete, ``"assumed"``
            when it comes from age or looks.
    """
    if strength not in ("tested", "specified", "assumed"):
        raise OutsideLimits(f"{SOURCE.cite('17.3.1')}: strength = {strength!r}; must be tested, specified or assumed")
    table = table_17_3_1()
    least, most = table.read(installed, "least", symbol="limit"), table.read(installed, "most", symbol="limit")
    checks = (
        (f"f'c is at least {float(least):,.0f} psi", f_c >= least, (f_c, least)),
        (f"f'c is at most {float(most):,.0f} psi, {installed}", f_c <= most, (f_c, most)),
        ("the concrete's strength is known by test", strength != "assumed", ()),
    )
    reasons = []
    for text, met, numbers in checks:
        condition(text, met, *numbers, cite=SOURCE.cite("17.3.1"))
        if not met:
            reasons.append(f"not so: {text}")
    if not reasons:
        return AnchorScope(True, (), "", ())
    extension = "chapter 17 carried on to concrete below 2,500 psi or of unknown strength"
    if f_c > most:
        extension = "chapter 17 carried on to concrete above its highest strength"
    return AnchorScope(False, tuple(reasons), extension, (Mark("extension", f"{SOURCE.short}: {extension}"),))
