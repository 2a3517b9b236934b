"""Many designs at a glance: a row each, the one to act on first at the top."""

from collections.abc import Sequence
from math import inf

from ..checks.examination import Examination
from .amounts import Amounts
from .cautions import cautions
from .joint_words import uncovered
from .lines import WIDTH, Line, listed, wrapped
from .not_checked import not_checked

_NAME = 18
_ROW = "{:<18} {:>8} {:>8} {:>6} {:>6} {:>7} {:>10}  {}"


def summary(examinations: Sequence[Examination]) -> list[Line]:
    """Return the table of several designs, the lowest gust to act at first."""
    metric = [examination.design.units == "metric" for examination in examinations]
    found = [
        Line(
            _ROW.format(
                "name", "weight", "act at", "tips", "slides", "push", "each", "not"
            ).rstrip(),
            "title",
        ),
        Line(_ROW.format("", "", "", "at", "at", "", "anchor", "checked"), "title"),
    ]
    for examination in sorted(examinations, key=_act):
        found += _row(examination, Amounts(examination.design.units == "metric"))
    found.append(Line(""))
    found += wrapped(
        "Tie a piece down or lay it down when a gust over its 'act at' is forecast. "
        f"Gusts in {_unit(metric)}.",
        rest="  ",
    )
    unchecked = [_alike(remark.short) for e in examinations for remark in not_checked(e)]
    found += listed("Not checked", unchecked, "No promise for any whole piece.")
    care = dict.fromkeys(remark.short for e in examinations for remark in cautions(e))
    found += listed("Take care", care, "One in full: yardfast check FILE")
    return found


def _unit(metric: Sequence[bool]) -> str:
    if all(metric):
        return "km/h"
    return "mph or km/h, as each file says" if any(metric) else "mph"


def _alike(unchecked: str) -> str:
    """Return what was not checked in words that hold for several designs."""
    if unchecked.endswith(" fastened"):
        return "how their parts are fastened"
    if unchecked.startswith("strength of"):
        return "strength of what they are made of"
    return unchecked


def _act(examination: Examination) -> float:
    act = examination.limits.act
    return inf if act is None else act


def _row(examination: Examination, amounts: Amounts) -> list[Line]:
    limits, stakes = examination.limits, examination.remedies.stakes
    beyond = f">{amounts.bare_gust(150.0)}"

    def gust(value: float | None) -> str:
        return beyond if value is None else amounts.bare_gust(value)

    name = examination.design.name
    if examination.posts is not None:
        each = "deeper" if examination.needs_anchors else "posts"
    elif not examination.needs_anchors:
        each = "needs none"
    else:
        each = amounts.pull(stakes.pull if stakes.pull > 0.0 else stakes.sideways)
    act = beyond if limits.act is None else amounts.act(limits.act)
    push = amounts.force(limits.push, "down").replace("less than ", "<")
    text = _ROW.format(
        name if len(name) <= _NAME else name[: _NAME - 3] + "...",
        amounts.mass(examination.structure.mass("typical")),
        act,
        gust(limits.forecast_tipping),
        gust(limits.forecast_sliding),
        push,
        each,
        _unchecked(examination),
    )
    return [Line(text[:WIDTH].rstrip(), "plain" if examination.passes else "bad")]


def _unchecked(examination: Examination) -> str:
    if examination.joints and not uncovered(examination):
        return "wood"
    return "joints" if len(examination.design.parts) > 1 else "wood"
