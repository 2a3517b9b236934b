"""Size is the inverse of check, over random designs: python benchmarks/inverse.py [count]

Each remedy of each random piece is checked forward, read from nothing but its changed design; one
build step less (more wind, more height) has to fail. Prints how many were tried and what did not.
"""

import sys
from collections import Counter
from concurrent.futures import ProcessPoolExecutor

import numpy as np

from yardfast.checks.anchoring.anchor_choice import PLAINEST, suited, with_anchors
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.checks.sizing.remedy import checks_needed, checks_pass
from yardfast.checks.sizing.sizing_case import Case
from yardfast.checks.sizing.ways import remedy_of
from yardfast.design.faults import DesignError
from yardfast.units.frozen import replace

GROUNDS = ("paving", "gravel", "sand", "firm lawn", "wet lawn", "firm clay lawn")


def piece(seed: int) -> str:
    """Return a random tower or post as a design file."""
    draw = np.random.default_rng(seed)
    units = ("imperial", "metric")[int(draw.integers(2))]
    sides = int(draw.choice([0, 4, 5, 6, 8]))
    foot, body = draw.uniform(0.35, 0.9), draw.uniform(0.15, 0.34)
    height, wind = draw.uniform(0.4, 2.0), draw.uniform(12.0, 32.0)
    solid = draw.random() < 0.3
    top = body * draw.uniform(0.4, 1.0)
    rest = "" if solid else "wall = '18 mm'\n"
    kind = "solid" if solid else "shell"
    return (
        f"[design]\nname = 'piece {seed}'\nunits = '{units}'\n"
        f"[site]\nmethod = 'forecast'\nexposure = 'open'\nwind = '{wind:.2f} m/s'\n"
        f"ground = '{draw.choice(GROUNDS)}'\n"
        f"[[part]]\nname = 'foot'\nshape = 'plate'\nsides = {sides}\nacross = '{foot:.4f} m'\n"
        "thickness = '40 mm'\nmaterial = 'southern pine, treated'\n"
        f"[[part]]\nname = 'body'\nshape = '{kind}'\non = 'foot'\n"
        f"sides = {sides}\nbottom = '{body:.4f} m'\ntop = '{top:.4f} m'\n"
        f"height = '{height:.4f} m'\n"
        f"material = 'softwood plywood'\n{rest}"
    )


def tried(seed: int) -> Counter[str]:
    """Return what came of every remedy of one piece."""
    found: Counter[str] = Counter()
    design = read_text(piece(seed))
    before = examine(design)
    names = checks_needed(before)
    for kind in ("base width", "ballast", "anchors", "guys", "height", "wind"):
        _, remedy = remedy_of(design, kind)
        if remedy.design is None or remedy.design is design:
            found[f"{kind}: none"] += 1
            continue
        found[f"{kind}: found"] += 1
        if not checks_pass(_examined(remedy.design), names):
            found[f"{kind}: DOES NOT HOLD"] += 1
        if kind in ("anchors", "guys"):
            if kind == "anchors":
                found["anchors: a plainer one holds"] += _plainer_holds(design, remedy.anchors.row)
            continue
        case = Case(design, before)
        steps = round(remedy.value / case.step(kind))
        beyond = steps + (1 if kind in ("height", "wind") else -1)
        if beyond > 0 and checks_pass(_examined(case.changed(kind, beyond)), names):
            found[f"{kind}: A STEP LESS HOLDS"] += 1
    return found


def _examined(design):
    try:
        return examine(design) if design is not None else None
    except DesignError:
        return None


def _plainer_holds(design, row) -> int:
    order = suited(examine(design).site.ground, design.units == "metric", PLAINEST)
    for kind in order[: order.index(row.kind)]:
        one = examine(with_anchors(design, replace(row, kind=kind)))
        if all(check.passes for check in one.checks if check.name != "bearing") and all(
            check.passes for check in one.checks
        ):
            return 1
    return 0


def main() -> None:
    """Try them, side by side."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    total: Counter[str] = Counter()
    with ProcessPoolExecutor() as pool:
        for found in pool.map(tried, range(count), chunksize=8):
            total += found
    print(f"{count} random pieces")
    for name, number in sorted(total.items()):
        print(f"  {name:<32} {number:6d}")


if __name__ == "__main__":
    main()
