"""What odds cost: a million pieces more, in bare products of (10^6, 6) by (6, 432) and their least.

python benchmarks/odds.py [DESIGN ...]
"""

import resource
import sys
from pathlib import Path
from time import perf_counter

import numpy as np

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read
from yardfast.checks.odds import odds as room

FEW, MANY = 1_000, 1_000_000
EXAMPLES = Path(__file__).parent.parent / "examples"


def product() -> float:
    """Return the seconds of the bare product, the better of three."""
    drawn = np.random.default_rng(1)
    left, right = drawn.random((MANY, 6)), drawn.random((6, 432))
    times: list[float] = []
    for _ in range(3):
        start = perf_counter()
        (left @ right).min(axis=1)
        times.append(perf_counter() - start)
    return min(times)


def main() -> None:
    """Print each design's cost beyond a thousand pieces, and the memory of the whole."""
    files = sys.argv[1:] or sorted(str(path) for path in EXAMPLES.glob("*.toml"))
    print(f"{'design':<22}{'1,000 s':>9}{'million s':>11}{'products':>10}")
    for file in files:
        pieces = room.Pieces.of(examine(read(file)))
        room.count_odds(pieces, FEW, 1, 10)
        start = perf_counter()
        room.count_odds(pieces, FEW, 1, 10)
        few = perf_counter() - start
        start = perf_counter()
        room.count_odds(pieces, FEW + MANY, 1, 10)
        more = perf_counter() - start - few
        print(f"{Path(file).stem:<22}{few:>9.3f}{more:>11.2f}{more / product():>10.2f}")
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    print(f"most memory of this process, the product's own 3.3 GiB with it: {peak:,.0f} MiB")


if __name__ == "__main__":
    main()
