"""What the sheet warns of: loose parts that come off, and loads that it does not stand."""

from ..checks.borne import given_loads
from ..checks.examination import Examination
from .amounts import Amounts
from .remark import are_many, few, joined
from .sheet_words import wind_of, within
from .shortfalls import loads_not_stood, loose_off

_TOLD = 3
"""So many loads are told one by one."""


def comes_off(examination: Examination, amounts: Amounts) -> str | None:
    """Return that loose parts come off in that wind, for the box; None where none does."""
    names = within(joined(loose_off(examination)))
    if not names:
        return None
    come, them = ("COME", "them") if are_many(loose_off(examination)) else ("COMES", "it")
    wind = wind_of(examination, amounts).partition(", ")[0]
    return f"{names.upper()} {come} OFF in {wind}: fasten {them} first."


def not_for(examination: Examination, amounts: Amounts) -> str:
    """Return what it is not for, and what it is to be kept clear of."""
    height = amounts.length(examination.structure.height, "up")
    loads = _loads(examination, amounts)
    climbing = "climbing" if loads else "climbing or leaning on"
    return (
        f"{loads}Not for {climbing}; hang no banners, lights or wreaths on it. "
        f"Keep it clear of glass, paths, cars and power lines by its own height, {height}."
    )


def _loads(examination: Examination, amounts: Amounts) -> str:
    """Return first which named loads it does not stand, then which it was worked out for."""
    failing = loads_not_stood(examination)
    held = [load for load in given_loads(examination.design) if load.name not in failing]
    said = ""
    if failing:
        names = few([f"'{name}'" for name in failing], "nor")
        said = f"Does NOT stand {names}: keep people off. "
    if held:
        named = [f"'{load.name}' ({amounts.force(load.force)})" for load in held]
        said += f"Loads worked out: {joined(named[:_TOLD])}, no more. "
    return said
