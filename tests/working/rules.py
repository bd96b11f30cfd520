"""A small made-up rule book, so that the working room is tested apart from any real document.

``rules_from`` makes a module of the text it is given, so that a test can write a formula with a mistake in it; the
other rules here are sound. No test module: pytest rewrites those, and a formula is read from its own source.
"""

from __future__ import annotations

import itertools
import sys
from importlib.abc import InspectLoader
from importlib.util import module_from_spec, spec_from_loader
from math import sqrt
from types import ModuleType
from typing import Annotated

from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.source import Source
from groundsill.working.steps import add, least, scale
from groundsill.working.table import Table

RULES = Source(id="rules-1", short="Rules 1", title="A made-up rule book", publisher="these tests", edition="1")

Force = Annotated[float, Q("lb", "P", "force on the post", at_least=0.0, at_most=100000.0)]
Width = Annotated[float, Q("in", "b", "width", above=0.0, below=48.0)]
Depth = Annotated[float, Q("in", "d", "depth", above=0.0)]
Height = Annotated[float, Q("ft", "h", "height", above=0.0)]
Pressure = Annotated[float, Q("psi", "f_c", "pressure")]
Ratio = Annotated[float, Q("1", "r", "any number")]


@equation("rules-1/1", title="Pressure under a post", clause="1.1", source=RULES, witness="by hand")
def pressure(P: Force, b: Width, d: Depth = 5.5) -> Pressure:
    """Force over area."""
    return P / (b * d)


@equation("rules-1/2", title="Recalled pressure", clause="1.2", source=RULES, how="from memory", witness="by hand")
def recalled(P: Force, b: Width) -> Pressure:
    """A square post, recalled and not seen."""
    return P / b**2


@equation("rules-1/3", title="No witness", clause="1.3", source=RULES)
def unwitnessed(P: Force, b: Width) -> Pressure:
    """Nobody has printed a value of this one."""
    return 2 * P / b**2


@equation(
    "rules-1/4", title="Slender or stocky", clause="1.4", source=RULES, witness="by hand", constants={12: "in/ft"}
)
def slender(h: Height, b: Width) -> Annotated[float, Q("1", "k", "factor")]:
    """One value for a stocky wall, another for a slender one; taller than sixty times the width is refused."""
    require(12 * h <= 60 * b, "height no more than sixty times the width")
    s = 12 * h / b
    if s <= 11:
        return 1.0
    elif s <= 26:
        k = 1 - (s - 11) / 45
        return max(k, 0.5)
    else:
        return min((26 / s) ** 2 * 2 / 3, 0.5, 1 / sqrt(s))


@equation("rules-1/5", title="One over", clause="1.5", source=RULES, witness="by hand")
def one_over(r: Ratio) -> Annotated[float, Q("1", "q", "quotient")]:
    """Neither zero nor so small that the quotient is no number any more."""
    return 1.0 / r


@equation("rules-1/6", title="A power", clause="1.6", source=RULES, witness="by hand")
def tenth_power(r: Ratio) -> Annotated[float, Q("1", "y", "power")]:
    """Grows beyond any float."""
    return r**10 * r**10


@equation("rules-1/7", title="A root", clause="1.7", source=RULES, witness="by hand")
def root(r: Ratio) -> Annotated[float, Q("1", "y", "root")]:
    """No root of what is below zero."""
    return sqrt(r)


@procedure("rules-1/10", title="Worse of two posts", clause="1.10", source=RULES, alias="rules.posts")
def worse_post(P: Force, b: Width, species: str = "fir") -> float:
    """The lesser of a seen and a recalled rule, doubled for fir."""
    inner = both(P, b)
    return scale(inner, 2.0 if species == "fir" else 1.0, symbol="f", label="doubled for fir")


@procedure("rules-1/11", title="Both rules", clause="1.11", source=RULES)
def both(P: Force, b: Width) -> float:
    """A procedure inside another."""
    return least(pressure(P, b), recalled(P, b), symbol="f_min")


@procedure("rules-1/12", title="Sum of pressures", clause="1.12", source=RULES)
def sum_of(P: Force, b: Width) -> float:
    """Two pressures, added."""
    return add(pressure(P, b), pressure(P, b, 3.5), symbol="f_sum")


# --- a table ---------------------------------------------------------------------------------------------------------

OLD_CHECKSUM = "sha256:61c9d9d4d0d2b7a1"  # of no figures that any table here has
TABLE = f"""
document = "Rules 1"
number = "2"
title = "Values by wood and thickness"
row_key = "wood"
column_key = "thickness"
column_unit = "in"
unit = "psi"
symbol = "F"
beyond = "error"
columns = [0.5, 1, 2]
checksum = "{OLD_CHECKSUM}"
source = "scan"
[sources.scan]
how = "seen"
where = "these tests, page 3"
[sources.memory]
how = "from memory"
where = "recalled"
[rows]
fir = [100, 200, 400]
oak = [150, "not permitted", 500]
elm = [90, 180, 360]
[[exception]]
row = "elm"
columns = [1]
source = "memory"
"""


def table(text: str = TABLE) -> Table:
    """The table, with whatever checksum its figures have."""
    try:
        return Table.parse(text, "rules.toml")
    except Exception as refused:
        right = str(refused).rpartition("it is ")[2]
        if not right.startswith("sha256:"):
            raise
    return Table.parse(text.replace(OLD_CHECKSUM, right), "rules.toml")


# --- formulas made of text -------------------------------------------------------------------------------------------

_HEADER = """from __future__ import annotations
from math import cos, exp, log, pi, radians, sin, sqrt, tan
from typing import Annotated
from groundsill.working.equation import Q, equation, require
from tests.working.rules import RULES
"""
_NUMBERS = itertools.count(1)


class _InMemory(InspectLoader):
    """Hands out the source of one module that never was a file."""

    def __init__(self, source: str) -> None:
        self.source = source

    def get_source(self, fullname: str) -> str:
        return self.source


def rules_from(text: str) -> ModuleType:
    """A module of this text below the usual imports; line 1 of the text is line ``FIRST_LINE``."""
    name = f"tests_rules_made_{next(_NUMBERS)}"
    loader = _InMemory(_HEADER + text)
    spec = spec_from_loader(name, loader)
    assert spec is not None
    module = module_from_spec(spec)
    sys.modules[name] = module
    loader.exec_module(module)
    return module


FIRST_LINE = _HEADER.count("\n") + 1


def rule_from(body: str, arguments: str = "", gives: str = "1", constants: str = "{}") -> object:
    """One equation with this body; ``arguments`` is ``"b in, h ft"``: names with their units."""
    told = [a.split() for a in arguments.split(",") if a.strip()]
    signature = ", ".join(f'{name}: Annotated[float, Q("{unit}", "{name}", "{name}")]' for name, unit in told)
    lines = "\n".join(f"    {line}" for line in body.strip("\n").splitlines())
    module = rules_from(
        f'@equation("rules-1/made", title="made", clause="9", source=RULES, witness="none", constants={constants})\n'
        f'def made({signature}) -> Annotated[float, Q("{gives}", "y", "answer")]:\n{lines}\n'
    )
    return module.made
