"""The numbers by which things that hold a piece down are judged: strengths, factors, spacings."""

from functools import cache

from .. import references, units
from ..units.frozen import ByValue


class Rule(ByValue, frozen=True):
    """One number in SI, and on whose word."""

    value: float
    source: str
    confidence: str
    note: str = ""


@cache
def rule(group: str, name: str) -> Rule:
    """Return a rule of a group such as ``"stake"``. KeyError where there is none."""
    for row in references.table("ground/holding_rules").where("group", group):
        if row["rule"] == name:
            value = float(row["value"]) * units.factor(row["unit"])
            return Rule(value, row["source"], row["confidence"], row["note"])
    raise KeyError(f"there is no rule {name!r} for {group!r}")


def value(group: str, name: str) -> float:
    """Return the number of a rule in SI. KeyError where there is none."""
    return rule(group, name).value
