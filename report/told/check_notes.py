"""The sentences beside a check: what governed it, with which factors, and what a pass means."""

from math import isfinite

from ...checks.examination import MINIMUM, Examination
from ...checks.judging import Check, Kind
from ...loads.methods import standard_of
from ...loads.roofs.uplift import SUCTION
from ...units import figure, plain
from ..fastening.fastened_seams import seam_notes, seam_of
from ..fastening.joint_words import joint_notes
from ..fastening.spacing_words import spacing_notes
from ..wording import messages
from ..wording.remark import capital, joined
from ..wording.words import over_what, wind_on
from .member_words import member_notes, member_of

_WHOLE = (Kind.OVERTURNING, Kind.SLIDING)
_CASES = {
    "A": "full face (Case A)",
    "B left": "resultant a fifth of the width to one side (Case B)",
    "B right": "resultant a fifth of the width to one side (Case B)",
    "C left": "stronger toward the windward edge (Case C)",
    "C right": "stronger toward the windward edge (Case C)",
}
_ROOFS = {
    "roof A": "roofs that wind blows beneath by Case A of their figure",
    "roof B": "roofs that wind blows beneath by Case B of their figure",
    "roof lifted": "roofs that wind blows beneath lifted evenly",
    "roof pressed": "roofs that wind blows beneath pressed evenly",
    "windward slope alone": "the windward slope alone",
    "leeward slope alone": "the leeward slope alone",
}


def check_notes(examination: Examination, check: Check) -> tuple[str, ...]:
    """Return what governed a check, as sentences."""
    member = member_of(examination, check)
    alone = member is not None or seam_of(examination, check) is not None
    found = [
        _direction(examination, check),
        _case(examination, check),
        *(member_notes(examination, member) if member else ()),
        _factors(check) if _is_weighed(check, alone) else _wind_only(check),
        _bare(check),
        _nothing_left(check),
        _remark(check),
        _in_doubt(check),
        *joint_notes(examination, check),
        *spacing_notes(examination, check),
        *seam_notes(examination, check),
    ]
    if standard_of(examination.site.method).is_code and check.kind in _WHOLE:
        found.append("A pass means that the map wind just does not tip it.")
    return tuple(note for note in found if note)


def _in_doubt(check: Check) -> str | None:
    if not check.fails_in_doubt:
        return None
    return (
        f"As read it is used at {check.as_read:.2f}; it fails where wood, fasteners or ground give "
        "more or less than that, which nobody knows."
    )


def _direction(examination: Examination, check: Check) -> str | None:
    over = None if check.toward_deg is None else over_what(examination, check.toward_deg)
    if check.load and check.kind is not Kind.LOAD:
        blows = "without wind" if check.direction_deg is None else "and wind at once"
        return f"Worst under '{check.load}', {blows}."
    if check.direction_deg is None:
        return None if over is None else f"Worst over {over}."
    on = wind_on(examination, check.direction_deg)
    return f"Worst with the wind {on}" + (f", over {over}." if over else ".")


def _case(examination: Examination, check: Check) -> str | None:
    """Say which wind case governed, where there is more than one."""
    if check.case == "calm":
        return "Worst in calm air."
    if check.case == MINIMUM:
        return (
            "The least wind of the standard, 16 psf (766 Pa) on the whole outline, governs: the "
            "answer does not follow the wind typed."
        )
    names = examination.actions.names
    if check.case not in names:
        return None
    lifts, signs = examination.exposed.suction.names, examination.exposed.cases
    case = names.index(check.case)
    sign, normal = signs[case % len(signs)], lifts[case // len(signs)]
    parts: list[str] = []
    if len(signs) > 1:
        parts.append(_CASES[sign])
    if SUCTION in normal:
        parts.append("with the wind lifting closed tops")
    elif any(SUCTION in acts for acts in lifts):
        parts.append("without the wind lifting closed tops")
    parts += [_ROOFS[each] for each in normal if each in _ROOFS]
    return f"Wind case: {', '.join(parts)}." if parts else None


def _is_weighed(check: Check, alone: bool) -> bool:
    """Return whether weight took part in a check: not in that of a wall, blade or seam."""
    return not alone or check.direction_deg is not None or check.dead > 0.0 or bool(check.load)


def _factors(check: Check) -> str:
    weight = f"{check.weighing} weight"
    live = "load" if check.load else "wind"
    return f"{plain(check.dead, 3)} times the {weight} and {check.wind:.3g} times the {live}."


def _wind_only(check: Check) -> str:
    return f"{check.wind:.3g} times the wind."


def _bare(check: Check) -> str | None:
    if check.bare is None or not isfinite(check.bare):
        return None
    return f"Bare factor of safety, without load factors: {figure(check.bare, 2)}."


def remarked(check: Check) -> str:
    """Return what is remarked of what governed a check; empty where nothing is."""
    if check.remark is None:
        return ""
    said = joined(one if isinstance(one, str) else f"{one:.2f} m" for one in check.slots)
    return messages.REMARKS[check.remark].format(said)


def _remark(check: Check) -> str | None:
    return f"{capital(said)}." if (said := remarked(check)) else None


def _nothing_left(check: Check) -> str | None:
    if check.utilization is not None:
        return None
    if check.kind is Kind.BEARING:
        return "Nothing of the foot stays loaded: it tips first."
    return "Nothing is left to resist."
