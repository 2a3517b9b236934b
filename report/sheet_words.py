"""What the sheet for a buyer says, in the words of whoever has the piece in the yard."""

from datetime import date

from ..checks.examination import Examination
from ..checks.surroundings import act_by_exposure
from ..design.record_table import Record
from ..design.shapes.rotor import Rotor
from ..materials import find as material
from .added_words import added_said
from .amounts import Amounts
from .asked_wind import around, asked, code_wind, mapped, to_spare
from .facts import facts_of
from .fastened_seams import failing_seams, parts_of
from .held_words import holders, what_lacks
from .joint_words import failing_joints, uncovered
from .member_words import weak_by_load
from .messages import LAID_DOWN, LAID_DOWN_TITLE
from .not_checked import not_checked
from .people_pull import people_pull
from .posts_words import posts_said
from .remark import few, joined
from .shortfalls import where_weak
from .stand import Stand, anchor_word, anchors_meant, stand_of
from .starts import starts, tie_down
from .tied_words import anchors_said
from .verdict_words import why_sentence

_AROUND = {"C": "open ground", "B": "houses and trees all round", "D": "shore"}
_MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
_LONGEST, _LONGEST_NAME = 80, 40
_TOLD = 3
"""So many records are told one by one."""


def act_rows(examination: Examination, amounts: Amounts) -> list[tuple[str, str]]:
    """Return the forecast gust to act at on open ground, among houses and trees, on a shore."""
    found: list[tuple[str, str]] = []
    for letter, act in act_by_exposure(examination).items():
        if act is None:
            said = f"over {amounts.gust(150.0)}"
        elif amounts.whole_act(act) <= 0:
            said = "any wind"
        else:
            said = amounts.act(act)
        found.append((said, _AROUND[letter]))
    return found


def act_lead(examination: Examination) -> str:
    """Return what is to be done when such gusts are forecast."""
    if examination.posts is not None:
        return "Keep clear of it when gusts are forecast over"
    if examination.design.laid_down:
        return "Lay it down when gusts are forecast over"
    verb = tie_down(examination).replace("tie it or", "tie it down or")
    if stand_of(examination) in (Stand.HELD, Stand.SLIPS):
        return f"Whenever it is not tied down as drawn, {verb} when gusts are forecast over"
    return f"{verb[0].upper()}{verb[1:]} when gusts are forecast over"


def starting(examination: Examination, amounts: Amounts) -> str:
    """Return the gusts at which it slides and starts to tip, and the pushes that tip it."""
    said = starts(examination, amounts) or "It falls over with no wind at all."
    where = around(examination.site)
    said = f"{where[0].upper()}{where[1:]}: {said[0].lower()}{said[1:]}"
    push = examination.limits.push
    tips = "tips it" if examination.posts is None else "is all that its posts may be asked"
    pushed = f" A push of about {amounts.force(push, 'down')} {tips}." if push > 0.0 else ""
    return f"{said}{pushed}"


def hold_off(examination: Examination) -> str:
    """Return what nobody is to do in wind."""
    stays = examination.verdict.untied.stays_put
    warned = "keep away from it" if stays else "lay it down or take it in, in time"
    return f"Do not go out to hold it. Under a hurricane or tornado warning {warned}."


def tie_title(examination: Examination) -> str:
    """Return what the second section is about."""
    if examination.design.laid_down:
        return LAID_DOWN_TITLE
    if examination.posts is not None:
        return "Set it in the ground"
    return "Tie it down" if anchors_meant(examination) else "Set it up"


def tie_words(examination: Examination, amounts: Amounts) -> str:
    """Return what holds it down, or what would, and for which wind."""
    if examination.design.laid_down:
        return LAID_DOWN
    stand = stand_of(examination)
    wind = f"{wind_of(examination, amounts)}, {to_spare(examination)}"
    match stand:
        case Stand.ANCHOR:
            return f"{_proposed(examination, amounts)} Worked out for {wind}."
        case Stand.HELD:
            return f"Held down by {holders(examination)}, as drawn: worked out for {wind}."
        case Stand.SLIPS:
            lacks = what_lacks(examination, amounts)
            return f"NOT ENOUGH: {holders(examination)}, for {wind}: {lacks}."
        case Stand.PLANTED:
            posts = posts_said(examination, amounts)
            return f"Nothing to tie: it stands by {posts}. Worked out for {wind}."
        case Stand.STANDS:
            return f"Worked out to stand untied in {wind}. Above the gusts named, hold it down."
        case _:
            said = why_sentence(examination.verdict, facts_of(examination))
            return said.replace(" that you asked", "").replace(" you asked", "")


def worked_out_for(examination: Examination, amounts: Amounts) -> list[str]:
    """Return what this was worked out for: wind, ground, weight, joints, tested or not."""
    site, ground = examination.site, examination.standing.ground
    wind = f"Wind: {asked(examination, amounts)}, {to_spare(examination)}"
    slope = "" if site.slope else ", level"
    code = code_wind(examination, amounts)
    return [
        *([code] if code else [f"{wind}."]),
        f"Ground: {ground.name}{slope}.",
        f"Weight used: {_weight(examination, amounts)}.",
        _joints(examination),
        _tested(examination),
    ]


def records(examination: Examination, amounts: Amounts) -> list[str]:
    """Return what was measured on the piece, as what it is, dated and signed."""
    found = [_record(each, amounts) for each in examination.design.several(Record)]
    more = len(found) - _TOLD
    return [*found[:_TOLD], f"{more} more in its file."] if more > 0 else found


