"""The little shape that stands beside each verdict, so that no verdict is told by colour.

Drawn once here as SVG in a square of ten, for screen and paper alike; ``SIGNS`` are the nearest letters for a terminal.
"""

from __future__ import annotations

from groundsill.papers.document import Status

__all__ = ["SHAPES", "SIGNS", "shape_svg"]

SHAPES: dict[Status, str] = {
    "passes": '<circle cx="5" cy="5" r="3.6" fill="{ink}"/>',
    "fails": '<path d="M1.8 1.8 8.2 8.2M8.2 1.8 1.8 8.2" fill="none" stroke="{ink}" stroke-width="1.9"/>',
    "indicated": (
        '<path d="M1.4 1.4H8.6V8.6H1.4ZM1.4 5 5 1.4M1.4 8.6 8.6 1.4M5 8.6 8.6 5" fill="none" stroke="{ink}" '
        'stroke-width="0.9"/>'
    ),
    "cannot be checked": '<path d="M1.4 1.4H8.6V8.6H1.4Z" fill="none" stroke="{ink}" stroke-width="1.1"/>',
    "does not apply": '<path d="M1.6 5H8.4" fill="none" stroke="{ink}" stroke-width="1.1"/>',
    "depends": (
        '<circle cx="5" cy="5" r="3.5" fill="none" stroke="{ink}" stroke-width="1.1"/>'
        '<path d="M5 1.5A3.5 3.5 0 0 0 5 8.5Z" fill="{ink}"/>'
    ),
}

SIGNS: dict[Status, str] = {
    "passes": "●",
    "fails": "✕",
    "indicated": "▨",
    "cannot be checked": "□",
    "does not apply": "–",
    "depends": "◐",
}


def shape_svg(status: Status, ink: str, attributes: str = "") -> str:
    """The shape of one verdict as an SVG of its own."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10" width="10" height="10"{attributes}>'
        f"{SHAPES[status].format(ink=ink)}</svg>"
    )
