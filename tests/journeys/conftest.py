"""A journey asks commands, one after the other."""

from __future__ import annotations

from tests.cli.conftest import alder, ask

__all__ = ["alder", "ask"]
