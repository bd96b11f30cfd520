"""Every test of the command line may ask commands, at 80 columns and without a person's own settings."""

from __future__ import annotations

from pathlib import Path

import pytest

from groundsill.cli import progress
from groundsill.doors.files import write_house
from tests.cli.asking import Asker
from tests.fixtures.small_house import small_house


@pytest.fixture
def ask(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Asker:
    monkeypatch.setenv("COLUMNS", "80")
    for name in ("NO_COLOR", "FORCE_COLOR", "TTY_COMPATIBLE", "GROUNDSILL_DEBUG"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(progress, "PATIENCE_S", 3600.0)  # what a slow machine says of its slowness is not asked here
    return Asker(capsys)


@pytest.fixture(scope="session")
def alder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small house of the fixtures as a file."""
    path = tmp_path_factory.mktemp("alder") / "alder.json"
    write_house(path, small_house())
    return path
