"""Compare random designs with meshes of manifold3d: `python benchmarks/deviations.py [HOW MANY]`.

Each design is one shape of random sizes, leaning, turned, mirrored and copied at random. Printed is
the largest deviation of each shape: volume and outline area as a fraction, centre over its extent.
"""

import random
import sys
from collections import defaultdict
from pathlib import Path

import numpy as np
import shapely

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests" / "support"))

from meshes import filled, placed, projected, volume_and_centre  # noqa: E402 - needs the path

from yardfast.design.model import Design, Part, Place  # noqa: E402
from yardfast.design.outlines import outlines  # noqa: E402
from yardfast.design.placing import place_parts  # noqa: E402
from yardfast.design.shapes.ball import Ball  # noqa: E402
from yardfast.design.shapes.bodies import Shell, Solid  # noqa: E402
from yardfast.design.shapes.boxes import Box  # noqa: E402
from yardfast.design.shapes.cone import Cone  # noqa: E402
from yardfast.design.shapes.cutout import Cutout  # noqa: E402
from yardfast.design.shapes.flat import Frame, Panel, Plate  # noqa: E402
from yardfast.design.shapes.gables import Gable  # noqa: E402
from yardfast.design.shapes.member import Member  # noqa: E402
from yardfast.design.shapes.plans import Rectangle, Regular  # noqa: E402
from yardfast.design.shapes.roofs import Dome, Vault  # noqa: E402


def shapes(draw: random.Random):
    """One of each shape with random sizes in m."""
    a, b, h = (draw.uniform(0.1, 0.8) for _ in range(3))
    sides, t = draw.choice([0, 3, 4, 5, 6, 8, 12]), 0.08 * min(a, b, h)
    bird = ((0, 0), (a, 0), (0.7 * a, h / 2), (a, h), (0.3 * a, 0.8 * h), (-0.2 * a, h / 3))
    yield "shell", Shell(sides, a, b, h, t)
    yield "solid", Solid(sides, a, b, h)
    yield "cone", Cone(sides, a, h, t)
    yield "box", Box(a, b, h, t, frozenset(draw.sample(["top", "front", "left"], 2)))
    yield "tapered box", Box(a, b, h, t, frozenset(), 0.6 * a, 0.5 * b)
    yield "gable", Gable(a, b, h, t)
    yield "gambrel", Gable(a, b, h, t, 0.7 * b, 0.6 * h)
    yield "plate", Plate(Regular(sides, a), t, 0.4 * a)
    yield "panel", Panel(a, h, t)
    yield "frame", Frame(Rectangle(a, b), 2 * t, t)
    yield "ball", Ball(a, t)
    yield "dome", Dome(a, 0.3 * a, t)
    yield "vault", Vault(a, b, 0.5 * b + h, t)
    yield "member", Member((0, 0, 0.1), (a, b, 0.1 + h), t, 2 * t, cut="level")
    yield "round member", Member((0, 0, 0.1), (a, b, 0.1 + h), across=2 * t, wall=0.3 * t)
    yield "cut-out", Cutout(bird, t)


def main() -> None:
    """Print the table."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    draw, worst, designs = random.Random(20), defaultdict(lambda: np.zeros(3)), 0
    while designs < count:
        for name, shape in shapes(draw):
            place = Place(
                at=(draw.uniform(-1, 1), draw.uniform(-1, 1), draw.uniform(0, 1)),
                turn=draw.uniform(0, 6.3),
                tilt=draw.choice([0.0, draw.uniform(-0.7, 0.7)]),
                mirror=frozenset(draw.sample(["x", "y"], draw.randint(0, 1))),
            )
            design = Design(
                "random", "metric", (Part(name, shape, place),), turn=draw.uniform(0, 6)
            )
            azimuth = draw.uniform(0, 6.28)
            for body in place_parts(design):
                worst[name] = np.maximum(worst[name], _deviation(body, azimuth))
            designs += 1
    print(f"{designs} random designs; largest deviation from the mesh")
    print(f"{'shape':<14}{'volume':>10}{'centre':>10}{'outline':>10}")
    for name, (volume, centre, outline) in worst.items():
        print(f"{name:<14}{volume:>10.1e}{centre:>10.1e}{outline:>10.1e}")


def _deviation(body, azimuth):
    mesh = placed(body)
    volume, centre = volume_and_centre(mesh)
    volume = abs(volume)
    moments = body.shape.moments()
    low, high = body.extent
    ours = outlines([body], np.array([azimuth]))[0, 0].area
    seen = projected(placed(body, filled), azimuth)
    theirs = shapely.union_all([shapely.Polygon(p.exterior) for p in shapely.get_parts(seen)]).area
    away = body.place(moments.first / moments.volume) - centre
    return np.array(
        [
            abs(moments.volume / volume - 1.0),
            np.abs(away).max() / (high - low).max(),
            abs(ours / theirs - 1.0),
        ]
    )


if __name__ == "__main__":
    main()
