"""Rows that the starting files share: how a body, a foot, a wall, a pair of copies is written."""

from math import ceil

from ..units import INCH
from .answers import metres, section, size
from .lines import Row, part, quoted
from .questions import Answers

TREATED = quoted("material", "southern pine, treated")


def at(metric: bool, away: float, up: float, says: str = "") -> Row:
    """Return a place straight behind (or, below 0, before) the point that a part stands on."""
    lengths = ("0 mm" if metric else "0 in", _signed(away, metric), _signed(up, metric))
    return "at", "[" + ", ".join(f"'{each}'" for each in lengths) + "]", says


def two_round(ring: str) -> list[Row]:
    """Return the rows for two copies, right and left."""
    return [("count", "2", "one right, one left"), quoted("ring", ring, "middle to middle")]


def ring_foot(answers: Answers) -> str:
    """Return a foot that is a ring of lumber."""
    return part(
        "foot",
        "frame",
        [
            sides(answers),
            quoted("across", answers["foot"], "flat to flat"),
            quoted("lumber", answers["lumber"], "as sold; its actual size is taken"),
            TREATED,
        ],
        "a ring of lumber",
    )


def body(name: str, on: str, answers: Answers) -> str:
    """Return a hollow body that stands on a part."""
    return part(
        name,
        "shell",
        [
            quoted("on", on, "stands on the middle of its top"),
            sides(answers),
            *ends(answers),
            quoted("height", answers["height"], "straight up, not along the slope"),
            *sheet(answers, "wall"),
        ],
        "hollow, open at both ends",
    )


def sides(answers: Answers) -> Row:
    """Return the number of sides."""
    return "sides", answers["sides"], ""


def ends(answers: Answers) -> list[Row]:
    """Return the widths at bottom and top, measured as they were answered."""
    says = {"": "flat to flat, outside", "_points": "corner to corner", "_side": "of one panel"}
    if answers["sides"] == "0":
        says[""] = "diameter, outside"
    over = answers["over"]
    return [
        quoted(f"bottom{over}", answers["bottom"], says[over]),
        quoted(f"top{over}", answers["top"]),
    ]


def sheet(answers: Answers, key: str) -> list[Row]:
    """Return wall or thickness, and material."""
    material = quoted("material", answers["material"])
    if "stock" in answers:
        return [
            quoted("stock", answers["stock"], "as sold; its actual thickness is taken"),
            material,
        ]
    return [quoted(key, answers["wall"]), material]


def thickness(answers: Answers) -> float:
    """Return the thickness in m of what walls and boards are of."""
    if "wall" in answers:
        return metres(answers["wall"])
    from ..materials.stock import sheet_thicknesses  # noqa: PLC0415 - tables, only where asked

    return sheet_thicknesses()[answers["stock"]]


def stick(lumber: str) -> tuple[float, float]:
    """Return width and depth in m of a standing stick, its wide side to the front."""
    one, other = section(lumber)
    return max(one, other), min(one, other)


def rounded_up(value: float, metric: bool) -> float:
    """Return a length in m, up to the next inch or cm."""
    step = 0.01 if metric else INCH
    return step * ceil(value / step - 1.0e-9)


def _signed(value: float, metric: bool) -> str:
    return ("-" if value < 0.0 else "") + size(abs(value), metric, 64)
