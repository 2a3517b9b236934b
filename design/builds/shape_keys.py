"""The keys that each shape takes, answers to those of another, and the closed list of shapes."""

from collections.abc import Callable, Mapping
from typing import cast

from ...units.frozen import ByValue, field
from ..bounds import BLADE_COUNT, SHELL_TOP, SIDES, SIZE_OR_ZERO
from ..reader.row import Row
from ..reader.schema import Key
from ..shapes.ball import Ball
from ..shapes.bodies import Shell, Solid
from ..shapes.boxes import FACES, Box
from ..shapes.cone import Cone
from ..shapes.cutout import Cutout
from ..shapes.flat import Frame, Panel, Plate
from ..shapes.gables import Gable
from ..shapes.hoop import Hoop
from ..shapes.member import Member
from ..shapes.roofs import Dome, Vault
from ..shapes.rotor import Rotor
from ..shapes.shape import Shape
from ..shapes.turned import Turned
from ..shapes.weight import Weight
from .roof_builds import build_cone, build_dome, build_gable, build_vault
from .shape_builds import (
    build_ball,
    build_box,
    build_frame,
    build_panel,
    build_plate,
    build_rotor,
    build_shell,
    build_solid,
    build_weight,
)
from .sizes import end_keys
from .stock import LUMBER, STOCK


class ShapeSpec(ByValue, frozen=True):
    """A shape's keys and its reading; ``words`` answer keys that belong to other shapes.

    ``later`` names keys that are not understood yet, ``called`` what people call it otherwise.
    """

    keys: tuple[Key, ...]
    build: Callable[[Row], Shape | None]
    words: Mapping[str, str] = field(default_factory=dict[str, str])
    later: frozenset[str] = frozenset()
    called: tuple[str, ...] = ()


def _member(row: Row) -> Shape | None:
    from .member_build import build_member  # noqa: PLC0415 - loaded where a piece has such a part

    return build_member(row)


def _cutout(row: Row) -> Shape | None:
    from .cutout_build import build_cutout  # noqa: PLC0415 - as above

    return build_cutout(row)


def _turned(row: Row) -> Shape | None:
    from .round_builds import build_turned  # noqa: PLC0415 - as above

    return build_turned(row)


def _hoop(row: Row) -> Shape | None:
    from .round_builds import build_hoop  # noqa: PLC0415 - as above

    return build_hoop(row)


def _lengths(*names: str) -> tuple[Key, ...]:
    return tuple(Key(name, "length") for name in names)


_SIDES = Key("sides", "count", bounds=SIDES)
_SURFACE = Key("surface", "choice", choices=("smooth", "rough", "very rough"))
_SOLIDITY = Key("solidity", "ratio")

_POINTED = "a cone ends in a point: leave it out, or take 'shell' (hollow) or 'solid'"
_NO_WALL = "a hollow one is a 'shell'"
_THICK = "'wall' is its thickness"
_CUT_WORDS = {
    "flat": "'level'",
    "horizontal": "'level'",
    "seat": "'level'",
    "vertical": "'plumb'",
    "straight": "'square'",
    "mitre": "'level' or 'plumb', as the saw is held",
    "miter": "'level' or 'plumb', as the saw is held",
}
_DIAMETER = "'across' is its width over flats, or its diameter"

