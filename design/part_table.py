"""The ``[[part]]`` table: each part's name, shape, material and place."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from .. import materials
from .bounds import COUNT, MOST_PARTS
from .builder_words import MATERIAL_WORDS, PART_WORDS, SHAPE_WORDS
from .model import Part, Place
from .near_names import listed, meant
from .raw_values import shown
from .row import Row
from .scan import Spot
from .schema import Key, Reading
from .shape_keys import SHAPES, ShapeSpec
from .shapes.ball import Ball
from .shapes.shape import Shape

PART_KEYS = (
    Key("name", "text", required=True, hint="name = 'tower'"),
    Key("shape", "choice", required=True, choices=tuple(SHAPES), words=SHAPE_WORDS),
    Key("material", "choice", choices=materials.names, words=MATERIAL_WORDS),
    Key("density", "density"),
    Key("mass", "mass"),
    Key("contact", "choice", choices=("wood", "steel", "concrete", "rubber")),
    Key("on", "text"),
    Key("at", "offset"),
    Key("turn", "angle"),
    Key("count", "count", bounds=COUNT),
    Key("ring", "length"),
    Key("start", "angle"),
)

LATER_KEYS = frozenset(
    {"under", "tilt", "mirror", "step", "covering", "fill", "embed", "loose", "hangs_at", "cut"}
)


@dataclass(frozen=True)
class _Named:
    """A part as its row gave it, for what has to be seen across all of them."""

    row: Row
    name: str | None
    part: Part | None


def read_parts(reading: Reading, tables: Sequence[Mapping[str, object]]) -> tuple[Part, ...]:
    """Return the parts of a file; record all that is wrong with each and between them."""
    if len(tables) > MOST_PARTS:
        reading.fault(
            Spot("part", MOST_PARTS),
            None,
            f"{len(tables)} parts",
            f"at most {MOST_PARTS} parts in a file",
            "'count' and 'ring' make copies",
        )
        return ()
    found = [_read_part(reading, index, data) for index, data in enumerate(tables)]
    _check_names(found)
    _check_standing(found)
    return tuple(each.part for each in found if each.part is not None)


def _read_part(reading: Reading, index: int, data: Mapping[str, object]) -> _Named:
    spot = Spot("part", index)
    label = part_label(data, index)
    shape_name = data.get("shape")
    name = " ".join(shape_name.casefold().split()) if isinstance(shape_name, str) else ""
    spec = SHAPES.get(name)
    keys = (*PART_KEYS, *(spec.keys if spec else ()))
    row = Row(reading, spot, data, keys, label)
    if spec is None:
        return _Named(row, row.text("name"), None)
    expected = f"a key of a {name}: " + ", ".join(row.keys)
    row.check_keys({**PART_WORDS, **spec.words}, LATER_KEYS | spec.later, expected)
    shape = spec.build(row)
    if shape is not None:
        _check_surface(row, spec, shape)
    _check_weight(row, name)
    place = _place(row)
    own = row.text("name")
    if shape is None or own is None or row.wrong:
        return _Named(row, own, None)
    return _Named(
        row,
        own,
        Part(
            own,
            shape,
            place,
            row.text("material"),
            row.quantity("density"),
            row.quantity("mass"),
            row.text("contact"),
            row.text("surface"),
        ),
    )


def part_label(data: Mapping[str, object], index: int) -> str:
    """Return how a fault calls a part: by its name, else by its number."""
    name = data.get("name")
    return shown(name.strip()) if isinstance(name, str) and name.strip() else f"part {index + 1}"


def _check_surface(row: Row, spec: ShapeSpec, shape: Shape) -> None:
    takes = any(key.name == "surface" for key in spec.keys)
    if takes and row.given("surface") and not isinstance(shape, Ball) and row.count("sides"):
        row.refuse(
            "surface",
            "no 'surface' on a part with sides: it matters on round ones",
            "sides = 0, if it is round",
        )


def _check_weight(row: Row, name: str) -> None:
    """See to it that the weight is given, and given once."""
    given = [key for key in ("material", "density", "mass") if row.given(key)]
    if name == "weight":
        if row.given("density"):
            row.refuse("density", "no density: a weight has no size", "'mass'")
        return
    if "material" in given and "density" in given:
        row.refuse(
            "density",
            "either 'material' or 'density'",
            "leave out one of the two",
        )
    elif not given:
        row.fault(
            "material",
            "no 'material'",
            "what it is made of, or its 'density', or its 'mass'",
            "material = 'softwood plywood'",
        )


def _place(row: Row) -> Place:
    if row.given("count") and not row.given("ring"):
        row.refuse(
            "count",
            "'ring' beside it: the diameter of the circle on which the copies stand",
            "ring = '24 in'",
        )
    for key in ("ring", "start"):
        if row.given(key) and not row.given("count"):
            row.refuse(key, "'count' beside it: how many stand round", "count = 4")
    return Place(
        row.text("on"),
        row.offset("at") or (0.0, 0.0, 0.0),
        row.quantity("turn") or 0.0,
        row.count("count") or 1,
        row.quantity("ring"),
        row.quantity("start") or 0.0,
    )


def _check_names(found: Sequence[_Named]) -> None:
    first: dict[str, int | None] = {}
    for each in found:
        if each.name is None:
            continue
        if each.name in first:
            where = f"on line {first[each.name]}" if first[each.name] else "above"
            each.row.fault(
                "name", shown(each.name), f"a name of its own: a part {where} has it already"
            )
        else:
            scan = each.row.reading.scan
            first[each.name] = scan.line(each.row.spot.at("name"))


def _check_standing(found: Sequence[_Named]) -> None:
    """See to it that each part stands on one that there is, and none on itself in the end."""
    first = {each.name: each for each in reversed(found) if each.name is not None}
    names = list(reversed(first))
    below: dict[str, str] = {}
    for each in found:
        on = each.row.text("on") if "on" in each.row.keys else None
        if on is None:
            continue
        if on == each.name:
            each.row.fault("on", shown(on), "another part: it cannot stand on itself")
        elif on not in names:
            others = [name for name in names if name != each.name]
            expected = f"the name of another part: {listed([shown(name) for name in others[:12]])}"
            each.row.fault("on", shown(on), expected, meant(on, others))
        elif each.name is not None and each is first[each.name]:
            below[each.name] = on
    told: set[str] = set()
    for each in found:
        circle = _circle(each.name, below) if each.name is not None else []
        if circle and not told & set(circle):
            told |= set(circle)
            way = " on ".join(shown(name) for name in [*circle, circle[0]])
            each.row.fault(
                "on",
                shown(below[circle[0]]),
                "no circle: one part must stand first",
                way,
            )


def _circle(name: str, below: Mapping[str, str]) -> list[str]:
    """Return the parts of the circle through ``name``, or nothing if there is none."""
    way = [name]
    while (under := below.get(way[-1])) is not None and len(way) <= len(below):
        if under == name:
            return way
        way.append(under)
    return []
