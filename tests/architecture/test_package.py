"""What is handed over: the wheel and the sdist hold what they should and nothing else; the engine runs from the zip."""

from __future__ import annotations

import subprocess
import sys
import tarfile
import zipfile
from pathlib import Path

import pytest

from tests.architecture.reading import PACKAGE, ROOT, SRC, engine_modules, project_files
from tests.architecture.test_engine_alone import run_alone

TOP_OF_SDIST = {"src", "tests", "benchmarks", "docs", "samples", ".ci"}


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the wheel and the sdist, built without fetching anything."""
    folder = tmp_path_factory.mktemp("dist")
    command = [sys.executable, "-m", "hatchling", "build", "-d", str(folder)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return folder


def only(folder: Path, pattern: str) -> Path:
    (found,) = folder.glob(pattern)
    return found


def test_the_wheel_holds_every_file_of_the_package(built: Path) -> None:
    ours = {p.relative_to(SRC).as_posix() for p in project_files() if p.is_relative_to(SRC)}
    with zipfile.ZipFile(only(built, "*.whl")) as wheel:
        held = set(wheel.namelist())
        (entry,) = (n for n in held if n.endswith(".dist-info/entry_points.txt"))
        assert "groundsill = groundsill.cli:main" in wheel.read(entry).decode()
    inside = {n for n in held if n.startswith(f"{PACKAGE}/")}
    assert f"{PACKAGE}/py.typed" in inside
    samples = {
        f"{PACKAGE}/{p.relative_to(ROOT).as_posix()}" for p in project_files() if p.is_relative_to(ROOT / "samples")
    }
    assert f"{PACKAGE}/samples/larch-street/house.json" in samples
    assert inside == ours | samples
    beside = {n for n in held - inside if ".dist-info/" not in n}
    assert beside == set()
    assert any(n.endswith(".dist-info/licenses/LICENSE") for n in held)


def test_the_sdist_holds_what_is_listed_and_nothing_else(built: Path) -> None:
    with tarfile.open(only(built, "*.tar.gz")) as sdist:
        held = {name.split("/", 1)[1] for name in sdist.getnames()}
    ours = {p.relative_to(ROOT).as_posix() for p in project_files()}
    assert held - ours == {"PKG-INFO"}
    left_out = {name for name in ours - held if name.split("/")[0] in TOP_OF_SDIST}
    assert left_out == set()
    assert {"LICENSE", "Makefile", "README.md", "requirements.lock", "src/groundsill/py.typed"} <= held


def test_the_demo_runs_from_the_wheel_alone(built: Path, tmp_path: Path) -> None:
    with zipfile.ZipFile(only(built, "*.whl")) as wheel:
        wheel.extractall(tmp_path / "site")
    command = [sys.executable, "-m", "groundsill", "demo", "larch-street", "--out", "made"]
    env = {"PYTHONPATH": str(tmp_path / "site")}
    done = subprocess.run(command, cwd=tmp_path, env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    made = {path.name for path in (tmp_path / "made" / "larch-street").iterdir()}
    assert made == {"calculations.pdf", "summary.json"}


def test_the_engine_runs_from_the_wheel_unopened(built: Path) -> None:
    names = [module.name for module in engine_modules()]
    done = run_alone(only(built, "*.whl"), names)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == str(len(names))
