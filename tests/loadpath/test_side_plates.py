"""Side plates: by their report or as generic hardware, in wood, in steel and below the top of the stem."""

from __future__ import annotations

from functools import cache
from math import atan2, cos, degrees, hypot, radians, sin, sqrt
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.house.fact import Fact, measured
from groundsill.house.foundation import FoundationTest
from groundsill.loadpath.chain import Link
from groundsill.standards.awc_tr12.general_dowel import across_gap
from groundsill.standards.nds_2018.screws import wood_screw_steel_plate
from groundsill.study import run, working
from groundsill.work.document import House
from groundsill.work.pieces import SideplatePiece
from tests.loadpath.bolting import (
    EPOXY,
    FIR,
    WORK,
    a_new_bolt,
    in_concrete,
    links,
    sound_house,
    with_acceptance,
    with_bolts,
    with_break,
    with_choices,
    with_pieces,
    with_sill,
    with_stem,
    with_tests,
    without_cores,
    wood,
)

STEM = next(key for key, stem in sound_house().survey.foundation.segments.items() if stem.line == "line2")
FEW = settings(max_examples=15, deadline=None)
BOTH = "each group in full"


@cache
def house() -> House:
    """The sound house with a 3-1/2 in. sill on line 2, no bolts in it, and a stem 8 in. thick."""
    made = with_sill(sound_house(), "si2", width_in=measured(3.5), species=measured(FIR))
    made = with_stem(made, STEM, top_width_in=measured(8.0))
    return with_bolts(made, {"si2-0": None, "si2-1": None})


def a_plate(station: float = 120.0, **changes: Any) -> SideplatePiece:
    """A plate of plain steel whose anchors hold the couple."""
    plain: dict[str, Any] = {
        "mark": f"SP{station:g}", "from_top_in": 5.0, "thickness_in": 0.1875, "width_in": 9.0, "screw": "No. 14 screw",
        "screw_length_in": 3.0, "screws": 4, "screw_spacing_in": 2.5, "screw_above_in": 0.75,
        "anchor_diameter_in": 0.5, "anchor_embedment_in": 4.0, "anchor_report": "report 2", "anchors": 2,
        "anchor_spacing_in": 5.0, "couple": "anchors", "adhesive": EPOXY,
    }  # fmt: skip
    return SideplatePiece(line="line2", station_in=station, **(plain | changes))


def in_wood(*plates: SideplatePiece, of: House | None = None) -> Link:
    return wood(with_pieces(of or house(), *plates), work=True)


def in_stem(*plates: SideplatePiece, of: House | None = None) -> Link:
    return in_concrete(with_pieces(of or house(), *plates), work=True)


def held(link: Link) -> float:
    assert link.capacity is not None, link.reason
    return link.capacity


# --- by hand ---------------------------------------------------------------------------------------------------------


def screw_by_hand(D_r: float, F_yb: float, F_em: float, l_m: float, t: float, R_d: float) -> float:
    """Mode IIIs and IV of a screw through thin steel, written out: Table 12.3.1A."""
    F_es = 61850.0
    R_e = F_em / F_es
    k_3 = -1 + sqrt(2 * (1 + R_e) / R_e + 2 * F_yb * (2 + R_e) * D_r**2 / (3 * F_em * t**2))
    mode_iiis = k_3 * D_r * t * F_em / ((2 + R_e) * R_d)
    mode_iv = D_r**2 / R_d * sqrt(2 * F_em * F_yb / (3 * (1 + R_e)))
    return min(mode_iiis, mode_iv, D_r * l_m * F_em / R_d, D_r * t * F_es / R_d)


def test_screws_that_hold_no_couple_share_the_force_alike() -> None:
    """No. 14: D 0.242, root 0.196 in., F_yb 70,000 psi; K_D = 10 x 0.196 + 0.5; G 0.50 gives 4,650 psi."""
    one = screw_by_hand(0.196, 70000.0, 4650.0, 2.57, 0.1875, 2.46)
    link = in_wood(a_plate())
    assert held(link) == pytest.approx(4 * 1.6 * one, rel=1e-6)
    assert "1 side plate; governed by its screws; the anchors alone hold the couple" in link.reason
    assert link.clause == "NDS 2018 12.3.1, 11.3; AISI S100-16 chapters F, G"
    assert link.status == "fails"


