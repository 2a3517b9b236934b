"""Wind on what is turned and on a hoop, against bars that stand by themselves."""

from math import pi

import numpy as np
import pytest

from yardfast.design.outlines import outlines
from yardfast.design.placing import Body, toward_y
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.hoop import Hoop
from yardfast.design.shapes.plans import Rectangle, Regular
from yardfast.design.shapes.turned import Turned
from yardfast.loads.coefficients import force_coefficients as cf
from yardfast.loads.coefficients.shape_coefficients import shape_coefficient
from yardfast.loads.en1991.body_coefficients import Blown, body_coefficient

STANDING = toward_y(pi / 2.0)
FROM = np.array([0.0, pi / 2.0])
"""Onto the face of a hoop that stands, and along its plane."""


def hoop(section, rotation=STANDING):
    return Body(0, 0, Hoop(0.5, section), rotation, np.array([0.0, 0.0, 0.6]))


def product(found, body):
    """Coefficient times outline (D,) in m2, of what the wind meets in each direction."""
    return found.below * np.array([each.area for each in outlines([body], FROM)[0]])


def test_a_hoop_takes_what_its_bar_takes_all_round():
    """Face on the bar's own area 2 pi R d; along its plane 4 R d: the mean of |sin| is 2/pi."""
    body = hoop(Regular(0, 0.02))
    own = float(cf.round_section(1.2 / 0.02, "rough", False))
    found = product(shape_coefficient(body, 1.2, FROM), body)
    assert found[0] == pytest.approx(own * 2.0 * pi * 0.5 * 0.02, rel=2e-3)
    assert found[1] == pytest.approx(own * 4.0 * 0.5 * 0.02, rel=2e-3)


def test_a_flat_hoop_takes_its_faces_as_square():
    """Face on its strip shows 2 pi R w; along its plane the strip's height, front and back."""
    wide, thin = 0.05, 0.01
    body = hoop(Rectangle(wide, thin))
    own = float(cf.square_face(1.2 / thin))
    found = product(shape_coefficient(body, 1.2, FROM), body)
    assert found[0] == pytest.approx(own * 2.0 * pi * 0.5 * wide, rel=2e-3)
    assert found[1] >= own * 4.0 * 0.5 * thin


@pytest.mark.parametrize("rotation", [np.eye(3), STANDING, toward_y(0.4)])
@pytest.mark.parametrize("section", [Regular(0, 0.02), Rectangle(0.04, 0.01), Regular(6, 0.03)])
def test_a_hoop_never_takes_less_than_its_outline(rotation, section):
    body = hoop(section, rotation)
    plan = section if section == Regular(0, 0.02) else None
    least = cf.round_section(1.2 / 0.02, "rough", False) if plan else cf.square_face(1.2 / 0.04)
    assert (shape_coefficient(body, 1.2, FROM).below >= 0.99 * float(least)).all()
    by_en = body_coefficient(body, 1.2, FROM, "rough", Blown(30.0, 20.0))
    assert (by_en.below > 0.0).all()


def test_a_straight_turned_body_takes_what_a_round_post_takes():
    turned, post = (
        Body(0, 0, shape, np.eye(3), np.zeros(3))
        for shape in (Turned(((0.1, 0.0), (0.06, 0.4), (0.02, 0.8))), Solid(0, 0.2, 0.04, 0.8))
    )
    ours, theirs = (shape_coefficient(body, 0.8, FROM) for body in (turned, post))
    assert ours.kind == theirs.kind
    assert ours.below == pytest.approx(theirs.below, rel=1e-12)
    assert ours.limit == pytest.approx(theirs.limit, rel=1e-12)
