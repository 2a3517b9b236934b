"""The forecast gusts to act at by what lies around a piece: equal ones merged, lowest first."""

from collections.abc import Mapping

from ...checks.limits import GREATEST_GUST
from ..messages import page_messages as messages
from .amounts import Amounts
from .remark import joined


def act_said(act: float | None, amounts: Amounts) -> str:
    """Return a gust to act at in m/s as people read it; None is above 150 m/s."""
    if act is None:
        return messages.OVER_ALL.format(most=amounts.gust(GREATEST_GUST))
    return amounts.act(act) if amounts.whole_act(act) > 0 else messages.ANY


def bare_act(act: float | None, amounts: Amounts) -> str:
    """Return the same without its unit, for a table."""
    if act is None:
        return messages.NONE
    return f"{amounts.whole_act(act):,}" if amounts.whole_act(act) > 0 else messages.ANY_BARE


def act_rows(acts: Mapping[str, float | None], amounts: Amounts) -> list[tuple[str, str]]:
    """Return each gust, by exposure in m/s, with where it counts; without, where there is one.

    Empty where any wind is too much everywhere.
    """
    places: dict[tuple[float, str], list[str]] = {}
    for letter, act in acts.items():
        at = GREATEST_GUST / amounts.speed if act is None else float(amounts.whole_act(act))
        places.setdefault((at, act_said(act, amounts)), []).append(messages.EXPOSURE_WORDS[letter])
    rows = [(said, joined(where)) for (_, said), where in sorted(places.items())]
    if len(rows) == 1:
        return [] if rows[0][0] == messages.ANY else [(rows[0][0], "")]
    return rows
