"""The steps in which things are built, and the search for the step at which a check turns."""

from collections.abc import Callable
from math import ceil, floor

from ...units import INCH, KMH, MPH, POUND, POUND_FORCE
from ...units.frozen import ByValue

_ROUNDING = 1.0e-9


class Steps(ByValue, frozen=True):
    """What a builder measures in, in SI: m of width and height, kg, m/s of wind, N of pull."""

    width: float
    mass: float
    height: float
    wind: float
    pull: float


IMPERIAL = Steps(0.5 * INCH, 5.0 * POUND, INCH, MPH, 5.0 * POUND_FORCE)
METRIC = Steps(0.010, 2.0, 0.010, KMH, 20.0)


def steps_of(units: str) -> Steps:
    """Return the steps of a design's units."""
    return METRIC if units == "metric" else IMPERIAL


def up(value: float, step: float) -> int:
    """Return how many steps reach a value."""
    return ceil(value / step * (1.0 - _ROUNDING) - _ROUNDING)


def down(value: float, step: float) -> int:
    """Return how many whole steps a value holds."""
    return floor(value / step * (1.0 + _ROUNDING) + _ROUNDING)


def least(passes: Callable[[int], bool], low: int, high: int, guess: int) -> int | None:
    """Return the least whole number in low..high that passes, None where none was found.

    All above one that passes are taken to pass. The search strides away from ``guess`` until the
    answer is between two numbers that were tried, then halves: what is returned passed, and the
    number below it (unless that is below ``low``) failed.
    """
    if low > high:
        return None
    at = min(max(guess, low), high)
    stride = 1
    if passes(at):
        fails = low - 1
        while at > low:
            lower = max(low, at - stride)
            if not passes(lower):
                fails = lower
                break
            at, stride = lower, 3 * stride
    else:
        fails = at
        while True:
            if fails == high:
                return None
            at = min(high, fails + stride)
            if passes(at):
                break
            fails, stride = at, 3 * stride
    while at - fails > 1:
        middle = (at + fails) // 2
        at, fails = (middle, fails) if passes(middle) else (at, middle)
    return at


def greatest(passes: Callable[[int], bool], low: int, high: int, guess: int) -> int | None:
    """Return the greatest whole number in low..high that passes, as ``least`` does the least."""
    found = least(lambda k: passes(-k), -high, -low, -guess)
    return None if found is None else -found
