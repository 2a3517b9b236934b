"""What holds on a slope, on the strength basis and beside posts: each the unfavourable way."""

from math import cos, radians, sin

import numpy as np
import pytest
from verdict_designs import block, design_text

from yardfast.checks.anchoring import anchored
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.joints.joint_demand import Weight, load_sets, resultant
from yardfast.design.faults import DesignError
from yardfast.loads.actions import Actions
from yardfast.loads.combinations import factors
from yardfast.loads.site import Site

STAKES = "\n[[anchor]]\nname = 's'\nkind = 'steel stake 1 in x 36 in'\nwhere = 'corners'\n"


def test_a_level_pull_is_tried_up_the_slope_too():
    """Statics: along the slope an uphill pull adds to the plumb one, |S| = H cos a + T sin a."""
    text = design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), site="slope = '10 deg'")
    found = examine(read_text(text + STAKES))
    a, asked = radians(10.0), 0.0
    for dead in found.factors.sets:
        given = found.held, found.standing
        left = anchored._left_over(found.standing, found.actions, found.factors, dead)
        T = anchored._straight_pulls(*given, left)
        H = anchored._level_pulls(*given, found.actions, found.factors, dead)
        asked = max(asked, float((H * cos(a) + T * sin(a)).max()))
    _, along = anchored.anchor_pulls(*given, found.actions, found.factors)
    assert along == pytest.approx(asked)


def test_no_basis_takes_more_than_nine_tenths_of_an_ultimate():
    """ASCE/SEI 7 2.3.1: 0.9 D. Weight over 1.5 would be 1.11 of it at soil = 1/0.6."""
    strength = factors(Site("forecast", 20.0, "gravel", basis="strength"))
    assert strength.soil_on(1.5) == pytest.approx(0.9 * 1.5)
    assert strength.soil_on(3.0) == pytest.approx(strength.soil)


def test_what_touches_no_post_is_not_carried_by_one():
    post = (
        "[[part]]\nname = 'post'\nshape = 'box'\nlength = '3 1/2 in'\nwidth = '3 1/2 in'\n"
        "height = '8 ft'\nembed = '3 ft'\nat = ['0 in', '{y} in', '0 in']\n"
        "material = 'southern pine'\n"
    )
    free = block("12 in", "12 in", "48 in", "35 lb/ft^3")
    with pytest.raises(DesignError) as caught:
        examine(read_text(design_text(free + post.format(y=40))))
    assert "touches no post" in caught.value.faults[0].found
    beside = examine(read_text(design_text(free + post.format(y="7 3/4"))))
    assert beside.posts is not None


@pytest.mark.parametrize(("basis", "more"), [("allowable", 1.6 / 0.9), ("strength", 1.4 / 0.6)])
def test_dead_load_alone_is_compared_with_what_holds_for_good(basis, more):
    """NDS 2018 Table 2.3.2: C_D 1.6, 0.9; ASCE/SEI 7 2.3.1: 1.4 D, NDS N3: 0.6 (memory)."""
    used = factors(Site("forecast", 20.0, "gravel", basis=basis))
    still = np.zeros((1, 1, 1))
    pair = np.zeros((1, 1, 1, 2))
    calm = Actions(np.zeros(1), pair, pair, still, still, pair, ("A",))
    weight = Weight(10.0, np.zeros(3))
    loads = resultant(calm, weight, weight, load_sets(used, basis))
    assert [one.weighing for one in loads.sets] == ["light", "heavy", "heavy"]
    assert [one.is_calm for one in loads.sets] == [False, False, True]
    assert loads.force[2, 0, 0, 0, 2] == pytest.approx(-10.0 * 9.80665 * more)


def test_a_toe_nail_slants_from_the_end_into_the_side():
    text = design_text(
        "[[part]]\nname = 'plate'\nshape = 'box'\nlength = '24 in'\nwidth = '24 in'\n"
        "height = '1 1/2 in'\nmaterial = 'western redcedar'\n"
        "[[part]]\nname = 'post'\nshape = 'solid'\non = 'plate'\nlumber = '4x4'\nheight = '3 ft'\n"
        "material = 'southern pine'\n"
        "[[joint]]\nname = 'j'\nof = 'post'\nto = 'plate'\nfastener = '8d common nail'\ncount = 4\n"
        "toe_nailed = true\n"
    )
    assert examine(read_text(text)).joints[0].fasteners.head_in == "post"
