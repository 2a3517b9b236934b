"""Where the marks of a scale stand: at round numbers that a ruler or a dial has."""

from collections.abc import Sequence
from math import ceil, floor, log10

INCHES = (1.0, 2.0, 3.0, 6.0, 12.0, 24.0, 48.0, 96.0)
"""Steps of a tape in inches."""


def ticks(low: float, high: float, most: int, steps: Sequence[float] = ()) -> list[float]:
    """Return round numbers from ``low`` to ``high``, at most so many; by ``steps`` where given."""
    span = max(high - low, 1.0e-9)
    if not steps:
        least = 10.0 ** floor(log10(span / most))
        steps = [least * factor for factor in (1.0, 2.0, 5.0, 10.0, 20.0, 50.0)]
    step = next((s for s in steps if _count(low, high, s) <= most), steps[-1])
    return [step * i for i in range(ceil(low / step - 1e-9), floor(high / step + 1e-9) + 1)]


def _count(low: float, high: float, step: float) -> int:
    return floor(high / step + 1e-9) - ceil(low / step - 1e-9) + 1
