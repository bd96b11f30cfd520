"""Where the house stands: hazard, soil, slope, weather, and the flags a map would raise."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.house.fact import Fact, about, unknown

__all__ = ["DesignValues", "Hazard", "Site", "SiteFlag", "Soil"]

SiteClass = Literal["A", "B", "B-estimated", "BC", "C", "CD", "D", "D-default", "DE", "E"]
SoilClass = Literal["crystalline rock", "sedimentary rock", "gravel", "sand", "clay", "none presumed"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Hazard:
    """Mapped or service values of ground motion, and where they came from."""

    S_S: float = about(
        "Short-period ground motion", unit="g", help="mapped MCER acceleration at 0.2 s", least=0, most=5
    )
    S_1: float = about("One-second ground motion", unit="g", help="mapped MCER acceleration at 1 s", least=0, most=3)
    T_L: float = about("Long-period transition", unit="s", least=0.5, most=20, default=6.0)
    S_DS: float | None = about(
        "Entered SDS",
        unit="g",
        help="by ASCE 7-22 it must be entered; by 7-16 only from a study",
        least=0,
        most=4,
        default=None,
    )
    S_D1: float | None = about(
        "Entered SD1",
        unit="g",
        help="by ASCE 7-22 it should be entered; by 7-16 only from a study",
        least=0,
        most=4,
        default=None,
    )
    site_class: SiteClass = about(
        "Site class",
        help="D-default when no soil study was made; BC, CD and DE by ASCE 7-22 alone",
        default="D-default",
    )
    source: str = about("Where the values came from", help="service or map, edition, date", default="")
    when: str = about("Date of the values", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class DesignValues:
    """Design ground motion by another edition of ASCE 7 than the house goes by, kept to compare."""

    order: float = 0
    mark: str = ""
    edition: str = about("Edition", help="asce7-22")
    S_DS: float = about("SDS", unit="g", least=0.01, most=4)
    S_D1: float | None = about("SD1", unit="g", least=0, most=4, default=None)
    S_1: float | None = about(
        "One-second ground motion by that edition",
        unit="g",
        help="left out, the one of the house's own edition stands",
        least=0,
        most=3,
        default=None,
    )
    source: str = about("Where the values came from", default="")
    when: str = about("Date of the values", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Soil:
    """The ground the foundation stands in."""

    kind: Fact[str] = about(
        "Soil under the footing",
        choices=("crystalline rock", "sedimentary rock", "gravel", "sand", "clay", "none presumed"),
        factory=unknown,
    )
    bearing_psf: Fact[float] = about(
        "Allowable bearing from a report",
        unit="psf",
        help="gross; the fact's own by and when say whose report it is",
        least=100,
        most=20000,
        factory=unknown,
    )
    lateral_pcf: Fact[float] = about(
        "Allowable lateral bearing from a report",
        unit="pcf",
        help="pounds on a square foot for each foot of depth",
        least=10,
        most=2000,
        factory=unknown,
    )
    friction: Fact[float] = about(
        "Allowable friction coefficient from a report", least=0.05, most=0.95, factory=unknown
    )
    cohesion_psf: Fact[float] = about(
        "Allowable cohesion under the footing from a report", unit="psf", least=10, most=5000, factory=unknown
    )
    plasticity_index: Fact[float] = about("Plasticity index", least=0, most=150, factory=unknown)
    expansion_index: Fact[float] = about("Expansion index", least=0, most=300, factory=unknown)
    fill: Fact[bool] = about("Fill under the footing", factory=unknown)
    water_depth_in: Fact[float] = about("Depth to ground water", unit="in", least=0, most=6000, factory=unknown)
    frost_depth_in: Fact[float] = about("Frost depth", unit="in", least=0, most=120, factory=unknown)
    source: str = about("Where the soil facts came from", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteFlag:
    """Something a map or a look round the lot raises; ``present`` is yes, no or unknown."""

    order: float = 0
    mark: str = ""
    kind: Literal["landslide", "liquefaction", "fault zone", "fill", "flood"] = "landslide"
    present: Fact[bool] = about("Present", factory=unknown)
    source: str = about("Map or report", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """The place and its loads."""

    address: str = about("Address", default="")
    jurisdiction: str = about("Jurisdiction", default="")
    latitude: float | None = about("Latitude", unit="deg", least=-90, most=90, default=None)
    longitude: float | None = about("Longitude", unit="deg", least=-180, most=180, default=None)
    hazard: Hazard | None = about("Ground motion", default=None)
    design_values: dict[str, DesignValues] = about("Design values by other editions", factory=dict)
    risk_category: Literal["I", "II", "III", "IV"] = about("Risk category", default="II")
    soil: Soil = about("Soil", factory=Soil)
    slope_rise_per_run: Fact[float] = about(
        "Steepest ground slope under or within 10 ft of the house",
        help="rise over run: 0.33 is 1:3",
        least=0,
        most=2,
        factory=unknown,
    )
    slope_down_deg: float | None = about(
        "Direction in which the ground falls",
        unit="deg",
        help="0 along +x, 90 along +y",
        least=0,
        most=360,
        default=None,
    )
    snow_psf: Fact[float] = about("Roof snow load", unit="psf", least=0, most=400, factory=unknown)
    rain_in_per_h: Fact[float] = about("Rainfall intensity, 5 minutes", unit="in/h", least=0, most=25, factory=unknown)
    wind_mph: Fact[float] = about(
        "Basic wind speed",
        unit="mph",
        help="3-second gust for the risk category, from the strength-level maps; without it wind is not looked at",
        least=60,
        most=220,
        factory=unknown,
    )
    exposure: Literal["B", "C", "D"] | None = about(
        "Wind exposure",
        help="B among houses or trees, D at open water, else C; needed where a wind speed is given",
        default=None,
    )
    K_zt: Fact[float] = about(
        "Topographic factor of wind",
        help="1 where no hill, ridge or bank stands out; left out, 1 is taken where the ground is gentle",
        least=1,
        most=5,
        factory=unknown,
    )
    flags: dict[str, SiteFlag] = about("Site flags", factory=dict)
