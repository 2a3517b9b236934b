"""Measure what a person waits for, as ratios in one run: `python benchmarks/run.py`.

Cold starts are whole processes beside `python -c "import numpy"`, taken in turn so that a busy
machine slows all alike; the median of each is compared. In-process times are per part.
"""

import os
import statistics
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
EXAMPLE = ROOT / "examples" / "light-tower.toml"
ROUNDS = 15
KEPT = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
"""Modules are compiled once, as where a person runs it, and not again at every start."""

COMMANDS = {
    "import numpy": [sys.executable, "-c", "import numpy"],
    "check": [sys.executable, "-m", "yardfast", "check", str(EXAMPLE)],
    "--version": [sys.executable, "-m", "yardfast", "--version"],
    "--help": [sys.executable, "-m", "yardfast", "--help"],
}


def cold() -> dict[str, float]:
    """Median seconds of each command in a process of its own, from outside the clone."""
    times: dict[str, list[float]] = {name: [] for name in COMMANDS}
    for _ in range(ROUNDS):
        for name, command in COMMANDS.items():
            start = time.perf_counter()
            subprocess.run(command, capture_output=True, check=False, cwd=ROOT.parent, env=KEPT)
            times[name].append(time.perf_counter() - start)
    return {name: statistics.median(values) for name, values in times.items()}


def warm() -> dict[str, float]:
    """Median seconds to read and examine an example in this process."""
    from yardfast.checks.examination import examine
    from yardfast.checks.inputs import read

    result = {}
    for file in sorted(EXAMPLE.parent.glob("*.toml")):
        examine(read(file))
        times = []
        for _ in range(5):
            start = time.perf_counter()
            examine(read(file))
            times.append(time.perf_counter() - start)
        result[file.stem] = statistics.median(times)
    return result


SHAPES = {
    "shell": "sides = 8\nbottom = '4 in'\ntop = '3 in'\nheight = '12 in'\nwall = '1/4 in'",
    "solid": "sides = 6\nbottom = '4 in'\ntop = '3 in'\nheight = '12 in'",
    "box": "length = '4 in'\nwidth = '3 in'\nheight = '12 in'",
    "gable": "length = '6 in'\nwidth = '4 in'\nheight = '3 in'",
    "cone": "sides = 8\nbottom = '4 in'\nheight = '5 in'",
    "plate": "sides = 8\nacross = '5 in'\nthickness = '1/2 in'",
    "panel": "width = '6 in'\nheight = '9 in'\nthickness = '1/2 in'",
    "frame": "sides = 8\nacross = '6 in'\nwidth = '1 in'\nheight = '1/2 in'",
    "ball": "across = '4 in'",
    "member": "from = ['0 in', '0 in', '0 in']\nto = ['2 in', '0 in', '12 in']\nacross = '1 in'",
    "cutout": "points = [['0 in', '0 in'], ['4 in', '0 in'], ['2 in', '9 in']]\n"
    "thickness = '1/2 in'",
    "dome": "across = '6 in'\nheight = '2 in'",
    "vault": "length = '6 in'\nwidth = '4 in'\nheight = '4 in'",
    "rotor": "blades = 4\nspan = '4 in'\nroot = '1 in'\ntip = '2 in'\nthickness = '1/8 in'\n"
    "facing = '0 deg'",
}
UP = {"rotor": "6 in"}
"""A wheel stands clear of what it turns on; all else stands on it."""

HEAD = """
[design]
name = 'bench'
units = 'imperial'
[site]
method = 'forecast'
wind = '40 mph'
exposure = 'open'
ground = 'firm lawn'
[[part]]
name = 'foot'
shape = 'plate'
length = '12 ft'
width = '4 ft'
thickness = '1 in'
density = '40 lb/ft^3'
"""


def per_part() -> tuple[dict[str, float], float]:
    """Seconds to read and examine a part of each shape, and of an arbor of 30 parts; medians."""
    from yardfast.checks.examination import examine
    from yardfast.checks.inputs import read_text

    def seconds(text: str) -> float:
        times = []
        for _ in range(4):
            start = time.perf_counter()
            examine(read_text(text))
            times.append(time.perf_counter() - start)
        return statistics.median(times[1:])

    def row(shape: str, count: int) -> str:
        return HEAD + "".join(
            f"[[part]]\nname = '{shape} {k}'\nshape = '{shape}'\non = 'foot'\n"
            f"at = ['{8 * k - 60} in', '0 in', '{UP.get(shape, '0 in')}']\n"
            f"density = '40 lb/ft^3'\n{SHAPES[shape]}\n"
            for k in range(count)
        )

    each = {shape: seconds(row(shape, 12)) / 13 for shape in SHAPES}
    posts = HEAD + "".join(
        f"[[part]]\nname = 'stick {k}'\nshape = 'member'\non = 'foot'\ndensity = '30 lb/ft^3'\n"
        f"from = ['{4 * k - 60} in', '-20 in', '0 in']\n"
        f"to = ['{4 * k - 60} in', '20 in', '60 in']\n"
        "width = '1 1/2 in'\ndepth = '3 1/2 in'\ncut = 'level'\n"
        for k in range(29)
    )
    return each, seconds(posts) / 30


