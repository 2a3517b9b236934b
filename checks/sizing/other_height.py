"""The same piece lower or taller: every upright size above its foot scaled alike."""

from collections.abc import Callable

from ...design.model import Design, Part, Place
from ...design.placing import place_parts
from ...design.shapes.shape import Shape
from ...loads.given import GivenLoad
from ...statics.tables.anchor_table import GuyRow
from ...units.frozen import ByValue, replace
from ..anchoring.ground_parts import GroundParts
from .weighed_again import weighed_again

_LEAST, _MOST = 1.0e-3, 100.0
_CLOSE = 1.0e-10
_ROUNDS = 100


class _Stretch(ByValue, frozen=True):
    """Heights above the foot's top ``base`` in m times ``factor``."""

    base: float
    factor: float

    def up(self, height: float) -> float:
        """Return where a height above ground comes to lie."""
        return height if height <= self.base else self.base + self.factor * (height - self.base)


def with_height(design: Design, ground: GroundParts, height: float) -> Design | None:
    """Return the design ``height`` m tall over all, None where it cannot be made so.

    Bodies, roofs, panels and rises are scaled alike; widths, what lies flat, balls, rounds and
    wheels keep their size, a sawn outline its form. A given mass goes with the volume.
    """

    def top(factor: float) -> float:
        changed = _stretched(design, ground, factor)
        return max(body.top for body in place_parts(changed))

    factor = _factor(top, height)
    if factor is None:
        return None
    changed = _stretched(design, ground, factor)
    if not all(_can_be_made(part.shape) for part in changed.parts):
        return None
    return weighed_again(design, changed)


def _factor(top: Callable[[float], float], height: float) -> float | None:
    """Return the factor at which ``top`` is ``height`` m; it rises, mostly in a straight line."""
    low, high = _LEAST, 1.0
    under, over = top(low) - height, top(high) - height
    while over < 0.0:
        low, under, high = high, over, 2.0 * high
        if high > _MOST:
            return None
        over = top(high) - height
    if under > 0.0:
        return None
    if over <= _CLOSE:
        return high
    for _ in range(_ROUNDS):
        factor = high - over * (high - low) / (over - under)
        now = top(factor) - height
        if abs(now) <= _CLOSE:
            return factor
        if now < 0.0:
            low, under, over = factor, now, 0.5 * over
        else:
            high, over, under = factor, now, 0.5 * under
    return high


def _stretched(design: Design, ground: GroundParts, factor: float) -> Design:
    stretch = _Stretch(ground.top, factor)
    parts = tuple(
        part if i in ground.feet else _part(part, stretch) for i, part in enumerate(design.parts)
    )
    tables = dict(design.tables)
    loads, guys = design.several(GivenLoad), design.several(GuyRow)
    if loads:
        tables[GivenLoad] = tuple(
            replace(load, at=(load.at[0], load.at[1], stretch.up(load.at[2]))) for load in loads
        )
    if guys:
        tables[GuyRow] = tuple(replace(row, height=stretch.up(row.height)) for row in guys)
    return replace(design, parts=parts, tables=tables)


def _part(part: Part, stretch: _Stretch) -> Part:
    shape = part.shape.stretched(stretch.factor)
    mass = part.mass
    if mass is not None and shape is not part.shape:
        mass *= shape.moments().volume / part.shape.moments().volume
    hook = stretch.up(part.hangs_at) if part.hangs_at is not None else None
    return replace(part, shape=shape, mass=mass, place=_place(part.place, stretch), hangs_at=hook)


def _place(place: Place, stretch: _Stretch) -> Place:
    x, y, z = place.at
    z = stretch.up(z) if place.reference is None else stretch.factor * z
    step = place.step
    if step is not None:
        step = (step[0], step[1], stretch.factor * step[2])
    return replace(place, at=(x, y, z), step=step)


def _can_be_made(shape: Shape) -> bool:
    """Return whether walls still leave a hollow, as the reader of files asks too."""
    return shape.wall_thickness is None or bool(shape.cavities())
