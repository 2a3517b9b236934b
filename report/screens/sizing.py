"""What it takes to hold a piece, each way alone: a line a remedy, and how the gusts go."""

from itertools import zip_longest

from ...checks.judged.judging import Check
from ...checks.limits import Limits
from ...checks.sizing.better_fastened import sized, sized_seam
from ...checks.sizing.foot_bending import FootBending, bending_of
from ...checks.sizing.remedy import Remedy, RemedyReason
from ...checks.sizing.size_curves import CurvePoint
from ...checks.sizing.ways import Sizing
from ...checks.sizing.why_none import why_none
from ...checks.stated.planted import deeper
from ..advice.way_words import BUILD
from ..advice.what_to_do import not_looked_at_row
from ..fastening.fastened_seams import seam_sizes
from ..fastening.joint_advice import joint_remedy
from ..told.posts_words import deeper_said
from ..told.sizing_words import (
    amount,
    limit_gusts,
    over,
    past_which_it_slides,
    stiffeners,
    why_no_remedy,
)
from ..told.tied_words import anchors_said, guys_said
from ..wording.amounts import Amounts
from ..wording.as_read import in_a_line
from ..wording.asked_wind import asked_wind, to_spare
from ..wording.lines import LINE_WIDTH, Line, listed, wrapped

_WORDS = {"overturning": "tipping", "sliding": "sliding"}
_HOLDING = ("base width", "ballast", "anchors", "guys")
_FIRST = ("anchors", "ballast", "guys")
_ROW = "  {:<11} {:<20} {:>5} {:>6} {:>6}  "
_CURVE = "{:<2}{:<13} {:>6} {:>6} {:>6}"


def sizing_lines(sizing: Sizing) -> list[Line]:
    """Return the remedies for people, 80 columns wide, then the gusts by width and weight."""
    amounts = Amounts(sizing.design.units == "metric")
    found = [*_title(sizing, amounts), Line(""), _heads()]
    found += _row("as it is", _present(sizing, amounts), sizing.found.limits, amounts, "")
    for remedy in sizing.remedies:
        found += _remedy(sizing, remedy, amounts)
    joints = _joints(sizing, amounts)
    found += [Line(""), *joints] if joints else []
    seams = seam_sizes(
        (sized_seam(sizing.found, one) for one in sizing.found.fastened_seams), amounts
    )
    found += [Line(""), *seams] if seams else []
    if sizing.curve:
        slides = past_which_it_slides(sizing.slides_first, sizing.curve, amounts)
        found += [Line(""), *_curves(sizing, amounts), *wrapped(slides)]
    found += [Line(""), *_notes(sizing)]
    unlooked = not_looked_at_row(sizing.found.verdict).text
    return found + listed("Not checked", [unlooked], "No promise for the whole piece.")


def _title(sizing: Sizing, amounts: Amounts) -> list[Line]:
    found, name = sizing.found, sizing.design.name
    facts = f"{in_a_line(found.structure, amounts)}   asked: {asked_wind(found.site, amounts)}"
    whole = f"{name}   {facts}"
    head = (
        [Line(whole, "title")]
        if len(whole) <= LINE_WIDTH
        else [*wrapped(name, rest="  ", mood="title"), Line(f"  {facts}", "title")]
    )
    wind = amounts.gust(found.site.wind, "near")
    spare = to_spare(found.site, planted=found.posts is not None)
    if found.posts is not None and not found.needs_anchors:
        said = f"Its posts carry it in {wind}, {spare}: none of these is needed."
    elif found.held and any(one.reason is RemedyReason.NOT_NEEDED for one in sizing.remedies):
        said = f"Held as it is it stands in {wind}, {spare}: none of these is needed."
    elif not found.needs_anchors:
        said = f"It stands untied in {wind}, {spare}: none of these is needed."
    elif found.posts is not None:
        said = f"Its posts give way in {wind}: {deeper_said(deeper(found), amounts)}."
    elif any(remedy.feasible for remedy in sizing.remedies if remedy.kind in _HOLDING):
        said = f"What would hold it, each way alone; checked for {wind}, {spare}."
    elif sizing.feasible:
        said = (
            f"Neither foot, weight nor anchors alone hold it in {wind}, {spare}: it "
            "would have to be lower, or to stand less wind."
        )
    else:
        said = (
            f"None of these alone holds it in {wind}, {spare}. Make it smaller, or set "
            "posts in the ground in concrete."
        )
    return [*head, *wrapped(said)]


def _heads() -> Line:
    text = _ROW.format("", "build to", "tips", "slides", "act at")
    return Line(f"{text}nearest: has / needs")


def _row(label: str, build: str, limits: Limits, amounts: Amounts, nearest: str) -> list[Line]:
    text = _ROW.format(label, build, *limit_gusts(limits, amounts))
    if len(text) + len(nearest) <= LINE_WIDTH:
        return [Line((text + nearest).rstrip())]
    return [Line(text.rstrip()), *wrapped(nearest, " " * 14)]


