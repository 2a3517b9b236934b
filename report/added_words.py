"""Added weight in words: what a piece owes to it, and when to act where it is missing."""

from ..checks.examination import Examination
from ..checks.surroundings import act_by_exposure
from .amounts import Amounts
from .remark import joined


def added_said(examination: Examination, amounts: Amounts) -> str:
    """Return how much was added and where: ``180 lb fixed low on it``; empty where nothing was."""
    added = examination.added
    if added is None:
        return ""
    where = joined(_where(*place) for place in added.places)
    return f"{amounts.mass(added.mass)} {where}"


def only_with(examination: Examination, amounts: Amounts) -> str | None:
    """Return that the gusts to act at need its added weight, and those without it.

    In the order in which people are told of surroundings; None where they are the same without.
    """
    bare = examination.without_added
    if bare is None:
        return None
    without, its_own = (
        [_gust(act, amounts) for act in act_by_exposure(each).values()]
        for each in (bare, examination)
    )
    if without == its_own:
        return None
    said = joined(without) if len(set(without)) > 1 else without[0]
    return f"Only with {added_said(examination, amounts)}. Without it: {said}."


def without_short(examination: Examination, amounts: Amounts) -> tuple[str, ...]:
    """Return the same for a listing, the fullest first: ``25 mph without its 180 lb ballast``."""
    bare, added = examination.without_added, examination.added
    if bare is None or added is None:
        return ()
    without, its_own = (_gust(each.limits.act, amounts) for each in (bare, examination))
    if without == its_own:
        return ()
    weight = amounts.mass(added.mass)
    return f"{without} without its {weight} ballast", f"{without} without ballast"


def _gust(act: float | None, amounts: Amounts) -> str:
    if act is None:
        return f"over {amounts.gust(150.0)}"
    return "any wind" if amounts.whole_act(act) <= 0 else amounts.act(act)


def _where(how: str, part: str, fill: str) -> str:
    match how:
        case "fill":
            return f"of {fill} in its {part}"
        case "inside":
            return f"inside its {part}"
        case "on":
            return f"fixed on its {part}"
        case _:
            return "fixed low on it"
