"""The sentences of a text for a listing, each in several forms, the fullest first."""

from ...checks.anchoring.held import Held
from ...checks.examination import Examination
from ...checks.judged.judging import Kind
from ...checks.not_looked_at import Topic
from ...checks.stated.surroundings import act_by_exposure
from ...checks.verdict import HOLDING, Tied, Way, Word
from ...design.file.record_table import Record
from ...design.model import Design
from ...loads.given import GivenLoad
from ..messages import messages
from ..told.added_words import without_short
from ..told.dig_line import dig_line, digging
from ..told.label_anchors import each_holds, how_many, of_what
from ..wording.amounts import MPH, Amounts
from ..wording.asked_wind import around, mapped
from ..wording.dates import day
from ..wording.remark import counted, joined

Forms = tuple[str, ...]
"""One sentence, the fullest form first; an empty last form may be left out."""

_CALM = 31.0 * MPH
"""Up to this gust to act at (m/s) a piece is said to be for calm days: judgement."""


def act_words(examination: Examination) -> Forms:
    """Return the gust to act at with its surroundings, as every text has it in one of these forms.

    Where it is owed to added weight, the gust without that weight stands beside it.
    """
    amounts, act = _amounts(examination), examination.limits.act
    if act is None:
        return ()
    where = around(examination.site)
    bare = without_short(examination, amounts)
    forms = tuple(f"{where}; {said}" for said in bare) or (where,)
    return tuple(f"{amounts.act(act)} are forecast ({form})" for form in forms)


def act_at(examination: Examination) -> Forms:
    """Return at which forecast gust to tie it down or lay it down."""
    do, act = what_to_do(examination), examination.limits.act
    said = f"{do[0]} when gusts over {act_words(examination)[0]}."
    calm = act is not None and 0.0 < act <= _CALM
    if calm and examination.needs_anchors and examination.posts is None:
        return (f"Untied, this piece is for calm days: {said}",)
    return (f"{said[0].upper()}{said[1:]}",)


def what_to_do(examination: Examination) -> Forms:
    """Return what to do when it is going to blow."""
    if examination.posts is not None:
        return ("keep clear of it",)
    if not examination.limits.act:
        return ("never leave it untied: hold it down",)
    if examination.verdict.untied.stays_put:
        return ("stake it" if examination.standing.ground.stakes_possible else "tie it down",)
    briefly = ("tie it",) if examination.added is not None else ()
    return ("tie it down or lay it down", "tie or lay it down", *briefly)


def elsewhere(examination: Examination) -> Forms:
    """Return the gusts to act at in rougher surroundings; nothing where they are no lower."""
    amounts, own = _amounts(examination), examination.limits.act
    found: dict[str, list[str]] = {}
    for exposure, act in act_by_exposure(examination).items():
        rougher = exposure > (examination.site.exposure or "C")
        if rougher and act is not None and own is not None:
            gust = amounts.act(act)
            if gust != amounts.act(own):
                found.setdefault(gust, []).append(_PLACES[exposure])
    said = ", ".join(f"{gust} {joined(places, 'or')}" for gust, places in found.items())
    return (f"That is {said}." if said else "", "")


_PLACES = {"C": "on open ground", "D": "at the shore"}


def basis_words(examination: Examination) -> str:
    """Return what the numbers rest on: calculation alone, or with the last dated test."""
    dated = tests(examination.design)
    if not dated:
        return "Calculated, not tested"
    last = max(dated, key=lambda record: record.date)
    return f"Calculated; {last.kind} on {day(last.date)}"


def tests(design: Design) -> tuple[Record, ...]:
    """Return the dated tests of a finished piece that stand in its design."""
    return tuple(record for record in design.several(Record) if record.kind != "weight")


