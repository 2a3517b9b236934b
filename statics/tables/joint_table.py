"""The ``[[joint]]`` table as people write it: which part is fastened to which, and by what."""

from collections.abc import Sequence

from ...design.reader.near_names import meant, quoted_names
from ...design.reader.row import Row
from ...design.reader.schema import Key, TableSpec
from ...materials.fastener import Fastener
from ...units.frozen import ByValue
from .fastener_key import (
    CROWN_WORDS,
    CROWNS,
    FASTENER_HINT,
    WOOD_WORDS,
    check_crown,
    read_fastener,
    woods,
)

_WHERE = ("ring", "rectangle", "each side")
"""Round a circle, in two rows, or so many along each side of where the parts touch."""

INTO = ("side grain", "end grain", "panel face", "panel edge")
"""What the point is driven into."""


class JointRow(ByValue, frozen=True):
    """Fasteners of one kind between the part ``of`` (above, or attached) and the part ``to``.

    ``count`` is the number at each place where a copy of one touches a copy of the other. Sizes in
    m, angles in rad. ``points`` are plan points of the design's own axes; on an upright face, along
    it and up. ``head_in`` is the one of the two parts that has the heads. ``through`` is what the
    fastener goes through, None as the part is. ``blocks`` names the wood of blocks or
    cleats inside, to which both parts are fastened, each by ``count``. ``made_wet`` None is the
    worse of wet and dry.
    """

    name: str
    of: str
    to: str
    fastener: Fastener
    count: int
    where: str | None = None
    ring: float | None = None
    start: float | None = None
    length: float | None = None
    width: float | None = None
    points: tuple[tuple[float, float], ...] | None = None
    through: float | None = None
    head_in: str | None = None
    into: str | None = None
    predrilled: bool = False
    toe_nailed: bool = False
    blocks: str | None = None
    washer: float | None = None
    steel_plate: float | None = None
    made_wet: bool | None = None
    stays_dry: bool = False
    glue: bool = False
    crown: str | None = None


def _joint(row: Row) -> JointRow | None:
    name, of, to = row.text("name"), row.text("of"), row.text("to")
    for key in ("of", "to"):
        _check_part(row, key, row.reading.part_names)
    if of is not None and of == to:
        row.refuse("to", "another part than the one of 'of'", "the part that it is fastened to")
    if row.given("head_in") and of is not None and to is not None:
        _check_part(row, "head_in", (of, to))
    found = read_fastener(row)
    points = row.outline("points") if row.given("points") else None
    count = row.count("count")
    if points is not None:
        for key in ("where", "ring", "length", "width", "start"):
            if row.given(key):
                row.refuse(key, "either 'points' or a pattern", "leave out one of the two")
        if count is not None and count != len(points):
            row.refuse("count", f"as many as there are points, {len(points)}", "leave out 'count'")
        count = len(points)
    elif not row.given("count") and not row.given("points"):
        row.fault("count", "no 'count'", "how many there are at each place", "count = 8")
    _check_pattern(row, count)
    if found is not None:
        _check_fastener(row, found)
    if not (name and of and to and found and count) or row.wrong:
        return None
    return JointRow(
        name=name,
        of=of,
        to=to,
        fastener=found,
        count=count,
        where=row.text("where"),
        ring=row.quantity("ring"),
        start=row.quantity("start"),
        length=row.quantity("length"),
        width=row.quantity("width"),
        points=points,
        through=row.quantity("through"),
        head_in=row.text("head_in"),
        into=row.text("into"),
        predrilled=bool(row.flag("predrilled")),
        toe_nailed=bool(row.flag("toe_nailed")),
        blocks=row.text("blocks"),
        washer=row.quantity("washer"),
        steel_plate=row.quantity("steel_plate"),
        made_wet=row.flag("made_wet"),
        stays_dry=bool(row.flag("stays_dry")),
        glue=bool(row.flag("glue")),
        crown=row.text("crown"),
    )


def _check_part(row: Row, key: str, names: Sequence[str]) -> None:
    """Record a part that there is none of by this name."""
    name = row.text(key)
    if name is not None and name not in names:
        row.refuse(key, f"the name of a part: {quoted_names(names, name)}", meant(name, names))


