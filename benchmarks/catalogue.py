"""A catalogue of designs by ``yardfast check FOLDER``: time a design, how it grows, memory, size.

    python benchmarks/catalogue.py [--most N] [--towers] [-j N]

Bars: 25 ms a design on two cores, time that grows with the number of designs to the power of 1.00
within 0.05, memory that grows by no more than a tenth, and 50 kB a result sent between processes.
"""

import argparse
import os
import pickle
import resource
import subprocess
import sys
import tempfile
import time
from math import log
from pathlib import Path

from cluster import designs

import yardfast as yf

FEWEST, STEPS = 250, 4


def run(folder: Path, jobs: int) -> tuple[float, float]:
    """Return the seconds of one whole run, and the most memory of any of its processes in MiB."""
    start = time.perf_counter()
    command = [sys.executable, "-m", "yardfast", "check", str(folder), "--format", "json"]
    with subprocess.Popen(
        [*command, "-j", str(jobs)], stdout=subprocess.DEVNULL, env={**os.environ, "NO_COLOR": "1"}
    ) as ran:
        _, _, used = os.wait4(ran.pid, 0)
        ran.returncode = 0
    return time.perf_counter() - start, used.ru_maxrss / 1024.0


def main() -> None:
    """Print a row for each size of the catalogue, and what these come to."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--most", type=int, default=FEWEST * 2 ** (STEPS - 1))
    parser.add_argument("--towers", action="store_true", help="light towers, not mounting blocks")
    parser.add_argument("-j", "--jobs", type=int, default=os.cpu_count() or 1)
    typed = parser.parse_args()
    os.environ["OPENBLAS_NUM_THREADS"] = "1"
    sizes = sorted({max(typed.most // 2**k, 1) for k in range(STEPS)})
    rows: list[tuple[int, float, float]] = []
    print(f"{'designs':>8}{'seconds':>10}{'ms a design':>13}{'MiB':>8}")
    for size in sizes:
        with tempfile.TemporaryDirectory() as folder:
            designs(Path(folder), size, blocks=not typed.towers)
            seconds, memory = run(Path(folder), typed.jobs)
        rows.append((size, seconds, memory))
        each = 1000.0 * seconds / size
        print(f"{size:>8}{seconds:>10.1f}{each:>13.1f}{memory:>8.0f}", flush=True)
    (few, first, less), (many, last, more) = rows[0], rows[-1]
    steady = 1000.0 * (last - first) / max(many - few, 1)
    print(f"{steady:.1f} ms a design beyond the first {few}, with {typed.jobs} processes")
    if many > few:
        print(
            f"time grows as n^{log(last / first) / log(many / few):.3f}, memory x{more / less:.3f}"
        )
    sent = max(len(pickle.dumps(yf.check(path))) for path in _examples())
    print(f"the largest result of the examples, sent between processes: {sent / 1000.0:.1f} kB")
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024.0
    print(f"most memory of any process: {peak:.0f} MiB")


def _examples() -> list[Path]:
    return sorted((Path(yf.__file__).parent / "examples").glob("*.toml"))[:4]


if __name__ == "__main__":
    main()
