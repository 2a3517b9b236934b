"""Checks by name alone, for words that are chosen by kind and subject."""

from yardfast.checks.judged.judging import Check, Kind, check_demand
from yardfast.units.frozen import replace


def bare_check(name: str, demand: float = 0.0) -> Check:
    """Return a check as a program names it, ``joint: a to b``, of a demand in N against 1 N."""
    kind, _, subject = name.partition(": ")
    return replace(check_demand(Kind(kind), demand, 1.0, "N", ""), subject=subject)
