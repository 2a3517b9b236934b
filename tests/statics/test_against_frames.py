"""Frames of beams drawn at random, against an independent library of frames (PyNite)."""

import warnings

import numpy as np
import pytest
from frames import Frame

from yardfast.statics.solution import solve

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    pynite = pytest.importorskip("Pynite")

E, G = 9.0e9, 6.0e8
WAYS = ("FX", "FY", "FZ", "MX", "MY", "MZ")
MOVES = ("DX", "DY", "DZ", "RX", "RY", "RZ")

SLOW = pytest.mark.slow


def drawn(rng):
    """Nodes, beams between them with their sections, and what is held and loaded."""
    count = int(rng.integers(3, 8))
    nodes = rng.uniform(-2.0, 2.0, (count, 3))
    pairs = {(k, k + 1) for k in range(count - 1)}
    for _ in range(int(rng.integers(0, count))):
        a, b = sorted(rng.choice(count, 2, replace=False).tolist())
        pairs.add((a, b))
    beams = [(a, b, *rng.uniform(0.04, 0.14, 2)) for a, b in sorted(pairs)]
    held = rng.choice(count, int(rng.integers(1, 3)), replace=False).tolist()
    return nodes, beams, {n: 10.0 ** rng.uniform(6.0, 8.0) for n in held}


def by_pynite(nodes, beams, held, forces, offs, along):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        model = pynite.FEModel3D()
        model.add_material("wood", E, G, 0.3, 0.0)
        for n, at in enumerate(nodes):
            model.add_node(f"N{n}", *at)
        for n, k in held.items():
            for move in MOVES:
                # as ``Frame.fixed`` holds a node: three springs each way, and pairs a metre off
                model.def_support_spring(f"N{n}", move, (3.0 if move[0] == "D" else 2.0) * k)
        for m, (a, b, y, z) in enumerate(beams):
            area, Iy, Iz, J = y * z, y * z**3 / 12.0, z * y**3 / 12.0, 0.2 * (y * z) ** 2
            model.add_section(f"S{m}", area, Iy, Iz, J)
            model.add_member(f"M{m}", f"N{a}", f"N{b}", "wood", f"S{m}")
            for k, way in enumerate(("Fx", "Fy", "Fz")):
                model.add_member_dist_load(f"M{m}", way, along[m, 0, k], along[m, 1, k])
        for n, (force, off) in enumerate(zip(forces, offs, strict=True)):
            for way, value in zip(WAYS, [*force, *np.cross(off, force)], strict=True):
                model.add_node_load(f"N{n}", way, value)
        model.analyze_linear(check_stability=False)
        moves = [
            [getattr(model.nodes[f"N{n}"], move)["Combo 1"] for move in MOVES]
            for n in range(len(nodes))
        ]
        turns = [model.members[f"M{m}"].T()[:3, :3] for m in range(len(beams))]
        ends = [np.asarray(model.members[f"M{m}"].f("Combo 1")).ravel() for m in range(len(beams))]
    return np.array(moves, float), np.array(turns, float), np.array(ends, float)


@pytest.mark.parametrize("seed", [0, *(pytest.param(n, marks=SLOW) for n in range(1, 20))])
def test_motions_and_end_forces_are_those_of_an_independent_library(seed):
    """Ten frames for each seed, 200 in all: loads at nodes and off them, and along beams."""
    rng = np.random.default_rng(seed)
    for _ in range(10):
        nodes, beams, held = drawn(rng)
        forces, offs = rng.normal(0.0, 200.0, nodes.shape), rng.uniform(-0.2, 0.2, nodes.shape)
        along = np.zeros((len(beams), 2, 4))
        along[:, :, :3] = rng.normal(0.0, 50.0, (len(beams), 2, 3))
        moves, turns, ends = by_pynite(nodes, beams, held, forces, offs, along)
        frame = Frame()
        for at in nodes:
            frame.node(tuple(at))
        for m, (a, b, y, z) in enumerate(beams):
            bends = (E * z * y**3 / 12.0, E * y * z**3 / 12.0)
            frame.beam(a, b, E * y * z, bends, G * 0.2 * (y * z) ** 2, turns[m, 1], along[m])
        for n, k in held.items():
            frame.fixed(n, nodes[n], k=k)
        case = {n: (forces[n], nodes[n] + offs[n]) for n in range(len(nodes))}
        found = solve(frame.system, *frame.loads([case]))
        mine = found.motion[0].reshape(-1, 6)
        assert np.abs(mine - moves).max() <= 1.0e-6 * np.abs(moves).max()
        assert np.abs(found.ends[0] - ends).max() <= 1.0e-6 * np.abs(ends).max()
        assert found.error.max() < 1.0e-8
