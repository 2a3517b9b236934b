"""The ways to hold a piece down: stakes, weight, a wider foot; each alone, a first estimate."""

from math import ceil, isfinite

from ..checks.examination import Examination
from .amounts import Amounts
from .asked_wind import to_spare
from .lines import Line, wrapped
from .people_pull import people_pull
from .remark import counted
from .stand import Stand, hold_downs, holding_checks, most, stand_of, width_helps
from .tied_words import anchors_said, guys_said

_LABEL = 12
_ABSURD = 2.5
"""So many times the widest foot that is a remedy, a width is no longer told."""


def ways(examination: Examination, amounts: Amounts) -> list[Line]:
    """Return the block that tells how to hold it down; nothing where it stands untied."""
    if not examination.needs_anchors or stand_of(examination) in (Stand.HELD, Stand.SHALLOW):
        return []
    if examination.held and all(check.passes for check in holding_checks(examination)):
        return []
    spare = "" if examination.site.basis != "service" else f", {to_spare(examination)}"
    wind = amounts.gust(examination.site.wind, "near")
    found = wrapped(f"Hold it one of these ways (worked out for {wind}{spare})", rest="  ")
    found += way(hold_downs(examination), _stakes(examination, amounts))
    found += _against_people(examination, amounts)
    if examination.anchors is None and (guys := examination.guys) is not None:
        found += way("guys", guys_said(guys, amounts))
    found += way("weight", _weight(examination, amounts))
    found += way("wider foot", _width(examination, amounts))
    return found


def way(label: str, text: str) -> list[Line]:
    """Return a labelled line, its further lines beneath the text."""
    return wrapped(text, f"  {label:<{_LABEL - 2}}  ")


def _against_people(examination: Examination, amounts: Amounts) -> list[Line]:
    pull = people_pull(examination)
    if pull <= examination.remedies.stakes.pull:
        return []
    return way("people", f"keep them off, or anchor each for {amounts.pull(pull)} straight up")


def _test(examination: Examination, amounts: Amounts) -> str:
    """Return with what pull to test each, twice what it is asked for; nothing where one cannot."""
    pull, ground = examination.remedies.stakes.pull, examination.standing.ground
    if pull <= 0.0 or pull > most("stake pull") or not ground.stakes_possible:
        return ""
    return f"; test each: {amounts.pull(2.0 * pull)} up"


def _stakes(examination: Examination, amounts: Amounts) -> str:
    if examination.anchors is None:
        pull = amounts.pull(examination.remedies.stakes.pull)
        return f"no: {pull} up each is more than anchors this near each other hold here"
    said = anchors_said(examination.anchors, examination, amounts)
    return said + _test(examination, amounts)


def _weight(examination: Examination, amounts: Amounts) -> str:
    kilograms = examination.remedies.ballast
    if not isfinite(kilograms):
        return "no: no weight ends it here, since it would sink in or slide along"
    if kilograms <= 0.0:
        return "none needed"
    weight = amounts.mass_needed(kilograms)
    if kilograms > most("weight laid low"):
        return f"no: it would take some {weight}"
    bag = most("bag, metric" if amounts.metric else "bag, imperial")
    bags = counted(ceil(kilograms / bag - 1.0e-9), "bag")
    return f"about {weight} fixed low: {bags} of {amounts.mass(bag)} on a screwed-on floor"


def _width(examination: Examination, amounts: Amounts) -> str:
    remedies = examination.remedies
    if remedies.base_width is None:
        return "no: no width ends it, the wind lifts it or its balance point lies outside"
    width = amounts.width_needed(remedies.base_width)
    slides = ", and it would still slide" if remedies.base_slides else ""
    if width_helps(examination):
        return f"about {width} across, its own weight not counted"
    if examination.overturning.passes:
        return "no: a wider foot does not end sliding"
    if remedies.base_width > _ABSURD * most("foot width"):
        return (
            f"no: not even {amounts.length(_ABSURD * most('foot width'))} across would do{slides}"
        )
    return f"no: {width} across{slides}"
