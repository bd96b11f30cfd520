"""A house file is untrusted input and the program works offline: what the code below the app never imports or calls.

One module may ask a public service, and only where a person told it to; it is imported by its one command alone.
"""

from __future__ import annotations

import ast
import re
import socket
from collections.abc import Iterator

import pytest

from tests.architecture.reading import Module, hold, imports_of, module_from, package_modules

RUNS_WHAT_IT_READS = {"pickle", "marshal", "shelve", "dill"}
REACHES_OUT = {"socket", "ssl", "http", "urllib", "ftplib", "smtplib", "socketserver", "requests", "httpx", "aiohttp"}
SERVES = ("groundsill.app",)
ASKS_WHEN_TOLD = {"groundsill.doors.hazard_service": ("groundsill.cli.hazard",)}
# These run parts of the program's own formula bodies; nothing that was read from a file reaches them.
OWN_CODE_ONLY = {
    "groundsill.working.equation": "writes out a flat limit check from an equation's signature",
    "groundsill.working.expression": "works out one part of an equation's body, to say which branch governed",
}


def risky(module: Module) -> Iterator[str]:
    known = frozenset(m.name for m in package_modules())
    for found in imports_of(module, known):
        top = found.target.split(".")[0]
        if top in RUNS_WHAT_IT_READS:
            yield f"{module.path}:{found.line}: {top} runs what it reads; files are untrusted"
        if top in REACHES_OUT and not module.name.startswith(SERVES) and module.name not in ASKS_WHEN_TOLD:
            yield f"{module.path}:{found.line}: {top} reaches out; the program works offline"
    for node in ast.walk(module.tree):
        called = node.func.id if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) else ""
        if called in ("eval", "exec") and module.name not in OWN_CODE_ONLY:
            yield f"{module.path}:{node.lineno}: {called} runs text as code"  # type: ignore[attr-defined]


def test_the_code_stays_offline_and_runs_nothing_it_reads() -> None:
    hold(fault for module in package_modules() for fault in risky(module))


def astray(module: Module) -> Iterator[str]:
    """Whoever could ask the service besides the command that is told to."""
    known = frozenset(m.name for m in package_modules())
    for found in imports_of(module, known):
        allowed = ASKS_WHEN_TOLD.get(found.target)
        if allowed is not None and module.name not in allowed:
            yield f"{module.path}:{found.line}: {found.target} reaches out, and is for {', '.join(allowed)} alone"


def test_only_the_command_that_is_told_to_can_ask_the_service() -> None:
    hold(fault for module in package_modules() for fault in astray(module))
    named = {m.name for m in package_modules()}
    assert named >= {*ASKS_WHEN_TOLD, *(name for names in ASKS_WHEN_TOLD.values() for name in names)}


def test_another_that_could_ask_is_named_with_its_line() -> None:
    text = '"""Room."""\n\ndef run():\n    from groundsill.doors.hazard_service import look_up\n'
    service = "groundsill.doors.hazard_service"
    assert list(astray(module_from(text))) == [
        f"src/groundsill/sample.py:4: {service} reaches out, and is for groundsill.cli.hazard alone"
    ]


def test_each_risk_is_named_with_its_line() -> None:
    text = '"""Room."""\nimport pickle\nfrom urllib.request import urlopen\n\nx = eval("1")\n'
    assert list(risky(module_from(text))) == [
        "src/groundsill/sample.py:2: pickle runs what it reads; files are untrusted",
        "src/groundsill/sample.py:3: urllib reaches out; the program works offline",
        "src/groundsill/sample.py:5: eval runs text as code",
    ]


def test_a_test_that_reaches_for_the_network_fails_and_says_where() -> None:
    with socket.socket() as reaching, pytest.raises(AssertionError, match=re.escape("('192.0.2.1', 80)")):
        reaching.connect(("192.0.2.1", 80))


def test_this_machine_may_be_reached() -> None:
    with socket.socket() as listening, socket.socket() as reaching:
        listening.bind(("127.0.0.1", 0))
        listening.listen()
        reaching.connect(listening.getsockname())
        assert reaching.getpeername() == listening.getsockname()
