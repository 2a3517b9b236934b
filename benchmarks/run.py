"""Measure what a person waits for, as ratios in one run: `python benchmarks/run.py`.

Cold starts are whole processes beside `python -c "import numpy"`, taken in turn so that a busy
machine slows all alike; the median of each is compared. In-process times are per part.
"""

import statistics
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
EXAMPLE = ROOT / "examples" / "light-tower.toml"
ROUNDS = 15

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
            subprocess.run(command, capture_output=True, check=False, cwd=ROOT.parent)
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


if __name__ == "__main__":
    main()
