"""Seams of many-sided bodies, held against a numerical integration round the wall."""

import numpy as np
import pytest
from designs import design
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import trapezoid
from seam_flow import PER_SIDE, flow_by_integration, round_the_wall

from yardfast.checks.examination import examine
from yardfast.checks.seams import shear_flow as seams
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Shell, Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Panel, Plate
from yardfast.design.shapes.plans import Regular

BASE = Part("foot", Plate(Regular(8, 0.9), 0.05), material="concrete")


@pytest.mark.parametrize("sides", [3, 4, 5, 6, 7, 8, 12])
def test_greatest_seam_flow_over_all_directions_by_integration(sides):
    apothem, wall, shear = 0.22, 0.018, 500.0
    inertia = seams.polygon_inertia(sides, apothem, wall)
    Q = seams.polygon_first_moment(sides, apothem, wall)
    worst = 0.0
    for direction in np.pi / 2.0 + np.pi / sides + np.linspace(0.0, 2.0 * np.pi / sides, 41):
        q, by_sums, _, _ = flow_by_integration(sides, apothem, wall, shear, direction)
        assert by_sums == pytest.approx(float(inertia), rel=1e-5)
        worst = max(worst, np.abs(q[::PER_SIDE]).max())
    assert seams.shear_flow(shear, Q, inertia) == pytest.approx(worst, rel=1e-4)


@given(
    st.sampled_from([3, 4, 6, 8, 11]),
    st.floats(0.05, 0.5),
    st.floats(0.004, 0.03),
    st.floats(0.0, 6.3),
)
def test_flows_round_the_wall_balance_the_shear(sides, apothem, wall, direction):
    """The integration used above is in equilibrium: its flows add up to V along V, to 0 across."""
    q, _, ways, path = flow_by_integration(sides, apothem, wall, 300.0, direction)
    total = trapezoid(q[:, None] * ways, path, axis=0)
    way = np.array([np.cos(direction), np.sin(direction)])
    assert abs(total @ way) == pytest.approx(300.0, rel=1e-4)
    assert total @ np.array([-way[1], way[0]]) == pytest.approx(0.0, abs=0.1)


