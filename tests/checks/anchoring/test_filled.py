"""Sand, gravel, earth or concrete in a body with a floor: weight where it lies, and only there."""

from math import pi, sqrt, tan

import pytest
from verdict_designs import design_text

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.design.faults import DesignError

INCH, POUND, FOOT = 0.0254, 0.45359237, 0.3048
FLOOR = "[[part]]\nname = 'floor'\nshape = 'plate'\nMEASURES\nmaterial = 'softwood plywood'\n"
HEXAGON = FLOOR.replace("MEASURES", "sides = 6\nacross = '24 in'\nthickness = '1 in'")
BODY = (
    "[[part]]\nname = 'body'\nshape = 'shell'\non = 'floor'\nsides = 6\nbottom = '20 in'\n"
    "top = '12 in'\nheight = '40 in'\nwall = '1 in'\nmaterial = 'softwood plywood'\n"
)
CRATE = (
    "[[part]]\nname = 'crate'\nshape = 'box'\nlength = '24 in'\nwidth = '18 in'\n"
    "height = '12 in'\nwall = '1 in'\nmaterial = 'softwood plywood'\n"
)


def found(*parts):
    return examine(read_text(design_text("\n".join(parts))))


def mass_of(examination, name):
    names = [part.name for part in examination.structure.design.parts]
    return examination.structure.part_mass[1][names.index(name)]


def test_a_tapered_body_is_filled_to_a_depth_by_hand():
    """Frustum V = h/3 (A0 + A1 + sqrt(A0 A1)); hexagon A = 6 tan(30 deg) a2, a the apothem.

    Gravel at the least that is published, 90 lb/ft3; the wall leans 4 in in 40 in, so it takes
    sqrt(1 + 0.1^2) in of the apothem.
    """
    piece = found(HEXAGON, BODY + "fill = 'gravel'\nfill_depth = '10 in'\n")
    wall = sqrt(1.01)
    low, high = (10 - wall) / 12, (9 - wall) / 12
    A0, A1 = (6 * tan(pi / 6) * a**2 for a in (low, high))
    pounds = 90 * (10 / 12) / 3 * (A0 + A1 + sqrt(A0 * A1))
    assert mass_of(piece, "gravel in body") == pytest.approx(pounds * POUND, rel=1e-9)
    centre = piece.structure.part_centre[-1][2]
    assert 1 * INCH + 4 * INCH < centre < 1 * INCH + 5 * INCH


def test_a_closed_box_has_its_own_floor():
    piece = found(CRATE + "fill = 'sand'\n")
    cubic_feet = 22 * 16 * 10 / 12**3
    assert mass_of(piece, "sand in crate") == pytest.approx(80 * cubic_feet * POUND, rel=1e-9)
    assert piece.structure.part_centre[-1] == pytest.approx([0, 0, 6 * INCH], abs=1e-9)


def test_a_half_full_box_lies_lower():
    full, half = (
        found(CRATE + "fill = 'sand'\n"),
        found(CRATE + "fill = 'sand'\nfill_depth = '6 in'\n"),
    )
    share = mass_of(half, "sand in crate") / mass_of(full, "sand in crate")
    assert share == pytest.approx(5 / 10)
    assert half.structure.part_centre[-1][2] == pytest.approx(3.5 * INCH)


def test_it_never_tips_sooner_for_being_filled():
    empty, filled = found(HEXAGON, BODY), found(HEXAGON, BODY + "fill = 'sand'\n")
    assert filled.limits.tipping > empty.limits.tipping


def test_each_copy_is_filled():
    row = "count = 2\nstep = ['24 in', '0 in', '0 in']\nfill = 'sand'\n"
    one, two = found(CRATE + "fill = 'sand'\n"), found(CRATE + row)
    assert mass_of(two, "sand in crate") == pytest.approx(2 * mass_of(one, "sand in crate"))


@pytest.mark.parametrize(
    ("parts", "said"),
    [
        ((HEXAGON.replace("24 in'", "24 in'\nhole = '12 in'"), BODY + "fill = 'sand'"), "a floor"),
        ((BODY.replace("on = 'floor'\n", "") + "fill = 'sand'",), "a floor"),
        ((CRATE + "fill = 'sand'\nopen = ['bottom']",), "a floor"),
        ((CRATE + "fill_depth = '3 in'",), "'fill' beside it"),
        ((CRATE + "fill = 'sand'\nfill_depth = '3 ft'",), "at most the body's own height"),
        ((CRATE + "fill = 'sandbag 40 lb'",), "one of 'sand'"),
        ((HEXAGON + "fill = 'sand'",), "a hollow body"),
    ],
)
def test_what_cannot_lie_there_is_told(parts, said):
    with pytest.raises(DesignError) as caught:
        found(*parts)
    assert any(said in fault.expected for fault in caught.value.faults)
