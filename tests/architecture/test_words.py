"""What never stands in the repository: this machine's paths, registry hosts, addresses in the locks, working notes."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.architecture.reading import ROOT, hold, project_files

# Each is put together from pieces, so that this file does not say what it forbids.
FORBIDDEN = {
    "a folder outside the repository": r"\.\./" + "shared",
    "a path of one machine": r"(?<![\w.\-})\]*~])/(?:" + "work|root|opt/wheels|opt/pypi" + r")(?:/|\b(?=[\s`'\"]))",
    "a temporary folder of one machine": "/tmp" + "/gs",
    "working notes": "|".join([r"\btrans" + r"cripts?\b", "seed[ -]" + "documents?", "sub-?" + "agents?"]),
    "a registry's host": "|".join([r"pypi\." + "org", r"python" + r"hosted\.", r"npm" + r"js\.(?:org|com)"]),
}
PATTERNS = {what: re.compile(pattern, re.IGNORECASE) for what, pattern in FORBIDDEN.items()}
ADDRESS = re.compile(
    r"https?:|file:|git\+|@ |(?:^|\s)--?(?:index|extra-index|find-links|i|f)\b|(?:^|\s)/\w", re.IGNORECASE
)


def said(path: str, text: str) -> Iterator[str]:
    """Each forbidden thing in one file, with its line."""
    for what, pattern in PATTERNS.items():
        if match := pattern.search(path):
            yield f"{path}: {what} in the file's name: {match[0]!r}"
        for number, line in enumerate(text.splitlines(), start=1):
            if match := pattern.search(line):
                yield f"{path}:{number}: {what}: {match[0]!r}"


def addresses(path: str, text: str) -> Iterator[str]:
    for number, line in enumerate(text.splitlines(), start=1):
        if match := ADDRESS.search(line):
            yield f"{path}:{number}: a lock holds names, versions and checksums only, not {match[0].strip()!r}"


def text_of(path: Path) -> str:
    """The file's text, or nothing for a picture or a PDF."""
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return ""


def locks() -> list[Path]:
    return [p for p in project_files() if p.suffix == ".lock" or p.name == "package-lock.json"]


def test_nothing_forbidden_is_said() -> None:
    hold(fault for path in project_files() for fault in said(path.relative_to(ROOT).as_posix(), text_of(path)))


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ("see .." + "/shared/facts", "a folder outside the repository: '.." + "/shared'"),
        ("cd /wor" + "k/main", "a path of one machine: '/wor" + "k/'"),
        ("`/roo" + "t`", "a path of one machine: '/roo" + "t'"),
        ("as the Trans" + "cript says", "working notes: 'Trans" + "cript'"),
        ("a sub" + "agent", "working notes: 'sub" + "agent'"),
        ("a seed " + "document", "working notes: 'seed " + "document'"),
        ("https://pypi" + ".org/simple", "a registry's host: 'pypi" + ".org'"),
    ],
)
def test_a_forbidden_word_is_named_with_its_line(line: str, what: str) -> None:
    assert list(said("docs/a.md", f"fine\n{line}\n")) == [f"docs/a.md:2: {what}"]


@pytest.mark.parametrize(
    "line",
    ["src/groundsill/work/pieces.py", "the framework/work/flow", "root/branch", "half/work", "a public transcription"],
)
def test_what_only_looks_alike_may_be_said(line: str) -> None:
    assert list(said("docs/a.md", line)) == []


def test_locks_hold_no_address() -> None:
    found = locks()
    assert {"requirements.lock", "requirements-dev.lock"} <= {p.name for p in found}
    for path in found:
        hold(addresses(path.name, text_of(path)))


@pytest.mark.parametrize(
    "line", ["--index-url x", "rich @ somewhere", "# from https://a.example/b", "-f wheels", "a==1 --hash /srv/a"]
)
def test_an_address_in_a_lock_is_named(line: str) -> None:
    assert [f.split(":")[1] for f in addresses("requirements.lock", f"rich==15.0.0\n{line}\n")] == ["2"]


def test_every_pin_has_checksums_and_both_locks_agree() -> None:
    pins = {name: set(pinned(text_of(ROOT / name))) for name in ("requirements.lock", "requirements-dev.lock")}
    assert {pin.split("==")[0] for pin in pins["requirements.lock"]} >= {"pydantic", "rich", "typer", "typst"}
    assert pins["requirements.lock"] <= pins["requirements-dev.lock"]


def pinned(text: str) -> Iterator[str]:
    """Each ``name==version`` of a lock; a pin without a checksum is a failure."""
    for block in re.split(r"^(?=[A-Za-z0-9])", text, flags=re.MULTILINE):
        if block.strip():
            assert "--hash=sha256:" in block, f"no checksum: {block.splitlines()[0]}"
            yield block.split()[0]
