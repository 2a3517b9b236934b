"""What holds on a slope, on the strength basis and beside posts: each the unfavourable way."""

from math import cos, radians, sin

import pytest
from verdict_designs import block, design_text

from yardfast.checks.anchoring import anchored
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.design.faults import DesignError
from yardfast.loads.combinations import factors
from yardfast.loads.wind.site import Site

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
