"""Loads that a design names, in words: which part takes each, and what was not checked of it."""

from collections.abc import Iterator

from ..checks.borne import Borne
from ..checks.examination import Examination
from ..checks.timber.books import book_of
from ..checks.timber.en1995.stuff import NORMAL, WIND, k_mod
from ..checks.timber.nds.adjustments import load_duration, time_effect
from ..loads.combinations import EN1995, FACTORED, resistance_basis
from ..statics.fit import FIT
from .amounts import Amounts
from .remark import joined

_Ways = dict[tuple[tuple[str, ...], tuple[str, ...]], list[str]]
"""By parts whose strength was not judged and parts that hang: the loads that go through them."""

_NAMED = 6
_NAMED_BRIEFLY = 3


def load_assumptions(examination: Examination) -> Iterator[str]:
    """Return on which part each named load was taken to act, and how long it lasts."""
    amounts = Amounts(examination.design.units == "metric")
    for one in examination.loads:
        name, off = one.load.name, ""
        if one.off > FIT:
            off = f", {amounts.length(one.off)} from it"
        if one.load.on is None:
            yield (
                f"'{name}' is taken to act on {one.part}, the nearest part{off}: write  on = '..'  "
                "with the part's name if it acts on another."
            )
        elif off:
            yield (
                f"'{name}' acts on {one.part}{off}: 'at' is measured from the middle of the design."
            )
    judged = examination.joints or any(one.loads for one in examination.members.judged)
    if examination.loads and judged:
        yield (
            f"On joints and strength {_acting(examination)}. Without wind wood holds that as what "
            f"lasts ten years in all: {_lasting(examination)}; in wind as it holds wind, each less "
            "than alone, since both seldom come at their worst together."
        )


def loads_unchecked(examination: Examination) -> str | None:
    """Return what named loads ask of that was not checked: strength on their way to the ground."""
    ways: _Ways = {}
    for one in examination.loads:
        weak, hung = _unjudged(examination, one), _hung(examination, one)
        if weak or hung:
            ways.setdefault((weak, hung), []).append(f"'{one.load.name}'")
    if not ways:
        return None
    full = [_sentence(weak, hung, joined(loads)) for (weak, hung), loads in ways.items()]
    return " ".join(full)


def _sentence(weak: tuple[str, ...], hung: tuple[str, ...], loads: str) -> str:
    of = [f"the strength of {_few(weak)}"] if weak else []
    of += [f"the hooks of {_few(hung)}"] if hung else []
    return f"What {loads} {'ask' if ' and ' in loads else 'asks'} of {joined(of)} was not checked."


def _acting(examination: Examination) -> str:
    if len(examination.loads) > 1:
        return "each named load acts by itself, and all of them together"
    return "the named load acts by itself"


def _few(names: tuple[str, ...]) -> str:
    return joined(names) if len(names) <= _NAMED else f"{len(names)} parts"


def _unjudged(examination: Examination, one: Borne) -> tuple[str, ...]:
    """Return the parts that carry a load and whose strength was not judged under it."""
    judged = {m.name for m in examination.members.judged if one.load.name in m.loads}
    points = {p.name for p in examination.design.parts if p.shape.is_point}
    return tuple(name for name in one.path if name not in judged | points)


def _hung(examination: Examination, one: Borne) -> tuple[str, ...]:
    hung = {part.name for part in examination.design.parts if part.hangs_at is not None}
    return tuple(name for name in one.path if name in hung)


def _lasting(examination: Examination) -> str:
    basis = resistance_basis(examination.site)
    if book_of(basis).name == EN1995:
        live, wind = (k_mod("solid", load, False) for load in (NORMAL, WIND))
        return f"k_mod {live:.2f} in place of the {wind:.2f} of wind (EN 1995-1-1 Table 3.1)"
    if basis == FACTORED:
        live, wind = time_effect("normal"), time_effect("wind")
        return f"lambda {live:.1f} in place of the {wind:.1f} of wind (NDS 2018 Table N3)"
    live, wind = load_duration("normal"), load_duration("wind or earthquake")
    return f"C_D {live:.1f} in place of the {wind:.1f} of wind (NDS 2018 Table 2.3.2)"
