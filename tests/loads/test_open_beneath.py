"""Where wind passes beneath, and whose air is open to it, piece by piece as the rule says.

A judgement stated in loads/roofs: what stands on a hollow body is closed beneath; solid supports
that fill less than a quarter of what they carry are posts; air is open where wind gets beneath.
"""

import pytest
from designs import design

from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.design.structure import build_structure
from yardfast.loads.roofs.inside_air import breathes_beneath
from yardfast.loads.roofs.lids import flows_beneath

DECK = Part("deck", Plate(Rectangle(1.0, 1.0), 0.02), Place(at=(0.0, 0.0, 1.0)), density=500.0)


def on_pedestals(*shapes):
    """A deck a metre square on pedestals a metre high."""
    stand = [
        Part(f"pedestal {k}", shape, Place(at=(0.6 * k - 0.3, 0.0, 0.0)), density=500.0)
        for k, shape in enumerate(shapes)
    ]
    return build_structure(design(*stand, DECK))


POST, PIPE = Solid(4, 0.1, 0.1, 1.0), Shell(4, 0.1, 0.1, 1.0, 0.01)


@pytest.mark.parametrize(
    ("shapes", "passes"),
    [
        ((POST, POST), True),
        ((POST, PIPE), False),
        ((PIPE, PIPE), False),
        ((Solid(4, 0.49, 0.49, 1.0),), True),  # 0.2401 of the deck
        ((Solid(4, 0.51, 0.51, 1.0),), False),  # 0.2601
    ],
)
def test_wind_passes_beneath_what_stands_on_slender_solid_posts_alone(shapes, passes):
    structure = on_pedestals(*shapes)
    assert flows_beneath(structure, structure.bodies[-1]) is passes


def closed(*, legs, box=True):
    """A plate over a box open above, or over a block; the box bottomless on legs, or on a plate."""
    shape = Box(0.6, 0.6, 0.5, 0.02 if box else None, frozenset({"top", "bottom"} if box else ()))
    up = 0.4 if legs else 0.0
    stand = [
        Part(f"leg {k}", Solid(4, 0.05, 0.05, up), Place(at=(x, x, 0.0)), density=500.0)
        for k, x in enumerate((-0.25, 0.25) if legs else ())
    ]
    body = Part("body", shape, Place(at=(0.0, 0.0, up)), density=500.0)
    lid = Part("lid", Plate(Rectangle(0.6, 0.6), 0.02), Place(on="body"), density=500.0)
    return build_structure(design(*stand, body, lid))


@pytest.mark.parametrize(
    ("legs", "box", "breathes"), [(True, True, True), (False, True, False), (False, False, False)]
)
def test_a_lid_closes_air_that_is_open_where_wind_gets_beneath_the_box(legs, box, breathes):
    structure = closed(legs=legs, box=box)
    assert breathes_beneath(structure, structure.bodies[-1]) is breathes
