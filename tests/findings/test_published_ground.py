"""Cases that others described, turned into surveys, with the verdict that their source gives.

Searched: leaning and rotated foundations in inspectors' papers, extension bulletins and engineers' lists; soil against
siding and sills in housing guides of governments and in inspectors' books. Few give both the facts and a verdict; these
do.
"""

from __future__ import annotations

from groundsill.house.fact import Fact, measured
from tests.findings.leaning import CLEAR, stood, told


def test_topsoil_raised_to_the_sill_is_wood_in_contact_with_soil():
    """CDC, Healthy Housing Reference Manual, key to figure 4.23, items 9 and 14 (seen at www.cdc.gov/nceh).

    A foundation wall too low, with topsoil built up to the sill, permits wood to contact soil.
    """
    found = told(stood(**CLEAR | {"above_outside_soil_in": measured(0.0)}), "soil")
    assert found.title == "Soil against the wood"
    assert found.durability.weight == "matters"


def test_siding_in_contact_with_the_ground_is_probed():
    """A guide on inspecting houses, shown at nemmar.com (article 9725): siding ends six inches over the ground.

    Where its base touches the ground it is probed.
    """
    facts = CLEAR | {"above_outside_soil_in": measured(6.0), "siding_above_soil_in": measured(0.0)}
    found = told(stood(**facts), "soil")
    assert {r.key: r.answer for r in found.durability.reasons}["siding"] == "no"
    assert found.durability.weight == "matters"
    assert found.cures[0].key == "probe"


def test_four_and_a_half_inches_out_of_plumb_in_ten_feet_stand_outside_the_kern_of_a_ten_inch_wall():
    """eng-tips.com, thread 434313: ten-foot walls ten inches thick, four to five inches out; the kern is a sixth."""
    wall = {
        "top_width_in": measured(10.0), "footing_width_in": Fact(state="absent"), "lean_in_per_ft": measured(0.45),
        "above_outside_soil_in": measured(60.0), "above_inside_soil_in": measured(60.0), "depth_in": measured(60.0),
    }  # fmt: skip
    found = told(stood(**wall), "lean")
    assert {r.key: r.answer for r in found.gravity.reasons}["kern"] == "no"
    assert found.gravity.weight == "matters"


def test_a_wall_that_soil_has_pushed_out_of_plumb_is_one_for_a_specialist():
    """The ASHI Reporter, "Bowed, Bulging and Leaning Foundation Walls" (homeinspector.org): a wall pushed out of place
    no longer carries as it should, and is addressed by a specialist.
    """
    pushed = {
        "lean_in_per_ft": measured(-0.5), "lean_signs": measured("fresh gaps"), "depth_in": measured(24.0),
        "above_outside_soil_in": measured(2.0), "above_inside_soil_in": measured(20.0),
    }  # fmt: skip
    found = told(stood(**pushed), "lean")
    assert "retained" in [r.key for r in found.cause if r.answer == "yes"]
    assert found.gravity.weight == "matters"
    assert found.cures[0].key == "engineer"
