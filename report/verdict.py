"""The verdict on one design: what to do first, then the numbers, then all that it rests on."""

from dataclasses import dataclass

from ..checks.examination import Examination
from .amounts import Amounts
from .as_read import as_read, shape_words
from .asked_wind import asked, code_wind
from .assumptions import assumptions
from .cautions import cautions
from .checks_table import checks_table, engineer
from .headline import headline, tie_down
from .held_words import hold_short
from .holding import way, ways
from .how_often_words import how_often_said
from .joint_ways import joint_ways
from .lines import WIDTH, Line, listed, spelled_out, wrapped
from .not_checked import not_checked
from .prove import prove
from .stand import Stand, hold_down, stand_of
from .unverified import unverified

MOST_LINES = 38


@dataclass(frozen=True)
class Shown:
    """What is shown beyond the verdict: figures for engineers, and lists in full."""

    engineer: bool = False
    assumptions: bool = False
    cautions: bool = False


def verdict(examination: Examination, shown: Shown | None = None) -> list[Line]:
    """Return the verdict's lines, 80 columns wide.

    Above 38 lines what was read takes its shorter form, and empty lines go, the last first;
    nothing is dropped.
    """
    shown = shown or Shown()
    amounts = Amounts(examination.design.units == "metric")
    first, rest = _first_blocks(examination, shown, amounts), _rest(examination, shown, amounts)
    blocks = [*first, [*as_read(examination, amounts), *rest]]
    if sum(map(len, blocks)) + len(blocks) - 1 > MOST_LINES:
        blocks[-1] = [*as_read(examination, amounts, brief=True), *rest]
    spare = MOST_LINES - sum(map(len, blocks))
    in_full = shown.engineer or shown.assumptions or shown.cautions
    found: list[Line] = []
    for i, block in enumerate(blocks):
        gap = i > 0 and (i <= spare or in_full)
        found += [*([Line("")] if gap else []), *block]
    return found


def _first_blocks(examination: Examination, shown: Shown, amounts: Amounts) -> list[list[Line]]:
    """Return the verdict in blocks, in the order in which they matter, up to what was read."""
    blocks = [
        _title(examination, amounts),
        _headline(examination, amounts),
        _untied(examination, amounts),
        [*ways(examination, amounts), *joint_ways(examination, amounts)],
        [
            *checks_table(examination, amounts),
            *(engineer(examination, amounts) if shown.engineer else []),
            *_not_checked(examination),
        ],
    ]
    return [block for block in blocks if block]


def _rest(examination: Examination, shown: Shown, amounts: Amounts) -> list[Line]:
    """Return what stands behind what was read."""
    return [
        *prove(examination, amounts),
        *_assumed(examination, shown.assumptions),
        *_take_care(examination, shown.cautions),
        *_next(examination),
    ]


def _title(examination: Examination, amounts: Amounts) -> list[Line]:
    structure, name = examination.structure, examination.design.name
    facts = (
        f"{shape_words(examination)}, {amounts.length(structure.height)} tall, "
        f"{amounts.mass(structure.mass('typical'))}"
    )
    wind = f"asked: {asked(examination, amounts)}"
    whole = f"{name}   {facts}   {wind}"
    if len(whole) <= WIDTH:
        found = [Line(whole, "title")]
    else:
        second = f"  {facts}   {wind}"
        lines = [second] if len(second) <= WIDTH else [f"  {facts}", f"  {wind}"]
        found = wrapped(name, rest="  ", mood="title")
        found += [line for text in lines for line in wrapped(text.strip(), "  ", "    ", "title")]
    code = code_wind(examination, amounts)
    return found + (wrapped(code, rest="  ") if code else [])


def _headline(examination: Examination, amounts: Amounts) -> list[Line]:
    said, good = headline(examination, amounts)
    return wrapped(said, mood="good" if good else "bad")


