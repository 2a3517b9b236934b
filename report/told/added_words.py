"""Added weight in words: what a piece owes to it, and when to act where it is missing."""

from ...checks.examination import Examination
from ...checks.stated.surroundings import act_by_exposure
from ..messages import page_messages as messages
from ..wording.amounts import Amounts
from ..wording.gusts_to_act import act_rows, act_said
from ..wording.remark import joined


def added_said(examination: Examination, amounts: Amounts) -> str:
    """Return how much was added and where: ``180 lb fixed low on it``; empty where nothing was."""
    added = examination.added
    if added is None:
        return ""
    where = joined(_where(*place) for place in added.places)
    return f"{amounts.mass(added.mass)} {where}"


def only_with(examination: Examination, amounts: Amounts) -> str | None:
    """Return that the gusts to act at need its added weight, and those without it.

    None where they are the same without.
    """
    bare = examination.without_added
    if bare is None:
        return None
    without, its_own = (act_rows(act_by_exposure(each), amounts) for each in (bare, examination))
    if without == its_own:
        return None
    gusts = joined(f"{gust} ({where})" if where else gust for gust, where in without)
    added = added_said(examination, amounts)
    return messages.ONLY_WITH.format(added=added, gusts=gusts or messages.ANY)


def without_short(examination: Examination, amounts: Amounts) -> tuple[str, ...]:
    """Return the same for a listing, the fullest first: ``25 mph without its 180 lb ballast``."""
    bare, added = examination.without_added, examination.added
    if bare is None or added is None:
        return ()
    without, its_own = (act_said(each.limits.act, amounts) for each in (bare, examination))
    if without == its_own:
        return ()
    weight = amounts.mass(added.mass)
    return f"{without} without its {weight} ballast", f"{without} without ballast"


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
