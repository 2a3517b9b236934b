"""Every body of every piece is in balance in every load case, and the ground bears all of it."""

import numpy as np
import pytest
from designs import design
from garden import EXAMPLES, each_example
from inside import forces_in, under

from yardfast.checks.inputs import read_text
from yardfast.design.model import Part, Place
from yardfast.design.shapes.bodies import Solid
from yardfast.design.shapes.boxes import Box
from yardfast.design.shapes.flat import Frame, Plate
from yardfast.design.shapes.plans import Rectangle
from yardfast.loads.given import GivenLoad
from yardfast.statics.footings import HoldDown
from yardfast.statics.stiffness import SETS, SWAYS
from yardfast.statics.system import FIXED
from yardfast.units.frozen import replace

MOST = 400
"""So many load cases of a piece are looked at, spread over all of them."""


def ground_and_loads(forces, name, one_way):
    """The forces and moments about the origin that the ground gives, and those of the loads."""
    loads = forces.cases.loads
    which = np.unique(np.linspace(0, len(loads) - 1, min(MOST, len(loads))).astype(int))
    found = forces.model.solved(loads[which], (SETS[name],), one_way=one_way)
    springs = forces.model.system.springs
    fixed = springs.start == FIXED
    pulls = found.solution.force[:, fixed]
    rows = np.hstack([springs.along[fixed], np.cross(springs.at[fixed], springs.along[fixed])])
    acts = loads[which].reshape(len(which), -1, 6).sum(axis=1)
    return found.solution, pulls @ rows, acts


def balanced(forces, one_way):
    for name in ("as read", "pulled stiffer", "beds softer"):
        solution, ground, acts = ground_and_loads(forces, name, one_way)
        stands = ~solution.lost
        assert stands.any()
        assert solution.error.max() <= 1.0e-8
        held = solution.braced @ forces.model.system.braces.reshape(-1, forces.model.system.size)
        if np.abs(held).max(initial=0.0) > 1.0e-9 * np.abs(acts).max():
            continue  # what racks is held by what no piece has, and told
        size = np.abs(acts[stands]).sum(axis=1).max()
        assert ground[stands] == pytest.approx(acts[stands], abs=1.0e-7 * size)


@each_example
def test_every_example_is_in_balance_and_the_ground_bears_it(file):
    whole = read_text(file.read_text(encoding="utf-8"), str(file))
    balanced(forces_in(whole), one_way=True)


@pytest.mark.parametrize("name", ["signpost", "head-light"])
def test_each_set_of_stiffness_is_told_by_its_own_name(name):
    """Each is solved alone as well: of a frame that its joints' stiffness tells how to share."""
    file = next(file for file in EXAMPLES if file.stem == name)
    forces = forces_in(read_text(file.read_text(encoding="utf-8"), str(file)))
    which = np.unique(np.linspace(0, len(forces.cases.loads) - 1, 5).astype(int))
    found = forces.enveloped(which)
    one_way = not forces.is_determinate
    for each, factors in (*SETS.items(), ("", SWAYS)):
        alone = forces.model.solved(forces.cases.loads[which], (factors,), one_way=one_way)
        its = found.of(each) if each else found.swaying
        for a, b in (
            (its.solution.force, alone.solution.force),
            (its.solution.motion, alone.solution.motion),
        ):
            assert a == pytest.approx(b, rel=1e-7, abs=1e-8 * np.abs(b).max())
    assert found.names[: len(SETS)] == tuple(SETS)
    assert found.every.tolist() == [*which.tolist()] * len(found.names)


