"""What every test run shares: how hard hypothesis tries, and a guard that keeps tests on this machine."""

from __future__ import annotations

import gc
import ipaddress
import socket
from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, settings

# A study makes hundreds of thousands of small frozen objects that hold no cycles: looking for cycles less often is a
# sixteenth of the time.
gc.set_threshold(100_000, 20, 100)

# The quick profile gives the same cases on every run; `make proof` looks further and prints how to repeat a failure.
settings.register_profile("quick", max_examples=50, deadline=None, derandomize=True, database=None)
settings.register_profile(
    "proof", max_examples=2000, deadline=None, print_blob=True, suppress_health_check=[HealthCheck.too_slow]
)


def pytest_configure(config: pytest.Config) -> None:
    settings.load_profile("proof" if config.getoption("markexpr") == "proof" else "quick")


def leaves_this_machine(address: object) -> bool:
    """Whether a socket address points anywhere but at this machine (a path is a local socket)."""
    if not isinstance(address, tuple):
        return False
    host = str(address[0])
    if host in ("", "localhost"):
        return False
    try:
        return not ipaddress.ip_address(host.split("%")[0]).is_loopback
    except ValueError:
        return True


@pytest.fixture(scope="session", autouse=True)
def _stay_on_this_machine() -> Iterator[None]:
    """Groundsill works offline; a test that reaches for the network fails and says where it reached."""
    real = socket.socket.connect

    def connect(self: socket.socket, address: object) -> None:
        if leaves_this_machine(address):
            raise AssertionError(f"a test reached for the network: {address!r}")
        real(self, address)  # type: ignore[arg-type]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(socket.socket, "connect", connect)
        yield
