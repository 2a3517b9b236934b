"""How the keys of what is round all about become its shape: turned on a lathe, or a hoop."""

from itertools import pairwise

from ..bounds import MOST_CORNERS, SIZE
from ..reader.row import Row
from ..shapes.hoop import Hoop
from ..shapes.plans import Plan, Rectangle, Regular
from ..shapes.shape import Shape
from ..shapes.turned import Turned
from .sizes import ROUNDING, across_flats, length_as_shown, wall_fits, width_keys
from .stock import thickness

_EXAMPLE = "profile = [['1 in', '0 in'], ['2 in', '3 in'], ['1 in', '12 in']]"


def build_turned(row: Row) -> Shape | None:
    """Return a turned body, or None with its faults recorded."""
    row.need("profile", reason=", its radius and height at each point from the foot up")
    profile = row.outline("profile")
    if profile is None or not _can_be_turned(row, profile):
        return None
    return Turned(tuple((radius, height - profile[0][1]) for radius, height in profile))


def _can_be_turned(row: Row, profile: tuple[tuple[float, float], ...]) -> bool:
    """Return whether a profile is that of a body; record a fault for each thing that is wrong."""
    faults: list[tuple[str, str, str]] = []
    if len(profile) < 2:
        faults.append((f"{len(profile)} points", "at least 2 points, foot and top", _EXAMPLE))
    if len(profile) > MOST_CORNERS:
        most = f"at most {MOST_CORNERS:,} points"
        faults.append((f"{len(profile):,} points", most, "leave points out"))
    for k, (radius, _) in enumerate(profile, 1):
        if radius < 0.0:
            shown = f"point {k}: radius {length_as_shown(row, radius)}"
            faults.append((shown, "a radius of 0 or more", "the first of each two is the radius"))
    for k, ((_, low), (_, high)) in enumerate(pairwise(profile), 2):
        if high < low:
            shown = (
                f"point {k}: height {length_as_shown(row, high)} after {length_as_shown(row, low)}"
            )
            hint = "the second of each two is the height above the foot"
            faults.append((shown, "heights from the foot up, none below the one before", hint))
    tall = profile[-1][1] - profile[0][1] if profile else 0.0
    widest = 2.0 * max((radius for radius, _ in profile), default=0.0)
    for what, size in (("high", tall), ("across", widest)):
        if not faults and not SIZE.hold(size):
            faults.append((f"{length_as_shown(row, size)} {what}", f"a size of {SIZE.words}", ""))
    thin = [k for k, ((a, _), (b, _)) in enumerate(pairwise(profile), 1) if a <= 0.0 and b <= 0.0]
    if thin and not faults:
        shown = f"points {thin[0]} and {thin[0] + 1}: both of radius 0"
        faults.append((shown, "some thickness between two points", "leave one of them out"))
    for found, expected, hint in faults:
        row.fault("profile", found, expected, hint)
    return not faults


def build_hoop(row: Row) -> Shape | None:
    """Return a ring of one section, or None with its faults recorded."""
    row.need("across")
    across, section = row.quantity("across"), _section(row)
    wall = thickness(row, "wall", needed=False)
    if across is None or section is None:
        return None
    deep = section.length if isinstance(section, Rectangle) else section.across
    if deep >= across / 2.0 * (1.0 - ROUNDING):
        key = "width" if isinstance(section, Rectangle) else _given_bar(row)
        half = length_as_shown(row, across / 2.0)
        row.refuse(key, f"less than {half}, half of its width", "shape = 'plate', if it is closed")
        return None
    if wall is not None and not wall_fits(
        row, "wall", wall, section.least_width / 2.0, "leave out 'wall', if it is solid"
    ):
        return None
    return Hoop((across - deep) / 2.0, section, wall)


def _given_bar(row: Row) -> str:
    return next((key for key in width_keys("bar") if row.given(key)), "bar")


def _section(row: Row) -> Plan | None:
    """Return a hoop's section: a bar, round or with sides, or a rectangle."""
    bars = [key for key in ("sides", *width_keys("bar")) if row.given(key)]
    oblong = [key for key in ("width", "height") if row.given(key)]
    if bars and oblong:
        row.refuse(
            oblong[0],
            "either 'bar' or 'width' and 'height', not both",
            f"leave out {', '.join(oblong)}, or {', '.join(bars)}",
        )
        return None
    if oblong:
        row.need("width", "height")
        width, height = row.quantity("width"), row.quantity("height")
        return Rectangle(width, height) if width is not None and height is not None else None
    if row.failed("sides"):
        return None
    sides = row.count("sides") or 0
    bar = across_flats(row, "bar", sides)
    return Regular(sides, bar) if bar is not None else None