def test_screws_that_hold_the_couple_too_are_worth_less_by_the_elastic_vector() -> None:
    along, across = 1 / 4, 5.75 * 3.75 / (2.5**2 * 4 * 15 / 12)
    want = held(in_wood(a_plate())) / 4 / hypot(along, across)
    assert held(in_wood(a_plate(couple=BOTH))) == pytest.approx(want, rel=1e-6)
    assert held(in_wood(a_plate(couple="screws"))) == pytest.approx(want, rel=1e-6)


def test_lag_screws_bear_at_the_angle_of_their_force_and_share_by_group_action() -> None:
    """3/8 in. lag screws in a full-size sill, two rows of 4 D from every edge: Hankinson, K_theta, C_g and C_delta."""
    tall = with_sill(house(), "si2", thickness_in=measured(4.0), width_in=measured(6.0))
    plate = a_plate(
        screw="3/8 lag", screw_length_in=4.0, screws=3, screw_spacing_in=3.0, screw_above_in=2.0, couple="screws",
        thickness_in=0.25, width_in=12.0,
    )  # fmt: skip
    along, across = 1 / 3, (2.0 + 5.0) * 3.0 / 18.0
    theta = radians(degrees(atan2(across, along)))
    F_perp = 50 * round(6100 * 0.5**1.45 / sqrt(0.375) / 50)
    F_em = 5600 * F_perp / (5600 * sin(theta) ** 2 + F_perp * cos(theta) ** 2)
    K, D_r, t, F_es = 1 + 0.25 * degrees(theta) / 90, 0.265, 0.25, 87000.0
    R_e = F_em / F_es
    k_3 = -1 + sqrt(2 * (1 + R_e) / R_e + 2 * 45000 * (2 + R_e) * D_r**2 / (3 * F_em * t**2))
    one = min(
        k_3 * D_r * t * F_em / ((2 + R_e) * 3.2 * K), D_r**2 / (3.2 * K) * sqrt(2 * F_em * 45000 / (3 * (1 + R_e)))
    )
    EA_m, EA_s = 1e6 * 4 * 6, 29e6 * 0.25 * 7
    u = 1 + 270000 * 0.375**1.5 * 3 / 2 * (1 / EA_m + 1 / EA_s)
    m, R = u - sqrt(u**2 - 1), min(EA_s / EA_m, EA_m / EA_s)
    C_g = m * (1 - m**6) / (3 * ((1 + R * m**3) * (1 + m) - 1 + m**6)) * (1 + R) / (1 - m)
    assert held(in_wood(plate, of=tall)) == pytest.approx(1.6 * C_g * one / hypot(along, across), rel=1e-6)


def test_the_stem_breaks_at_its_top_along_and_up_at_once() -> None:
    """Two 1/2 in. anchors 5 in. below the top, f'c 3,000: twice V_b along for the pair, V_b up for one, added."""
    V_b = min(7 * (4 / 0.5) ** 0.2 * sqrt(0.5), 9) * sqrt(3000) * 5**1.5
    deep = 7.5  # 1.5 c_a1, less than the 8 in. stem
    along = 0.70 * 2 * V_b * (15 + 5) * deep / (4.5 * 25)
    up = 0.70 * V_b
    each = 1 / 2 / (along / 2) + 5.75 / 5 / up
    link = in_stem(a_plate())
    assert held(link) == pytest.approx(1 / each, rel=1e-6)
    assert (link.status, link.unit) == ("fails", "lb a side plate")
    assert link.reason.startswith("breakout toward the top of the stem; for the overstrength force")
    straight = in_stem(a_plate(couple="screws", anchor_diameter_in=0.75))
    along *= (4 / 0.75) ** 0.2 * sqrt(0.75) / ((4 / 0.5) ** 0.2 * sqrt(0.5))  # thicker, so that steel does not govern
    assert held(straight) == pytest.approx(along, rel=1e-6)
    assert in_stem(a_plate(couple="screws")).reason.startswith("steel; ")


