"""Where the large counts write down what they came to: ``docs/validation/proof.md``, one dated line for each.

``make proof`` alone changes nothing there. With ``GROUNDSILL_RECORD=1 make proof`` each proof that passes writes its
line again, so that the page never claims more than was run.
"""

from __future__ import annotations

import datetime
import os
from pathlib import Path

PAGE = Path(__file__).parents[1] / "docs" / "validation" / "proof.md"
HEAD = """# What the large counts came to

Each line was written by the run it tells of (`GROUNDSILL_RECORD=1 make proof`), on its date, with the code of that
date. These are properties held over invented houses and spoiled files; values printed by others are counted apart, in
`tests/published`.

| Proof | Date | Result |
| --- | --- | --- |
"""


def with_line(page: str, name: str, line: str) -> str:
    """The page with the line of one proof put in, in order of names, or written over."""
    rows = {row.split("|")[1].strip(): row for row in page.splitlines() if row.startswith("|")}
    for heading in ("Proof", "---"):
        rows.pop(heading, None)
    rows[name] = line
    return HEAD + "".join(f"{rows[key]}\n" for key in sorted(rows))


def record(name: str, result: str) -> None:
    """Write down what a proof came to, when asked to."""
    if os.environ.get("GROUNDSILL_RECORD") != "1":
        return
    page = PAGE.read_text(encoding="utf-8") if PAGE.exists() else ""
    line = f"| {name} | {datetime.date.today().isoformat()} | {result} |"
    PAGE.parent.mkdir(parents=True, exist_ok=True)
    PAGE.write_text(with_line(page, name, line), encoding="utf-8")
