"""The boxes to tick by which a piece is tied down, weighed down, laid down or set in the ground."""

import numpy as np

from ...checks.tied import Way
from ...checks.verdict import Verdict
from ...materials import anchors as kinds
from ...materials import guy_lines
from ..advice.what_to_do import bags_said, weight_said
from ..messages import page_messages as messages
from ..told.held_words import several_anchors
from ..told.tied_words import guy_set, how_set
from ..wording.remark import capital, counted, joined
from .sheet_facts import SheetFacts, advice

_SAME = 0.004


def head(verdict: Verdict, page: SheetFacts) -> str:
    """Return what the boxes are about."""
    key = _kind(verdict, page)
    return messages.HEADS[key]


def _kind(verdict: Verdict, page: SheetFacts) -> str:
    told, _ = advice(verdict, page)
    return "stand" if told == "tie" and not len(page.out.ends) else told


def steps(verdict: Verdict, page: SheetFacts) -> list[str]:
    """Return the boxes to tick, in their order."""
    match _kind(verdict, page):
        case "laid":
            return [_set(page), messages.PUSH_TO_TEST, *messages.LAY_STEPS]
        case "posts":
            return [_call(page), messages.DIG.format(posts=page.facts.planted), *_POSTS]
        case "mend":
            return [messages.MEND]
        case "weigh":
            return [_set(page), *_weighed(verdict, page), messages.PUSH_TO_TEST]
        case "stand":
            return [_set(page), messages.PUSH_TO_TEST, _above(verdict, page)]
        case _:
            return [_call(page), *_driven(page), *_tested(verdict, page), _flagged(page)]


_POSTS = (messages.PUSH_POSTS, messages.SLOPE)


def _set(page: SheetFacts) -> str:
    level = messages.LEVELS[page.stakes_possible]
    return messages.SET.format(ground=page.facts.ground, level=level)


def _call(page: SheetFacts) -> str:
    """Return whom to ask before anything goes into the ground."""
    if not (page.stakes_possible or page.facts.posts):
        return messages.SLAB
    return messages.CALL.format(ask=capital(page.facts.ask), setting=page.facts.setting)


def _above(verdict: Verdict, page: SheetFacts) -> str:
    """Return what to do with a piece that stands when more wind is forecast than it does in."""
    loud_ones = [words.lower() for words, loud in messages.DO[advice(verdict, page)] if loud]
    do = joined(loud_ones, "or")
    message = messages.ABOVE if page.stakes_possible else messages.ABOVE_SLAB
    return message.format(do=do, ask=page.facts.ask)


def _weighed(verdict: Verdict, page: SheetFacts) -> list[str]:
    tied = verdict.tied
    if tied.ways[0] is Way.WEIGHT and tied.weight is not None:
        return [messages.WEIGH.format(what=weight_said(tied.weight, page.facts))]
    return []


def _driven(page: SheetFacts) -> list[str]:
    """Return how each row of anchors and guys is set, and how far out."""
    out, amounts = page.out, page.amounts
    found: list[str] = []
    for anchors, row in zip(out.held.anchors, out.anchor_rows, strict=True):
        group = kinds.find_anchor(row.kind).group
        key = {"slab bolt": "bolt"}.get(group, group)
        message = messages.DRIVE.get(key, messages.DRIVE["anchor"])
        number = len(anchors.points)
        what = several_anchors(number, row.kind)
        how = how_set(row, number, amounts)
        found.append(message.format(what=what, far=_far(page), how=how))
    return [*found, *(f"{capital(guy_set(row, amounts))}." for row in out.guy_rows)]


def _far(page: SheetFacts) -> str:
    reaches = page.out.reaches[: len(page.out.anchors)]
    if np.ptp(reaches) > _SAME:
        return messages.FAR_AS_DRAWN
    return messages.FAR.format(far=page.amounts.length(float(reaches[0])))


def _tested(verdict: Verdict, page: SheetFacts) -> list[str]:
    if not page.stakes_possible:
        return [messages.TEST_BOLT]
    if verdict.tied.test <= 0.0:
        return [messages.TEST_HARD]
    pull = page.amounts.pull(verdict.tied.test)
    return [messages.TEST.format(pull=pull, wet=messages.WET)]


def _flagged(page: SheetFacts) -> str:
    return messages.FLAG if page.stakes_possible else messages.FLAG_BOLTS


def needed(verdict: Verdict, page: SheetFacts) -> str:
    """Return what a buyer has to have at hand."""
    out, facts = page.out, page.facts
    kind = _kind(verdict, page)
    if kind in ("mend", "laid", "stand"):
        return ""
    if kind == "posts":
        return messages.NEED.format(what=messages.POST_TOOLS)
    things = [several_anchors(len(anchors.points), anchors.kind) for anchors in out.held.anchors]
    for row in out.guy_rows:
        rope = guy_lines.find_line(row.line)
        things.append(messages.ROPES.format(count=counted(row.count, "guy"), line=rope.name))
        things.append(several_anchors(row.count, row.anchor))
    if verdict.tied.weight is not None and kind == "weigh":
        things += [bags_said(verdict.tied.weight, facts), messages.FLOOR]
    things += list(dict.fromkeys(messages.TOOLS[group] for group in sorted(out.groups)))
    if verdict.tied.test > 0.0 and len(out.ends):
        things.append(messages.PULL_SCALE.format(pull=page.amounts.pull(verdict.tied.test)))
    return messages.NEED.format(what=joined([*things, messages.LEVEL]))
