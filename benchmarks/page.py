"""Measure how soon the page answers a moved tape, beside one check: `python benchmarks/page.py`.

Each size is new, and both are taken in turn, so that a busy machine slows them alike. The first
answer has drawing, gusts, numbers and all fields; the whole one the verdict and its words besides.
"""

import gc
import statistics
import time
from collections.abc import Callable
from pathlib import Path

from threadpoolctl import threadpool_limits

from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.cli import OBJECTS_BETWEEN_SEARCHES
from yardfast.design.reader.scan import Spot
from yardfast.page.answers import RecentTexts
from yardfast.page.edited import with_value

EXAMPLES = Path(__file__).resolve().parent.parent / "examples"
ROUNDS = 15
MOVED = {"light-tower": Spot("part", 0, "across"), "seat-box": Spot("part", 0, "height")}


def main() -> None:
    """Print the median times and their ratios, as the command sets up the server's process."""
    gc.set_threshold(OBJECTS_BETWEEN_SEARCHES)
    with threadpool_limits(1):
        _print()


def _print() -> None:
    for name, spot in MOVED.items():
        times = measured(EXAMPLES / f"{name}.toml", spot)
        check, first, rest = (1000.0 * statistics.median(each) for each in times)
        print(
            f"{name}: a check with its verdict {check:.0f} ms; first answer {first:.0f} ms "
            f"({first / check:.2f}); the rest {rest:.0f} ms ({rest / check:.2f})"
        )


def measured(file: Path, spot: Spot) -> tuple[list[float], list[float], list[float]]:
    """Return the seconds of each check, first answer and rest, for sizes that are all new."""
    saved, answers = file.read_text(encoding="utf-8"), RecentTexts()
    name = str(file)
    answers.answer(saved, name, saved)
    asked: tuple[Callable[[str], object], ...] = (
        lambda text: examine(read_text(text, name)).verdict,
        lambda text: answers.first(text, name, saved),
        lambda text: answers.rest(text, name, saved),
    )
    times: tuple[list[float], list[float], list[float]] = ([], [], [])
    for k in range(ROUNDS):
        text = with_value(saved, spot, [f"{24.1 + 0.1 * k:.1f} in"])
        for ask, taken in zip(asked, times, strict=True):
            start = time.perf_counter()
            ask(text)
            taken.append(time.perf_counter() - start)
    return times


if __name__ == "__main__":
    main()
