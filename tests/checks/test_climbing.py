"""A child that stands on the outermost edge: 60 lb (27 kg) beyond the line of turning.

ASTM F2057-19 tests furniture so; here the edge is of whatever lies below 1.5 m.
"""

import pytest
from designs import design
from verdict_designs import design_text

from yardfast import references
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.judged.judging import Kind
from yardfast.design.model import Part
from yardfast.design.shapes.bodies import Solid

INCH, G = 0.0254, 9.80665
TABLE = (
    "[[part]]\nname = 'leg'\nshape = 'box'\nlength = '16 in'\nwidth = '16 in'\nheight = '20 in'\n"
    "density = '35 lb/ft^3'\n"
    "[[part]]\nname = 'top'\nshape = 'plate'\non = 'leg'\nlength = '{wide} in'\nwidth = '16 in'\n"
    "thickness = '1 in'\ndensity = '35 lb/ft^3'\n"
)


def climb(wide, people="children", ground="paving"):
    text = design_text(TABLE.format(wide=wide), ground=ground, site=f"people = '{people}'")
    found = examine(read_text(text))
    return found, next((check for check in found.checks if check.name == "climb"), None)


def test_a_top_that_stands_out_is_stepped_on_by_hand():
    """On paving it turns over the leg's edge, 8 in out: 27 kg x 9.8 x 7 in against W x 8 in."""
    found, check = climb(30)
    assert check.demand == pytest.approx(27 * G * 7 * INCH, rel=1e-4)
    weight = found.structure.weight("light")
    assert check.capacity == pytest.approx(found.factors.helping * weight * 8 * INCH)


def test_nothing_that_stands_out_cannot_be_tipped_so():
    assert climb(16)[1].demand == 0.0


def test_only_children_climb():
    assert climb(30, "public")[1] is None


def test_a_wider_top_is_tipped_sooner():
    used = [climb(wide)[1].utilization for wide in (20, 30, 60, 120)]
    assert used == sorted(used)
    assert not climb(120)[1].passes


def test_what_lies_above_its_reach_is_not_stepped_on():
    """A roof 6 ft up stands out; nobody steps on it."""
    text = TABLE.format(wide=16) + (
        "[[part]]\nname = 'post'\nshape = 'box'\non = 'top'\nlength = '4 in'\nwidth = '4 in'\n"
        "height = '50 in'\ndensity = '35 lb/ft^3'\n"
        "[[part]]\nname = 'roof'\nshape = 'plate'\non = 'post'\nlength = '60 in'\nwidth = '60 in'\n"
        "thickness = '1 in'\ndensity = '35 lb/ft^3'\n"
    )
    found = examine(read_text(design_text(text, ground="paving", site="people = 'children'")))
    assert next(check for check in found.checks if check.name == "climb").demand == 0.0


def test_a_body_that_flares_is_stepped_on_at_a_child_s_reach():
    """16 in wide below, 40 in at 100 in: at 1.5 m (59.06 in) 30.17 in, so 7.087 in beyond 8 in."""
    text = (
        "[[part]]\nname = 'vase'\nshape = 'solid'\nsides = 4\nbottom = '16 in'\ntop = '40 in'\n"
        "height = '100 in'\ndensity = '35 lb/ft^3'\n"
    )
    found = examine(read_text(design_text(text, ground="paving", site="people = 'children'")))
    check = next(check for check in found.checks if check.name == "climb")
    out = 0.5 * (16 + 24 * 1.5 / (100 * INCH)) * INCH - 8 * INCH
    assert out / INCH == pytest.approx(7.087, abs=0.0005)
    assert check.demand == pytest.approx(27 * G * out, rel=1e-4)


def test_a_child_steps_on_what_flares_no_farther_than_it_climbs():
    """Square, 0.4 m wide at the foot and 1.6 m at twice the height to which a child climbs: there
    it is 1.0 m wide, and its edge lies 0.5 - 0.2 m beyond the line of turning on hard ground."""
    (row,) = references.table("ground/pushes").where("people", "climbing children")
    force, reach = float(row["force_N"]), float(row["height_m"])
    part = Part("vase", Solid(4, 0.4, 1.6, 2.0 * reach), mass=200.0)
    found = examine(design(part, wind=1.0, people="children"))
    (climb,) = [c for c in found.checks if c.kind is Kind.CLIMB]
    assert climb.demand == pytest.approx(force * 0.3, rel=1e-9)
    assert climb.capacity == pytest.approx(climb.dead * found.structure.weight("light") * 0.2)
