"""How near surfaces have to lie to meet: one tolerance for all that asks what touches what."""

from ... import references
from ...units import factor


def _rule(rule: str) -> float:
    row = references.table("fit").one("rule", rule)
    return float(row["value"]) * (factor(row["unit"]) if row["unit"] else 1.0)


FIT = _rule("fit")
"""Surfaces that lie so near (m), or nearer, meet; what overlaps does so too. Source: fit.csv."""

CARRIED_ACROSS = _rule("carried across")
"""So far (m) below or above a part lies what carries it, with a note to look again."""

HEAD_REACH = _rule("beside an anchor")
"""So far (m) off the wood stands the face of what is driven beside it, and still holds it."""

ANCHOR_LEFT = _rule("left of an anchor")
"""So high (m) above the ground an anchor still holds what it stands against."""

OUT_OF_PROPORTION = _rule("out of proportion")
"""Sizes beside each other that differ by more are looked at again."""

SAME_SPACE = _rule("same space")
"""Of a part so great a share or more within another is looked at again."""

LIES_DEEP, IN_BULK = _rule("ballast lies deep"), _rule("ballast in bulk")
"""Ballast that would lie so deep (m), of so many kg/m3 as it is laid, is looked at again."""

DENSEST = _rule("heaviest")
"""What weighs more (kg/m3) is looked at again."""

ON_END = _rule("on end")
"""What is so much higher than wide and alone stands on the ground is looked at again."""