@pytest.mark.parametrize("sides", [4, 6, 8, 12])
def test_first_moment_of_half_a_polygon_by_sums(sides):
    """A cut through two opposite seams leaves half of an even polygon."""
    points, _, _ = round_the_wall(sides, 0.3)
    seam = np.pi / sides
    y = points @ np.array([-np.sin(seam), np.cos(seam)])
    half = y[: PER_SIDE * sides // 2]
    ds = 2.0 * 0.3 * np.tan(np.pi / sides) / (PER_SIDE - 1)
    Q = sum(trapezoid(0.012 * piece, dx=ds) for piece in half.reshape(sides // 2, PER_SIDE))
    assert seams.polygon_first_moment(sides, 0.3, 0.012) == pytest.approx(Q, rel=1e-6)


def test_a_square_tube_by_the_handbook():
    """Thin square tube of side b: I = 2/3 b^3 t, and V/(2 h) along each of two webs on average.

    Roark's formulas (memory). Cut corner to corner, each half is two sides with their middles
    b/(2 sqrt 2) off the diagonal.
    """
    b, t = 0.4, 0.012
    assert seams.polygon_inertia(4, b / 2.0, t) == pytest.approx(2.0 / 3.0 * b**3 * t)
    Q = 2.0 * b * t * b / (2.0 * np.sqrt(2.0))
    assert seams.polygon_first_moment(4, b / 2.0, t) == pytest.approx(Q)


def test_many_sides_come_to_the_round_tube():
    """I = pi r^3 t, and a flow of V/(pi r) at the ends of the diameter square to V."""
    r, t, V = 0.25, 0.01, 800.0
    inertia = seams.polygon_inertia(400, r, t)
    assert inertia == pytest.approx(np.pi * r**3 * t, rel=1e-4)
    flow = seams.shear_flow(V, seams.polygon_first_moment(400, r, t), inertia)
    assert flow == pytest.approx(V / (np.pi * r), rel=1e-4)


@pytest.mark.parametrize(("long", "wide"), [(0.4, 0.4), (0.9, 0.3), (0.3, 1.1)])
def test_flows_at_the_corners_of_a_box_balance_the_shear(long, wide):
    """Along each web q grows from the corners by V t x/I; both webs together carry V."""
    V, t = 600.0, np.array([0.012, 0.018])
    corner = V * seams.rectangle_shares(np.array([long, wide]), t)[0]
    x = np.linspace(-long / 2.0, long / 2.0, 4001)
    inertia = 2.0 * (t[0] * wide * (long / 2.0) ** 2 + t[1] * long**3 / 12.0)
    web = corner + V / inertia * t[1] * (long**2 / 8.0 - x**2 / 2.0)
    assert 2.0 * trapezoid(web, x) == pytest.approx(V, rel=1e-6)


def test_a_square_box_carries_what_a_shell_of_four_sides_does():
    """On its face a square's corners carry half as much from each side as over its diagonal."""
    shares = seams.rectangle_shares(np.full(2, 0.4), np.full(2, 0.012))
    Q, inertia = seams.polygon_first_moment(4, 0.2, 0.012), seams.polygon_inertia(4, 0.2, 0.012)
    over_the_diagonal = float(seams.shear_flow(1.0, Q, inertia))
    assert shares.sum() / np.sqrt(2.0) == pytest.approx(over_the_diagonal)


def test_twist_runs_round_by_bredt():
    """Flow times arm, summed round the wall, gives the torque back."""
    points, ways, path = round_the_wall(6, 0.2)
    arm = points[:, 0] * ways[:, 1] - points[:, 1] * ways[:, 0]
    area = 6.0 * np.tan(np.pi / 6.0) * 0.2**2
    q = seams.twist_flow(37.0, area)
    assert trapezoid(q * arm, path) == pytest.approx(37.0)


def test_a_published_box_beam_of_nailed_boards():
    """mathalino.com, spacing of fasteners (seen): I 160,416,666.7 and Q 421,875 mm; P 11.86 kN.

    Two lines of nails of 1,300 N each, 125 mm apart, carry V Q/I with V = 2 P/3.
    """
    inertia = (0.2 * 0.25**3 - 0.15 * 0.2**3) / 12.0
    Q = 0.15 * 0.025 * 0.1125
    assert inertia * 1e12 == pytest.approx(160_416_666.7, abs=0.05)
    assert pytest.approx(421_875) == Q * 1e9
    each = 1300.0 / 0.125
    V = each / seams.shear_flow(1.0, Q, inertia)
    assert pytest.approx(11.86, abs=0.005) == 1.5 * V / 1000.0


def test_panel_pulls_half_of_its_load_at_each_edge():
    assert seams.edge_pull(400.0, 0.3) * 2.0 == pytest.approx(400.0 * 0.3)


def test_arrays_equal_the_loop_over_their_values():
    rng = np.random.default_rng(3)
    a, b, c = rng.uniform(0.1, 2.0, (3, 1000))
    n = rng.integers(3, 20, 1000)
    for relation, given_ in (
        (seams.polygon_inertia, (n, a, b)),
        (seams.polygon_first_moment, (n, a, b)),
        (seams.shear_flow, (a, b, c)),
        (seams.twist_flow, (a, b)),
        (seams.edge_pull, (a, b)),
    ):
        one_by_one = [float(relation(*each)) for each in zip(*given_, strict=True)]
        np.testing.assert_allclose(relation(*given_), one_by_one, rtol=1e-12)


def shell(sides=8, bottom=0.5, top=0.3, height=1.2, **more):
    given_ = {"material": "softwood plywood", **more}
    return Part("tower", Shell(sides, bottom, top, height, 0.018), Place(on="foot"), **given_)


def seam_of(*parts, **site):
    return examine(design(*parts, **site)).seams[0]


def test_seams_carry_the_wind_on_the_shell_and_on_what_stands_on_it():
    """A straight hexagon alone: V at its foot is the whole force, Q/(2 I) of it runs along."""
    body = shell(6, 0.4, 0.4)
    found = examine(design(BASE, body, wind=25.0))
    (one,) = found.seams
    i = [each.part for each in found.structure.bodies].index(1)
    alone = 0.5 * 1.226 * 25.0**2 * np.maximum(found.exposed.below, found.exposed.above)[i].max()
    assert one.shear == pytest.approx(alone, rel=1e-6)
    apothem = (0.4 - 0.018) / 2.0
    tangent = np.tan(np.pi / 6.0)
    by_hand = alone / (6 * apothem * np.sin(np.pi / 6.0) * (1.0 + tangent**2 / 3.0))
    assert one.flow == pytest.approx(by_hand, rel=1e-6)
    roof = Part("block", Solid(6, 0.5, 0.5, 0.3), Place(on="tower"), material="redwood")
    assert seam_of(BASE, body, roof, wind=25.0).shear > one.shear


INCH = 0.0254
WIDENING = shell(8, 10 * INCH, 30 * INCH, 48 * INCH)
LEAN = 10.0 / 48.0  # 10 in outward over 48 in of height
APOTHEM = 5 * INCH - 0.018 * np.hypot(1.0, LEAN) / 2.0  # at the foot, to the middle of the wall


def test_walls_that_lean_outward_add_to_the_shear_by_hand():
    """8 sides, 10 to 30 in over 48 in: (V + M tan/a) Q/(2 I); of M = V z the lean adds z tan/a.

    In the gust whose force alone makes 508 N/m: 1,147 N/m.
    """
    found = examine(design(BASE, WIDENING, wind=21.188))
    (one,) = found.seams
    i = [each.part for each in found.structure.bodies].index(1)
    V = 0.5 * 1.226 * 21.188**2 * np.maximum(found.exposed.below, found.exposed.above)[i].max()
    straight = V / (8 * APOTHEM * np.sin(np.pi / 8) * (1.0 + np.tan(np.pi / 8) ** 2 / 3.0))
    assert straight == pytest.approx(508, abs=0.5)
    up = 48 * INCH / 3.0 * (10 + 2 * 30) / (10 + 30)  # middle of a trapezoid
    assert one.flow == pytest.approx(straight * (1.0 + up * LEAN / APOTHEM), rel=1e-6)
    assert one.flow == pytest.approx(1147, abs=0.5)


@given(st.floats(-0.3, 0.3), st.floats(0.05, 2.0), st.floats(-200.0, 200.0))
def test_the_flow_of_leaning_walls_is_what_half_of_the_wall_pulls_more_each_metre(lean, arm, more):
    """Half of a wall pulls M Q/I; what that grows by over a metre goes into its two seams.

    A force at ``arm`` above the level, and a moment more, on walls whose apothem grows upward.
    """
    a, t, V, n, step = 0.3, 0.012, 400.0, 8, 1.0e-5

    def pull(z):
        apothem = a + lean * z
        Q = seams.polygon_first_moment(n, apothem, t)
        return (V * (arm - z) + more) * Q / seams.polygon_inertia(n, apothem, t)

    by_metre = (pull(-step) - pull(step)) / (2.0 * step)
    across = seams.leaning_shear(V, V * arm + more, lean, a)
    Q, inertia = seams.polygon_first_moment(n, a, t), seams.polygon_inertia(n, a, t)
    assert across * Q / inertia == pytest.approx(by_metre, rel=1e-6, abs=1e-6)


def test_walls_that_lean_inward_are_not_relieved_and_far_past_their_point_loaded_more():
    """0.5 to 0.4 m over 1.2 m: V counts whole. 0.9 to 0.2 m over 0.3 m under a mast of 4 m: M wins.

    The walls would meet 0.39 m up; the wind's middle is more than twice as high.
    """
    mast = Part("mast", Solid(8, 0.2, 0.2, 4.0), Place(on="tower"), material="redwood")
    for body, relieved in ((shell(8, 0.5, 0.4), True), (shell(8, 0.9, 0.2, 0.3), False)):
        found = examine(design(BASE, body, *([] if relieved else [mast]), wind=25.0))
        (one,) = found.seams
        own = [each.part > 0 for each in found.structure.bodies]
        size = np.maximum(found.exposed.below, found.exposed.above)[own]
        force = 0.5 * 1.226 * 25.0**2 * size.sum(axis=0).max()
        assert (one.shear == pytest.approx(force, rel=1e-6)) == relieved
        assert one.shear >= force * (1.0 - 1e-6)


def test_a_sign_out_to_one_side_twists_the_seams():
    arm = Part(
        "sign", Panel(0.5, 0.4, 0.012), Place(on="tower", at=(0.4, 0.0, 0.0)), material="OSB"
    )
    straight, twisted = (seam_of(BASE, shell(), *more) for more in ((), (arm,)))
    assert straight.torque == pytest.approx(0.0, abs=1e-6)
    assert twisted.torque > 1.0


@pytest.mark.parametrize("sides", range(3, 13))
def test_a_corner_is_in_balance_under_edge_pull_and_hoop(sides):
    """Both panels' edges push outward at a corner, and both panels pull it back in their planes."""
    pressure, apothem = 300.0, 0.4
    width = 2.0 * apothem * np.tan(np.pi / sides)
    outward = float(seams.edge_pull(pressure, width))
    within = float(seams.hoop_pull(pressure, width, np.pi / sides))
    half = np.pi / sides
    normals = np.array([[np.cos(half), np.sin(half)], [np.cos(half), -np.sin(half)]])
    away = np.array([[-np.sin(half), np.cos(half)], [-np.sin(half), -np.cos(half)]])
    net = outward * normals.sum(axis=0) + within * away.sum(axis=0)
    assert net == pytest.approx([0.0, 0.0], abs=1e-9)
    assert within == pytest.approx(pressure * apothem)  # as in a round tank


def test_spacing_uses_up_the_fastener_and_follows_the_wind():
    slow, fast = (seam_of(BASE, shell(), wind=wind) for wind in (20.0, 40.0))
    assert fast.flow == pytest.approx(4.0 * slow.flow)
    for one, other in zip(slow.spacings, fast.spacings, strict=True):
        assert one.fastener == other.fastener
        assert one.spacing == pytest.approx(4.0 * other.spacing)


def test_nail_spacing_by_hand():
    """8d common through 18 mm of plywood, G 0.42, into spruce-pine-fir, wet and drying.

    W = 1380 G^2.5 D, a quarter of it; the head 690 pi D_H G^2 t and Z in mode IIIs, 0.7 of each;
    C_D 1.6.
    """
    one = seam_of(BASE, shell(), wind=30.0)
    inch, pound, G, D = 0.0254, 4.4482216152605, 0.42, 0.131
    t = 0.018 / inch
    drawn = 1380 * G**2.5 * D * (2.5 - t) * 0.25
    head = 690 * np.pi * 0.281 * G**2 * t * 0.7
    Fe, Fyb = 3350.0, 100_000.0
    k3 = -1.0 + np.sqrt(4.0 + 2.0 * Fyb * 3.0 * D**2 / (3.0 * Fe * t**2))
    Z = k3 * D * t * Fe / (3.0 * 2.2) * 0.7
    across = one.pull / np.tan(np.pi / one.count)  # the panels beside hold each other so
    T, V = one.pull * inch / pound, np.hypot(one.flow, across) * inch / pound
    use = T / (1.6 * min(drawn, head)) + V / (1.6 * Z)
    (spacing,) = (each.spacing for each in one.spacings if each.fastener == "8d common nail")
    assert spacing / inch == pytest.approx(1.0 / use, rel=1e-3)


def test_the_corners_of_a_box_by_hand():
    """0.8 by 0.5 by 0.6 m, open above, on its long face: V Q/(2 I) at its foot; p s/2 each way.

    The wind over the corner asks along both sides at once; here the greatest of all directions.
    """
    body = Part("box", Box(0.8, 0.5, 0.6, 0.018, frozenset({"top"})), Place(on="foot"),
                material="softwood plywood")  # fmt: skip
    found = examine(design(BASE, body, wind=25.0))
    (one,) = found.seams
    i = [each.part for each in found.structure.bodies].index(1)
    q = 0.5 * 1.226 * 25.0**2
    size = q * np.maximum(found.exposed.below, found.exposed.above)[i]
    L, W, t = 0.782, 0.482, 0.018
    shares = [
        t * b * a / 2.0 / (4.0 * (t * b * a**2 / 4.0 + t * a**3 / 12.0))
        for a, b in ((L, W), (W, L))
    ]
    along = np.abs(found.exposed.along[i])
    by_hand = (size[:, None] * along * shares).sum(axis=1).max()
    assert one.count == 4
    assert one.flow == pytest.approx(by_hand, rel=1e-6)
    assert [one.pull, one.hoop] == pytest.approx([(1.3 + 0.6) * q * 0.8 / 2.0] * 2, rel=1e-6)


def test_what_nobody_publishes_gets_no_spacing_and_round_bodies_no_seams():
    lantern = shell(material="acrylic")
    assert {each.spacing for each in seam_of(BASE, lantern).spacings} == {None}
    assert examine(design(BASE, shell(0))).seams == ()
