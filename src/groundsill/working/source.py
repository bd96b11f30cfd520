"""The documents that equations and tables come from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

__all__ = ["How", "Source"]

How = Literal["seen", "from memory", "computed"]


@dataclass(frozen=True, slots=True)
class Source:
    """A published document in one edition.

    ``id`` is the first half of every permanent formula id (``nds-2018``). A superseded edition stays in the program,
    named by the edition that took its place, because old drawings are still read by it.
    """

    id: str
    short: str
    title: str
    publisher: str
    edition: str
    superseded_by: str | None = None

    def cite(self, clause: str) -> str:
        """The document and the place in it, as printed beside a step: ``NDS 2018 12.3.1``."""
        return f"{self.short} {clause}"
