"""The tables that hold a piece down: ``[[anchor]]``, ``[[ballast]]`` and ``[[guy]]``."""

from ...design.reader.row import Row
from ...design.reader.schema import Key, TableSpec
from ...materials import anchors, ballast, guy_lines
from ...units.frozen import ByValue

ANCHOR_WHERE = ("corners", "sides", "second sides", "feet")
"""Where anchors stand about the foot: at each corner, each side's middle, each second one's; or one
at each foot that stands apart from the others, outermost."""


class AnchorRow(ByValue, frozen=True):
    """Anchors of one kind: at places of the foot (``where``), or at a point or round a ring.

    At places of the foot they stand ``inset`` from its edges, 0 against its outside. Lengths in m,
    angles in rad, pulls in N. ``measured`` is a straight pull that one withstood on the spot in the
    wet season. Points are in the design's own axes.
    """

    name: str
    kind: str
    where: str | None = None
    at: tuple[float, float, float] = (0.0, 0.0, 0.0)
    ring: float | None = None
    count: int = 1
    start: float = 0.0
    head: str | None = None
    measured: float | None = None
    saturated: bool | None = None
    depth: float | None = None
    inset: float = 0.0


class BallastRow(ByValue, frozen=True):
    """Weight laid on a part (``on``) or inside one that has a floor (``inside``); kg of each."""

    name: str
    each: float
    count: int
    on: str | None = None
    inside: str | None = None
    at: tuple[float, float, float] = (0.0, 0.0, 0.0)
    while_full: bool = False


class GuyRow(ByValue, frozen=True):
    """Guys of one kind, evenly round: from ``height``, ``out`` of the middle, down to ``radius``.

    ``at`` moves the middle; ``start`` is the first one's plan angle from +x. Lengths in m, rad.
    """

    name: str
    line: str
    anchor: str
    height: float
    radius: float
    count: int
    start: float = 0.0
    out: float = 0.0
    at: tuple[float, float, float] = (0.0, 0.0, 0.0)
    end: str | None = None
    measured: float | None = None


def _anchor(row: Row) -> AnchorRow | None:
    name, kind = row.text("name"), row.text("kind")
    where, at = row.text("where"), row.offset("at")
    if row.given("where") and (row.given("at") or row.given("ring")):
        row.refuse("where", "either 'where' or 'at' and 'ring'", "leave out one of the two")
    if not (row.given("where") or row.given("at") or row.given("ring")):
        row.fault("where", "no 'where'", "where they stand: one of " + ", ".join(ANCHOR_WHERE), "")
    if row.given("count") != row.given("ring"):
        row.fault(
            "count" if row.given("count") else "ring",
            "'count' and 'ring' stand together",
            "the diameter of the circle and how many stand round it",
            "ring = '30 in' and count = 4",
        )
    if row.given("inset") and not row.given("where"):
        row.refuse("inset", "'where' beside it: it is from the foot's edges", "leave it out")
    deep = kind is not None and anchors.find_anchor(kind).group == "deadman"
    if deep and not row.given("depth"):
        row.fault("depth", "no 'depth'", "how deep its middle lies", "depth = '3 ft'")
    if name is None or kind is None or row.wrong:
        return None
    return AnchorRow(
        name,
        kind,
        where,
        at or (0.0, 0.0, 0.0),
        row.quantity("ring"),
        row.count("count") or 1,
        row.quantity("start") or 0.0,
        row.text("head"),
        row.quantity("pull_test"),
        row.flag("saturated"),
        row.quantity("depth"),
        row.quantity("inset") or 0.0,
    )


def _ballast(row: Row) -> BallastRow | None:
    name, kind, mass = row.text("name"), row.text("kind"), row.quantity("mass")
    if row.given("kind") == row.given("mass"):
        row.fault(
            "mass",
            "both 'kind' and 'mass'" if row.given("kind") else "no 'mass'",
            "what it is, or what each weighs, one of the two",
            "kind = 'sandbag 40 lb'",
        )
    if row.given("on") == row.given("inside"):
        row.fault(
            "on",
            "both 'on' and 'inside'" if row.given("on") else "no 'on'",
            "the part that it is fixed to or lies on, or that it lies inside of",
            "on = 'foot'",
        )
    if kind is not None and ballast.find_ballast(kind).form != "piece":
        row.refuse("kind", "something that comes in pieces", "'fill' on a part is for loose fill")
    if name is None or row.wrong or (mass is None and kind is None):
        return None
    each = mass if mass is not None else ballast.find_ballast(kind or "").least
    return BallastRow(
        name,
        each,
        row.count("count") or 1,
        row.text("on"),
        row.text("inside"),
        row.offset("at") or (0.0, 0.0, 0.0),
        kind is not None and ballast.find_ballast(kind).while_full,
    )


