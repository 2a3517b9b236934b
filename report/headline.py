"""The first lines of a verdict: what to do, and the gusts at which it acts up."""

from shapely import Point, Polygon

from ..checks.examination import Examination
from ..checks.judging import Kind
from ..units import POUND
from .amounts import Amounts
from .asked_wind import to_spare, wind_words
from .fastened_seams import failing_seams, parts_of
from .held_words import hold_short, holders, what_lacks
from .joint_words import failing_joints, names_of, uncovered
from .member_words import strength_unchecked, weak_by_load, weak_parts
from .people_pull import people_pull
from .posts_words import deeper, posts_said
from .remark import are_many, counted, joined
from .shortfalls import but_not_stood, is_untied, loose_off
from .stand import Stand, hold_down, most, stand_of, width_helps

HEAVY = 150.0 * POUND
"""Above this weight (kg) nobody is told to lay a piece down: judgement."""


def headline(examination: Examination, amounts: Amounts) -> tuple[str, bool]:
    """Return the first sentences, what to do before all else, and whether they are good news."""
    stand = stand_of(examination)
    said = first_words(examination, stand, amounts)
    if examination.minimum_governs:
        said += (
            " The least wind of the standard, 16 psf on the whole outline, decides here: the "
            "answer does not follow the wind typed."
        )
    if stand is not Stand.IN_PART:
        said += but_not_stood(examination)
    said += _comes_apart(examination, stand) + _opens(examination, stand)
    said += _goes_alone(examination, stand)
    if stand not in (Stand.WEAK, Stand.IN_PART):
        said += _too_weak(examination)
    return f"{said} {starts(examination, amounts)}".strip(), stand in (
        Stand.STANDS,
        Stand.HELD,
        Stand.PLANTED,
    )


def tie_down(examination: Examination) -> str:
    """Return what is to be done before it blows too hard, as one can with its weight."""
    if examination.structure.mass("typical") <= HEAVY:
        return "tie it or lay it down"
    return "stake it" if examination.standing.ground.stakes_possible else "tie it down"


def stays_put(examination: Examination) -> bool:
    """Return whether nobody lays it down: too heavy, or with its posts in the ground."""
    return examination.posts is not None or examination.structure.mass("typical") > HEAVY


def first_words(examination: Examination, stand: Stand, amounts: Amounts) -> str:
    """Return what is to be said, and done, before all else."""
    wind, spare = wind_words(examination, amounts), to_spare(examination)
    unchecked = f"not checked: {_first_unchecked(examination)}"
    how = f"is held down by {holders(examination)}" if examination.held else "stands untied"
    if examination.posts is not None:
        how = "stands by its posts"
    match stand:
        case Stand.FALLS:
            return (
                f"IT FALLS OVER with no wind at all: {_why_it_falls(examination)}. "
                "Widen the foot or lower the piece before anything else."
            )
        case Stand.SLIDES:
            return (
                "IT SLIDES DOWNHILL with no wind at all. Level its place or pin it before "
                "anything else."
            )
        case Stand.ANCHOR:
            return _anchor(examination, amounts)
        case Stand.WEIGH:
            return f"HOLD IT DOWN. {_weigh(examination, amounts)}"
        case Stand.HOPELESS:
            return (
                "NOTHING IN THIS LIST HOLDS IT. Make it lower or smaller, or set its posts in "
                "the ground in concrete."
            )
        case Stand.SLIPS:
            return (
                f"NOT HELD ENOUGH by {holders(examination)} for the {wind}: "
                f"{what_lacks(examination, amounts)}."
            )
        case Stand.SINKS:
            return (
                f"SPREAD ITS FOOT. It {how} in the {wind}, {spare}, but presses harder "
                f"on {examination.site.ground} than that bears; {unchecked}."
            )
        case Stand.PUSHED:
            who = "a child" if examination.site.people == "children" else "a person"
            untied = f", counted without its {hold_short(examination)}," if examination.held else ""
            pulled = any(c.kind is Kind.PUSH and not c.passes for c in examination.checks)
            does = f"the pull of {who}" if pulled else "a child on its outermost edge"
            return (
                f"FASTEN IT AGAINST PEOPLE. It {how} in the {wind}, {spare}, but {does}{untied} "
                f"tips it; {unchecked}."
            )
        case Stand.IN_PART:
            return (
                f"FASTEN WHAT FAILS. The whole {how} in the {wind}, {spare}, but not "
                f"{_failing(examination)}; {unchecked}."
            )
        case Stand.WEAK:
            return (
                f"MAKE STRONGER WHAT BENDS. The whole {how} in the {wind}, {spare}, but not "
                f"{joined(weak_parts(examination), 'nor')}; {unchecked}."
            )
        case Stand.HELD:
            alone = "" if examination.needs_anchors else " It would stand untied as well."
            return (
                f"HELD DOWN by {holders(examination)} for the {wind}, {spare}; {unchecked}.{alone}"
            )
        case Stand.PLANTED:
            posts = posts_said(examination, amounts)
            return f"STANDS BY {posts}, in the {wind}, {spare}; {unchecked}."
        case Stand.SHALLOW:
            return (
                f"SET IT DEEPER. {posts_said(examination, amounts).capitalize()}, "
                f"{_give(examination)} way in the {wind}, by what the ground may be asked: "
                f"{deeper(examination, amounts)}."
            )
        case Stand.STANDS:
            return f"STANDS UNTIED in the {wind}, {spare}; {unchecked}."


