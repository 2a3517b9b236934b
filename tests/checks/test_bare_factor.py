"""The factor of safety without load factors: by statics, weight and anchors each at its own."""

import numpy as np
import pytest
from designs import design

from yardfast.checks.acting.design_wind import design_wind
from yardfast.checks.examination import examine
from yardfast.checks.stability.overturning import Hold, check_overturning
from yardfast.checks.stability.sliding import check_sliding
from yardfast.design.model import Part
from yardfast.design.shapes.boxes import Box
from yardfast.loads.methods import method_of

CODE = {"method": "ASCE 7-22", "exposure": "C", "wind": 47.0, "basis": "allowable"}
POST = Part("post", Box(0.4, 0.4, 1.6), density=400.0)
ANCHORS_HOLD = 800.0
"""N m about each line, or N sideways."""


def worked_out(**site):
    found = examine(design(POST, ground="paving", **site))
    return found, found.standing, _actions(found)


def _actions(found):
    """The wind of the design alone, as the examination takes it."""
    return design_wind(found.exposed, method_of(found.site, found.structure.height))[1]


@pytest.mark.parametrize("site", [CODE, {"wind": 30.0, "basis": "service"}], ids=["0.6 D", "1.0 D"])
def test_weight_and_anchors_each_at_its_own_against_tipping(site):
    """(W d + anchors)/M: the 0.6 on dead load stands on the weight alone."""
    found, standing, actions = worked_out(**site)
    hold = Hold(lambda pivot: np.full(pivot.shape, ANCHORS_HOLD), np.zeros_like)
    check = check_overturning(standing, actions, found.factors, hold)
    weight = found.structure.weight("light")
    by_weight = weight * 0.2  # half of 0.4 m, from the axis to the edge
    assert check.capacity == pytest.approx(check.dead * by_weight + ANCHORS_HOLD)
    assert check.bare == pytest.approx((by_weight + ANCHORS_HOLD) / (check.demand / check.wind))


@pytest.mark.parametrize("site", [CODE, {"wind": 30.0, "basis": "service"}], ids=["0.6 D", "1.0 D"])
def test_friction_and_anchors_each_at_its_own_against_sliding(site):
    """(mu W + anchors)/H, mu 0.40 of wood on paving, without suction on a level place."""
    found, standing, actions = worked_out(**site)
    check = check_sliding(standing, actions, found.factors, ANCHORS_HOLD)
    friction = float(standing.friction_share(actions).max()) * found.structure.weight("light")
    assert check.capacity == pytest.approx(check.dead * friction + ANCHORS_HOLD)
    assert check.bare == pytest.approx((friction + ANCHORS_HOLD) / (check.demand / check.wind))