def test_a_thin_plate_is_governed_by_its_own_steel() -> None:
    thin = a_plate(thickness_in=0.06, width_in=8.5, screw="1/4 lag", screws=6, screw_spacing_in=1.25, from_top_in=9.0)
    tall = with_sill(house(), "si2", thickness_in=measured(4.0))
    link = in_wood(thin, of=tall)
    b, t, d, s, n = 8.5, 0.06, 0.3125, 1.25, 6
    S = (t * b**3 / 12 - t * n * d**3 / 12 - t * d * s**2 * n * (n * n - 1) / 12) / (b / 2)
    M, V, e = S * 36000 / 1.67, 0.6 * 36000 * (b - n * d) * t / 1.6, 9.75
    d, s, n = 0.5625, 5.0, 2
    S = (t * b**3 / 12 - t * n * d**3 / 12 - t * d * s**2 * n * (n * n - 1) / 12) / (b / 2)
    M, V = min((M, V), (S * 36000 / 1.67, 0.6 * 36000 * (b - n * d) * t / 1.6))
    found = 1 / sqrt((e / M) ** 2 + (1 / V) ** 2)
    bearing = 2.25 * 0.5 * t * 58000 / 2.5 / hypot(0.5, 9.75 / 5)
    assert held(link) <= found * (1 + 1e-9)
    assert held(link) == pytest.approx(min(found, bearing), rel=1e-6)
    assert "governed by bearing of an anchor in it" in link.reason


# --- by its report ---------------------------------------------------------------------------------------------------


def by_report(station: float = 120.0, **changes: Any) -> SideplatePiece:
    """A plate as its report sells it."""
    nothing: dict[str, Any] = dict.fromkeys(
        ("thickness_in", "width_in", "screw_length_in", "screw_above_in", "anchor_diameter_in", "anchor_embedment_in")
    )
    return a_plate(station, **(nothing | {"screw": "", "capacity_lb": 1400.0, "report": "report 7"} | changes))


def test_a_plate_by_its_report_counts_with_the_reports_load() -> None:
    link = in_wood(by_report(60.0), by_report(180.0))
    assert held(link) == 2800.0
    assert link.status == "passes"
    assert "2 side plates; by report 7" in link.reason
    assert link.expected is None


def test_the_load_of_a_report_is_cut_for_a_damp_sill() -> None:
    damp = with_sill(house(), "si2", damp=measured(True))
    assert held(in_wood(by_report(), of=damp)) == pytest.approx(0.7 * 1400)
    assert held(in_wood(a_plate(), of=damp)) == pytest.approx(0.7 * held(in_wood(a_plate())))


def test_the_stem_asks_for_the_anchors_that_the_report_names() -> None:
    link = in_stem(by_report())
    assert link.status == "cannot be checked"
    assert "diameter and embedment of the anchors of a side plate are not given (its report names them)" in link.reason
    told = by_report(anchor_diameter_in=0.5, anchor_embedment_in=4.0)
    assert "how high the screws of a side plate stand is not given" in in_stem(told).reason
    whole = by_report(anchor_diameter_in=0.5, anchor_embedment_in=4.0, couple="screws", anchor_report="")
    assert held(in_stem(whole)) > 0
    assert in_stem(whole).extension == ""  # the plate's own report covers its anchors


def test_a_load_without_a_report_does_not_count() -> None:
    link = in_wood(by_report(report=" "))
    assert link.capacity == 0.0
    assert "side plate SP120: an entered load counts only with the number of its evaluation report" in link.reason


# --- what does not count ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        (
            {"screw": ""},
            "a side plate counts by its report, or by its thickness, width, screws and how high they stand",
        ),
        ({"anchor": "screw", "anchor_report": ""}, "screw anchors count only by an entered report"),
        ({"anchor": "expansion", "anchor_report": ""}, "expansion anchors count only by an entered report"),
    ],
)
def test_a_plate_that_does_not_count_is_named_with_the_reason(changes: dict[str, Any], words: str) -> None:
    link = in_wood(a_plate(**changes))
    assert link.capacity == 0.0
    assert f"side plate SP120: {words}" in link.reason