BALLS = """
[[part]]
name = 'post'
shape = 'solid'
sides = 0
bottom = '12 in'
top = '12 in'
height = '48 in'
on = 'foot'
density = '30 lb/ft^3'
[[part]]
name = 'balls'
shape = 'ball'
across = '5 in'
on = 'foot'
at = ['0 in', '0 in', '30 in']
ring = '12 in'
count = 4
density = '30 lb/ft^3'
"""
DOME = """
[[part]]
name = 'house'
shape = 'box'
length = '24 in'
width = '24 in'
height = '24 in'
wall = '3/4 in'
on = 'foot'
material = 'softwood plywood'
[[part]]
name = 'dome'
shape = 'dome'
across = '24 in'
height = '10 in'
wall = '3/4 in'
on = 'house'
material = 'softwood plywood'
[[joint]]
name = 'dome to house'
of = 'dome'
to = 'house'
fastener = '#8 wood screw 2 in'
count = 12
"""


def cut_round() -> dict[str, float]:
    """Median seconds to examine what cuts round parts, and to find what shares space."""
    from yardfast.checks.examination import examine
    from yardfast.checks.inputs import read_text
    from yardfast.design.overlaps import overlaps

    result = {}
    for name, text in (("balls sunk in a post", BALLS), ("dome jointed to a box", DOME)):
        times = []
        for _ in range(3):
            start = time.perf_counter()
            overlaps(examine(read_text(HEAD + text)).structure)
            times.append(time.perf_counter() - start)
        result[name] = statistics.median(times)
    return result


def slats() -> dict[int, float]:
    """Median seconds to judge three joists under so many slats, by their number."""
    from yardfast.checks.examination import examine
    from yardfast.checks.inputs import read_text

    result = {}
    for count in (20, 40, 80):
        text = HEAD
        for k, y in enumerate((-18, 0, 18)):
            text += (
                f"[[part]]\nname = 'posts {k}'\nshape = 'box'\nlength = '4 in'\nwidth = '4 in'\n"
                f"height = '16 in'\non = 'foot'\nat = ['-60 in', '{y} in', '0 in']\ncount = 2\n"
                "step = ['120 in', '0 in', '0 in']\nmaterial = 'southern pine'\n"
                f"[[part]]\nname = 'joist {k}'\nshape = 'member'\non = 'foot'\n"
                f"from = ['-66 in', '{y} in', '18.75 in']\nto = ['66 in', '{y} in', '18.75 in']\n"
                "width = '1 1/2 in'\ndepth = '5 1/2 in'\n"
                "material = 'southern pine'\ngrade = 'no. 2'\n"
            )
        step = 130.0 / count
        text += (
            "[[part]]\nname = 'slats'\nshape = 'member'\non = 'foot'\n"
            "from = ['-64.8 in', '-20 in', '22 in']\nto = ['-64.8 in', '20 in', '22 in']\n"
            f"width = '{0.8 * step:.4f} in'\ndepth = '1 in'\nmaterial = 'southern pine'\n"
            f"count = {count}\nstep = ['{step:.4f} in', '0 in', '0 in']\n"
        )
        times = []
        for _ in range(3):
            start = time.perf_counter()
            examine(read_text(text))
            times.append(time.perf_counter() - start)
        result[count] = statistics.median(times)
    return result


def main() -> None:
    """Print every ratio with the bound that it is held against."""
    found = cold()
    unit = found["import numpy"]
    print(f"import numpy, cold: {unit * 1000:.0f} ms = 1")
    print(f"check, cold         {found['check'] / unit:5.2f}  (at most 4.5)")
    third = found["check"] / 3
    for name in ("--version", "--help"):
        print(f"{name:<19} {found[name] / third:5.2f}  of a third of check (at most 1)")
    examples = warm()
    base = examples["light-tower"]
    print(f"light tower, warm: {base * 1000:.0f} ms = 1")
    for name, seconds in examples.items():
        print(f"{name:<19} {seconds / base:5.2f}")
    each, arbor = per_part()
    cheapest = min(each.values())
    print(f"cheapest shape, warm: {cheapest * 1000:.1f} ms a part = 1 (at most 3)")
    for name, seconds in each.items():
        print(f"{name:<19} {seconds / cheapest:5.2f}")
    tower = base / 8
    print(f"30 sticks, a part   {arbor / tower:5.2f}  of the light tower's (at most 2)")
    for name, seconds in cut_round().items():
        print(f"{name:<21} {seconds / base:5.2f}  of the light tower (at most 5)")
    decks = slats()
    for few, many in ((20, 40), (40, 80)):
        ratio = decks[many] / decks[few]
        print(
            f"{many} slats for {few:<9} {ratio:5.2f}  (at most 3: no more than a little over even)"
        )


if __name__ == "__main__":
    main()
