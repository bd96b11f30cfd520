"""The documents that equations and tables come from, and a later edition read in the place of an earlier one."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from functools import wraps
from typing import Any, Literal, ParamSpec, TypeVar

__all__ = ["READ_IN_PLACE", "How", "InPlace", "Source", "read_in_place_of"]

How = Literal["seen", "from memory", "computed"]

P = ParamSpec("P")
T = TypeVar("T")


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
        """The document and the place in it, as printed beside a step: ``NDS 2018 12.3.1``.

        While a later edition is read in its place, that edition is named.
        """
        later = read_in_place_of(self.short)
        return f"{self.short if later is None else later.by.short} {clause}"


@dataclass(frozen=True, slots=True)
class InPlace:
    """A later edition, ``by``, read in the place of the document ``of``.

    A composed rule that stands unchanged in both need not be written twice: while it runs for the later edition, every
    equation, procedure and table of the earlier one that it asks for is answered by the later one's own, under its own
    number and with its own doubts. ``answer`` gives what the later edition has for a thing of the earlier.
    """

    of: Source
    by: Source
    answer: Callable[[Any], Any]

    @contextmanager
    def read(self) -> Iterator[None]:
        """Read the later edition in the earlier one's place, in this thread or task only."""
        token = READ_IN_PLACE.set(self)
        try:
            yield
        finally:
            READ_IN_PLACE.reset(token)

    def running(self, rule: Callable[P, T]) -> Callable[P, T]:
        """The rule, run with the later edition in the earlier one's place."""

        @wraps(rule)
        def run(*args: P.args, **kwargs: P.kwargs) -> T:
            with self.read():
                return rule(*args, **kwargs)

        return run


READ_IN_PLACE: ContextVar[InPlace | None] = ContextVar("groundsill_read_in_place", default=None)


def read_in_place_of(document: str) -> InPlace | None:
    """The edition that is read just now in the place of a document, named as on paper (``NDS 2018``); usually none."""
    later = READ_IN_PLACE.get()
    return later if later is not None and later.of.short == document else None
