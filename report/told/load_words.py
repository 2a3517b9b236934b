"""Loads that a design names, in words: which part takes each, and what was not checked of it."""

from ...checks.acting.borne import Borne
from ...checks.examination import Examination
from ..wording.remark import joined

_Ways = dict[tuple[tuple[str, ...], tuple[str, ...]], list[str]]
"""By parts whose strength was not judged and parts that hang: the loads that go through them."""

_NAMED = 6


def loads_unchecked(examination: Examination) -> str | None:
    """Return what named loads ask of that was not checked: strength on their way to the ground."""
    ways: _Ways = {}
    for one in examination.loads:
        weak, hung = _unjudged(examination, one), _hung(examination, one)
        if weak or hung:
            ways.setdefault((weak, hung), []).append(f"'{one.load.name}'")
    if not ways:
        return None
    full = [_sentence(weak, hung, loads) for (weak, hung), loads in ways.items()]
    return " ".join(full)


def _sentence(weak: tuple[str, ...], hung: tuple[str, ...], loads: list[str]) -> str:
    of = [f"the strength of {_few(weak)}"] if weak else []
    of += [f"the hooks of {_few(hung)}"] if hung else []
    ask = "ask" if len(loads) > 1 else "asks"
    return f"What {joined(loads)} {ask} of {joined(of)} was not checked."


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
