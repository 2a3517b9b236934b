"""One check beside what its geometry alone costs by libraries: python benchmarks/yardstick.py

The yardstick is the volume and centre of every body by trimesh and 72 silhouettes by shapely, the
union of every face as seen, of meshes made beforehand. A check is a changed file's text to its
JSON; each time another size, so that nothing kept counts. Printed are ratios of medians, taken in
turn in one process so that a busy machine slows both.
"""

import json
import statistics
import sys
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np
import shapely
import trimesh

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "tests"))

from support import meshes as solids  # noqa: E402

from yardfast.checks.examination import examine  # noqa: E402
from yardfast.checks.inputs import read_text  # noqa: E402
from yardfast.design.model import Design  # noqa: E402
from yardfast.design.placing import place_parts  # noqa: E402
from yardfast.design.shapes.weight import Weight  # noqa: E402
from yardfast.report.data.result import Result  # noqa: E402

DIRECTIONS = 72
ROUND = 24
"""Sides that a round body has, as coarse as its outline still looks round."""
ROUNDS = 7


def meshes_of(design: Design) -> list[trimesh.Trimesh]:
    """Each body of a design as triangles; a weight has no shape."""
    solids.ROUND = solids.FINE = ROUND
    found = []
    for body in place_parts(design):
        if isinstance(body.shape, Weight):
            continue
        raw = solids.placed(body).to_mesh()
        found.append(trimesh.Trimesh(raw.vert_properties[:, :3], raw.tri_verts, process=False))
    return found


def geometry(meshes: list[trimesh.Trimesh]) -> float:
    """Volumes and centres by trimesh, silhouettes from all sides by shapely, worked out anew."""
    total = 0.0
    for mesh in meshes:
        mesh._cache.clear()
        total += mesh.volume + float(mesh.center_mass[2])
    for azimuth in np.linspace(0.0, 2 * np.pi, DIRECTIONS, endpoint=False):
        aside = np.array([-np.sin(azimuth), np.cos(azimuth)])
        seen = [
            np.stack([mesh.vertices[:, :2] @ aside, mesh.vertices[:, 2]], axis=1) for mesh in meshes
        ]
        outlines = shapely.convex_hull([shapely.MultiPoint(points) for points in seen])
        total += shapely.union_all(outlines).area
    return total


def changed(text: str, k: int) -> str:
    """Return a design's text turned by so many tenths of a degree: no number stays as it was."""
    return text.replace("[design]\n", f"[design]\nturn = '{k / 10} deg'\n", 1)


def seconds(work: Callable[[int], object]) -> float:
    """Return the median of what a piece of work takes, each time of another design."""
    times = []
    for k in range(ROUNDS):
        start = time.perf_counter()
        work(k)
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def main() -> None:
    """Print both of every example, and the ratio of a check, and of it with its JSON."""
    print(f"{'':18}{'yardstick':>10}{'check':>8}{'JSON too':>9}   (aim: 1.5 light tower, 8 others)")
    for file in sorted((ROOT / "examples").glob("*.toml")):
        text = file.read_text(encoding="utf-8")
        meshes = [meshes_of(read_text(changed(text, k), str(file))) for k in range(ROUNDS)]
        geometry(meshes[0])
        unit = seconds(lambda k: geometry(meshes[k]))  # noqa: B023 - asked at once
        examine(read_text(text, str(file)))
        check = seconds(lambda k: examine(read_text(changed(text, k), str(file))))  # noqa: B023
        whole = seconds(
            lambda k: json.dumps(Result(examine(read_text(changed(text, k), str(file)))).to_dict())  # noqa: B023
        )
        print(f"{file.stem:18}{unit * 1e3:7.0f} ms{check / unit:8.1f}{whole / unit:9.1f}")


if __name__ == "__main__":
    main()