def test_no_plate_counts_near_a_break_of_the_foundation() -> None:
    broken = with_break(house(), "line2", 130.0, "full-depth crack")
    assert "within 12 in. of a full-depth crack" in in_wood(a_plate(), of=broken).reason
    assert held(in_wood(a_plate(60.0), of=broken)) > 0


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        (
            {"screw": "1/4 lag", "couple": BOTH},
            "perpendicular, loaded edge: edge distance = 0.75 in; must be at least 4",
        ),
        ({"screw_above_in": 1.6}, "the screws stand 1.6 in. above the stem, past a sill of 1.5"),
        ({"screw_length_in": 4.0}, "screws of 4 in. come out behind a sill 3.5 in. wide"),
        ({"screw_length_in": 1.25}, "p (penetration of a No. 14 wood screw)"),
        ({"station": 3.0}, "the row of screws runs past the end of the sill piece"),
        ({"width_in": 5.5}, "a hole -1 in. from the edge of the plate; it must be at least 1.5 diameters"),
        ({"anchors": 1, "couple": BOTH}, "one fastener holds no couple"),
        ({"thickness_in": 0.25}, "thickness of the steel side plate"),
    ],
)
def test_a_plate_outside_its_rules_cannot_be_checked_and_says_why(changes: dict[str, Any], words: str) -> None:
    link = in_wood(a_plate(**changes))
    assert link.status == "cannot be checked"
    assert words in link.reason


@pytest.mark.parametrize(
    ("facts", "words"),
    [
        ({"condition": measured("soft")}, "the sill is soft"),
        ({"width_in": Fact(state="unknown")}, "the sill's thickness, width or species is not known"),
    ],
)
def test_a_sill_that_nobody_knows_well_enough_stops_the_check(facts: dict[str, Any], words: str) -> None:
    link = in_wood(a_plate(), of=with_sill(house(), "si2", **facts))
    assert link.status == "cannot be checked"
    assert words in link.reason


def test_a_decayed_sill_holds_no_plate() -> None:
    link = in_wood(a_plate(), of=with_sill(house(), "si2", condition=measured("decayed")))
    assert (link.status, link.capacity) == ("fails", 0.0)


@pytest.mark.parametrize(
    ("facts", "words"),
    [
        ({"top_width_in": Fact(state="unknown")}, "the thickness of the stem is not known"),
        ({"material": "brick"}, "brick: direct bolting needs both in-place shear tests of the wall and tests of bolts"),
        ({"top_width_in": measured(4.0)}, "anchors 4 in. deep come out of a stem 4 in. thick"),
    ],
)
def test_a_stem_that_cannot_hold_the_anchors_stops_the_check(facts: dict[str, Any], words: str) -> None:
    link = in_stem(a_plate(), of=with_stem(house(), STEM, **facts))
    assert link.status == "cannot be checked"
    assert words in link.reason


def test_plates_too_close_break_out_together_which_is_not_covered() -> None:
    assert "closer than three edge distances" in in_stem(a_plate(100.0), a_plate(115.0)).reason


# --- old concrete, tests, decisions ----------------------------------------------------------------------------------


def light(made: House) -> House:
    """A tenth of the force: then the plates hold."""
    return with_choices(made, force_factor=0.1, force_reason="to see a pass")


def test_in_old_concrete_a_plate_is_only_indicated_until_tests_or_an_engineer_lift_it() -> None:
    old = light(without_cores(house()))
    link = in_stem(a_plate(), of=old)
    assert link.status == "indicated"
    assert "chapter 17 carried on to concrete below 2,500 psi or of unknown strength" in link.extension
    assert in_stem(a_plate(anchor_report=""), of=light(house())).extension.startswith(
        "an anchor set afterwards without"
    )
    asked = {"anchor": "new", "anchor_kind": "adhesive", "anchor_diameter_in": 0.5, "anchor_embedment_in": 4.0}
    test = FoundationTest(
        segment=STEM, station_in=100.0, kind="anchor shear", result=3000.0, unit="lb", displacement_in=0.05, count=3,
        anchor_edge_in=5.0, by="R. Tam", when="2026-05-01", **asked,
    )  # fmt: skip
    assert in_stem(a_plate(), of=with_tests(old, t1=test)).status == "passes"
    told = with_acceptance(with_pieces(old, a_plate()), link.address, alternative=WORK)
    assert in_concrete(told, work=True).status == "passes"


# --- beside bolts ----------------------------------------------------------------------------------------------------