def _failing(examination: Examination) -> str:
    """Return what fails in part: ``its loose cap``, ``under 'bench'``, ``its post in strength``."""
    said = {
        Kind.LOAD: "under the load '{}'",
        Kind.MEMBER: "its {} in strength",
        Kind.JOINT: "its joint '{}'",
        Kind.SEAM: "the seams of its {}",
    }
    found: dict[str, None] = {}
    for check in examination.checks:
        if not check.passes:
            words = said.get(check.kind, "its loose {}").format(check.subject)
            untied = "untied " if is_untied(examination, check) else ""
            under = f" under '{check.load}'" if check.kind is Kind.MEMBER and check.load else ""
            found[f"{untied}{words}{under}"] = None
    return joined(found, "nor")


def _why_it_falls(examination: Examination) -> str:
    structure = examination.structure
    x, y = structure.centre_of_mass("typical")[:2]
    if Polygon(structure.footprint).contains(Point(x, y)):
        lean = " on this slope" if examination.site.slope else ""
        return f"{examination.site.ground} gives way beneath its foot{lean}"
    return "its balance point lies beyond its foot"


def _anchor(examination: Examination, amounts: Amounts) -> str:
    stakes = examination.remedies.stakes
    what = hold_down(examination)
    number = counted(len(stakes.points), what, f"{what}s")
    number = number[0].upper() + number[1:]
    people = people_pull(examination) > stakes.pull
    if stakes.pull <= 0.0:
        side = f"{number} that each hold {amounts.pull(stakes.sideways)} sideways"
        if people:
            return f"ANCHOR IT. {side} are enough against sliding, NOT for people pushing."
        return f"ANCHOR IT. {side} would keep it from sliding."
    up = f"{number} that each hold {amounts.pull(stakes.pull)} straight up"
    if people:
        return f"ANCHOR IT. {up} are enough for the wind, NOT for people pushing."
    return f"ANCHOR IT. {up} would keep it down."


def _weigh(examination: Examination, amounts: Amounts) -> str:
    remedies = examination.remedies
    ways: list[str] = []
    if remedies.ballast <= most("weight laid low"):
        ways.append(f"about {amounts.mass_needed(remedies.ballast)} fixed low")
    if width_helps(examination) and remedies.base_width is not None:
        ways.append(f"a foot about {amounts.width_needed(remedies.base_width)} across")
    if not examination.standing.ground.stakes_possible:
        ways.append("bolts into the slab")
    said = joined(ways, "or")
    return f"{said[0].upper()}{said[1:]} would keep it where it stands."


def _comes_apart(examination: Examination, stand: Stand) -> str:
    """Say that joints fail, where the first sentences do not say so already."""
    failing = failing_joints(examination)
    if not failing or stand is Stand.IN_PART:
        return ""
    worst = f"the joint {names_of(failing[:1])}"
    more = f" and {counted(len(failing) - 1, 'other')}" if len(failing) > 1 else ""
    plain = "does" if len(failing) == 1 else "do"
    under = dict.fromkeys(f"under '{joint.check.load}'" for joint in failing if joint.check.load)
    wind = ["in that wind"] if any(not joint.check.load for joint in failing) else []
    where = joined([*wind, *under], "or")
    return f" And {worst}{more} {plain} not hold {where}: fasten better, see below."


