"""A comparison for people and for programs: the books side by side, or two designs."""

import tomllib
from collections.abc import Mapping, Sequence
from math import isfinite, log
from typing import Any, cast

from ...checks.stated.compared import Comparison
from ...design.model import Design
from ..wording.amounts import Amounts
from ..wording.asked_wind import around
from ..wording.faults import clean
from ..wording.lines import Line, wrapped

_LEAST_TELLING = 0.02
_MOST_TOLD = 99.0
_ROW = "  {:<11} {:<11} {:>7} {:>7} {:>5} {:>6} {:>7} {:>7} {:>5}  {}"


def books(found: Sequence[Comparison]) -> list[Line]:
    """Return one piece by each book, and in a line why they differ."""
    first = found[0]
    amounts = Amounts(first.design.units == "metric")
    heads = ("by", "wood by", "wind", "press.", "coeff", "force", "tips", "slides", "used", "")
    lines = [Line(first.design.name, "title"), Line(_ROW.format(*heads).rstrip(), "title")]
    for one in found:
        lines.append(Line(_row(one.site.method, one, amounts).rstrip()))
    lines.append(Line(""))
    lines += wrapped(_why_they_differ(found, amounts), rest="  ")
    wood = of_wood(found)
    return [*lines, *wrapped(wood, rest="  ")] if wood else lines


def books_object(found: Sequence[Comparison]) -> dict[str, Any]:
    """Return the comparison of books in SI for programs."""
    design = found[0].design
    amounts = Amounts(design.units == "metric")
    return {
        "format": 1,
        "name": clean(design.name),
        "file": clean(design.file),
        "books": [{"method": one.site.method, **_numbers(one)} for one in found],
        "why": _why_they_differ(found, amounts),
        "wood": of_wood(found),
    }


def _why_they_differ(found: Sequence[Comparison], amounts: Amounts) -> str:
    """Return in a line why the books differ: what sets them apart most, how the wind was set."""
    if len(found) == 1:
        return (
            "Only its own book can be asked: neither a gust at the piece nor the speed of a map is "
            "turned into another book's."
        )
    most, least = (pick(found, key=_demand) for pick in (max, min))
    if _demand(most) <= _demand(least) * (1.0 + _LEAST_TELLING):
        said = "All of them ask the same, within a fiftieth."
    else:
        said = (
            f"{most.site.method} asks {_demand(most) / _demand(least):.1f} times what "
            f"{least.site.method} asks against tipping, mostly by {_mostly(most, least)}."
        )
    return " ".join(part for part in (said, _least_wind(found), _set_by(found, amounts)) if part)


def of_wood(found: Sequence[Comparison]) -> str:
    """Return how two books of timber judge the joint that differs most; empty where it is one."""
    own = found[0]
    other = next((one for one in found if one.timber != own.timber), None)
    if other is None or not own.joints:
        return ""
    books = (
        f"By {other.site.method} wood and fasteners are judged by {other.timber}, else by "
        f"{own.timber}"
    )
    gives = [(one.timber, one.gives_way) for one in (other, own) if one.gives_way]
    if gives:
        told = ", ".join(f"by {book} it comes loose at {clean(parts)}" for book, parts in gives)
        said = f"{books}: {told}, so that what the joints are asked cannot be compared."
    else:
        said = f"{books}: {_most_apart(own, other)}."
    reasons = [_END_GRAIN] * own.end_grain + [_THICK] * own.thick
    return " ".join((said, *reasons))


def _most_apart(own: Comparison, other: Comparison) -> str:
    """Return how two books judge a joint: of those that one alone passes the most used.

    Where there is none, the joint on which they differ most.
    """
    apart = {
        name: abs(log(use) - log(other.joints[name]))
        for name, use in own.joints.items()
        if use > 0.0 and other.joints.get(name, 0.0) > 0.0 and use != other.joints[name]
    }
    if not apart:
        return "of its joints they say the same"
    worst = {name: max(own.joints[name], other.joints[name]) for name in apart}
    one_alone = [name for name in apart if (own.joints[name] <= 1.0) != (other.joints[name] <= 1.0)]
    name = max(one_alone or apart, key=(worst if one_alone else apart).__getitem__)
    return (
        f"joint {clean(name)} {_held(other.joints[name])} by {other.timber}, "
        f"{_held(own.joints[name])} by {own.timber}, wind and all"
    )


_THICK = (
    "Bolts and lag screws that may dry in their wood keep 0.4 of their hold by NDS, where "
    "EN 1995-1-1 knows no such loss and takes less of a row along the grain instead."
)

_END_GRAIN = (
    "Fasteners in end grain hold no pull by EN 1995-1-1, where NDS leaves lag screws three "
    "quarters of it."
)


def _held(share: float) -> str:
    return (
        f"uses {share:.2f} of what it holds" if isfinite(share) else "holds nothing that is asked"
    )


def _used(share: float | None) -> str:
    if share is None:
        return "-"
    return f"{share:.2f}" if share < _MOST_TOLD else "over"


def _demand(one: Comparison) -> float:
    return one.force * one.factor


def _mostly(most: Comparison, least: Comparison) -> str:
    """Return which of pressure, coefficient and factors sets two books apart most, in words."""
    apart = {
        "the pressure, {:,.0f} against {:,.0f} Pa": (most.pressure, least.pressure),
        "the coefficient, {:.2f} against {:.2f}": (most.coefficient, least.coefficient),
        "the factors on load and weight, {:.2f} against {:.2f}": (most.factor, least.factor),
    }
    words = max(apart, key=lambda each: log(apart[each][0] / apart[each][1]))
    return words.format(*apart[words])