def _check_pattern(row: Row, count: int | None) -> None:
    """Record sizes that do not belong to the pattern named, and counts that do not fill it."""
    where = row.text("where")
    for key, pattern in (("ring", "ring"), ("start", "ring")):
        if row.given(key) and where not in (None, pattern):
            row.refuse(key, f"no '{key}' with where = '{where}'", f"where = '{pattern}'")
    for key in ("length", "width"):
        if row.given(key) and where not in (None, "rectangle"):
            row.refuse(key, f"no '{key}' with where = '{where}'", "where = 'rectangle'")
    if row.given("length") != row.given("width"):
        missing = "width" if row.given("length") else "length"
        row.fault(missing, f"no '{missing}'", "both sizes of the rectangle, screw to screw")
    pattern = row.given("length") or where == "rectangle"
    if pattern and count is not None and count > 3 and count % 2:
        row.refuse("count", "an even number, in two rows", f"count = {count + 1}")


def _check_fastener(row: Row, found: Fastener) -> None:
    """Record what does not go with the fastener that is named."""
    if row.flag("toe_nailed") and found.kind != "nail":
        row.refuse("toe_nailed", f"nails only: no value is published for {found.kind}s driven so")
    check_crown(row, found)
    if row.flag("toe_nailed") and row.given("through"):
        row.refuse("through", "no 'through' with toe-nails: a third of the nail is taken")
    for key in ("into", "toe_nailed", "head_in"):
        if row.given("blocks") and row.given(key):
            row.refuse(key, f"no '{key}' with 'blocks': each part is fastened to them, across it")
    if found.kind == "bolt" and row.given("blocks"):
        row.refuse("fastener", "nails or screws into blocks")
    if found.kind == "bolt" and not row.given("washer") and found.head_diameter is None:
        row.fault(
            "washer",
            "no 'washer'",
            "the diameter of the washers under head and nut",
            "washer = '1 in'",
        )


_KEYS = (
    Key("name", "text", required=True, hint="name = 'tower to foot'"),
    Key("of", "text", required=True, nth_part=0, hint="of = 'tower': the part that is fastened"),
    Key(
        "to", "text", required=True, nth_part=1, hint="to = 'foot': the part that it is fastened to"
    ),
    Key("fastener", "text", required=True, hint=FASTENER_HINT),
    Key("count", "count"),
    Key("where", "choice", choices=_WHERE),
    Key("ring", "length"),
    Key("start", "angle"),
    Key("length", "length"),
    Key("width", "length"),
    Key("points", "outline"),
    Key("through", "length"),
    Key("head_in", "text"),
    Key("into", "choice", choices=INTO),
    Key("predrilled", "flag"),
    Key("toe_nailed", "flag"),
    Key("blocks", "choice", choices=woods, words=WOOD_WORDS),
    Key("washer", "length"),
    Key("steel_plate", "length"),
    Key("made_wet", "flag"),
    Key("stays_dry", "flag"),
    Key("glue", "flag"),
    Key("crown", "choice", choices=CROWNS, words=CROWN_WORDS),
)

_WORDS = {
    "on": "'to', the part that it is fastened to",
    "from": "'of', the part that is fastened",
    "part": "'of'",
    "parts": "'of' and 'to'",
    "nail": "'fastener'",
    "staple": "'fastener'",
    "staples": "'fastener', and 'count' how many",
    "nails": "'fastener', and 'count' how many",
    "screw": "'fastener'",
    "screws": "'fastener', and 'count' how many",
    "bolt": "'fastener'",
    "number": "'count'",
    "spacing": "it is worked out from 'count' and where they stand",
    "grain": "'into'",
    "side": "'head_in', the part that has the heads",
    "head": "'head_in', the part that has the heads",
    "thickness": "'through', what the fastener goes through",
    "diameter": "'fastener' names it; 'ring' is the diameter of the circle they stand on",
    "glued": "'glue'",
    "at": "'points'",
    "wet": "'made_wet'",
    "dry": "'stays_dry', under a roof and built of dry wood",
    "block": "'blocks', the wood of blocks inside to which both are fastened",
    "cleat": "'blocks', the wood of blocks inside to which both are fastened",
    "cleats": "'blocks', the wood of blocks inside to which both are fastened",
    "plate": "'steel_plate', its thickness",
}

JOINT = TableSpec("joint", JointRow, _KEYS, _joint, many=True, words=_WORDS)
