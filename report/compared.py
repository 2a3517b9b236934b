"""A comparison for people and for programs: the books side by side, or two designs."""

import tomllib
from collections.abc import Mapping, Sequence
from math import log
from typing import Any, cast

from ..checks.compared import Compared
from ..design.model import Design
from .amounts import Amounts
from .asked_wind import around
from .faults import clean
from .lines import Line, wrapped

_LEAST_TELLING = 0.02
_ROW = "  {:<22} {:>9} {:>8} {:>6} {:>8} {:>7} {:>7}  {}"


def books(found: Sequence[Compared]) -> list[Line]:
    """Return one piece by each book, and in a line why they differ."""
    first = found[0].examination
    amounts = Amounts(first.design.units == "metric")
    heads = ("by", "wind", "pressure", "coeff", "force", "tips", "slides", "")
    lines = [Line(first.design.name, "title"), Line(_ROW.format(*heads).rstrip(), "title")]
    for one in found:
        lines.append(Line(_row(one.site.method, one, amounts).rstrip()))
    lines.append(Line(""))
    lines += wrapped(why(found, amounts), rest="  ")
    return lines


def books_object(found: Sequence[Compared]) -> dict[str, Any]:
    """Return the comparison of books in SI for programs."""
    design = found[0].examination.design
    amounts = Amounts(design.units == "metric")
    return {
        "format": 1,
        "name": clean(design.name),
        "file": clean(design.file),
        "books": [{"method": one.site.method, **_numbers(one)} for one in found],
        "why": why(found, amounts),
    }


def why(found: Sequence[Compared], amounts: Amounts) -> str:
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


def _demand(one: Compared) -> float:
    return one.force * one.factor


def _mostly(most: Compared, least: Compared) -> str:
    """Return which of pressure, coefficient and factors sets two books apart most, in words."""
    apart = {
        "the pressure, {:,.0f} against {:,.0f} Pa": (most.pressure, least.pressure),
        "the coefficient, {:.2f} against {:.2f}": (most.coefficient, least.coefficient),
        "the factors on load and weight, {:.2f} against {:.2f}": (most.factor, least.factor),
    }
    words = max(apart, key=lambda each: log(apart[each][0] / apart[each][1]))
    return words.format(*apart[words])


def _least_wind(found: Sequence[Compared]) -> str:
    """Name the books whose least wind decides, so that force and pressure tell too little."""
    names = [one.site.method for one in found if one.examination.minimum_governs]
    if not names:
        return ""
    return f"By {' and '.join(names)} the least wind of that book decides a check, not this one."


def _set_by(found: Sequence[Compared], amounts: Amounts) -> str:
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


def designs(one: Compared, other: Compared) -> list[Line]:
    """Return two designs: what changed from the first to the second, and what it did."""
    amounts = Amounts(one.examination.design.units == "metric")
    lines = [Line(f"{_title(one)}  ->  {_title(other)}", "title")]
    changed = changes(one.examination.design, other.examination.design)
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
    limits = [each.examination.limits for each in both]
    pairs = (
        ("weight", *(_weight(each, amounts) for each in both)),
        ("tips at", *(_gust(each.forecast_tipping, amounts) for each in limits)),
        ("slides at", *(_gust(each.forecast_sliding, amounts) for each in limits)),
        ("act at", *(_gust(each.act, amounts) for each in limits)),
        ("force of the wind", *(amounts.force(each.force) for each in both)),
        ("", *(str(each.examination.verdict.word) for each in both)),
    )
    for what, before, after in pairs:
        same = "the same" if before == after else after
        lines.append(Line(f"  {what:<18} {before:<22} {same}".rstrip()))
    return lines


def designs_object(one: Compared, other: Compared) -> dict[str, Any]:
    """Return the comparison of two designs in SI for programs."""
    return {
        "format": 1,
        "designs": [
            {"file": clean(x.examination.design.file), "name": clean(x.examination.design.name)}
            | _numbers(x)
            for x in (one, other)
        ],
        "changed": changes(one.examination.design, other.examination.design),
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


def _row(name: str, one: Compared, amounts: Amounts) -> str:
    limits = one.examination.limits
    return _ROW.format(
        name,
        amounts.gust(one.site.wind, "near"),
        f"{one.pressure:,.0f} Pa",
        f"{one.coefficient:.2f}",
        amounts.force(one.force),
        _gust(limits.forecast_tipping, amounts),
        _gust(limits.forecast_sliding, amounts),
        str(one.examination.verdict.word),
    )


def _numbers(one: Compared) -> dict[str, Any]:
    found = one.examination
    limits = found.limits
    return {
        "wind_m_s": one.site.wind,
        "surroundings": around(one.site),
        "basis": one.site.basis,
        "velocity_pressure_Pa": one.pressure,
        "projected_area_m2": one.area,
        "coefficient": one.coefficient,
        "force_N": one.force,
        "load_over_weight_factor": one.factor,
        "mass_kg": found.structure.mass("typical"),
        "forecast_tipping_gust_m_s": limits.forecast_tipping,
        "forecast_sliding_gust_m_s": limits.forecast_sliding,
        "act_forecast_gust_m_s": limits.act,
        "word": str(one.examination.verdict.word),
    }


def _gust(gust: float | None, amounts: Amounts) -> str:
    return "never" if gust is None else amounts.gust(gust)


def _weight(one: Compared, amounts: Amounts) -> str:
    return amounts.mass(one.examination.structure.mass("typical"))


def _title(one: Compared) -> str:
    return clean(one.examination.design.file or one.examination.design.name)


def _shown(value: Any) -> str:
    return "-" if value is None else clean(str(value))