SHAPES: Mapping[str, ShapeSpec] = {
    "shell": ShapeSpec(
        (
            _SIDES,
            *end_keys("bottom"),
            *end_keys("top", SHELL_TOP),
            *_lengths("height", "panel_length", "wall"),
            STOCK,
            _SURFACE,
        ),
        build_shell,
        {
            "thickness": _THICK,
            "across": "'bottom' and 'top' are its widths, alike if it is straight",
        },
        frozenset({"floor"}),
    ),
    "solid": ShapeSpec(
        (
            _SIDES,
            *end_keys("bottom"),
            *end_keys("top", SIZE_OR_ZERO),
            *_lengths("height"),
            LUMBER,
            _SURFACE,
        ),
        build_solid,
        {
            "wall": _NO_WALL,
            "thickness": _NO_WALL,
            "across": "'bottom' and 'top' are its widths, alike if it is straight",
        },
    ),
    "cone": ShapeSpec(
        (_SIDES, *end_keys("bottom"), *_lengths("height", "wall"), STOCK, _SURFACE),
        build_cone,
        {"top": _POINTED, "thickness": _THICK, "across": "'bottom' is its width at the eaves"},
    ),
    "box": ShapeSpec(
        (
            *_lengths("length", "width", "height", "wall"),
            Key("open", "choices", choices=tuple(sorted(FACES))),
            Key("top_length", "length", bounds=SIZE_OR_ZERO),
            Key("top_width", "length", bounds=SIZE_OR_ZERO),
            LUMBER,
            STOCK,
        ),
        build_box,
        {"thickness": _THICK, "depth": "'width' lies along y, away from you", "breadth": "'width'"},
        frozenset({"floor"}),
    ),
    "gable": ShapeSpec(
        (
            *_lengths("length", "width", "height", "thickness", "knee_width", "knee_height"),
            STOCK,
        ),
        build_gable,
        {"wall": "'thickness' is that of its two slopes", "depth": "'width' lies across the ridge"},
    ),
    "plate": ShapeSpec(
        (
            _SIDES,
            *end_keys("across"),
            *_lengths("length", "width", "thickness"),
            *end_keys("hole", SIZE_OR_ZERO),
            _SOLIDITY,
            STOCK,
        ),
        build_plate,
        {
            "height": "'thickness' is its height",
            "wall": "'thickness' is its height",
            "bottom": _DIAMETER,
            "breadth": "'width'",
        },
    ),
    "panel": ShapeSpec(
        (
            *_lengths("width", "height", "thickness"),
            _SOLIDITY,
            Key("climbers", "flag"),
            STOCK,
        ),
        build_panel,
        {"length": "'width' lies along x", "wall": "'thickness'", "across": "'width'"},
    ),
    "frame": ShapeSpec(
        (
            _SIDES,
            *end_keys("across"),
            *_lengths("length", "breadth", "width", "height"),
            LUMBER,
        ),
        build_frame,
        {
            "thickness": "'height' is that of the lumber, 'width' its width in plan",
            "wall": "'width' is that of the lumber in plan",
            "bottom": _DIAMETER,
            "stock": "'lumber' is what a frame is made of",
        },
    ),
    "ball": ShapeSpec(
        (*_lengths("across", "wall"), STOCK, _SURFACE),
        build_ball,
        {"sides": "a ball has none: leave it out", "thickness": _THICK, "height": "'across'"},
    ),
    "rotor": ShapeSpec(
        (
            Key("blades", "count", bounds=BLADE_COUNT),
            *_lengths("span", "root", "tip", "thickness"),
            Key("facing", "angle"),
            _SOLIDITY,
            Key("pitch", "angle"),
            Key("spins", "flag"),
            Key("yaws", "flag"),
            STOCK,
        ),
        build_rotor,
        {
            "across": "'span' is the length of one blade from the hub's middle",
            "length": "'span' is the length of one blade from the hub's middle",
            "sides": "'blades' is their number",
            "width": "'root' and 'tip' are a blade's widths",
        },
    ),
    "member": ShapeSpec(
        (
            Key("from", "offset", hint="from = ['0 in', '0 in', '0 in']"),
            Key("to", "offset", hint="to = ['0 in', '0 in', '36 in']"),
            *_lengths("width", "depth", "across", "wall"),
            Key("cut", "choice", choices=("square", "level", "plumb"), words=_CUT_WORDS),
            LUMBER,
            STOCK,
            _SURFACE,
        ),
        _member,
        {
            "length": "'from' and 'to' are its ends: they state its length",
            "height": "'depth' is square to its level 'width'; 'from' and 'to' are its ends",
            "thickness": "'width' lies level, 'depth' square to it",
            "diameter": "'across'",
            "start": "'from'; 'start' is the angle of the first copy on a ring",
            "end": "'to'",
            "sides": "'across' of a round one, 'width' and 'depth' of one with flat sides",
            "bottom": "'across' of a round one, 'width' and 'depth' of one with flat sides",
        },
    ),
    "cutout": ShapeSpec(
        (
            Key("points", "outline"),
            Key("holes", "outlines"),
            Key("outline", "text", hint="outline = 'heron.svg'"),
            *_lengths("height", "thickness"),
            STOCK,
        ),
        _cutout,
        {
            "wall": "'thickness'",
            "width": "'points' state it, or the drawing's own proportions",
            "length": "'points' state it, or the drawing's own proportions",
            "hole": "'holes', a list of outlines",
            "svg": "'outline'",
            "file": "'outline'",
            "drawing": "'outline'",
            "corners": "'points'",
            "solidity": "'holes' are cut out of it; a lattice is a 'panel'",
        },
    ),
    "dome": ShapeSpec(
        (*_lengths("across", "height", "wall"), STOCK, _SURFACE),
        build_dome,
        {
            "sides": "a dome has none: leave it out, or take 'cone'",
            "thickness": _THICK,
            "bottom": "'across' is its width at the foot",
            "width": "'across' is its width at the foot",
        },
    ),
    "vault": ShapeSpec(
        (*_lengths("length", "width", "height", "wall"), STOCK),
        build_vault,
        {
            "thickness": _THICK,
            "across": "'width' lies across the ridge",
            "depth": "'width' lies across the ridge",
            "sides": "a vault has none: leave it out",
        },
    ),
    "turned": ShapeSpec(
        (Key("profile", "outline"), _SURFACE),
        _turned,
        {
            "points": "'profile', its radius and its height at each",
            "radii": "'profile', a list of two lengths each: radius and height",
            "heights": "'profile', a list of two lengths each: radius and height",
            "height": "the last point of 'profile' states it",
            "sides": "it is round: leave it out; with flat sides take 'solid'",
            "wall": "it is solid; a hollow one is a 'shell' with sides = 0",
            "lumber": "the greatest radius of 'profile' says from what it is turned",
        },
        called=("baluster", "spindle", "bollard", "lathe", "vase", "urn", "turning"),
    ),
    "hoop": ShapeSpec(
        (
            _SIDES,
            *_lengths("across"),
            *end_keys("bar"),
            *_lengths("width", "height", "wall"),
            _SURFACE,
        ),
        _hoop,
        {
            "thickness": "'bar', or 'width' (outward) and 'height' of a flat one",
            "radius": "'across' is its outside diameter",
            "lumber": "'width' and 'height' of a bent strip; of mitred lumber it is a 'frame'",
            "section": "'bar' of a round one, 'width' and 'height' of a flat one",
        },
        called=("torus", "donut", "wreath", "rim", "moon gate", "life ring", "circle"),
    ),
    "weight": ShapeSpec((), build_weight, {"weight": "'mass'"}),
}

AnyShape = (
    Shell
    | Solid
    | Cone
    | Box
    | Gable
    | Dome
    | Vault
    | Plate
    | Panel
    | Frame
    | Member
    | Cutout
    | Ball
    | Rotor
    | Turned
    | Hoop
    | Weight
)
"""Every shape that there is: a match over them is told by the type checker what it leaves out."""


def as_any_shape(shape: Shape) -> AnyShape:
    """Return a shape as one of the closed list, for a match that has to know each."""
    return cast(AnyShape, shape)
