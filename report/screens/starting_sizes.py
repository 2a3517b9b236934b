"""How a kind of piece goes with the width of its foot, before there is a design."""

from collections.abc import Mapping, Sequence
from typing import Any

from ...checks.holder import would_hold
from ...checks.limits import Limits
from ...checks.sizing.size_curves import CurvePoint
from ...checks.sizing.ways import StartingSizes
from ...checks.sizing.why_none import why_none
from ..advice.what_to_do import not_looked_at_row
from ..told.sizing_words import limit_gusts, over, past_which_it_slides, why_no_remedy
from ..wording.amounts import Amounts
from ..wording.as_read import shape_words
from ..wording.asked_wind import asked_wind, to_spare
from ..wording.lines import Line, listed, wrapped
from ..wording.remark import counted
from .sizing_object import SIZING_FORMAT, point_object

_ROW = "  {:<13} {:>7} {:>7} {:>7} {:>7}  {:>14}"


def starting_lines(
    kind: str, taken: Mapping[str, str], sizes: StartingSizes, typed: Sequence[tuple[str, str]]
) -> list[Line]:
    """Return the table of base widths for people, 80 columns wide; ``typed`` to be typed again."""
    found = sizes.found
    amounts = Amounts(found.design.units == "metric")
    height = amounts.length(found.structure.height)
    foot, low = amounts.length(sizes.curve[0].value), sizes.weighted
    wind = f"{asked_wind(found.site, amounts)}, {to_spare(found.site, planted=False)}"
    if not low.feasible or low.value is None or low.found is None:
        no = why_no_remedy(why_none(found, low), amounts)
        weighted = f"Weight low in the {foot} foot does not hold it in {wind}: {no}."
    else:
        weighted = _weighted(low.value, low.found.limits, foot, wind, amounts)
    found_ = [
        Line(f"A {kind}, {shape_words(found.design)}, {height} tall over all", "title"),
        *listed("Taken", [f"{name} {text}" for name, text in taken.items()]),
        Line(""),
        Line(_ROW.format("foot", "weight", "tips", "slides", "act at", "pushed over by")),
        *(Line(_row(point, amounts)) for point in sizes.curve),
        Line(f"  Forecast gusts in {amounts.speed_unit}, untied; {over(amounts)}"),
        Line(""),
        *wrapped(past_which_it_slides(sizes.slides_first, sizes.curve, amounts)),
        *wrapped(weighted),
        *_anchored(sizes, amounts),
        Line(""),
    ]
    again = "; ".join(f"{name} {text}" for name, text in typed)
    return [
        *found_,
        *listed("Not checked", [not_looked_at_row(found.verdict).text]),
        *wrapped(f"Answer it with what you typed here: {again}.", rest="  "),
        Line(f"Next: yardfast new {kind}"),
    ]


def starting_object(kind: str, taken: Mapping[str, str], sizes: StartingSizes) -> Mapping[str, Any]:
    """Return the table of base widths as a JSON object."""
    weighted, amounts = sizes.weighted, Amounts(sizes.found.design.units == "metric")
    return {
        "format": SIZING_FORMAT,
        "kind": kind,
        "taken": dict(taken),
        "height_m": sizes.found.structure.height,
        "curve": [point_object(point) for point in sizes.curve],
        "slides_first_width_m": sizes.slides_first,
        "ballast": {
            "value": weighted.value,
            "unit": weighted.unit,
            "feasible": weighted.feasible,
            "reason": why_no_remedy(why_none(sizes.found, weighted), amounts) or None,
        },
    }


def _row(point: CurvePoint, amounts: Amounts) -> str:
    return _ROW.format(
        amounts.length(point.value),
        amounts.mass(point.mass),
        *limit_gusts(point.limits, amounts),
        amounts.force(max(point.limits.push, 0.0), "down"),
    )


def _weighted(weight: float, limits: Limits, foot: str, wind: str, amounts: Amounts) -> str:
    """Return what weight (kg) low in a foot would do: the limits with it, in a wind."""
    if not weight:
        return f"On the {foot} foot it stands in {wind}, without weight."
    tips, slides, act = limit_gusts(limits, amounts)
    return (
        f"With {amounts.mass_needed(weight)} low in the {foot} foot it stands in {wind}: tips at "
        f"{tips}, slides at {slides}, act at {act} {amounts.speed_unit}."
    )


def _anchored(sizes: StartingSizes, amounts: Amounts) -> list[Line]:
    """Return what anchors would let it stand in, and how hard each would be pulled."""
    found = sizes.found
    if not found.needs_anchors:
        return []
    stakes, kind = found.remedies.stakes, would_hold(found)
    pulls = ((stakes.pull, "up"), (stakes.sideways, "sideways"))
    each = " and ".join(f"{amounts.pull(pull)} {way}" for pull, way in pulls if pull > 1.0)
    if not each:
        return []
    foot = amounts.length(sizes.curve[0].value)
    number = counted(len(stakes.points), kind)
    if found.anchors is None:
        return wrapped(
            f"On the {foot} foot none of the anchors known here is enough: each would be pulled "
            f"{each}."
        )
    return wrapped(
        f"Or anchored: {number} on the {foot} foot let it stand so, if each holds {each}."
    )
