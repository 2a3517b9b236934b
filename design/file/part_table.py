"""The ``[[part]]`` table: each part's name, shape, material and place."""

from collections.abc import Mapping, Sequence
from functools import cache

from ... import materials
from ...materials import lumber
from ..bounds import MOST_PARTS
from ..builds.shape_keys import SHAPES, ShapeSpec
from ..model import Part, Place
from ..placing import coincide
from ..reader.near_names import lone_name, misspelt
from ..reader.row import Row, check_names
from ..reader.scan import Spot
from ..reader.schema import Key, Reading
from ..reader.typed_text import shown
from ..shapes.forms import Bars
from ..shapes.plans import Rectangle
from ..shapes.shape import Shape
from .builder_words import MATERIAL_WORDS, PART_WORDS, SHAPE_WORDS
from .coverings import COVERING, covering
from .embed_keys import EMBED_KEYS, check_embedded
from .fill_keys import FILL_KEYS, check_fill
from .place_keys import PLACE_KEYS, check_places, read_place

_SHAPE_WORDS: Mapping[str, str] = {
    **SHAPE_WORDS,
    **{word: f"'{name}'?" for name, spec in SHAPES.items() for word in spec.called},
}

PART_KEYS = (
    Key("name", "text", required=True, hint="name = 'tower'"),
    Key("shape", "choice", required=True, choices=tuple(SHAPES), words=_SHAPE_WORDS),
    Key("material", "choice", choices=materials.material_names, words=MATERIAL_WORDS),
    Key("density", "density"),
    Key("mass", "mass"),
    Key("contact", "choice", choices=("wood", "steel", "concrete", "rubber")),
    Key("grade", "choice", choices=lumber.GRADES),
    COVERING,
    *PLACE_KEYS,
    *EMBED_KEYS,
    *FILL_KEYS,
)


def read_parts(reading: Reading, tables: Sequence[Mapping[str, object]]) -> tuple[Part, ...]:
    """Return the parts of a file; record all that is wrong with each and between them."""
    if len(tables) > MOST_PARTS:
        reading.fault(
            Spot("part", MOST_PARTS),
            None,
            f"{len(tables)} parts",
            f"at most {MOST_PARTS} parts in a file",
            "'count' with 'ring' or 'step' makes copies",
        )
        return ()
    found = [_read_part(reading, index, data) for index, data in enumerate(tables)]
    rows = [row for row, _ in found]
    check_names(rows, "part")
    check_places(rows, reading.scan.names)
    return tuple(part for _, part in found if part is not None)


def _read_part(reading: Reading, index: int, data: Mapping[str, object]) -> tuple[Row, Part | None]:
    """Return a part's row, and the part where nothing is wrong with it."""
    spot = Spot("part", index)
    label = part_label(data, index)
    shape_name = next((data[key] for key in data if key == "shape" or _means_shape(key)), None)
    kind = " ".join(shape_name.casefold().split()) if isinstance(shape_name, str) else ""
    spec = SHAPES.get(kind)
    keys = (*PART_KEYS, *(spec.keys if spec else ()))
    later = spec.later if spec else frozenset[str]()
    words = {**PART_WORDS, **(spec.words if spec else {})}
    row = Row(reading, spot, data, keys, label, {**words, **dict.fromkeys(later, "")})
    if spec is None:
        if not row.wrong and spot.at("shape") not in reading.scan.broken:
            row.miss("shape")  # what stands there is too far off to be read as it
        return row, None
    own, others = (", ".join(key.name for key in each) for each in (spec.keys, PART_KEYS))
    row.check_keys(words, later, f"a key of a {kind}: {own}; or of any part: {others}")
    shape = spec.build(row)
    if shape is not None:
        _check_surface(row, spec, shape)
    _check_weight(row, kind)
    laid = covering(row, shape)
    place = read_place(row)
    _check_mirror(row, shape, place)
    check_embedded(row, shape)
    check_fill(row, shape)
    name = row.text("name")
    if shape is None or name is None or row.wrong:
        return row, None
    return row, Part(
        name=name,
        shape=shape,
        place=place,
        material=row.text("material"),
        density=row.quantity("density"),
        mass=row.quantity("mass"),
        contact=row.text("contact"),
        surface=row.text("surface"),
        covering=laid,
        loose=bool(row.flag("loose")),
        hangs_at=row.quantity("hangs_at"),
        embed=row.quantity("embed") or 0.0,
        encased=row.quantity("encased"),
        constrained=bool(row.flag("constrained")),
        may_move=bool(row.flag("may_move")),
        fill=row.text("fill"),
        fill_depth=row.quantity("fill_depth"),
        grade=row.text("grade"),
    )


def _means_shape(key: str) -> bool:
    return (
        lone_name(PART_WORDS.get(key.casefold(), "")) == "shape"
        or misspelt(key, ["shape"]) == "shape"
    )


@cache
def every_key() -> frozenset[str]:
    """Return the names of the keys that a part of any shape may have."""
    keys = [*PART_KEYS, *(key for spec in SHAPES.values() for key in spec.keys)]
    return frozenset(key.name for key in keys)


def part_label(data: Mapping[str, object], index: int, table: str = "part") -> str:
    """Return how a fault calls a part (or a row of another table): by name, else by number."""
    name = data.get("name")
    if isinstance(name, str) and name.strip():
        return shown(name.strip())
    return f"{table} {index + 1}"


def _check_surface(row: Row, spec: ShapeSpec, shape: Shape) -> None:
    takes = any(key.name == "surface" for key in spec.keys)
    if not takes or not row.given("surface"):
        return
    square = isinstance(shape.form, Bars) and isinstance(shape.form.plan, Rectangle)
    if square or row.count("sides"):
        row.refuse(
            "surface",
            f"no 'surface' on a part {'with flat sides' if square else 'with sides'}: it matters "
            "on round ones",
            "'across', if it is round" if square else "sides = 0, if it is round",
        )


def _check_mirror(row: Row, shape: Shape | None, place: Place) -> None:
    """See to it that reflected copies stand beside the part, and not once more in its own place."""
    if shape is None or row.wrong or not place.mirror or not coincide(shape, place):
        return
    row.refuse(
        "mirror",
        "a mirror that moves it: copies stand in one place",
        "leave 'mirror' out, or move the part away from the middle with 'at'",
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
