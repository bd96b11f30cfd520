"""The exit codes, in one place."""

from __future__ import annotations

from typing import Final

__all__ = ["BAD_INPUT", "DONE", "INTERRUPTED", "NOT_PASSED", "OWN_FAULT", "PIPE_CLOSED"]

DONE: Final = 0
NOT_PASSED: Final = 1
BAD_INPUT: Final = 2
OWN_FAULT: Final = 3
INTERRUPTED: Final = 130
PIPE_CLOSED: Final = 141
