"""Added weight in words: what a piece owes to it, and when to act where it is missing."""

from collections.abc import Mapping

from ...checks.anchoring.added_weight import Added
from ..messages import page_messages as messages
from ..wording.amounts import Amounts
from ..wording.gusts_to_act import act_rows
from ..wording.remark import joined


def added_said(added: Added | None, amounts: Amounts) -> str:
    """Return how much was added and where: ``180 lb fixed low on it``; empty where nothing was."""
    if added is None:
        return ""
    where = joined(_where(*place) for place in added.places)
    return f"{amounts.mass(added.mass)} {where}"


def only_with(
    added: Added | None,
    acts: Mapping[str, float | None],
    without: Mapping[str, float | None],
    amounts: Amounts,
) -> str:
    """Return that the gusts to act at need what was added, and those ``without`` it, by exposure.

    Empty where they are the same without.
    """
    bare = act_rows(without, amounts)
    if added is None or bare == act_rows(acts, amounts):
        return ""
    gusts = joined(f"{gust} ({where})" if where else gust for gust, where in bare)
    said = added_said(added, amounts)
    return messages.ONLY_WITH.format(added=said, gusts=gusts or messages.ANY)


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
