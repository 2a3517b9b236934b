"""Staples: two nails of the leg's diameter, the crown, and what a staple in a joint comes to."""

from math import pi, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from joint_designs import POST, joint

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.joints.joint_sizing import size_joint
from yardfast.checks.timber.nds.crown import crown_factor
from yardfast.checks.timber.nds.fastener_capacity import adjusted_capacity
from yardfast.checks.timber.nds.pulled_out import least_penetration
from yardfast.checks.timber.terms.driven import Driven
from yardfast.checks.timber.terms.joint_material import joint_material_of
from yardfast.materials import fasteners

INCH, LBF = 0.0254, 4.4482216152605
STAPLE = "16 ga 7/16 crown staple 2 in"


def joined(fastener, **more):
    return examine(read_text(POST + joint("block", "plank", fastener, **more))).joints[0]


def holds(fastener, **how):
    pine = joint_material_of("southern pine")
    driven = Driven(pine, pine, 0.75 * INCH, np.inf, "side grain", **how)
    return adjusted_capacity(fasteners.find_fastener(fastener), driven, "service")


def test_a_staple_by_hand():
    """16 ga, 0.0625 in, crown 7/16 in, 2 in through 3/4 in into southern pine, G 0.55.

    NDS 2018 Eq. 12.2-3, 12.2-6 and 12.3.1, made dry and used wet; two legs (EN 1995-1-1 8.4(5)).
    3.6 inch-pounds (IBC Table 2306.3, memory) over D^3/6 are 88,474 psi.
    """
    D, G, p, wind = 0.0625, 0.55, 1.25, 1.6
    out = 2 * 1380 * G**2.5 * D * p * wind * 0.25
    across = sqrt(4 * 0.4375 * D / pi)
    head = 690 * pi * across * G**2 * min(0.75, 2.5 * across) * wind * 0.7
    Fe, Fyb = 5550.0, 3.6 / (D**3 / 6)
    assert Fyb == pytest.approx(88474, abs=0.5)
    mode_IV = D**2 / 2.2 * sqrt(2 * Fe * Fyb / (3 * 2))
    side = 2 * mode_IV * wind * 0.7
    found = joined(STAPLE, crown="across the grain").fasteners.holds
    assert found.mode == "IV"
    assert found.out / LBF == pytest.approx(out, rel=1e-6)
    assert found.head / LBF == pytest.approx(head, rel=1e-6)
    assert found.sideways / LBF == pytest.approx(side, rel=1e-6)
    assert (out, head, side) == pytest.approx((19.3, 63.9, 50.8), abs=0.1)  # by a calculator


def test_the_crown_left_open_is_the_weaker_way():
    """0.7 along the grain, as EN 1995-1-1 8.4(5) has it (memory); pulling does not change."""
    open_, along, across = (
        joined(STAPLE, crown=crown).fasteners.holds
        for crown in (None, "along the grain", "across the grain")
    )
    assert open_ == along
    assert along.sideways == pytest.approx(0.7 * across.sideways)
    assert along.pull == across.pull


@pytest.mark.parametrize(("degrees", "factor"), [(0.0, 0.7), (30.0, 0.7), (30.1, 1.0), (90.0, 1.0)])
def test_the_crown_counts_as_across_beyond_thirty_degrees(degrees, factor):
    """EN 1995-1-1 8.4(5): greater than 30 degrees, or equal to or less (memory)."""
    assert crown_factor(np.radians(degrees)) == factor


def test_crowns_as_arrays():
    angles = np.radians([[0.0, 45.0], [29.0, 31.0]])
    np.testing.assert_array_equal(crown_factor(angles), [[0.7, 1.0], [0.7, 1.0]])
    with pytest.raises(ValueError, match="angle"):
        crown_factor(-0.1)


@pytest.mark.parametrize("gauge", ["16 ga", "15 ga", "14 ga"])
def test_the_least_moment_lies_below_that_of_harder_wire(gauge):
    """EN 1995-1-1 Eq. 8.29 (seen at eurocode.us): 240 d^2.6 N mm for wire of 800 N/mm2, d in mm.

    That of ASTM F1667 is a least value, so it has to stay below, though not by far.
    """
    one = fasteners.find_fastener(f"{gauge} staple")
    moment = one.bending_yield * one.diameter**3 / 6.0
    harder = 240.0 * (one.diameter * 1000.0) ** 2.6 / 1000.0
    assert 0.3 < moment / harder < 1.0


@given(st.sampled_from(["16 ga", "15 ga", "14 ga"]), st.sampled_from([1.75, 2.0, 2.5]))
def test_a_staple_holds_as_two_nails_of_its_leg(gauge, inches):
    """A nail of the leg's diameter with the same steel, taken twice."""
    staple = holds(f"{gauge} staple {inches} in", crown_across=True)
    one = fasteners.find_fastener(f"{gauge} staple")
    nail = holds(f"nail {one.diameter / INCH} in x {inches} in")
    if staple.out == 0.0:
        assert nail.penetration < least_penetration(one)
        return
    assert staple.out == pytest.approx(2.0 * nail.out)
    assert staple.mean_out == pytest.approx(2.0 * nail.mean_out)
    assert staple.factor_sideways == pytest.approx(nail.factor_sideways)
    # nail wire so thin is taken at 100,000 psi, staple wire at what its own row says
    assert staple.sideways < 2.0 * nail.sideways


def test_a_short_staple_counts_nothing():
    """Fourteen diameters, EN 1995-1-1 8.4(3) (memory): 7/8 in of 16 ga; nails need but six."""
    short = joined("16 ga staple 1 1/2 in")
    assert short.fasteners.holds.reasons == ("too short",)
    assert not short.check.passes
    assert least_penetration(fasteners.find_fastener("16 ga staple")) / INCH == pytest.approx(0.875)
    assert holds("nail 0.0625 in x 1 1/2 in").out > 0.0


def test_end_grain_holds_no_staple():
    found = joined(STAPLE, into="end grain").fasteners.holds
    assert found.out == 0.0
    assert "end grain" in found.reasons


def test_staples_in_place_of_nails_change_the_verdict():
    nailed, stapled = joined("8d common nail", count=4), joined(STAPLE, count=2)
    assert nailed.check.passes
    assert not stapled.check.passes


def test_more_larger_or_screws_are_offered_for_staples():
    text = POST.replace("46 mph", "70 mph") + joint("block", "plank", STAPLE, 4)
    found = examine(read_text(text))
    sizing = size_joint(found.structure, found.joints[0], found.factors, found.site.basis)
    remedies = {one.kind: one for one in sizing.remedies}
    assert {"more", "screws"} <= set(remedies)
    crown = fasteners.find_fastener(STAPLE).crown
    assert remedies["more"].found.spacing >= crown + 10.0 * 0.0625 * INCH
    assert all(one.found.check.passes for one in sizing.remedies)
