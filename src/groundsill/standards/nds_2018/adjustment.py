"""11.3: from the reference value of one fastener to the adjusted one, each factor a table row read and recorded.

In: a reference lateral value Z (lb) or withdrawal value W (lb/in), and in words what the wood and the load are: the
load that lasts least long, moisture, temperature, grain, use, how a nail was driven. Out: Z' or the withdrawal force,
for allowable stress design (``method="ASD"``, with C_D) or for strength design (``"LRFD"``, with K_F, φ_z, λ).
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.symbols import Penetration, Reference
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.table import Table

__all__ = [
    "adjusted_lateral",
    "adjusted_lateral_asd",
    "adjusted_lateral_lrfd",
    "adjusted_withdrawal",
    "adjusted_withdrawal_asd",
    "adjusted_withdrawal_lrfd",
    "table_2_3_2",
    "table_11_3_3_lateral",
    "table_11_3_3_withdrawal",
    "table_11_3_4",
    "table_12_5_2",
    "table_12_5_3",
    "table_12_5_4",
    "table_n1",
    "table_n2",
    "table_n3",
]

DRY = "dry when built, dry in service"


def _factor(symbol: str, what: str) -> Q:
    return Q("1", symbol, what, at_least=0.0)


Duration = Annotated[float, Q("1", "C_D", "load duration factor", above=0.0, at_most=1.6)]
Wet = Annotated[float, _factor("C_M", "wet service factor")]
Temperature = Annotated[float, _factor("C_t", "temperature factor")]
Group = Annotated[float, Q("1", "C_g", "group action factor", above=0.0, at_most=1.0)]
Geometry = Annotated[float, Q("1", "C_Δ", "geometry factor", above=0.0, at_most=1.0)]
EndGrain = Annotated[float, _factor("C_eg", "end grain factor")]
DiaphragmFactor = Annotated[float, _factor("C_di", "diaphragm factor")]
Toenail = Annotated[float, _factor("C_tn", "toenail factor")]
Conversion = Annotated[float, _factor("K_F", "format conversion factor")]
Resistance = Annotated[float, _factor("φ_z", "resistance factor of connections")]
TimeEffect = Annotated[float, _factor("λ", "time effect factor")]
PerInch = Annotated[float, Q("lb/in", "W", "reference withdrawal value per inch of penetration", at_least=0.0)]


def table_2_3_2() -> Table:
    """Load duration factor C_D (Table 2.3.2); impact is left out, since connections stop at 1.6."""
    return Table.load(__package__, "tables/2_3_2.toml")


def table_11_3_3_lateral() -> Table:
    """Wet service factor C_M of dowels loaded laterally (Table 11.3.3)."""
    return Table.load(__package__, "tables/11_3_3_lateral.toml")


def table_11_3_3_withdrawal() -> Table:
    """Wet service factor C_M of nails in withdrawal (Table 11.3.3)."""
    return Table.load(__package__, "tables/11_3_3_withdrawal.toml")


def table_11_3_4() -> Table:
    """Temperature factor C_t (Table 11.3.4)."""
    return Table.load(__package__, "tables/11_3_4.toml")


def table_12_5_2() -> Table:
    """End grain factor C_eg (12.5.2)."""
    return Table.load(__package__, "tables/12_5_2.toml")


def table_12_5_3() -> Table:
    """Diaphragm factor C_di (12.5.3): for nails of a diaphragm, not of a shear wall."""
    return Table.load(__package__, "tables/12_5_3.toml")


def table_12_5_4() -> Table:
    """Toenail factor C_tn (12.5.4)."""
    return Table.load(__package__, "tables/12_5_4.toml")


def table_n1() -> Table:
    """Format conversion factor K_F (Table N1)."""
    return Table.load(__package__, "tables/n1.toml")


def table_n2() -> Table:
    """Resistance factor φ_z (Table N2)."""
    return Table.load(__package__, "tables/n2.toml")


def table_n3() -> Table:
    """Time effect factor λ (Table N3)."""
    return Table.load(__package__, "tables/n3.toml")


@equation(
    "nds-2018/11.3.1-ASD",
    title="Adjusted lateral design value, ASD",
    clause="Table 11.3.1",
    source=SOURCE,
    witness="seaintarchive.org 2009c msg00914: 141 x 1.25/1.62 x 1.6 = 174 lb",
)
def adjusted_lateral_asd(
    Z: Reference,
    C_D: Duration,
    C_M: Wet,
    C_t: Temperature,
    C_g: Group,
    C_delta: Geometry,
    C_eg: EndGrain,
    C_di: DiaphragmFactor,
    C_tn: Toenail,
) -> Annotated[float, Q("lb", "Z'", "adjusted lateral design value, ASD")]:
    """The reference value times every factor that applies to a dowel; those that do not apply are 1.

    Source: the product for nails and for bolts, issuhub.com/view/index/4884?pageIndex=190 (seen).
    """
    return Z * C_D * C_M * C_t * C_g * C_delta * C_eg * C_di * C_tn


@equation(
    "nds-2018/11.3.1-LRFD",
    title="Adjusted lateral design value, LRFD",
    clause="Table 11.3.1",
    source=SOURCE,
    how="from memory",
)
def adjusted_lateral_lrfd(
    Z: Reference,
    C_M: Wet,
    C_t: Temperature,
    C_g: Group,
    C_delta: Geometry,
    C_eg: EndGrain,
    C_di: DiaphragmFactor,
    C_tn: Toenail,
    K_F: Conversion,
    phi: Resistance,
    lam: TimeEffect,
) -> Annotated[float, Q("lb", "Z'", "adjusted lateral design value, LRFD")]:
    """The same factors with K_F φ_z λ in place of C_D."""
    return Z * C_M * C_t * C_g * C_delta * C_eg * C_di * C_tn * K_F * phi * lam


@procedure(
    "nds-2018/11.3.1-lateral",
    title="Adjusted lateral design value of one fastener",
    clause="11.3, Table 11.3.1",
    source=SOURCE,
    alias="nds.adjusted-lateral",
)
def adjusted_lateral(
    Z: Reference,
    method: str = "ASD",
    load: str = "wind or earthquake",
    moisture: str = DRY,
    temperature: str = "to 100 F",
    C_g: Group = 1.0,
    C_delta: Geometry = 1.0,
    grain: str = "side grain",
    use: str = "not in a diaphragm",
    driven: str = "straight",
    combination: str = "with wind or earthquake",
) -> float:
    """Z' in lb. ``load`` picks C_D (ASD only), ``combination`` picks λ (LRFD only); ``driven="toenail, lateral"``.

    Example: 928 lb reference, ASD, earthquake, dry: 1,485 lb; LRFD: 928 x 3.32 x 0.65 = 2,003 lb (our own arithmetic).

    Raises:
        OutsideLimits: for a word that no row of its table has; the message lists the rows.
    """
    _method(method)
    C_D = table_2_3_2().read(load) if method == "ASD" else 1.0
    C_M = table_11_3_3_lateral().read(moisture)
    C_t = table_11_3_4().read(temperature)
    C_eg = table_12_5_2().read(grain)
    C_di = table_12_5_3().read(use)
    C_tn = table_12_5_4().read(driven)
    if method == "ASD":
        return adjusted_lateral_asd(Z, C_D, C_M, C_t, C_g, C_delta, C_eg, C_di, C_tn)
    K_F, phi = table_n1().read("connections"), table_n2().read("connections")
    lam = table_n3().read(combination)
    return adjusted_lateral_lrfd(Z, C_M, C_t, C_g, C_delta, C_eg, C_di, C_tn, K_F, phi, lam)


@equation(
    "nds-2018/11.3.1-W-ASD",
    title="Adjusted withdrawal force of one fastener, ASD",
    clause="Table 11.3.1",
    source=SOURCE,
)
def adjusted_withdrawal_asd(
    W: PerInch, p: Penetration, C_D: Duration, C_M: Wet, C_t: Temperature, C_eg: EndGrain, C_tn: Toenail
) -> Annotated[float, Q("lb", "W'", "adjusted withdrawal force, ASD")]:
    """Reference value per inch times the penetration and the factors that apply.

    Source: the product for nails, issuhub.com/view/index/4884?pageIndex=190 (seen).
    """
    return W * p * C_D * C_M * C_t * C_eg * C_tn


@equation(
    "nds-2018/11.3.1-W-LRFD",
    title="Adjusted withdrawal force of one fastener, LRFD",
    clause="Table 11.3.1",
    source=SOURCE,
    how="from memory",
)
def adjusted_withdrawal_lrfd(
    W: PerInch,
    p: Penetration,
    C_M: Wet,
    C_t: Temperature,
    C_eg: EndGrain,
    C_tn: Toenail,
    K_F: Conversion,
    phi: Resistance,
    lam: TimeEffect,
) -> Annotated[float, Q("lb", "W'", "adjusted withdrawal force, LRFD")]:
    """The same with K_F φ_z λ in place of C_D."""
    return W * p * C_M * C_t * C_eg * C_tn * K_F * phi * lam


@procedure(
    "nds-2018/11.3.1-withdrawal",
    title="Adjusted withdrawal force of one nail",
    clause="11.3, Table 11.3.1",
    source=SOURCE,
    alias="nds.adjusted-withdrawal",
)
def adjusted_withdrawal(
    W: PerInch,
    p: Penetration,
    method: str = "ASD",
    load: str = "wind or earthquake",
    moisture: str = DRY,
    temperature: str = "to 100 F",
    grain: str = "side grain",
    driven: str = "straight",
    combination: str = "with wind or earthquake",
) -> float:
    """Withdrawal force in lb of one nail that reaches ``p`` inches into the main member.

    A toenail (``driven="toenail, withdrawal"``) takes C_tn and no wet service factor.
    """
    _method(method)
    C_D = table_2_3_2().read(load) if method == "ASD" else 1.0
    C_M = table_11_3_3_withdrawal().read("toenail" if driven.startswith("toenail") else moisture)
    C_t = table_11_3_4().read(temperature)
    C_eg = table_12_5_2().read(grain)
    C_tn = table_12_5_4().read(driven)
    if method == "ASD":
        return adjusted_withdrawal_asd(W, p, C_D, C_M, C_t, C_eg, C_tn)
    K_F, phi = table_n1().read("connections"), table_n2().read("connections")
    lam = table_n3().read(combination)
    return adjusted_withdrawal_lrfd(W, p, C_M, C_t, C_eg, C_tn, K_F, phi, lam)


def _method(method: str) -> None:
    if method not in ("ASD", "LRFD"):
        raise OutsideLimits(f"{SOURCE.cite('Table 11.3.1')}: method {method!r} is not ASD or LRFD")