def hold(examination: Examination) -> Forms:
    """Return how to hold it down, with the wind that this was worked out for."""
    amounts, verdict = _amounts(examination), examination.verdict
    winds = worked_out_for(examination, amounts)
    if examination.posts is not None:
        its, do = _posts(examination)
        if verdict.word is Word.SET_IT_DEEPER:
            return tuple(f"I{its[1:]} {do} not hold it in {wind}." for wind in winds)
        return tuple(f"With {its}, it was worked out for {wind}." for wind in winds)
    if not verdict.tied.ways:
        if verdict.tied.needed:
            said = "No stakes and no weight in our lists hold it in {wind}."
        else:
            said = "It was worked out untied, for {wind}."
        return tuple(said.format(wind=wind) for wind in winds)
    how = _held_by(examination, verdict.tied, amounts)
    middle = how[len(how) // 2]
    forms = [(how[0], winds[0]), (how[0], winds[1]), (middle, winds[1]), (how[-1], winds[1])]
    forms.append((how[-1], winds[-1]))
    return tuple(f"{way}, it was worked out for {wind}." for way, wind in forms)


def worked_out_for(examination: Examination, amounts: Amounts) -> Forms:
    """Return the wind that it was worked out for, with surroundings and ground, or without."""
    site = examination.site
    wind = amounts.gust(site.wind, "near")
    match site.method:
        case "forecast":
            said = f"a forecast gust of {wind}"
        case "gust":
            return (f"a gust of {wind} at the piece ({site.ground})",) * 3
        case method:
            said = f"the {wind} {mapped(site)} of {method}"
    where = around(site)
    return f"{said} ({where}, {site.ground})", f"{said} ({site.ground})", said


def shortfalls(examination: Examination) -> Forms:
    """Return what fails besides the holding; nothing where nothing does.

    How hard the ground is pressed tells nothing while the piece tips.
    """
    failing = {check.kind for check in examination.checks if not check.passes}
    kinds = failing - set(HOLDING)
    if failing & set(HOLDING):
        kinds -= {Kind.BEARING}
    words = _SHORT_OF | (_SHORT_OF_POSTS if examination.posts is not None else {})
    said = (
        words.get(kind, f"It falls short: {kind}.") for kind in sorted(kinds - {Kind.EMBEDMENT})
    )
    return (" ".join(dict.fromkeys(said)),)


_SHORT_OF = {
    Kind.BEARING: "Its foot sinks into that ground.",
    Kind.PUSH: "Untied, people can pull it over.",
    Kind.LOOSE: "Its loose parts do not stay on in that wind.",
    Kind.LOOSE_SLIDING: "Its loose parts do not stay on in that wind.",
    Kind.LOAD: "Untied, it does not stand the load named on its sheet.",
    Kind.JOINT: "Its joints are too weak for that.",
    Kind.SEAM: "Its seams are too weak for that.",
    Kind.SPACING: "Some of its fasteners stand where the wood may split.",
    Kind.MEMBER: "Some of its members are too weak for that.",
}
_SHORT_OF_POSTS = {
    Kind.BEARING: "Its posts sink into that ground.",
    Kind.PUSH: "People can push its posts too far.",
    Kind.LOAD: "Its posts do not stand the load named on its sheet.",
}


def push(examination: Examination) -> Forms:
    """Return the push that tips it."""
    push, amounts = examination.limits.push, _amounts(examination)
    force = amounts.force(push, "down")
    about = "about " if amounts.whole_force(push) else ""
    does = "tips it" if examination.posts is None else "is all that its posts may be asked"
    return f"A push of {about}{force} {does}.", ""


def unchecked(examination: Examination) -> Forms:
    """Return what was not checked, the joints first; and that joints were, where all are."""
    first, *others = _unchecked(examination)
    said = joined((*others, "anything hung on it"), "or")
    joints = [check for check in examination.checks if check.kind is Kind.JOINT]
    open_ = {one.topic for one in examination.verdict.not_looked_at}
    done = bool(joints) and Topic.FASTENING not in open_
    before = "Joints: calculated. " if done and all(check.passes for check in joints) else ""
    return f"{before}{first}: not checked, nor {said.lower()}.", f"{before}{first}: not checked."


def first_unchecked(examination: Examination) -> str:
    """Return what of the piece itself was not checked before all else."""
    return _unchecked(examination)[0]


def _unchecked(examination: Examination) -> list[str]:
    """Return of joints, strength and snow what was not checked; snow never is."""
    open_ = {one.topic for one in examination.verdict.not_looked_at if one.of}
    kinds = {check.kind for check in examination.checks}
    found: list[str] = []
    if Topic.FASTENING in open_:
        found.append("Some joints" if Kind.JOINT in kinds else "Joints")
    if Topic.STRENGTH in open_:
        found.append("Strength of some parts" if Kind.MEMBER in kinds else "Strength")
    return [*found, "Snow"]


def use(examination: Examination) -> Forms:
    """Return what it is not for."""
    if examination.design.several(GivenLoad):
        return (
            "Not for climbing or leaning, nor for loads that its sheet does not name.",
            "Not for climbing or leaning.",
        )
    return ("Decoration, not for climbing or leaning.",)


def dig(examination: Examination, country: str | None) -> Forms:
    """Return whom to ask before digging, driving or drilling."""
    if examination.posts is not None:
        ask = dig_line(country)
        return (f"{ask[0].upper()}{ask[1:]} days before digging.",)
    if examination.standing.ground.stakes_possible:
        ask = dig_line(country)
        return (f"{ask[0].upper()}{ask[1:]} days before {digging(examination)}.",)
    return ("Look for pipes before drilling the slab.",) if examination.needs_anchors else ("",)


def rules() -> Forms:
    """Return who decides besides."""
    return ("Local rules apply; have someone qualified look where people gather.",)


def sheet_to_read() -> Forms:
    """Return where the rest is to be read."""
    return "Read its stability sheet before you set it up.", "See its stability sheet."


def _posts(examination: Examination) -> tuple[str, str]:
    """Return its posts and how deep they stand, without the builder's names, and their verb."""
    posts, amounts = examination.posts, _amounts(examination)
    assert posts is not None
    deep = joined(dict.fromkeys(amounts.length(float(depth)) for depth in sorted(posts.depth)))
    many = len(posts.part)
    what = "its post" if many == 1 else f"its {counted(many, 'post')}"
    return f"{what} set {deep} deep", "does" if many == 1 else "do"


def _held_by(examination: Examination, tied: Tied, amounts: Amounts) -> Forms:
    """Return what holds it, or would: its own, anchors, guys, weight or a wider foot."""
    if tied.ways[0] is Way.OWN:
        each = _each(examination, examination.held)
        said = f"With {of_what(examination.held)} as on its sheet{each}"
        return said, f"With its {how_many(examination.held)}{each}"
    if tied.anchors is not None:
        held = tied.anchors.held
        each = _each(examination, held)
        said = f"With {of_what(held)}, {messages.WHERE[tied.anchors.places]}{each}"
        return said, f"With {of_what(held)}{each}", f"With {how_many(held)}{each}"
    if tied.guys is not None:
        return (f"With {counted(tied.guys.row.count, 'guy')} of {tied.guys.row.line}",)
    if tied.weight is not None:
        return (f"With {amounts.mass_needed(tied.weight)} fixed low on its foot",)
    return (f"On a foot {amounts.width_needed(tied.width or 0.0)} across",)


def _each(examination: Examination, held: Held) -> str:
    holds = each_holds(examination, held)
    return f", {holds}" if holds else ""


def _amounts(examination: Examination) -> Amounts:
    return Amounts(examination.design.units == "metric")