def drawn_at_random(rng):
    """A slab with posts, beams on them, a deck on those, and somebody who leans on it."""
    stuff = rng.choice(["southern pine", "redwood", "steel"])
    count, apart, high = int(rng.integers(1, 4)), rng.uniform(0.4, 1.2), rng.uniform(0.5, 2.0)
    deep = rng.uniform(0.05, 0.14)
    wide = (count - 1) * apart
    foot = Part("foot", Plate(Rectangle(wide + 0.6, 1.2), 0.06), material="concrete")
    ring = Part("ring", Frame(Rectangle(wide + 0.5, 1.0), 0.089, 0.038), Place(on="foot"),
                material="southern pine")  # fmt: skip
    posts = Part(
        "posts",
        Box(0.089, 0.089, high),
        Place(on="foot", at=(-wide / 2.0, 0.0, 0.0), count=count, step=(apart, 0.0, 0.0)),
        material=str(stuff),
    )
    beam = Part(
        "beam",
        Box(wide + rng.uniform(0.5, 0.8), 0.089, deep),
        Place(on="posts"),
        material="southern pine",
    )
    deck = Part(
        "deck",
        Plate(Rectangle(0.3, 0.3), 0.02),
        Place(on="beam", at=(rng.uniform(-0.1, 0.1), 0.0, 0.0)),
        material="softwood plywood",
    )
    way = rng.normal(size=3)
    way /= np.linalg.norm(way)
    at = (rng.uniform(-wide / 2.0, wide / 2.0), 0.0, 0.06 + high + deep)
    lean = GivenLoad("lean", float(rng.uniform(50.0, 900.0)), at, tuple(way), "beam")
    parts = [foot, posts, beam, deck, *([ring] if rng.random() < 0.3 else [])]
    ground = rng.choice(["paving", "firm lawn", "sand"])
    whole = design(*parts, wind=float(rng.uniform(5.0, 40.0)), ground=str(ground))
    return replace(whole, tables={**whole.tables, GivenLoad: (lean,)})


@pytest.mark.parametrize(
    "seed", [0, *(pytest.param(n, marks=pytest.mark.slow) for n in range(1, 10))]
)
def test_designs_at_random_are_in_balance(seed):
    """Ten for each seed; the same each time."""
    rng = np.random.default_rng(seed)
    for _ in range(10):
        balanced(forces_in(drawn_at_random(rng)), one_way=True)


@pytest.mark.parametrize("name", ["arbor", "birdhouse", "signpost", "well"])
def test_a_joint_passes_on_what_acts_in_the_stick_that_it_ends(name):
    """Where a stick's end is all that a joint holds, joint and stick are asked the same.

    The moment across the stick's axis that goes through a joint at its end is the section's there,
    moved by the shear to the joint's face: both from one equilibrium.
    """
    file = next(one for one in EXAMPLES if one.stem == name)
    forces = forces_in(read_text(file.read_text(encoding="utf-8"), str(file)))
    met = 0
    for n, joint in enumerate(forces.joints):
        for k, stick in enumerate(forces.model.sticks):
            if joint.tie.of != stick.body or abs(stick.axes[0] @ joint.tie.axes[2]) < 0.999:
                continue
            points = forces.model.places[k]
            near = stick.at(joint.tie.face.middle)
            if min(abs(near), abs(near - stick.length)) > 0.005:
                continue
            end = 0 if near < stick.length / 2.0 else -1
            if np.abs(stick.at(joint.tie.points) - points[end]).max() > 0.01:
                continue
            through = forces.through(n)
            here = forces.sections[k].force[:, end]
            way = -1.0 if end == 0 else 1.0
            F = -way * here[:, :3] @ stick.axes
            M = -way * here[:, 3:] @ stick.axes
            arm = stick.point(float(points[end])) - joint.tie.face.origin
            M = M + np.cross(arm, F)
            size = np.abs(through).max()
            assert np.abs(through[:, :3] - F).max() <= 1.0e-6 * size
            assert np.abs(through[:, 3:] - M).max() <= 1.0e-6 * size
            met += 1
    assert met > 0


def block_pulled_at_its_top(hold_down):
    block = Part("block", Box(1.0, 1.0, 2.0), mass=1.0e-6)
    rope = GivenLoad("rope", 300.0, (0.0, 0.0, 2.0), (1.0, 0.0, 0.0), "block")
    piece = design(block, wind=0.001)
    return forces_in(replace(piece, tables={**piece.tables, GivenLoad: (rope,)}), hold_down)