def _untied(examination: Examination, amounts: Amounts) -> list[Line]:
    limits, ground = examination.limits, examination.site.ground
    if examination.posts is not None:
        return [
            *way("In wind", _keep_clear(examination, amounts)),
            *(way("How often", often) if (often := how_often_said(examination, amounts)) else []),
            *way("Pushed", _pushed(examination, amounts)),
        ]
    if limits.act is None:
        act = f"no gust below {amounts.gust(150.0)} asks for it; tie it down all the same"
    elif limits.act <= 0.0:
        act = "keep it tied or laid down: hardly any wind is too little"
    else:
        act = f"{tie_down(examination)} when gusts over {amounts.act(limits.act)} are forecast"
    often = how_often_said(examination, amounts)
    return [
        *way("Untied", act),
        *(way("How often", often) if often else []),
        *way("Pushed", _pushed(examination, amounts)),
        *way("Slides", _slides(examination, amounts, ground)),
    ]


def _keep_clear(examination: Examination, amounts: Amounts) -> str:
    act = examination.limits.act
    if act is None:
        return f"no gust below {amounts.gust(150.0)} asks for anything"
    if act <= 0.0:
        return "keep clear of it: hardly any wind is too little"
    return f"keep clear of it when gusts over {amounts.act(act)} are forecast"


def _pushed(examination: Examination, amounts: Amounts) -> str:
    limits = examination.limits
    if limits.push <= 0.0:
        return "nothing needs to push it: it falls over by itself"
    top = limits.push_height >= examination.structure.height - 1.0e-6
    where = "at the top" if top else f"{amounts.length(limits.push_height)} up"
    who = next((words for most, words in _PUSHERS if limits.push < most), None)
    force = amounts.force(limits.push, "down")
    about = "" if force.startswith("less") else "about "
    untied = "untied, " if examination.held else ""
    tips = "tips it" if examination.posts is None else "is all that its posts may be asked"
    return f"{untied}{about}{force} {where} {tips}" + (f": {who} can do that" if who else "")


_PUSHERS = ((76.0, "a child or a dog"), (250.0, "a leaning grown-up"))
"""Who pushes below so many newtons: the pushes of references/ground/pushes.csv."""


def _slides(examination: Examination, amounts: Amounts, ground: str) -> str:
    slides = examination.limits.forecast_sliding
    if slides is None:
        return f"in no gust below {amounts.gust(150.0)} on {ground}"
    alone = examination.limits.loose_slides
    if slides <= 0.0:
        if alone is not None:
            return f"by itself on this slope: the {alone} slides off"
        return f"by itself on {ground} of this slope"
    if alone is not None:
        return f"about {amounts.gust(slides)}: the {alone} slides off{_not_ended(examination)}"
    end = ""
    if stand_of(examination) is Stand.ANCHOR:
        end = f"; the {hold_down(examination)}s end that"
    return f"from about {amounts.gust(slides)} on {ground}{end}"


def _not_ended(examination: Examination) -> str:
    """Say that what holds the piece, or would, does not hold what only stands on it."""
    if examination.held:
        return f"; the {hold_short(examination)} do not end that"
    if stand_of(examination) is Stand.ANCHOR:
        return f"; the {hold_down(examination)}s do not end that"
    return ""


def _not_checked(examination: Examination) -> list[Line]:
    items = [remark.short for remark in not_checked(examination)]
    return listed("Not checked", items, "No promise for the whole piece.")


def _assumed(examination: Examination, in_full: bool) -> list[Line]:
    remarks, memory = assumptions(examination), unverified(examination)
    count = f"{len(memory)} value{'s' if len(memory) != 1 else ''}"
    if in_full:
        found = spelled_out("Assumed", [remark.full for remark in remarks])
        if memory:
            title = f"{count} here from memory, not from the printed page"
            found += spelled_out(title, list(memory))
        return found
    verb = "is" if len(memory) == 1 else "are"
    end = f"{count} here {verb} from memory.   " if memory else ""
    return listed("Assumed", [r.short for r in remarks], f"{end}All: --assumptions")


def _take_care(examination: Examination, in_full: bool) -> list[Line]:
    remarks = cautions(examination)
    if in_full:
        return spelled_out("Take care", [remark.full for remark in remarks])
    return listed("Take care", [remark.short for remark in remarks], "All: --cautions")


def _next(examination: Examination) -> list[Line]:
    both = "Next: yardfast size {0}     yardfast sheet {0} -o OUT.pdf"
    named = both.format(examination.design.file or "FILE")
    return [Line(named if len(named) <= WIDTH else both.format("FILE"))]
