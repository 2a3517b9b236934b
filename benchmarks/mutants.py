"""Mutants of the code, drawn by seed: python benchmarks/mutants.py ROOM ... [--count N] [--seed N]

Each mutant is one small change: a comparison turned, plus for minus, a greatest for a least, a
number off, a condition denied, a term left out. ROOM is a folder or file, such as
checks/stability/sliding.py, or ``all``: every room in turn; ``checks`` alone is the files at its
top. The tests that touch its line run, the likeliest first (``benchmarks/touched.py`` finds out
which); it is killed where one of them asserts otherwise. What ends in a mere crash or takes too
long counts neither way, and so does what ``equivalents.csv`` beside this file names: no answer can
differ.
"""

import argparse
import gc
import os
import random
import sys
import time
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).parent))


from killing import PLAIN, House, tried
from mutations import Mutant, mutants
from touched import ROOT, Known, known

ROOMS = (
    *("units", "references", "materials", "design", "loads", "statics", "checks"),
    *("checks/stability", "checks/acting", "checks/stated", "checks/members", "checks/joints"),
    *("checks/anchoring", "checks/seams", "checks/timber", "checks/odds", "checks/sizing"),
    *("checks/verification", "report", "page", "cli"),
)


def judged(room: str, typed: argparse.Namespace, tests: Known, house: House) -> float:
    """Draw, run and print one room; return the share that is killed of those that count."""
    there = mutants(room)
    drawn = list(there)
    random.Random(typed.seed).shuffle(drawn)
    start = time.perf_counter()
    ended: list[tuple[Mutant, str]] = []
    for mutant in drawn[: typed.count]:
        end = tried(mutant, tests, house)
        ended.append((mutant, end))
        if typed.verbose or end.startswith("survives"):
            print(f"  {end}: {mutant}", file=sys.stderr, flush=True)
    killed = sum(end.startswith("killed") for _, end in ended)
    alive = [(mutant, end) for mutant, end in ended if end.startswith("survives")]
    crashed = len(ended) - killed - len(alive)
    share = killed / max(killed + len(alive), 1)
    spent = time.perf_counter() - start
    print(
        f"{room:<20} {killed:4d} of {killed + len(alive):4d} killed, {100 * share:3.0f} %; "
        f"{crashed} crash; seed {typed.seed}, of {len(there)} there are; {spent:.0f} s",
        flush=True,
    )
    for mutant, end in alive:
        print(f"    {end}: {mutant}", flush=True)
    return share


class Draws:
    """A plugin: instead of running the tests that were collected, draws and tries mutants."""

    def __init__(self, typed: argparse.Namespace) -> None:
        self.typed = typed
        self.least = 1.0

    def pytest_runtestloop(self, session: Any) -> bool:
        tests, house = known(), House(session)
        gc.freeze()
        rooms = ROOMS if self.typed.rooms == ["all"] else self.typed.rooms
        self.least = min(judged(room, self.typed, tests, house) for room in rooms)
        return True


def main() -> int:
    """Judge each room; return 1 where fewer than the asked share is killed in one."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("rooms", nargs="+")
    parser.add_argument("--count", type=int, default=20)
    parser.add_argument("--seed", type=int, default=14)
    parser.add_argument("--verbose", action="store_true", help="tell of each what became of it")
    parser.add_argument("--tests", nargs="*", default=["tests"], help="those that may be run")
    parser.add_argument("--least", type=float, default=0.0, help="share that has to be killed")
    typed = parser.parse_args()
    import pytest

    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    os.chdir(ROOT)
    draws = Draws(typed)
    status = pytest.main([*PLAIN, "-s", *typed.tests], plugins=[draws])
    return status or int(draws.least < typed.least)


if __name__ == "__main__":
    sys.exit(main())
