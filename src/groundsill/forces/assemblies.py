"""What a square foot of an assembly weighs, layer by layer: from the weight tables, or as the survey gives it."""

from __future__ import annotations

from groundsill.forces.reading import Reading
from groundsill.standards.asce7_16.weight import table_c3_1_1
from groundsill.standards.common_practice import table_other_densities, table_other_weights
from groundsill.working.errors import BadSurvey, Fault
from groundsill.working.steps import add, scale

__all__ = ["assembly_psf", "known_materials", "masonry_pcf", "material_psf", "window_psf"]


def known_materials() -> tuple[str, ...]:
    """Every material the weight tables know, by the names a survey may use."""
    return (*table_c3_1_1().rows, *table_other_weights().rows)


def material_psf(material: str) -> float | None:
    """The printed weight of a material, psf, or None when no table has it."""
    if material in table_c3_1_1().rows:
        return table_c3_1_1().read(material, "psf")
    if material in table_other_weights().rows:
        return table_other_weights().read(material)
    return None


def assembly_psf(reading: Reading, id: str) -> float:
    """The weight of an assembly, psf: the sum of its layers.

    Raises:
        BadSurvey: when it has no layers, or a layer has neither a row in the tables nor a weight of its own.
    """
    assembly = reading.house.survey.building.assemblies[id]
    if not assembly.layers:
        allowed = "at least one layer: a material of the weight tables, or any words with its weight in psf"
        raise BadSurvey((Fault(f"survey.building.assemblies.{id}.layers", "no layer", allowed),))
    layers = []
    for place, layer in enumerate(assembly.layers):
        path = f"survey.building.assemblies.{id}.layers.{place}.psf"
        psf = reading.number(path, layer.psf, "w", "psf", f"{assembly.name}: {layer.material}")
        if psf is None:
            psf = material_psf(layer.material)
        if psf is None:
            allowed = "give its weight in psf, or use a material of the weight tables (groundsill formula weights)"
            raise BadSurvey((Fault(path.removesuffix(".psf") + ".material", repr(layer.material), allowed),))
        layers.append(psf if layer.times == 1 else scale(psf, layer.times, symbol="w", label=layer.material))
    return add(*layers, symbol="w", label=f"weight of {assembly.name}")


def window_psf() -> float:
    """Windows and doors by their area, psf."""
    return table_c3_1_1().read("wall: windows, glass and frame", "psf")


def masonry_pcf() -> float:
    """Brick masonry of a chimney over its outside volume, pcf."""
    return table_other_densities().read("brick masonry")
