"""What of a roof lies upwind of what carries it: held to the overlays of a geometry library."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import MultiPoint, Polygon

from yardfast.design import plane
from yardfast.loads.roofs.overhangs import upwind_of

ALONG = np.radians(np.arange(0.0, 360.0, 7.5))
ALONG = np.column_stack([np.cos(ALONG), np.sin(ALONG)])


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000), st.integers(3, 9), st.integers(3, 8), st.booleans())
def test_area_and_centroid_are_those_of_an_overlay(seed, corners, carrying, whole):
    """Any roof, with a hole or a dent in it, over any carrier, by winds from all round."""
    draw = np.random.default_rng(seed)
    angles = np.sort(draw.uniform(0.0, 2.0 * np.pi, corners))
    radii = draw.uniform(0.3, 2.0, corners)
    roof = Polygon(np.column_stack([radii * np.cos(angles), radii * np.sin(angles)])).buffer(0.0)
    carrier = MultiPoint(draw.uniform(-0.8, 0.8, (carrying, 2))).convex_hull
    region = roof if whole else roof.difference(carrier)
    area, moment = upwind_of(region, plane.ring_of(carrier), ALONG)
    covered = np.zeros(3) if whole else _sums(roof.intersection(carrier))
    for k, way in enumerate(ALONG):
        points = shapely.get_coordinates(carrier)
        swept = MultiPoint(np.vstack([points, points - 10.0 * way])).convex_hull
        # of the whole roof: where outlines run along each other the overlay is not to be trusted
        expected = _sums(swept.intersection(roof)) - covered
        assert [area[k], *moment[k]] == pytest.approx(expected, rel=1e-9, abs=1e-11)


def _sums(found):
    centre = np.array(found.centroid.coords[0]) if found.area else np.zeros(2)
    return np.array([found.area, *(found.area * centre)])
