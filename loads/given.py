"""Loads that a design names: their size, where they act and which way they push."""

from dataclasses import dataclass


@dataclass(frozen=True)
class GivenLoad:
    """A named load: ``force`` in N at a point (3,) in m along a unit vector (3,), design's axes."""

    name: str
    force: float
    at: tuple[float, float, float]
    direction: tuple[float, float, float]
