"""From where wind is tried: by hand, square to each side of a piece however it is turned."""

from math import radians

import numpy as np
import pytest
from designs import design

from yardfast.design.model import Part, Place
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Plate
from yardfast.design.shapes.plans import Regular
from yardfast.design.structure import build_structure
from yardfast.loads.roofs.lids import lid
from yardfast.loads.seen.directions import wind_directions


@pytest.mark.parametrize("turn", [0.0, 13.0, 1.0e-9, -1.0e-9, 359.0, 90.0])
def test_wind_is_tried_square_to_each_side_of_an_oblong_and_every_five_degrees(turn):
    """Its sides look where it is turned (to the left, seen from above): -turn and each quarter."""
    post = Part("post", Box(0.4, 0.2, 1.0), Place(turn=radians(turn)), density=500.0)
    found = wind_directions(build_structure(design(post)))
    assert (found >= 0.0).all()
    assert (found < 360.0).all()
    assert (np.diff(found) > 0.0).all()
    for quarter in (0.0, 90.0, 180.0, 270.0):
        off = (found - (quarter - turn) + 180.0) % 360.0 - 180.0
        assert np.abs(off).min() < 1e-6
    for step in range(0, 360, 5):
        assert np.abs((found - step + 180.0) % 360.0 - 180.0).min() < 1e-6


@pytest.mark.parametrize("turn", [0.0, 100.0, 200.0, 300.0])
def test_wind_is_tried_square_to_the_line_from_foot_to_foot(turn):
    """Three square legs at odd places under a round top: what it tips over are the sides of the
    whole footprint, which no part of it has; wind from either side of each."""
    at = ((0.5, 0.07), (-0.41, 0.3), (-0.13, -0.52))
    legs = [
        Part(f"leg {k}", Box(0.04, 0.04, 0.6), Place(at=(*one, 0.0)), density=500.0)
        for k, one in enumerate(at)
    ]
    top = Part("top", Plate(Regular(0, 1.3), 0.02), Place(at=(0.0, 0.0, 0.6)), density=500.0)
    structure = build_structure(design(*legs, top, turn=radians(turn)))
    edges = np.roll(structure.footprint, -1, axis=0) - structure.footprint
    looks = np.degrees(np.arctan2(edges[:, 1], -edges[:, 0]))  # azimuth of the outward normal
    found = wind_directions(structure)
    assert ((found >= 0.0) & (found < 360.0)).all()
    for look in (*looks, *(looks + 180.0)):
        assert np.abs((found - look + 180.0) % 360.0 - 180.0).min() < 1e-6


@pytest.mark.parametrize(("wider", "is_a_cap"), [(0.0, False), (0.002, False), (0.01, True)])
def test_a_block_on_a_block_is_a_cap_where_it_stands_out_by_a_hundredth(wider, is_a_cap):
    """Judgement of the lids: 0.4 m square on 0.4 m, wider by 2 mm: 0.998 %; by 10 mm: 4.8 %."""
    below = Part("below", Box(0.4, 0.4, 0.5), density=500.0)
    top = Part("top", Box(0.4 + wider, 0.4 + wider, 0.1), Place(on="below"), density=500.0)
    structure = build_structure(design(below, top))
    assert (lid(structure, 1) is not None) is is_a_cap
