"""Designs through Dask on a local cluster, a worker killed in the middle.

    python benchmarks/cluster.py [COUNT] [--workers N] [--blocks]

Each design is another light tower, or another mounting block, which takes a tenth of the time.
Prints how many came back, whether each came once, and whether what came is what one process alone
gives.
"""

import argparse
import os
import re
import signal
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

import yardfast as yf

TOWER = (Path(yf.__file__).parent / "examples" / "light-tower.toml").read_text(encoding="utf-8")


BLOCK = """\
[design]
name  = 'Mounting block'
units = 'imperial'
[site]
method   = 'forecast'
wind     = '58 mph'
exposure = 'open'
ground   = 'paving'
[[part]]
name     = 'block'
shape    = 'solid'
sides    = 4
bottom   = '14 in'
top      = '12 in'
height   = '48 in'
material = 'white oak'
"""


def designs(folder: Path, count: int, *, blocks: bool = False) -> list[str]:
    """Write so many designs, no two alike, and return their files."""
    files: list[str] = []
    named = re.compile(r"(?m)^(name  = '[^']*)'")
    for k in range(count):
        file = folder / f"{k:05}.toml"
        text = named.sub(rf"\1 {k}'", BLOCK if blocks else TOWER, count=1)
        file.write_text(text.replace("'48 in'", f"'{40.0 + k % 97 / 8.0} in'"), encoding="utf-8")
        files.append(str(file))
    return files


def through_dask(files: list[str], workers: int) -> list[tuple[str, yf.Result | yf.DesignError]]:
    """Check designs on a cluster of this machine; when a fifth is done a worker is killed."""
    from distributed import Client, LocalCluster

    found: list[tuple[str, yf.Result | yf.DesignError]] = []
    with (
        LocalCluster(n_workers=workers, threads_per_worker=1, dashboard_address=None) as cluster,
        Client(cluster) as client,
    ):
        for path, one in yf.check_many(files, client.get_executor()):
            found.append((str(path), one))
            if len(found) == max(len(files) // 5, 1):
                victim = next(iter(client.run(os.getpid).values()))
                os.kill(victim, signal.SIGKILL)
                print(f"worker {victim} killed after {len(found)} designs", flush=True)
    return found


def main() -> int:
    """Run it; return 1 where something is lost, came twice or differs."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("count", nargs="?", type=int, default=10_000)
    parser.add_argument("--workers", type=int, default=os.cpu_count())
    parser.add_argument("--blocks", action="store_true", help="mounting blocks, not light towers")
    typed = parser.parse_args()
    os.environ["OPENBLAS_NUM_THREADS"] = "1"
    with tempfile.TemporaryDirectory() as folder:
        files = designs(Path(folder), typed.count, blocks=typed.blocks)
        start = time.perf_counter()
        found = through_dask(files, typed.workers)
        spent = time.perf_counter() - start
        times = Counter(path for path, _ in found)
        lost = sum(file not in times for file in files)
        twice = sum(count > 1 for count in times.values())
        tried = dict(found[:: max(len(found) // 10, 1)])
        alone = dict(yf.check_many(tried))
        differ = sum(tried[path].to_dict() != alone[path].to_dict() for path in tried)
    print(f"{typed.count} designs, {spent:.0f} s: {lost} lost, {twice} came twice")
    print(f"{len(tried)} of them checked again in one process: {differ} differ")
    return int(bool(lost or twice or differ))


if __name__ == "__main__":
    sys.exit(main())
