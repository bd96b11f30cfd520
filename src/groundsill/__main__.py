"""``python -m groundsill``: the same commands as ``groundsill``."""

from __future__ import annotations

from groundsill.cli import main

if __name__ == "__main__":
    main()
