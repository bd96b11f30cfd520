"""Strength of old floors and plaster by the existing-building code's appendix for masonry buildings (IEBC A1).

Wood-lath plaster has no value in the standard for new panels: this is the only code that gives one. It was written for
floors and crosswalls of masonry buildings, so using it on a wood house is an extension and carries that mark.
"""

from __future__ import annotations

from groundsill.standards.old_materials import SOURCE
from groundsill.standards.old_materials.tables import table_iebc_a1_existing
from groundsill.working.equation import procedure
from groundsill.working.steps import given
from groundsill.working.value import Mark

__all__ = ["existing_strength"]


@procedure(
    "old-materials/iebc-a1",
    title="Strength of an existing floor, roof or plaster wall",
    clause="IEBC Appendix A1, existing materials",
    source=SOURCE,
    alias="old.existing-strength",
)
def existing_strength(material: str) -> float:
    """Strength-level unit shear of an existing material, plf.

    ``material`` is a row of the table (``"crosswall, plaster on wood or metal lath, one side"``).

    Raises:
        OutsideLimits: unknown material; the message lists those there are.
    """
    strength = table_iebc_a1_existing().read(material)
    mark = Mark("extension", "IEBC Appendix A1 values, written for masonry buildings, used on a wood house")
    return given("v", strength, "plf", f"existing: {material}", (mark,))
