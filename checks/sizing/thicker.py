"""A part that is not strong enough, of the next thicker stuff with which it was found to hold."""

import re
from collections.abc import Callable, Sequence
from fractions import Fraction
from math import sqrt

from ...design.faults import DesignError
from ...design.reader.scan import Spot
from ...design.reader.typed_text import quoted
from ...materials.stock import lumber_sizes, sheet_thicknesses
from ...units import INCH, UnitError, plain, to_si
from ...units.frozen import ByValue
from ..examination import Examination, examine_in
from ..inputs import read_text, scanned
from ..judged.judging import Check
from ..members.member_check import MemberStrength
from ..situation import situation_of
from .remedy import failing

_MOST = 4
"""So many sizes are tried before none is told."""

_THIN = 6.0e-3
"""In m: thinner stuff comes in steps of 1/16 in or 0.5 mm, other of 1/8 in or 3 mm: judgement."""

_UTMOST = 4.0
"""Nobody builds of stuff so many times as thick: another design is meant."""

_LUMBER = re.compile(r"(\d+x\d+)(.*)")


class Thicker(ByValue, frozen=True):
    """The key of a part that says how thick it is, and the value with which it was found to hold.

    The part's other checks, and all of the piece that passed, pass with it as well. The value is
    None where none that was tried does.
    """

    part: str
    key: str
    value: str | None


def thicker(found: Examination, check: Check) -> Thicker | None:
    """Return what would make a part strong enough; None where the file says no thickness.

    It is worked out once, by writing it into the file's text and examining that.
    """
    if check.subject not in found.thickened:
        found.thickened[check.subject] = _thicker(found, check)
    return found.thickened[check.subject]


def _thicker(found: Examination, check: Check) -> Thicker | None:
    design = found.design
    number = next((k for k, p in enumerate(design.parts) if p.name == check.subject), None)
    if number is None or not design.text or check.utilization is None:
        return None
    look = scanned(design.text)
    for key, sizes in _SIZES.items():
        spot = Spot("part", number, key)
        if spot not in look.values:
            continue
        begin, end = look.values[spot]
        offered = sizes(look.seen[begin:end].strip("'\""), design.units == "metric")
        names = {one.name for one in found.checks if one.passes} | {check.name}

        def does(value: str, at: tuple[int, int] = (begin, end)) -> bool:
            text = look.seen[: at[0]] + quoted(value) + look.seen[at[1] :]
            return _does(text, design.file, check.name, frozenset(names))  # noqa: B023 - asked here

        value = _least(offered, sqrt(check.utilization), does)
        return Thicker(check.subject, key, value)
    return None


def _does(text: str, file: str, name: str, names: frozenset[str]) -> bool:
    """Return whether the checks of these names pass of a design; ``name`` is asked first.

    What wind presses by itself is judged by itself, at a small part of the whole's cost.
    """
    try:
        at = situation_of(read_text(text, file))
        alone = [one.check for one in at.plates if isinstance(one, MemberStrength)]
        if any(check.name == name and not check.passes for check in alone):
            return False
        return not failing(examine_in(at, at.design), names)
    except DesignError:
        return False


def _least(
    offered: Sequence[tuple[str, float]], times: float, does: Callable[[str], bool]
) -> str | None:
    """Return the thinnest of values that does, each so many times as thick as now.

    Strength in bending goes with the square: the first tried is the one by that rule.
    """
    near = [k for k, (_, thick) in enumerate(offered) if thick >= times]
    for k in range(near[0], min(near[0] + _MOST - 1, len(offered))) if near else ():
        if does(offered[k][0]):
            thinner = k > 0 and k == near[0] and does(offered[k - 1][0])
            return offered[k - 1 if thinner else k][0]
    return None


def _sheets(now: str, metric: bool) -> list[tuple[str, float]]:
    """Return thicker sheets of the same sort, and how many times as thick."""
    sheets = sheet_thicknesses()
    if now not in sheets:
        return _thicknesses(now, metric)
    sort, own = now.partition(" ")[2], sheets[now]
    times = {name: t / own for name, t in sheets.items() if name.partition(" ")[2] == sort}
    return sorted(((n, t) for n, t in times.items() if t > 1.0), key=lambda each: each[1])


def _lumber(now: str, metric: bool) -> list[tuple[str, float]]:
    """Return larger lumber that lies alike, and its section over the present one's, as a root."""
    match, sizes = _LUMBER.fullmatch(now), lumber_sizes()
    if metric or match is None or match[1] not in sizes:
        return []
    own = sizes[match[1]]
    larger = {
        f"{name}{match[2] if thin != wide else ''}": sqrt(thin * wide / (own[0] * own[1]))
        for name, (thin, wide) in sizes.items()
        if thin >= own[0] and wide >= own[1] and (thin, wide) != own
    }
    return sorted(larger.items(), key=lambda each: each[1])


def _thicknesses(now: str, metric: bool) -> list[tuple[str, float]]:
    """Return greater thicknesses by the steps of stuff as sold, and how many times as thick."""
    try:
        own = to_si(now, "length")
    except UnitError:
        return []
    sixteenth = 1.0e-3 / 2 if metric else INCH / 16
    few = 6 if metric else 2
    step = sixteenth * (1 if own < _THIN else few)
    steps = range(int(own / step + 1.0e-6) + 1, int(_UTMOST * own / step) + 1)
    return [(_written(k * step, metric), k * step / own) for k in steps]


def _written(thick: float, metric: bool) -> str:
    """Return a thickness in m as on a tape: ``1 1/8 in``, ``21 mm``."""
    if metric:
        return f"{plain(thick / 1.0e-3, 6)} mm"
    whole, rest = divmod(Fraction(round(thick / INCH * 16), 16), 1)
    return " ".join(str(each) for each in (whole, rest) if each) + " in"


_SIZES: dict[str, Callable[[str, bool], list[tuple[str, float]]]] = {
    "stock": _sheets,
    "lumber": _lumber,
    "wall": _thicknesses,
    "thickness": _thicknesses,
}
