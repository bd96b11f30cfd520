"""Writes our own past output anew: ``python -m tests.golden.write``, after a field was added on purpose."""

from __future__ import annotations

from groundsill.doors.study_json import study_text
from tests.doors.test_study_json import DOCUMENT, PROMISE, promised, study
from tests.golden.test_small_house import GOLDEN, written


def main() -> None:
    """Write the promise and the golden studies."""
    PROMISE.write_text("\n".join(promised()) + "\n", encoding="utf-8")
    DOCUMENT.write_text(study_text(study()), encoding="utf-8")
    GOLDEN.write_text(written(), encoding="utf-8")
    print(f"{PROMISE.name}, {DOCUMENT.name}, {GOLDEN.name}")


if __name__ == "__main__":
    main()