def test_a_tied_block_is_drawn_at_its_anchors_alone_as_statics_has_it():
    """A weightless block 1 m wide, pulled level by 300 N at 2 m, on anchors at its corners.

    It presses at its lee corners and draws the two anchors a metre from them: 600 N m over 1 m, so
    300 N each; the ground draws nothing anywhere. The anchors at the pressed corners draw nothing.
    """
    corners = np.array([[x, y] for x in (-0.5, 0.5) for y in (-0.5, 0.5)])
    none = np.empty((0, 3))
    forces = block_pulled_at_its_top(HoldDown(corners, none, (), none, np.zeros(0)))
    k = under(forces, "rope")
    found = forces.model.solved(forces.cases.loads[[k]])
    springs = forces.model.system.springs
    upright = np.abs(springs.along[:, 2]) > 0.5
    pull, at = found.solution.force[0][upright], springs.at[upright]
    anchors, ground = pull[:4], pull[4:]
    assert springs.one_way[upright].tolist() == [False] * 4 + [True] * 4
    assert ground.max() <= 1.0e-6
    assert anchors[at[:4, 0] < 0.0] == pytest.approx([300.0, 300.0], rel=1e-3)
    lee = at[:, 0] > 0.0
    assert pull[lee].sum() == pytest.approx(-600.0, rel=1e-3)


def test_a_guyed_block_is_held_by_the_lines_that_stretch_as_statics_has_it():
    """The same block on four lines at 45 degrees from the middle of its top.

    It turns about its lee edge, 0.5 m off: the line to windward has a lever of (2 + 0.5) cos 45,
    those across 0.5 cos 45, and that to leeward would have to push: slack. Each stretches by its
    lever: 600 N m r/(sum of r2), r2 3.125 + 2 x 0.125.
    """
    ways = np.array([[-1.0, 0.0], [0.0, 1.0], [0.0, -1.0], [1.0, 0.0]])
    along = np.hstack([ways, np.full((4, 1), -1.0)]) * np.sqrt(0.5)
    tops = np.tile([0.0, 0.0, 2.0], (4, 1))
    forces = block_pulled_at_its_top(
        HoldDown(np.empty((0, 2)), tops, (0, 0, 0, 0), along, np.full(4, 100.0))
    )
    found = forces.model.solved(forces.cases.loads[[under(forces, "rope")]])
    springs = forces.model.system.springs
    lines = np.abs(springs.along).max(axis=1) < 0.9
    assert springs.one_way[lines].all()
    levers = np.array([2.5, 0.5, 0.5]) * np.sqrt(0.5)
    drawn = 600.0 * levers / (levers**2).sum()
    pull = -found.solution.force[0][lines]
    assert pull == pytest.approx([*drawn, 0.0], rel=2e-3, abs=1e-9)
    assert found.solution.error.max() < 1e-8


def test_a_slab_on_four_legs_is_looked_at_on_uneven_ground():
    """Each leg on 3e9 Pa/m x 4e-4 m2 of paving; 24 kN amid the slab, 10 mm lower beneath one leg.

    That leg would come down W/k, 20 mm, with nothing beneath it: it bears half of its quarter, and
    so does the one across; the others take the rest. Statics of four springs, one with a gap.
    """
    places = [(x, y, 0.0) for x in (-0.4, 0.4) for y in (-0.4, 0.4)]
    legs = [
        Part(f"leg {k}", Solid(4, 0.02, 0.02, 0.05), Place(at=at), mass=1.0e-6)
        for k, at in enumerate(places)
    ]
    slab = Part("slab", Plate(Rectangle(1.0, 1.0), 0.05), Place(at=(0.0, 0.0, 0.05)), mass=1.0e-6)
    load = GivenLoad("stone", 24000.0, (0.0, 0.0, 0.1), (0.0, 0.0, -1.0), "slab")
    piece = design(*legs, slab, wind=0.001)
    forces = forces_in(replace(piece, tables={**piece.tables, GivenLoad: (load,)}))
    found = forces.enveloped(np.array([under(forces, "stone")])).of("low ground beneath foot 0")
    force = -found.solution.force[0]
    borne = [float(force[foot].sum()) for foot in forces.model.feet]
    assert borne == pytest.approx([3000.0, 9000.0, 9000.0, 3000.0], rel=3e-3)
