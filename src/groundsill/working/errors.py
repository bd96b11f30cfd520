"""The few ways in which this program refuses, each written for the person who must act."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = [
    "BadSurvey",
    "CannotWrite",
    "Fault",
    "GroundsillError",
    "NoDesign",
    "OutsideLimits",
    "UnitError",
    "UnknownFormula",
    "numbered",
]

MOST_FAULTS_SHOWN = 50


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong with what was put in: which field, what value stands there, what is allowed."""

    path: str
    value: str
    allowed: str

    def line(self) -> str:
        """The fault in one sentence: field, value, what is allowed."""
        return f"{self.path}: {self.value} is not allowed; {self.allowed}"


def numbered(faults: tuple[Fault, ...]) -> tuple[str, ...]:
    """One numbered line for each fault, at most fifty, then a count of the rest."""
    lines = [f"{n}. {fault.line()}" for n, fault in enumerate(faults[:MOST_FAULTS_SHOWN], start=1)]
    if len(faults) > MOST_FAULTS_SHOWN:
        lines.append(f"... and {len(faults) - MOST_FAULTS_SHOWN} more")
    return tuple(lines)


class GroundsillError(Exception):
    """Any refusal by this program; the message says what to do about it."""


class BadSurvey(GroundsillError):
    """What was put in has faults. ``faults`` holds each; the message is the numbered list."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        self.faults = faults
        super().__init__("\n".join(numbered(faults)))


class OutsideLimits(GroundsillError):
    """A published formula or table was asked for a value outside what its document covers."""


class UnitError(GroundsillError):
    """Two units that do not fit together, or a unit nobody knows."""


class UnknownFormula(GroundsillError):
    """No formula or table has this name or number."""


class NoDesign(GroundsillError):
    """No choice of work makes every link pass."""


class CannotWrite(GroundsillError):
    """A file could not be written; nothing was left half-written."""
