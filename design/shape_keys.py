"""The keys that each shape takes, and answers to keys that belong to another."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from .bounds import BLADES, SHELL_TOP, SIDES, SIZE_OR_ZERO
from .row import Row
from .schema import Key
from .shape_builds import (
    build_ball,
    build_box,
    build_cone,
    build_frame,
    build_gable,
    build_panel,
    build_plate,
    build_rotor,
    build_shell,
    build_solid,
    build_weight,
)
from .shapes.boxes import FACES
from .shapes.shape import Shape
from .sizes import end_keys
from .stock import LUMBER, STOCK


@dataclass(frozen=True)
class ShapeSpec:
    """A shape's keys and its reading; ``words`` answer keys that belong to other shapes.

    ``later`` names keys that are not understood yet.
    """

    keys: tuple[Key, ...]
    build: Callable[[Row], Shape | None]
    words: Mapping[str, str] = field(default_factory=dict[str, str])
    later: frozenset[str] = frozenset()


def _lengths(*names: str) -> tuple[Key, ...]:
    return tuple(Key(name, "length") for name in names)


_SIDES = Key("sides", "count", bounds=SIDES)
_SURFACE = Key("surface", "choice", choices=("smooth", "rough", "very rough"))
_SOLIDITY = Key("solidity", "ratio")

_POINTED = "a cone ends in a point: leave it out, or take 'shell' (hollow) or 'solid'"
_NO_WALL = "a hollow one is a 'shell'"
_THICK = "'wall' is its thickness"
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
        frozenset({"fill", "floor"}),
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
        frozenset({"fill", "floor"}),
    ),
    "gable": ShapeSpec(
        (*_lengths("length", "width", "height", "thickness"), STOCK),
        build_gable,
        {"wall": "'thickness' is that of its two slopes", "depth": "'width' lies across the ridge"},
        frozenset({"knee_width", "knee_height"}),
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
            Key("blades", "count", bounds=BLADES),
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
    "weight": ShapeSpec((), build_weight, {"weight": "'mass'"}),
}
