"""What stands apart from the rest holds nothing of it up: it is refused, or judged by itself."""

import pytest

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.design.faults import DesignError

PADS = """[design]
name = 'pads'
units = 'metric'
[site]
method = 'forecast'
wind = '8 m/s'
exposure = 'open'
ground = 'paving'
[[part]]
name = 'pad'
shape = 'plate'
length = '300 mm'
width = '300 mm'
thickness = '50 mm'
count = 3
ring = '3 m'
material = 'concrete'
[[part]]
name = 'post'
shape = 'box'
on = 'pad'
at = ['1.5 m', '0 mm', '0 mm']
length = '200 mm'
width = '200 mm'
height = '1500 mm'
material = 'southern pine'
"""
RAILS = """[[part]]
name = 'rail'
shape = 'plate'
on = 'pad'
length = '3.3 m'
width = '3.3 m'
thickness = '18 mm'
material = 'softwood plywood'
"""
FENCE = """[[part]]
name = 'stake'
shape = 'solid'
sides = 4
bottom = '90 mm'
top = '90 mm'
height = '1 m'
embed = '600 mm'
count = 3
step = ['1 m', '0 mm', '0 mm']
material = 'southern pine, treated'
"""


def test_three_pads_of_which_one_carries_the_post_are_no_foot_3_m_wide():
    """About the three together it would take some 150 km/h to tip, about the one pad 60."""
    with pytest.raises(DesignError) as refused:
        examine(read_text(PADS))
    (fault,) = refused.value.faults
    assert (fault.part, fault.line) == ("pad", 9)
    assert "joined to nothing of the rest" in fault.found


def test_what_joins_them_makes_them_one_foot():
    parts = PADS.replace(
        "on = 'pad'\nat = ['1.5 m', '0 mm', '0 mm']", "on = 'rail'\nat = ['1.5 m', '0 mm', '0 mm']"
    )
    head, post = parts.split("[[part]]\nname = 'post'")
    assert examine(read_text(f"{head}{RAILS}[[part]]\nname = 'post'{post}")).structure.bodies


def test_posts_in_the_ground_hold_themselves():
    fence = PADS.split("[[part]]", 1)[0].replace("paving", "firm lawn") + FENCE
    assert examine(read_text(fence)).posts is not None


def test_a_pot_beside_it_is_no_foot_of_it():
    """Loose or not: it would stand by itself while the post tips about its own pad."""
    pot = "[[part]]\nname = 'pot'\nshape = 'box'\nat = ['2 m', '0 mm', '0 mm']\nlength = '300 mm'\n"
    pot += "width = '300 mm'\nheight = '300 mm'\nmaterial = 'concrete'\n"
    alone = PADS.replace("count = 3\nring = '3 m'\n", "").replace("'1.5 m'", "'0 m'")
    assert examine(read_text(alone)).limits.tipping < 20.0
    for more in ("", "loose = true\n"):
        with pytest.raises(DesignError) as refused:
            examine(read_text(alone + pot + more))
        assert "joined to nothing" in refused.value.faults[0].found


def test_what_bears_a_plank_from_below_is_its_foot():
    """Two blocks and a plank that lies on them: nothing reaches past where the plank lies."""
    plank = "[[part]]\nname = 'plank'\nshape = 'plate'\nat = ['0 mm', '0 mm', '50 mm']\n"
    plank += "length = '3.3 m'\nwidth = '300 mm'\nthickness = '38 mm'\nloose = true\n"
    plank += "material = 'southern pine'\n"
    pads = PADS.split("[[part]]\nname = 'post'", maxsplit=1)[0].replace("count = 3", "count = 2")
    assert len(examine(read_text(pads + plank)).structure.bodies) == 3
    with pytest.raises(DesignError) as refused:
        examine(read_text(PADS.replace("count = 3", "count = 2") + plank))
    assert "joined to nothing" in refused.value.faults[0].found
