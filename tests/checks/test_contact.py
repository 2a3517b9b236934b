"""Caps of the contact area and friction against shapely, statics and closed forms."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity

from yardfast.checks.stability.contact import caps, quadrature
from yardfast.checks.stability.friction import sliding_resistance
from yardfast.loads.seen.directions import edge_normals

RING = shapely.Polygon(
    shapely.Point(0, 0).buffer(1, quad_segs=18).exterior,
    [shapely.Point(0, 0).buffer(0.8, quad_segs=18).exterior.coords],
)
LEGS = shapely.MultiPolygon([shapely.box(0, 0, 0.1, 0.1), shapely.box(1, 0.2, 1.1, 0.5)])
AREAS = {
    "square": shapely.box(0, 0, 1, 2),
    "ring": RING,
    "two legs": LEGS,
    "turned triangle": affinity.rotate(shapely.Polygon([(0, 0), (1, 0), (0.2, 0.7)]), 17),
}


@settings(max_examples=60, deadline=None)
@given(
    name=st.sampled_from(sorted(AREAS)),
    angle=st.floats(0, 2 * np.pi),
    fraction=st.one_of(st.floats(0.001, 0.999), st.just(1.0), st.just(1.5)),
)
def test_cap_of_an_area_has_the_centroid_that_shapely_finds(name, angle, fraction):
    area = AREAS[name]
    found = caps(area, np.array([[1.0, 0.0], [np.cos(angle), np.sin(angle)]]))
    wanted = min(fraction, 1.0) * area.area
    depth = float(found.centroid_depth(np.full(2, fraction * area.area))[1])
    turned = affinity.rotate(area, -angle, origin=(0, 0), use_radians=True)
    low, high = turned.bounds[0], turned.bounds[2]
    for _ in range(60):
        line = 0.5 * (low + high)
        cut = turned.intersection(shapely.box(line, -9, 9, 9))
        low, high = (line, high) if cut.area > wanted else (low, line)
    assert found.total == pytest.approx(area.area)
    assert depth == pytest.approx(turned.bounds[2] - cut.centroid.x, abs=1e-6)
    assert float(found.area_about(np.full(2, depth))[1]) == pytest.approx(wanted, rel=1e-5)


def test_straight_edge_gives_way_by_half_of_force_over_strength_and_length():
    """N/(2 q_u L), the strip under an edge at uniform pressure (Meyerhof 1953)."""
    found = caps(shapely.box(0, 0, 0.4, 0.7), np.array([[1.0, 0.0]]))
    force, strength = 300.0, 50e3
    depth = found.centroid_depth(np.array([force / strength]))
    assert depth[0] == pytest.approx(force / (2 * strength * 0.7), rel=1e-12)


@pytest.mark.parametrize(
    ("eccentricity", "ratio"), [(0.05, 1.111), (0.1, 1.25), (0.1667, 1.5), (0.25, 2.0), (0.4, 5.0)]
)
def test_pressure_under_an_eccentric_load_is_meyerhofs(eccentricity, ratio):
    """q over the average is 1/(1 - 2 e/B) (published toe-pressure table, Meyerhof column)."""
    found = caps(shapely.box(0, 0, 1, 1), np.array([[1.0, 0.0]]))
    area = found.area_about(np.array([0.5 - eccentricity]))
    assert 1.0 / area[0] == pytest.approx(ratio, abs=0.0006)


@pytest.mark.parametrize("depth", [0.0, -1e-9, -0.2])
def test_no_area_carries_what_lies_on_the_edge_or_outside_it(depth):
    """Statics: pressure under the area alone cannot balance a resultant outside it."""
    found = caps(shapely.box(0, 0, 1, 1), np.array([[1.0, 0.0], [0.0, 1.0]]))
    assert found.area_about(np.array([depth, 0.25])) == pytest.approx([0.0, 0.5], rel=1e-6)


@pytest.mark.parametrize("arm", [0.0, 0.1, 0.25, 0.5, 1.0, 5.0])
def test_two_feet_slide_when_the_nearer_yields(arm):
    """Statics: feet half a metre to either side; the nearer reaches its half first."""
    points = np.array([[0.0, 0.5], [0.0, -0.5]])
    found = sliding_resistance(
        points, np.array([0.5, 0.5]), np.array([[1.0, 0.0]]), np.array([arm])
    )
    assert found[0] == pytest.approx(0.5 / (0.5 + arm), rel=2e-4)


@pytest.mark.parametrize(
    ("points", "arm", "resists"),
    [
        ([[0.0, 0.0]], 0.0, 0.5),
        ([[0.0, 0.0]], 0.1, 0.0),
        ([[0.0, 0.5], [0.0, -0.5]], 0.0, 0.5),
    ],
    ids=["through one point", "beside one point", "uneven, no force"],
)
def test_one_point_resists_no_twist_and_no_force_asks_for_none(points, arm, resists):
    """Statics of a point; as the limit of a disc, 2/3 mu N R/arm with R to 0."""
    points = np.array(points)
    shares = 0.5 * np.array([0.25, 0.75][: len(points)]) if len(points) > 1 else np.array([0.5])
    along = np.array([[1.0, 0.0]]) if len(points) == 1 else np.zeros((1, 2))
    found = sliding_resistance(points, shares, along, np.array([arm]), even=False)
    assert found == pytest.approx([resists], rel=1e-9)


def test_disc_twisted_in_place_resists_two_thirds_of_its_radius():
    """T = 2/3 mu N R for even pressure (flat clutch, uniform pressure: any machine design text)."""
    disc = shapely.Point(0, 0).buffer(1.0, quad_segs=40)
    points = quadrature([disc], finest=0.1)[0]
    shares = points.weights / points.weights.sum()
    far = 1.0e4
    found = sliding_resistance(points.points, shares, np.array([[1.0, 0.0]]), np.array([far]))
    assert found[0] * far == pytest.approx(2.0 / 3.0, rel=2e-3)


@settings(max_examples=30, deadline=None)
@given(arm=st.floats(-2, 2), angle=st.floats(0, 6.28), scale=st.floats(0.1, 10))
def test_turning_never_helps_and_size_does_not_matter(arm, angle, scale):
    q = quadrature([LEGS], finest=0.3)[0]
    shares = q.weights / q.weights.sum()
    along = np.array([[np.cos(angle), np.sin(angle)]])
    points = q.points - shares @ q.points
    found = sliding_resistance(points, shares, along, np.array([arm]))
    larger = sliding_resistance(points * scale, shares, along, np.array([arm * scale]))
    assert found[0] <= 1.0 + 1e-12
    assert larger[0] == pytest.approx(found[0], rel=1e-6)


def test_quadrature_fills_the_area():
    for area in AREAS.values():
        q = quadrature([area], finest=0.2)[0]
        assert q.weights.sum() == pytest.approx(area.area, rel=1e-9)
        centre = q.weights @ q.points / q.weights.sum()
        assert centre == pytest.approx(np.array(area.centroid.coords[0]), abs=1e-9)


def test_edge_normals_point_outward():
    square = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]])
    assert edge_normals(square) == pytest.approx(np.array([[0, -1], [1, 0], [0, 1], [-1, 0]]))


@pytest.mark.parametrize("name", sorted(AREAS))
def test_a_contact_forty_times_as_large_gives_way_forty_times_as_deep(name):
    """Lengths by 40, areas by 1600: of a foot of some feet, or of a barn, seen from seven sides."""
    ways = np.column_stack([np.cos(np.arange(7.0)), np.sin(np.arange(7.0))])
    small = AREAS[name]
    large = affinity.scale(small, 40.0, 40.0, origin=(0.0, 0.0))
    shares = np.array([0.05, 0.2, 0.5, 0.7, 0.9, 0.97, 1.0])
    one = caps(small, ways).centroid_depth(shares * small.area)
    other = caps(large, ways).centroid_depth(shares * large.area)
    assert other == pytest.approx(40.0 * one, rel=1e-6)
    assert caps(large, ways).area_about(other) == pytest.approx(shares * large.area, rel=1e-5)
