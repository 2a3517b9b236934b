"""Where a part stands: the keys of its place, and what is wrong among the places of all."""

from collections.abc import Mapping, Sequence

from ..bounds import COUNT, TILT
from ..model import Place
from ..reader.near_names import guess, meant, quoted_names, sure
from ..reader.row import Row
from ..reader.schema import Instead, Key
from ..reader.typed_text import quoted, shown

PLACE_KEYS = (
    Key("on", "text"),
    Key("under", "text"),
    Key("at", "offset"),
    Key("tilt", "angle", bounds=TILT),
    Key("turn", "angle"),
    Key("count", "count", bounds=COUNT),
    Key("ring", "length"),
    Key("start", "angle"),
    Key("step", "offset"),
    Key("mirror", "choices", choices=("x", "y")),
    Key("loose", "flag"),
    Key("hangs_at", "length"),
)

_STEP = "step = ['12 in', '0 in', '0 in']"


def read_place(row: Row) -> Place:
    """Return a part's place; record what is wrong between its keys."""
    _check_copies(row)
    _check_support(row)
    return Place(
        on=row.text("on"),
        at=row.offset("at") or (0.0, 0.0, 0.0),
        turn=row.quantity("turn") or 0.0,
        count=row.count("count") or 1,
        ring=row.quantity("ring"),
        start=row.quantity("start") or 0.0,
        under=row.text("under"),
        tilt=row.quantity("tilt") or 0.0,
        step=row.offset("step"),
        mirror=row.choices("mirror"),
    )


def check_places(rows: Sequence[Row], named: frozenset[str]) -> None:
    """See to it that each part is measured from one that there is, and none from itself.

    ``named`` are parts that stand in the file but could not be read.
    """
    first: dict[str, Row] = {}
    for row in rows:
        name = row.text("name")
        if name is not None:
            first.setdefault(name, row)
    unread = named | {name for row in rows if (name := row.meant("name")) is not None}
    below: dict[str, tuple[str, str]] = {}
    for row in rows:
        name = row.text("name")
        for key in ("on", "under"):
            other = row.text(key) if key in row.keys else None
            if other is None:
                continue
            if other == name:
                verb = "stand on" if key == "on" else "hang under"
                row.fault(key, shown(other), f"another part: it cannot {verb} itself")
            elif other not in first:
                if other not in unread:
                    _name_others(row, key, other, [each for each in first if each != name])
            elif name is not None and row is first[name]:
                below.setdefault(name, (key, other))
    _check_circles(rows, below)


def _check_copies(row: Row) -> None:
    """See to it that copies stand round a ring or along a row, and nothing is said without them."""
    ring, step, count = (row.given(key) for key in ("ring", "step", "count"))
    if ring and step:
        row.refuse("step", "either 'ring' or 'step', not both", "leave out one of the two")
    elif count and not (ring or step):
        row.refuse(
            "count",
            "'ring' beside it, the diameter of the circle on which the copies stand, or 'step' "
            "from each copy to the next",
            f"ring = '24 in' or {_STEP}",
        )
    for key in ("ring", "step", "start"):
        if row.given(key) and not count:
            words = "how many there are" if key == "step" else "how many stand round"
            row.refuse(key, f"'count' beside it: {words}", "count = 4")
    if row.given("start") and count and step and not ring:
        row.refuse("start", "'ring' beside it: a row begins at the part itself", "leave it out")
    if row.given("mirror") and not row.failed("mirror") and not row.choices("mirror"):
        row.refuse("mirror", "one of 'x', 'y', or both", "mirror = ['x']")
    if row.offset("step") == (0.0, 0.0, 0.0):
        row.refuse("step", "a step that moves each copy on: they all stand in one place", _STEP)


def _check_support(row: Row) -> None:
    """See to it that a part stands, or hangs, in one way."""
    if row.given("on") and row.given("under"):
        row.refuse(
            "under",
            "either 'on' (it stands) or 'under' (it hangs), not both",
            "leave out one of the two",
        )
    if row.given("on") and row.given("hangs_at"):
        row.refuse(
            "hangs_at",
            "no 'hangs_at' beside 'on': a part that swings from a hook stands on nothing",
            "leave out one of the two",
        )
    for key in ("under", "hangs_at"):
        if row.given(key) and row.flag("loose"):
            row.refuse(
                "loose",
                f"no 'loose' beside '{key}': it hangs, and does not stand by its weight",
                "leave it out",
            )
            break


def _name_others(row: Row, key: str, other: str, names: Sequence[str]) -> None:
    rest = f", and {len(names) - 12} more" if len(names) > 12 else ""
    words = f"the name of another part: {quoted_names([shown(name) for name in names[:12]])}{rest}"
    expected = words if names else "the name of another part, and there is none"
    hint = meant(other, names)
    near = guess(hint)
    instead = Instead(quoted(near), sure(other, hint, names)) if near else None
    row.fault(key, shown(other), expected, hint, instead)


def _check_circles(rows: Sequence[Row], below: Mapping[str, tuple[str, str]]) -> None:
    told: set[str] = set()
    for row in rows:
        name = row.text("name")
        circle = _circle(name, below) if name is not None else []
        if circle and not told & set(circle):
            told |= set(circle)
            key, other = below[circle[0]]
            way = "".join(f"{shown(name)} {below[name][0]} " for name in circle) + shown(circle[0])
            row.fault(key, shown(other), "no circle: one part must stand first", way)


def _circle(name: str, below: Mapping[str, tuple[str, str]]) -> list[str]:
    """Return the parts of the circle through ``name``, or nothing if there is none."""
    way = [name]
    while (link := below.get(way[-1])) is not None and len(way) <= len(below):
        if link[1] == name:
            return way
        way.append(link[1])
    return []