def _guy(row: Row) -> GuyRow | None:
    values = [row.quantity(key) for key in ("height", "radius")]
    name, line, anchor, count = (
        row.text("name"),
        row.text("line"),
        row.text("anchor"),
        row.count("count"),
    )
    out = row.quantity("out") or 0.0
    height, radius = values
    if radius is not None and radius <= out:
        row.refuse("radius", "farther out than where the guy leaves the piece")
    end = row.text("end")
    if line is not None and end is not None:
        of = guy_lines.find_line(line).of
        if end not in guy_lines.ends(of):
            row.refuse("end", f"a way to make fast a {of}: {', '.join(guy_lines.ends(of))}")
    if not (name and line and anchor and count and height and radius) or row.wrong:
        return None
    return GuyRow(
        name,
        line,
        anchor,
        height,
        radius,
        count,
        row.quantity("start") or 0.0,
        out,
        row.offset("at") or (0.0, 0.0, 0.0),
        end,
        row.quantity("pull_test"),
    )


def _ends() -> list[str]:
    return [*guy_lines.ends("rope"), *guy_lines.ends("cable")]


_NUMBER = dict.fromkeys(("number", "quantity", "copies"), "'count'")
_ANCHOR_WORDS = {
    **_NUMBER,
    **dict.fromkeys(("anchor", "type", "stake"), "'kind'"),
    **dict.fromkeys(("place", "places", "position"), "'where'"),
    **dict.fromkeys(("circle", "diameter", "across"), "'ring'"),
    **dict.fromkeys(("part", "on", "to"), "nothing: anchors hold the foot"),
}
_BALLAST_WORDS = {
    **_NUMBER,
    **dict.fromkeys(("each", "weight", "weighs"), "'mass'"),
    **dict.fromkeys(("part", "to"), "'on'"),
    **dict.fromkeys(("in", "within"), "'inside'"),
    "type": "'kind'",
}
_GUY_WORDS = {
    **_NUMBER,
    **dict.fromkeys(("reach", "distance", "ring"), "'radius'"),
    **dict.fromkeys(("rope", "cable", "wire", "kind"), "'line'"),
    **dict.fromkeys(("stake", "to"), "'anchor'"),
    **dict.fromkeys(("part", "on"), "nothing: it is tied where its 'height' lies"),
}
ANCHOR = TableSpec(
    "anchor",
    AnchorRow,
    (
        Key("name", "text", required=True, hint="name = 'stakes'"),
        Key("kind", "choice", required=True, choices=anchors.anchor_names),
        Key("where", "choice", choices=ANCHOR_WHERE),
        Key("at", "offset"),
        Key("ring", "length"),
        Key("count", "count"),
        Key("start", "angle"),
        Key("head", "choice", choices=anchors.heads),
        Key("pull_test", "force"),
        Key("saturated", "flag"),
        Key("depth", "length"),
        Key("inset", "length"),
    ),
    _anchor,
    many=True,
    words=_ANCHOR_WORDS,
)
BALLAST = TableSpec(
    "ballast",
    BallastRow,
    (
        Key("name", "text", required=True, hint="name = 'sand bags'"),
        Key("kind", "choice", choices=ballast.ballast_names),
        Key("mass", "mass"),
        Key("count", "count"),
        Key("on", "text"),
        Key("inside", "text"),
        Key("at", "offset"),
    ),
    _ballast,
    many=True,
    words=_BALLAST_WORDS,
)
GUY = TableSpec(
    "guy",
    GuyRow,
    (
        Key("name", "text", required=True, hint="name = 'guys'"),
        Key("line", "choice", required=True, choices=guy_lines.line_names),
        Key("anchor", "choice", required=True, choices=anchors.anchor_names),
        Key("height", "length", required=True, hint="height = '5 ft'"),
        Key("radius", "length", required=True, hint="radius = '4 ft'"),
        Key("count", "count", required=True, hint="count = 4"),
        Key("start", "angle"),
        Key("out", "length"),
        Key("at", "offset"),
        Key("end", "choice", choices=_ends),
        Key("pull_test", "force"),
    ),
    _guy,
    many=True,
    words=_GUY_WORDS,
)
