"""What the pages say in words beside the answers still holds: the tutorial's lessons and our own figures."""

from __future__ import annotations

import re

import pytest

from docs.running import HERE
from groundsill.doors.decode import decode
from groundsill.forces import lines
from groundsill.loadpath import (
    bolt_shares,
    bolts_counted,
    case,
    concrete,
    footings,
    panel_nailing,
    plate,
    post_bearing,
    proof,
    side_plates,
    soil_faces,
    stem,
    turning,
)
from groundsill.loadpath.chain import Chain, Link
from groundsill.loadpath.prescriptive import bracing as bracing_of_a3
from groundsill.loadpath.prescriptive import sills as sills_of_a3
from groundsill.study import Run, Study, run
from groundsill.work import pieces

EXAMPLE = HERE / "examples" / "net-loft-lane.json"


@pytest.fixture(scope="module")
def study() -> Study:
    return run(decode(EXAMPLE.read_text("utf-8")))


def links(run: Run, stage: str) -> list[Link]:
    return [link for chain in run.chains for s in chain.stages if s.key == stage for link in s.links]


def chain(run: Run, mark: str) -> Chain:
    return next(c for c in (*run.chains, *run.bodies) if c.mark == mark)


def test_as_found_the_tutorials_lines_stop_where_it_says(study: Study) -> None:
    found = study.runs[0]
    assert chain(found, "L3").percent == 0
    assert {link.verdict for link in links(found, "sill-bolts") if link.capacity == 0} == {"fails"}
    assert chain(found, "Pads").verdict == "fails"
    assert chain(found, "B1").verdict == "passes"


def test_the_tutorials_work_leaves_what_it_says(study: Study) -> None:
    braced = study.runs[1]
    for stage in ("floor-to-plate", "plate-splices", "nailing-top", "sheathing", "nailing-sill", "overturning"):
        assert {link.verdict for link in links(braced, stage)} <= {"passes", "does not apply"}, stage
    assert {link.verdict for link in links(braced, "floor-boards")} == {"fails"}
    assert {link.verdict for link in links(braced, "sill-bolts")} == {"indicated", "passes"}
    concrete_verdicts = {link.verdict for link in links(braced, "bolts-concrete")}
    assert "depends" in concrete_verdicts
    assert concrete_verdicts <= {"depends", "indicated"}
    assert chain(braced, "Pads").verdict == "fails"


CHOICES = {
    "heights or materials that share by stiffness too, and ask for a rigid floor": (
        case.MIXED_RATIO, "more than {:g} to 1"
    ),
    "bolts and hold-downs do not count near a break in the foundation": (stem.CLEAR_OF_BREAK_IN, "within {:g} in."),
    "an end of the concrete may be what breaks out": (concrete._NEAR_END_IN, "nearer than {:g} in."),
    "bolts of one sill piece are close": (
        bolt_shares.CLOSE_IN, "nearer than {:g} in."
    ),
    "concrete is weak, and close bolts in it share by the springs of their slip": (
        bolt_shares.WEAK_PSI, "under {:,.0f} psi"
    ),
    "play of a new bolt in its hole, where nobody gives it": (bolts_counted.FITS_IN, "{:g} in."),
    "modulus of old wood in the group action of a side plate's screws, and of a sill on its bolts": (
        side_plates.LOW_MODULUS_PSI, "{:,.0f} psi"
    ),
    "load of a test over what an old bolt is counted with": (bolts_counted.TEST_FACTOR, "{:g}"),
    "a plate without a recorded joint is not believed beyond": (plate._LONGEST_PLATE_IN / 12, "{:g} ft"),
    "a splice ties the joint nearest to it": (pieces.SPLICE_REACH_IN, "within {:g} in."),
    "a sill counts as flush with the studs": (panel_nailing.FLUSH_IN, "within {:g} in."),
    "from a segment's end to the middle of end posts of unknown size": (12 * turning.END_POST_FT, "{:g} in."),
    "end posts that nobody graded": (turning.LOWEST_GRADE, "{}"),
    "soil at the top that is not counted in sliding, unless paved": (soil_faces.LOOSE_FT, "{:g} ft"),
    "spread of a post's load out through stem and footing, for each foot down": (
        post_bearing._IN_MASONRY, "1 ft, in masonry {:g} ft"
    ),
    "a footing of unknown depth is taken to reach below the base at most": (footings.DEEPEST_FT, "{:g} ft"),
    "a line that does not give, over the stiffness of all others": (lines._HELD_FAST, "{:,.0f}"),
    "lines of unknown stiffness that are tried in every combination": (lines._MOST_UNKNOWN, "at most {:g}"),
    "a break counts as at the end of a line": (footings.JOINED_IN, "within {:g} in."),
    "a panel of the prescriptive way stands at the end of a wall, unless the stud spacing was measured": (
        bracing_of_a3._STUD_SPACE_IN, "within {:g} in."
    ),
    "a strap of the prescriptive way belongs to a step": (bracing_of_a3._NEAR_IN, "within {:g} in."),
    "bolts of the prescriptive way may stand farther apart than their spacing, to meet a stud space, by": (
        sills_of_a3._STUD_SPACE_IN, "{:g} in."
    ),
    "expected strength of panels, boards and plaster on walls": (
        100 * (1 - panel_nailing._SPREAD_PANEL[0]),
        "{:.0f} % either way of the nominal value for wind, which both editions print alike",
    ),
    "expected strength of nailed joints": (100 * (1 - plate.NAIL_SPREAD[0]), "{:.0f} % either way of their yield"),
}  # fmt: skip


def test_our_own_figures_are_told_as_they_are() -> None:
    text = (HERE / "engineering.md").read_text("utf-8")
    told = dict(re.findall(r"^\| ([^|]+?) \| ([^|]+?) \|$", text, re.MULTILINE))
    assert {what: told.get(what) for what in CHOICES} == {
        what: words.format(figure) for what, (figure, words) in CHOICES.items()
    }
    tests = f"at least {proof.TESTS_AT_LEAST} anchors or {100 * proof.TESTS_SHARE:g} % of the line's"
    assert told["tests that lift what is indicated"] == f"{tests}, moved at most {proof.MOST_MOVED_IN:.2f} in."


def test_no_page_calls_a_house_safe() -> None:
    for path in (*HERE.glob("*.md"), *HERE.glob("how-to/*.md"), HERE.parent / "README.md"):
        text = " ".join(path.read_text("utf-8").split()).lower()
        said = [m.start() for m in re.finditer(r"\bsafe(?:ly|ty|r)?\b", text)]
        allowed = [m.start(1) for m in re.finditer(r"never says that a house is (safe)", text)]
        assert said == allowed, f"{path.name}: {[text[n - 30 : n + 20] for n in said]}"