def _opens(examination: Examination, stand: Stand) -> str:
    """Say that seams fail, where the first sentences do not say so already."""
    failing = failing_seams(examination)
    if not failing or stand is Stand.IN_PART:
        return ""
    if failing_joints(examination):
        return f" Nor do the seams of {parts_of(failing)}."
    return (
        f" And the seams of {parts_of(failing)} do not hold in that wind: fasten better, see below."
    )


def _too_weak(examination: Examination) -> str:
    """Say which parts are not strong enough for the wind, and which under a named load."""
    return "".join(
        f" Too weak under '{load}': {joined(names)}."
        if load
        else f" Not strong enough for that wind: {joined(names)}."
        for load, names in weak_by_load(examination).items()
    )


def _goes_alone(examination: Examination, stand: Stand) -> str:
    """Say that loose parts go by themselves, where the first sentences do not say so already."""
    names = loose_off(examination)
    if not names or stand is Stand.IN_PART:
        return ""
    goes, them = ("go", "them") if are_many(names) else ("goes", "it")
    return f" And its loose {joined(names)} {goes} without the rest: fasten {them}."


def _first_unchecked(examination: Examination) -> str:
    if not examination.joints:
        alone = len(examination.design.parts) == 1
        return "strength of what it is made of" if alone else "joints"
    return "some joints" if uncovered(examination) else strength_unchecked(examination).short


def starts(examination: Examination, amounts: Amounts) -> str:
    """Return at which forecast gust it slides and starts to tip, with the range."""
    if examination.posts is not None:
        return _gives_way(examination, amounts)
    limits = examination.limits
    tips, slides = limits.forecast_tipping, limits.forecast_sliding
    if limits.tipping is not None and limits.tipping <= 0.0:
        return "Untied it falls over with no wind at all." if examination.held else ""
    beyond = amounts.gust(150.0)
    untied = "Left untied" if examination.needs_anchors and not examination.held else "Untied"
    tipping, sliding = _who(limits.loose_tips), _who(limits.loose_slides)
    slides_first = slides is not None and slides > 0.0 and (tips is None or slides < 0.97 * tips)
    first = ""
    if slides_first:
        off = " off" if limits.loose_slides is not None else ""
        again = "" if tipping == sliding else f"{tipping} "
        untied = f"{untied} {sliding}"
        first = f"slides{off} at about {amounts.gust(slides or 0.0)} and {again}"
    else:
        untied = f"{untied} {tipping}"
    if tips is None:
        gusts = ", in gusts as forecast" if first else ""
        return f"{untied} {first}starts to tip in no gust below {beyond}{gusts}."
    low, high = limits.tipping_low, limits.tipping_high
    upper = amounts.bare_gust(high / limits.ratio) if high is not None else f"over {beyond}"
    spread = f"({amounts.bare_gust((low or 0.0) / limits.ratio)} to {upper})"
    if first:
        about = amounts.bare_gust(tips)
        return f"{untied} {first}starts to tip at about {about} {spread}, in gusts as forecast."
    return f"{untied} starts to tip in a forecast gust of about {amounts.gust(tips)} {spread}."


def _who(loose: str | None) -> str:
    """Return what goes first: the whole, or a loose part by itself."""
    return "it" if loose is None else f"the {loose}"


def _gives_way(examination: Examination, amounts: Amounts) -> str:
    """Say at which forecast gust its posts reach what the ground around them is allowed."""
    limits = examination.limits
    tips, low, high = limits.forecast_tipping, limits.tipping_low, limits.tipping_high
    reach = "It reaches" if _give(examination) == "gives" else "They reach"
    beyond = amounts.gust(150.0)
    if tips is None:
        return f"{reach} what the ground may be asked in no gust below {beyond}."
    upper = amounts.bare_gust(high / limits.ratio) if high is not None else f"over {beyond}"
    spread = f"({amounts.bare_gust((low or 0.0) / limits.ratio)} to {upper})"
    return (
        f"{reach} what the ground may be asked in a forecast gust of about "
        f"{amounts.gust(tips)} {spread}."
    )


def _give(examination: Examination) -> str:
    return "gives" if examination.posts and len(examination.posts.part) == 1 else "give"