def _present(sizing: Sizing, amounts: Amounts) -> str:
    if sizing.found.posts is not None:
        return f"{amounts.length(float(sizing.found.posts.depth.min()))} in the ground"
    now = next(point for point in sizing.curve if point.present)
    return f"{amounts.length(now.value)} foot"


def _remedy(sizing: Sizing, remedy: Remedy, amounts: Amounts) -> list[Line]:
    if not remedy.feasible or remedy.value is None:
        return wrapped(
            f"no: {why_no_remedy(why_none(sizing.found, remedy), amounts)}", f"  {remedy.kind:<11} "
        )
    if remedy.reason is RemedyReason.NOT_NEEDED:
        return wrapped("none needed", f"  {remedy.kind:<11} ")
    label = f"  {remedy.kind:<11} "
    if remedy.anchors is not None:
        return wrapped(anchors_said(remedy.anchors, sizing.found.remedies.stakes, amounts), label)
    if remedy.guys is not None:
        return wrapped(guys_said(remedy.guys, amounts), label)
    assert remedy.found is not None
    check = next(check for check in remedy.found.checks if check.name == remedy.governs)
    build = amount(remedy.kind, remedy.value, amounts) + BUILD[remedy.kind]
    return _row(remedy.kind, build, remedy.found.limits, amounts, _nearest(check, amounts))


def _joints(sizing: Sizing, amounts: Amounts) -> list[Line]:
    """Return every joint with what would make it hold; nothing where there is none."""
    found = [Line("Joints")]
    for joint in sizing.found.joints:
        text = joint_remedy(sized(sizing.found, joint), amounts)
        found += wrapped(f"{joint.row.name}: {text}", "  ", "      ")
    return found if sizing.found.joints else []


def _nearest(check: Check, amounts: Amounts) -> str:
    both = amounts.has_of_needs(check.capacity, check.demand, check.unit, check.passes)
    return f"{_WORDS.get(check.name, check.name)} {both}"


def _curves(sizing: Sizing, amounts: Amounts) -> list[Line]:
    """Return the limits by width and by weight side by side, what is there now marked."""
    heads = [
        _CURVE.format("", head, "tips", "slides", "act at") for head in ("foot", "weight laid low")
    ]
    columns = [
        [_point(point, amounts) for point in sizing.curve if point.kind == kind]
        for kind in ("base width", "ballast")
    ]
    pairs = zip_longest(*columns, fillvalue="")
    rows = [f"{left:<40}{right}".rstrip() for left, right in pairs]
    unit = f"Forecast gusts in {amounts.speed_unit}; * is as it is now; {over(amounts)}"
    return [Line(unit), Line(f"{heads[0]:<40}{heads[1]}"), *map(Line, rows)]


def _point(point: CurvePoint, amounts: Amounts) -> str:
    value = (
        amounts.length(point.value)
        if point.kind == "base width"
        else (amounts.mass_needed(point.value) if point.value else "none")
    )
    mark = "*" if point.present else ""
    return _CURVE.format(mark, value, *limit_gusts(point.limits, amounts))


def _notes(sizing: Sizing) -> list[Line]:
    found, amounts = list[Line](), Amounts(sizing.design.units == "metric")
    built = [
        remedy
        for remedy in sizing.remedies
        if remedy.feasible and remedy.reason is not RemedyReason.NOT_NEEDED
    ]
    for remedy in built:
        if remedy.kind in _ABOUT:
            found += wrapped(_ABOUT[remedy.kind], rest="  ")
        elif remedy.kind == "base width":
            found += wrapped(_about_width(remedy.part, bending_of(remedy), amounts), rest="  ")
    kinds = [remedy.kind for remedy in built]
    needless = any(remedy.reason is RemedyReason.NOT_NEEDED for remedy in sizing.remedies)
    kinds = [kind for kind in kinds if kind != "wind"]
    if sizing.found.needs_anchors and kinds and not needless:
        kind = next((each for each in _FIRST if each in kinds), kinds[0])
        file = sizing.design.file or "FILE"
        found.append(Line(f"Next: yardfast size {file} --write NEW.toml --remedy '{kind}'"))
    return found


_ABOUT = {
    "ballast": "Weight counts where it lifts with the piece: on a floor screwed to the foot.",
    "height": "Height: every upright size above the foot alike; widths stay.",
}


def _about_width(part: str | None, bends: FootBending | None, amounts: Amounts) -> str:
    """Return what the wider foot is, a new one where no ``part`` is named, and how it bends."""
    how = _how_it_bends(bends, amounts)
    if part is None:
        return (
            "Base width: a foot of 3/4 plywood beneath all, screwed to it, its weight counted; "
            f"{how}."
        )
    return f"Base width: of '{part}', its own weight counted; {how}."


def _how_it_bends(found: FootBending | None, amounts: Amounts) -> str:
    """Return whether the foot carries what bends it where it stands out."""
    if found is None:
        return "how it bends is not checked"
    out = f"it stands out {amounts.length(found.overhang)}"
    if found.holds:
        return f"{out} and is stiff enough for that, wet"
    nailed = f"nail {stiffeners(amounts.metric)} beneath to its edge"
    return f"{out} and BENDS TOO FAR for one sheet: double it, or {nailed}"
