"""Shows on stderr that something is going on, once it has taken longer than a second; quick work shows nothing."""

from __future__ import annotations

import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from groundsill.cli.speech import complain, console

if TYPE_CHECKING:
    from rich.progress import Progress

__all__ = ["busy"]

PATIENCE_S = 1.0


class _Display:
    """One piece of work under way: how far it is, and the bar, once there is one."""

    def __init__(self, what: str) -> None:
        self.what = what
        self.done = 0
        self.total: int | None = None
        self.ended = False
        self.bar: Progress | None = None
        self.lock = threading.Lock()

    def report(self, done: int, total: int) -> None:
        """Told by the work: so many parts of so many."""
        with self.lock:
            self.done, self.total = done, total
            if self.bar is not None:
                self.bar.update(self.bar.task_ids[0], completed=done, total=total)

    def show(self) -> None:
        """Called when patience has run out."""
        with self.lock:
            if self.ended:
                return
            if not sys.stderr.isatty():
                so_far = f" ({self.done} of {self.total} done)" if self.total else ""
                complain([f"{self.what} ...{so_far}"])
                return
            self.bar = _bar()
            self.bar.add_task(self.what, total=self.total, completed=self.done)
            self.bar.start()

    def end(self) -> None:
        """The work is over, well or badly; the bar leaves no trace."""
        with self.lock:
            self.ended = True
            if self.bar is not None:
                self.bar.stop()


def _bar() -> Progress:
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    bar = BarColumn(bar_width=28, style="dim", complete_style="bold", finished_style="bold", pulse_style="bold")
    columns = (TextColumn("{task.description}"), bar, MofNCompleteColumn())
    return Progress(*columns, console=console(error=True), transient=True)


@contextmanager
def busy(what: str, patience_s: float | None = None) -> Iterator[Callable[[int, int], None]]:
    """Work under a progress display; what is given takes ``(done, total)`` and may be left alone.

    On a terminal a bar appears after ``patience_s`` seconds and goes away at the end; elsewhere one line says what is
    going on.
    """
    display = _Display(what)
    timer = threading.Timer(PATIENCE_S if patience_s is None else patience_s, display.show)
    timer.daemon = True
    timer.start()
    try:
        yield display.report
    finally:
        timer.cancel()
        display.end()