def test_plates_and_bolts_of_one_piece_are_never_added_the_stronger_counts() -> None:
    bolts = (a_new_bolt("line2", 60.0), a_new_bolt("line2", 180.0))
    alone = held(in_wood(*bolts))  # type: ignore[arg-type]
    weaker = in_wood(a_plate(120.0, screws=1, anchors=2), *bolts)  # type: ignore[arg-type]
    assert held(weaker) == alone
    assert "not counted side plate SP120: beside bolts; no value is given for two kinds of fastener" in weaker.reason
    four = [a_plate(s) for s in (30.0, 90.0, 150.0, 210.0)]
    stronger = in_wood(*four, *bolts)  # type: ignore[arg-type]
    assert held(stronger) == held(in_wood(*four)) > alone
    assert "not counted A60, A180: beside side plates" in stronger.reason


def test_a_plate_lifts_the_piece_it_stands_on_and_no_other() -> None:
    before = links(with_pieces(sound_house()), "line1", work=True)
    plate = a_plate()
    after = links(with_pieces(house(), plate), "line2", work=True)
    assert after["sill-bolts/si2/both"].title == "side plates in sill K3"
    assert before["sill-bolts/si1a/both"].title == "bolts in sill K1"


# --- laws ------------------------------------------------------------------------------------------------------------


@FEW
@given(screws=st.integers(2, 6), more=st.integers(0, 3), couple=st.sampled_from((BOTH, "anchors", "screws")))
def test_more_screws_never_hold_less(screws: int, more: int, couple: Any) -> None:
    wide = {"width_in": 24.0, "couple": couple}
    few, many = (held(in_wood(a_plate(screws=n, **wide))) for n in (screws, screws + more))
    assert many >= few * (1 - 1e-9)


@FEW
@given(top=st.floats(2.0, 6.0), deeper=st.floats(0.0, 6.0))
def test_deeper_below_the_top_the_stem_never_holds_less_where_the_anchors_hold_no_couple(
    top: float, deeper: float
) -> None:
    plain = {"couple": "screws", "anchor_spacing_in": 5.0}
    shallow = in_stem(a_plate(from_top_in=top, **plain))
    deep = in_stem(a_plate(from_top_in=top + deeper, **plain))
    assert held(deep) >= held(shallow) * (1 - 1e-9)


@FEW
@given(top=st.floats(2.0, 6.0), deeper=st.floats(0.01, 6.0))
def test_a_longer_lever_never_helps_the_screws(top: float, deeper: float) -> None:
    near, far = (held(in_wood(a_plate(from_top_in=t, couple=BOTH))) for t in (top, top + deeper))
    assert far <= near * (1 + 1e-9)


@FEW
@given(couple=st.sampled_from(("anchors", "screws")))
def test_a_couple_held_twice_is_never_cheaper_than_held_once(couple: Any) -> None:
    assert held(in_wood(a_plate(couple=BOTH))) <= held(in_wood(a_plate(couple=couple))) * (1 + 1e-9)
    assert held(in_stem(a_plate(couple=BOTH))) <= held(in_stem(a_plate(couple=couple))) * (1 + 1e-9)


# --- on paper --------------------------------------------------------------------------------------------------------


def test_the_working_shows_the_couple_the_angle_and_the_top_of_the_stem() -> None:
    sheet = working(with_pieces(house(), a_plate(couple=BOTH)), WORK)
    in_wood_steps = [step.title for step in sheet.under("line/line2/sill-bolts/si2/both")]
    assert "from row to row: the couple's lever" in in_wood_steps
    assert "Force on the end fastener of a row pushed along itself from beside it" in in_wood_steps
    stem = [step.title for step in sheet.under("line/line2/bolts-concrete/si2/both")]
    assert "no rule joins breakout along an edge and toward it: their shares are added" in stem
    assert "side plate SP120: its edge is the top of the stem" in stem


def test_a_study_no_longer_lists_side_plates_among_what_it_does_not_count() -> None:
    found = run(with_pieces(house(), a_plate()), ranges=False)
    (worked,) = [r for r in found.runs if r.key == WORK]
    assert worked.uncounted == ()


def test_packing_between_plate_and_sill_takes_the_screws_down_by_the_general_dowel_equations() -> None:
    packed = in_wood(a_plate(packing_in=0.75))
    part = across_gap(wood_screw_steel_plate("14", 3.0 - 0.75, 0.1875, FIR), 0.75).Z
    whole = wood_screw_steel_plate("14", 3.0, 0.1875, FIR).Z
    assert held(packed) / held(in_wood(a_plate())) == pytest.approx(float(part) / float(whole))
    assert "come out behind" not in in_wood(a_plate(packing_in=0.75, screw_length_in=4.25)).reason
