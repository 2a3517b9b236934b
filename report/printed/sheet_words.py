"""What the page for a buyer says, in the words of whoever has the piece in the yard."""

from ...checks.tied import Way
from ...checks.verdict import Verdict
from ..advice.what_to_do import joints_said, limits_said, not_looked_at_row
from ..messages import page_messages as messages
from ..wording.remark import are_many, capital, cut_short, few, joined
from .sheet_facts import SheetFacts, advice

_LONGEST = 80
_MOST_LOADS = 3


def do_runs(verdict: Verdict, page: SheetFacts) -> messages.Runs:
    """Return what is to be done then, its verbs loud."""
    drawn = messages.AS_DRAWN if len(page.out.ends) else ""
    runs = messages.DO[advice(verdict, page)]
    return tuple((words.format(as_drawn=drawn), loud) for words, loud in runs)


def held_said(verdict: Verdict, page: SheetFacts) -> str:
    """Return for which wind it was worked out when held so, and what is done over that."""
    facts = page.facts
    if page.unready:
        return ""
    if facts.laid_down:
        return messages.LAID
    over = messages.OVER_THAT_CLEAR if verdict.untied.stays_put else messages.OVER_THAT
    match verdict.tied.ways[0] if verdict.tied.ways else None:
        case Way.OWN | Way.ANCHORS | Way.GUYS:
            message = messages.TIED_FOR
        case Way.WEIGHT:
            message = messages.WEIGHED
        case Way.WIDTH:
            message = messages.WIDENED
        case _:
            message, over = messages.PLANTED if facts.posts else messages.UNTIED_FOR, ""
    said = message.format(wind=page.wind, spare=page.spare, posts=facts.planted)
    people = messages.PEOPLE if page.pushed and page.out.held.anchors else ""
    return " ".join(each for each in (said, over, people) if each)


def hands_off(verdict: Verdict) -> str:
    """Return what nobody is to do in wind."""
    stays = verdict.untied.stays_put
    return messages.HANDS_OFF.format(do=messages.KEEP_AWAY if stays else messages.LAID_IN_TIME)


def comes_off(page: SheetFacts) -> str:
    """Return that loose parts come off in that wind; nothing where none does."""
    names = cut_short(joined(page.loose), _LONGEST)
    if not names:
        return ""
    message = messages.COMES_OFF[are_many(page.loose)]
    return message.format(names=names.upper(), wind=page.gust)


def basis(verdict: Verdict, page: SheetFacts) -> str:
    """Return what the numbers rest on: wind, ground, weight, what moves it untied, any test."""
    level = "" if page.sloping else ", level"
    ground = f"{capital(page.facts.ground)}{level}; {_weight(page)}."
    joints = joints_said(verdict, page.facts)
    seams = messages.SEAMS.format(names=few(page.seams)) if page.seams else ""
    limits = limits_said(verdict, page.facts)
    message = messages.MOVES_POSTS if page.facts.posts else messages.MOVES
    moves = message.format(unit=page.amounts.speed_unit, limits=limits) if limits else ""
    tested = messages.CALCULATED[page.was_tested]
    return " ".join(each for each in (ground, moves, capital(joints), seams, tested) if each)


def _weight(page: SheetFacts) -> str:
    amounts, (typical, light, heavy) = page.amounts, page.weights
    added = f", with {page.added}" if page.added else ""
    whole = amounts.mass(typical)
    if page.weighed:
        return f"{whole}, as weighed{added}"
    low, high = amounts.mass(light), amounts.mass(heavy)
    return f"{whole}, as given{added}" if low == high else f"{whole} ({low} to {high}){added}"


def season(page: SheetFacts) -> str:
    """Return what is to be looked over each season."""
    out, has = page.out, messages.SEASON
    looks = {
        "posts": bool(page.facts.posts),
        "anchors": bool(len(out.anchors)),
        "guys": bool(len(out.guys)),
        "weight": bool(page.added),
        "foot": True,
        "screws": True,
        "wood": page.wood,
        "blades": page.blades,
    }
    said = joined(has[key].format(anchor=page.anchor) for key, does in looks.items() if does)
    return f"{capital(said)}."


def not_for(page: SheetFacts) -> str:
    """Return first which named loads it does not stand, which it does, then what it is not for."""
    amounts, said = page.amounts, ""
    if page.not_stood:
        names = few([f"'{name}'" for name in page.not_stood], "nor")
        said = messages.NOT_STOOD.format(names=names)
    if page.loads:
        named = [f"'{name}' ({amounts.force(force)})" for name, force in page.loads[:_MOST_LOADS]]
        said += messages.LOADS.format(loads=joined(named))
    climbing = messages.CLIMBING[bool(said)]
    return said + messages.NOT_FOR.format(climbing=climbing)


def not_looked_at_words(verdict: Verdict) -> str:
    """Return what was not looked at, in few words."""
    names = few(verdict.unfastened)
    how = f"how {names} {'are' if are_many(verdict.unfastened) else 'is'} fastened"
    said = not_looked_at_row(verdict).text
    whole = f"{how}; {said}" if names else said
    return messages.NO_PROMISE.format(what=capital(whole))
