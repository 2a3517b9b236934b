"""How the keys of a stick, pipe or rope become a member, and what is wrong between them."""

from math import degrees, radians, sin

from ..bounds import SIZE
from ..reader.row import Row
from ..shapes.member import Member
from ..shapes.shape import Shape
from .sizes import length_as_shown, wall_fits
from .stock import lumber_section, thickness

LEAST_CUT = radians(2.0)
"""A saw cut nearer than this to the stick's own direction is a slip of the pen: judgement."""


def build_member(row: Row) -> Shape | None:
    """Return a straight piece between two points, or None with its faults recorded."""
    row.need("from", "to")
    start, end = row.offset("from"), row.offset("to")
    section = _section(row)
    wall = thickness(row, "wall", needed=False)
    if start is None or end is None or section is None or row.failed("cut"):
        return None
    width, depth, across = section
    plain = Member(start, end, width, depth, across, cut=row.text("cut") or "square")
    if not (_long_enough(row, plain) and _can_be_cut(row, plain)):
        return None
    if wall is not None:
        instead = "leave out 'wall', if it is solid"
        if not wall_fits(row, "wall", wall, plain.least_width / 2.0, instead):
            return None
    if width != depth and start[:2] == end[:2]:
        row.note("it stands plumb: its width lies along x, right and left")
    return Member(start, end, width, depth, across, wall, plain.cut)


def _section(row: Row) -> tuple[float, float, float] | None:
    """Return width, depth and, where it is round, across in m."""
    if row.given("lumber"):
        lumber = lumber_section(row, ("width", "depth", "across"), standing=False)
        return (lumber.in_plan, lumber.high, 0.0) if lumber else None
    flat = [key for key in ("width", "depth") if row.given(key)]
    if row.given("across"):
        if flat:
            row.refuse(
                flat[0],
                "either 'across' (round) or 'width' and 'depth' (flat sides), not both",
                f"leave out {', '.join(flat)}, or across",
            )
            return None
        across = row.quantity("across")
        return (0.0, 0.0, across) if across is not None else None
    row.need("width", "depth", reason=", or 'across' of a round one, or 'lumber'")
    width, depth = row.quantity("width"), row.quantity("depth")
    return (width, depth, 0.0) if width is not None and depth is not None else None


def _long_enough(row: Row, member: Member) -> bool:
    if member.length <= SIZE.least:
        row.refuse("to", "another point than 'from': the member has no length")
        return False
    if not SIZE.hold(member.length):
        found = f"{length_as_shown(row, member.length)} from end to end"
        row.fault("to", found, f"a length of {SIZE.words}")
        return False
    return True


def _can_be_cut(row: Row, member: Member) -> bool:
    """Return whether a saw held level or plumb goes through the stick; record a fault if not."""
    up = abs(float(member.axes[0][2]))
    level = float((1.0 - min(up, 1.0) ** 2) ** 0.5)
    words = degrees(LEAST_CUT)
    if member.cut == "level" and up < sin(LEAST_CUT):
        row.refuse(
            "cut",
            f"no level cut on a member that lies level (within {words:.0f} degrees)",
            "cut = 'square', or 'plumb'",
        )
        return False
    if member.cut == "plumb" and level < sin(LEAST_CUT):
        row.refuse(
            "cut",
            f"no plumb cut on a member that stands plumb (within {words:.0f} degrees)",
            "cut = 'square', or 'level'",
        )
        return False
    return True