def unchecked(examination: Examination) -> str:
    """Return what was not checked, in few words."""
    short = dict.fromkeys(remark.short for remark in not_checked(examination) if remark.short)
    return f"Not checked: {'; '.join(short)}. No promise for the whole piece."


def each_season(examination: Examination) -> str:
    """Return what is to be looked over each season."""
    parts = examination.design.parts
    wood = any(p.material and material(p.material).kind in ("wood", "panel") for p in parts)
    blades = any(isinstance(part.shape, Rotor) for part in parts)
    looks = [
        *(["push on every post"] if examination.posts is not None else []),
        *([f"pull on every {anchor_word(examination)}"] if _pulled(examination) else []),
        *(["look over every guy"] if examination.held.guys else []),
        *(["see that its added weight lies fast"] if examination.added is not None else []),
        "look for cracks and gaps at the foot",
        "tighten its screws",
        *(["probe the wood near the ground for rot"] if wood else []),
        *(["look over blades, hub and axle, the wheel blocked"] if blades else []),
    ]
    said = joined(looks)
    return f"{said[0].upper()}{said[1:]}."


def _pulled(examination: Examination) -> bool:
    """Return whether there are stakes or bolts at the foot to pull on."""
    held = examination.held
    return anchors_meant(examination) and (bool(held.anchors) or not held)


def within(text: str | None, most: int = _LONGEST) -> str | None:
    """Return a text with its end cut off where it is longer than the page has room for."""
    if text is None or len(text) <= most:
        return text
    return f"{text[: most - 3].rstrip()}..."


def day(written: str) -> str:
    """Return a date, YYYY-MM-DD, as people say it: ``31 May 2026``."""
    on = date.fromisoformat(written)
    return f"{on.day} {_MONTHS[on.month - 1]} {on.year}"


def wind_of(examination: Examination, amounts: Amounts) -> str:
    """Return the wind that it was worked out for, with what is around."""
    site = examination.site
    wind = amounts.gust(site.wind, "near")
    if site.method == "gust":
        return f"a gust of {wind} at the piece"
    if site.method == "forecast":
        return f"a forecast gust of {wind}, {around(site)}"
    return f"the {site.method} {mapped(site)} of {wind}, {around(site)}"


def _proposed(examination: Examination, amounts: Amounts) -> str:
    """Say how many anchors of what, where, how set, and what each has to hold."""
    if examination.anchors is None:
        return ""
    said = anchors_said(examination.anchors, examination, amounts)
    if people_pull(examination) > examination.remedies.stakes.pull:
        said += ", enough for the wind, NOT for people pushing"
    return f"{said[0].upper()}{said[1:]}."


def _weight(examination: Examination, amounts: Amounts) -> str:
    added = added_said(examination, amounts)
    return f"{_whole(examination, amounts)}{f', with {added}' if added else ''}"


def _whole(examination: Examination, amounts: Amounts) -> str:
    structure, design = examination.structure, examination.design
    whole = amounts.mass(structure.mass("typical"))
    if design.weighed is not None:
        return f"{whole}, as weighed"
    light, heavy = (amounts.mass(structure.mass(of)) for of in ("light", "heavy"))
    if light == heavy:
        return f"{whole}, as given"
    unit = heavy.rsplit(" ", 1)[1]
    return f"{whole} ({light.removesuffix(' ' + unit)} to {heavy}), by its materials"


def _joints(examination: Examination) -> str:
    """Say which joints and parts were checked for strength, and which of them fail."""
    if len(examination.design.parts) == 1:
        said = "In one part: no joints"
    elif not examination.joints:
        said = "Joints: not checked"
    else:
        failing = failing_joints(examination)
        rest = "some others not" if uncovered(examination) else "as the file has them"
        said = f"Joints: {len(examination.joints)} checked, {rest}"
        if failing:
            worst = within(failing[0].row.name, _LONGEST_NAME)
            more = f" and {len(failing) - 1} more" if len(failing) > 1 else ""
            where = where_weak((joint.check for joint in failing), "for this wind")
            said += f"; TOO WEAK {where}: '{worst}'{more}"
    said += _seams(examination)
    for load, names in weak_by_load(examination).items():
        where = f"under '{load}'" if load else "for this wind"
        said += f". Parts TOO WEAK {where}: {few(names)}"
    return f"{said}."


def _seams(examination: Examination) -> str:
    """Say whose seams were checked, and which of them fail; nothing where none is fastened."""
    if not examination.fastened_seams:
        return ""
    failing = failing_seams(examination)
    if not failing:
        return f"; seams of {within(parts_of(examination.fastened_seams), _LONGEST)} checked"
    return f"; seams TOO WEAK for this wind: {within(parts_of(failing), _LONGEST)}"


def _tested(examination: Examination) -> str:
    tests = [r for r in examination.design.several(Record) if r.kind != "weight"]
    return "Calculated; for tests see below." if tests else "Calculated, not tested."


def _record(record: Record, amounts: Amounts) -> str:
    signed = f"{day(record.date)}, {within(record.by, _LONGEST_NAME)}"
    match record.kind:
        case "weight":
            return f"Weighed on {signed}: {amounts.own_mass(record.value)}."
        case "scale test":
            up = amounts.own_length(record.height or 0.0)
            pull = amounts.force(record.value, "down")
            return f"Tested on {signed}: a level pull of {pull} at {up} began to lift its edge."
        case "stake pull test":
            pull = amounts.force(record.value, "down")
            return f"Stake tested on {signed}: it held {pull} straight up."
