"""The four steps of the sheet by which a piece is set up, tied down, or set in the ground."""

from ..checks.examination import Examination
from ..checks.judging import Kind
from ..materials import anchors
from ..statics.anchor_table import AnchorRow, GuyRow
from .amounts import Amounts
from .facts import facts_of
from .messages import LAID_STEPS
from .posts_words import posts_said
from .stand import Stand, anchors_meant, stand_of
from .starts import tie_down
from .tied_words import guy_set, how_set
from .what_to_do import weight_said

_HOW = {"screw anchor": "Turn one in", "pier": "Cast one"}


def steps(examination: Examination, amounts: Amounts) -> list[str]:
    """Return the four steps by which it is tied down; those for posts where they carry it."""
    if examination.posts is not None:
        return _steps_for_posts(examination, amounts)
    if examination.design.laid_down:
        return [step.format(ground=examination.site.ground) for step in LAID_STEPS]
    if not anchors_meant(examination):
        return _steps_untied(examination, amounts)
    bolts = not examination.standing.ground.stakes_possible
    call = (
        "Find out what lies in and under the slab before drilling: heating, cables, drains."
        if bolts
        else "Call 811 in the US, or your local line, days before driving anything. Private lines "
        "(sprinklers, garden lights, pool) are not marked."
    )
    flag = (
        "Cover nuts and ends, so that nobody trips over them."
        if bolts
        else "Cap the ends and flag them, so that nobody trips over or falls on one."
    )
    return [call, _drive(examination, amounts, bolts), _test(examination, amounts), flag]


def _steps_for_posts(examination: Examination, amounts: Amounts) -> list[str]:
    said = posts_said(examination, amounts)
    return [
        "Call 811 in the US, or your local line, days before digging anything. Private lines "
        "(sprinklers, garden lights, pool) are not marked.",
        f"Dig as drawn: {said}. Tamp the earth back in thin layers; let concrete set for a week.",
        "Push hard on it from every side: nothing may move in the ground.",
        "Slope the earth or concrete away from the post, so that water runs off.",
    ]


def _steps_untied(examination: Examination, amounts: Amounts) -> list[str]:
    """Return the steps where nothing is to be driven: it stands, or has to be mended first."""
    ground = examination.standing.ground
    level = "pack the ground" if ground.stakes_possible else "put a shim"
    above = f"Above the gusts named, {tie_down(examination)}."
    if not examination.limits.act:
        above = "Never leave it untied: hold it down."
    call = (
        "Before you drive a stake for that, call 811 in the US, or your local line, days ahead. "
        "Private lines are not marked."
        if ground.stakes_possible
        else "Before you drill the slab for that, find out what lies in and under it: heating, "
        "cables, drains."
    )
    first = f"Set it on {ground.name} so that its whole foot bears."
    verdict = examination.verdict
    if verdict.is_good:
        first = f"Nothing to drive: set it on {ground.name} so that its whole foot bears."
    elif verdict.tied.weight is not None:
        facts = facts_of(examination)
        first += f" Then hold it down: {weight_said(verdict.tied.weight, facts)}."
    return [
        first,
        f"Push on it from every side: where it rocks, {level} beneath its foot.",
        above,
        call,
    ]


def _drive(examination: Examination, amounts: Amounts, bolts: bool) -> str:
    held = examination.held
    if held:
        rows = [
            f"{len(row.points)} of {row.kind}, {how_set(own, amounts)}"
            for row, own in zip(held.anchors, examination.design.several(AnchorRow), strict=True)
        ]
        rows += [guy_set(own, amounts) for own in examination.design.several(GuyRow)]
        return f"{'Set' if bolts else 'Drive'} what is drawn, at the black dots: {'; '.join(rows)}."
    if bolts:
        return "Drill and set one at each dot, into a sound slab, through the foot."
    choice = examination.anchors if stand_of(examination) is Stand.ANCHOR else None
    if choice is None:
        return "Drive one at each dot, plumb, tight against the foot, its head bearing down on it."
    how = _HOW.get(anchors.find(choice.row.kind).group, "Drive one")
    return f"{how} at each dot, plumb, tight against the foot, {how_set(choice.row, amounts)}."


def _test(examination: Examination, amounts: Amounts) -> str:
    pull = examination.remedies.stakes.pull if not examination.held else _asked_of_each(examination)
    if pull <= 0.0:
        return "Pull hard on each from every side; if it moves, use a longer one."
    if not examination.standing.ground.stakes_possible:
        return f"Pull each straight up to {amounts.pull(2.0 * pull)} on a scale: nothing may move."
    return (
        f"Pull each straight up to {amounts.pull(2.0 * pull)} on a scale, when the ground is wet. "
        "If it creeps, use a longer one."
    )


def _asked_of_each(examination: Examination) -> float:
    """Return the greatest straight pull in N on an anchor of the design."""
    return max((c.demand for c in examination.checks if c.kind is Kind.ANCHOR_HEAD), default=0.0)