def _least_wind(found: Sequence[Comparison]) -> str:
    """Name the books whose least wind decides, so that force and pressure tell too little."""
    names = [one.site.method for one in found if one.least_wind]
    if not names:
        return ""
    return f"By {' and '.join(names)} the least wind of that book decides a check, not this one."


def _set_by(found: Sequence[Comparison], amounts: Amounts) -> str:
    own = found[0].site
    if own.method != "forecast":
        return ""
    set_ = [
        f"{one.site.method} {amounts.gust(one.site.wind, 'near')}"
        for one in found[1:]
        if one.site.method != "gust"
    ]
    return (
        f"The forecast gust of {amounts.gust(own.wind, 'near')}, 10 m up over open country, sets "
        f"each book's speed by its own profile ({', '.join(set_)}); their maps state rarer winds."
    )


def designs(one: Comparison, other: Comparison) -> list[Line]:
    """Return two designs: what changed from the first to the second, and what it did."""
    amounts = Amounts(one.design.units == "metric")
    lines = [Line(f"{_title(one)}  ->  {_title(other)}", "title")]
    changed = changes(one.design, other.design)
    if not changed:
        lines.append(Line("Nothing changed in what is built, held or asked."))
    for change in changed:
        what = f"{change['table']} {change['name']}".strip()
        before, after = change["before"], change["after"]
        lines += wrapped(
            f"{what}, {change['key']}: {_shown(before)} -> {_shown(after)}", "  ", "    "
        )
    lines.append(Line(""))
    both = (one, other)
    limits = [each.limits for each in both]
    pairs = (
        ("weight", *(amounts.mass(each.mass) for each in both)),
        ("tips at", *(_gust(each.forecast_tipping, amounts) for each in limits)),
        ("slides at", *(_gust(each.forecast_sliding, amounts) for each in limits)),
        ("act at", *(_gust(each.act, amounts) for each in limits)),
        ("force of the wind", *(amounts.force(each.force) for each in both)),
        ("", *(str(each.word) for each in both)),
    )
    for what, before, after in pairs:
        same = "the same" if before == after else after
        lines.append(Line(f"  {what:<18} {before:<22} {same}".rstrip()))
    return lines


def designs_object(one: Comparison, other: Comparison) -> dict[str, Any]:
    """Return the comparison of two designs in SI for programs."""
    return {
        "format": 1,
        "designs": [
            {"file": clean(x.design.file), "name": clean(x.design.name)} | _numbers(x)
            for x in (one, other)
        ],
        "changed": changes(one.design, other.design),
    }


def changes(one: Design, other: Design) -> list[dict[str, Any]]:
    """Return each key that differs between two files: table, name, key, before and after.

    Rows of a table are told by their names, else by their order; None where there is none.
    """
    before, after = _keys(one), _keys(other)
    return [
        {"table": table, "name": name, "key": key, "before": before.get(at), "after": after.get(at)}
        for at in dict.fromkeys((*before, *after))
        for table, name, key in [at]
        if before.get(at) != after.get(at)
    ]


def _keys(design: Design) -> dict[tuple[str, str, str], Any]:
    try:
        data = tomllib.loads(design.text)
    except ValueError:
        return {}
    found: dict[tuple[str, str, str], Any] = {}
    for table, content in data.items():
        many = isinstance(content, list)
        rows = cast("list[Mapping[str, Any]]", content if many else [content])
        for i, row in enumerate(rows):
            name = str(row.get("name", i + 1)) if many else ""
            found.update({(table, clean(name), clean(key)): row[key] for key in row})
    return found


def _row(name: str, one: Comparison, amounts: Amounts) -> str:
    limits = one.limits
    return _ROW.format(
        name,
        one.timber,
        amounts.gust(one.site.wind, "near"),
        f"{one.pressure:,.0f} Pa",
        f"{one.coefficient:.2f}",
        amounts.force(one.force),
        _gust(limits.forecast_tipping, amounts),
        _gust(limits.forecast_sliding, amounts),
        _used(one.most_used),
        str(one.word),
    )


def _numbers(one: Comparison) -> dict[str, Any]:
    limits = one.limits
    return {
        "wind_m_s": one.site.wind,
        "surroundings": around(one.site),
        "basis": one.site.basis,
        "velocity_pressure_Pa": one.pressure,
        "projected_area_m2": one.area,
        "coefficient": one.coefficient,
        "force_N": one.force,
        "load_over_weight_factor": one.factor,
        "mass_kg": one.mass,
        "timber": one.timber,
        "most_used": one.most_used if one.most_used and isfinite(one.most_used) else None,
        "joints": {clean(name): use if isfinite(use) else None for name, use in one.joints.items()},
        "forecast_tipping_gust_m_s": limits.forecast_tipping,
        "forecast_sliding_gust_m_s": limits.forecast_sliding,
        "act_forecast_gust_m_s": limits.act,
        "word": str(one.word),
    }


def _gust(gust: float | None, amounts: Amounts) -> str:
    return "never" if gust is None else amounts.gust(gust)


def _title(one: Comparison) -> str:
    return clean(one.design.file or one.design.name)


def _shown(value: Any) -> str:
    return "-" if value is None else clean(str(value))
