"""What a structure offers the wind: coefficient times area of each body, and where it acts."""

from collections import Counter
from collections.abc import Sequence
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from ..design import plane
from ..design.faults import DesignError, Fault
from ..design.outlines import downwind_axes, lateral_axes, outlines
from ..design.placing import Body
from ..design.plane import Polygons
from ..design.shapes.rotor import Rotor
from ..design.structure import Structure
from ..units.arrays import Array
from ..units.frozen import ByIdentity
from .coefficients import rotor
from .coefficients.boards import boards
from .coefficients.shape_coefficients import Coefficient
from .methods import Method
from .roofs.uplift import Lift, lift
from .seen import hiding
from .seen.connected import tops
from .seen.directions import wind_directions
from .seen.hiding import Hidden
from .seen.sheltering import shelter
from .seen.visible import Faces, breadth, count_twice, measure, silhouette


class Exposed(ByIdentity, frozen=True):
    """What a structure offers the wind from the azimuths (D,) in degrees, before any wind blows.

    ``below`` and ``above`` (bodies, D) are coefficient times visible area in m2 up to and beyond
    the pressure ``limit`` (bodies,) in Pa; ``along`` (bodies, D, 2) the force's unit vector,
    ``arm`` (bodies, D) its turning arm about the origin in m (counter-clockwise), ``up`` its
    height in m. ``case`` (bodies, S) multiplies the force in each sign case and ``shift``
    (bodies, S, D) turns it about the board's middle, in m; ``rise`` (bodies,) lifts it.
    ``outline`` (bodies, D) are the outlines, of ``solidity`` (bodies, D).
    ``visible`` are the outlines less what is hidden, and ``area`` (bodies, D) theirs in m2;
    ``sheltered`` (bodies, D) is the share of the force that shelter leaves, and ``pressure_height``
    (bodies,) the height at which each body's pressure is taken. ``coefficient`` (bodies, D) is the
    greater of each body's own force coefficients.
    """

    azimuths: Array
    wind: Array
    below: Array
    above: Array
    limit: Array
    kinds: tuple[str, ...]
    along: Array
    arm: Array
    up: Array
    rise: Array
    cases: tuple[str, ...]
    case: Array
    shift: Array
    suction: Lift
    outline: Polygons
    solidity: Array
    breadth: Array
    pressure_height: Array
    coefficient: Array
    height: float
    area: Array
    visible: Polygons
    sheltered: Array

    seen: Faces | None = None

    @cached_property
    def silhouette(self) -> Faces:
        """Return area and centroid (D,) of the whole outline, overlap counted once.

        Of what is ``seen`` of it only, where that was said.
        """
        return silhouette(self.outline, self.solidity) if self.seen is None else self.seen

    @property
    def gives_shelter(self) -> bool:
        """Return whether any force is lessened by shelter."""
        return bool((self.sheltered < 1.0).any())

    @property
    def counts_twice(self) -> bool:
        """Return whether bodies that stand behind one another each take their full wind."""
        return count_twice(self.visible)


class Bare(ByIdentity, frozen=True):
    """What the wind would find of each body alone: outlines, coefficients, and what acts normal.

    ``standing`` (bodies, D) is the share of the level force that acts beside what acts normal to a
    free roof or leaning board. ``hiding`` is what hides what where all stand together.

    Found once for a structure, however many of its parts are then looked at by themselves.
    """

    azimuths: Array
    outline: Polygons
    coefficients: tuple[Coefficient, ...]
    suction: Lift
    standing: Array
    hiding: tuple[Hidden, ...]

    @property
    def solidity(self) -> Array:
        """Return the solidity (bodies, D) of each body."""
        return np.array([c.solidity for c in self.coefficients])


def bare(structure: Structure, surfaces: Sequence[str | None], method: Method) -> Bare:
    """Return what each body offers by itself, with the coefficients of a method.

    ``surfaces`` names each part's roughness or None. DesignError where more bodies stand in and
    close behind one another than are looked at.
    """
    azimuths = wind_directions(structure)
    angles = np.radians(azimuths)
    outline = outlines(structure.bodies, angles)
    coefficients = tuple(_coefficients(structure, angles, surfaces, method))
    normal, standing = lift(structure, outline, coefficients, angles, method.tops)
    return Bare(
        azimuths,
        outline,
        coefficients,
        normal,
        _kept(coefficients, standing),
        _hidden(structure, outline, _greater(coefficients), angles),
    )


def _hidden(
    structure: Structure, outline: Polygons, coefficient: Array, angles: Array
) -> tuple[Hidden, ...]:
    """Return what hides what, or raise DesignError at the part of which too much does."""
    try:
        return hiding.hidden(structure.bodies, outline, coefficient, angles)
    except hiding.CrowdedError as crowd:
        design = structure.design
        crowded = Counter(structure.bodies[body].part for pair in crowd.pairs for body in pair)
        name = design.parts[max(crowded, key=lambda part: (crowded[part], part))].name
        fault = Fault(
            design.file,
            design.lines.get((name, "count")) or design.lines.get((name, "name")),
            name,
            "count",
            f"{len(crowd.pairs):,} pairs of parts in or close behind one another",
            f"at most {hiding.MOST_LOOKS:,} comparisons, one a pair and side",
            "draw what is packed as one part",
        )
        raise DesignError((fault,)) from None


def with_weights(
    each: Bare, structure: Structure, surfaces: Sequence[str | None], method: Method
) -> Bare:
    """Return what each body offers where a structure has weights more, last of its bodies.

    They offer nothing, and change nothing of what ``each`` other body does.
    """
    angles = np.radians(each.azimuths)
    more = structure.bodies[len(each.coefficients) :]
    terms = each.suction.terms
    none = np.zeros((len(more), *terms.shape[1:]))
    return Bare(
        each.azimuths,
        np.concatenate([each.outline, outlines(more, angles)]),
        tuple(_coefficients(structure, angles, surfaces, method)),
        Lift(each.suction.names, np.concatenate([terms, none])),
        np.concatenate([each.standing, np.ones((len(more), len(angles)))]),
        each.hiding,
    )


def expose(
    structure: Structure,
    each: Bare,
    sheltering: bool,
    only: NDArray[np.bool_] | None = None,
) -> Exposed:
    """Return what a structure offers the wind, of what ``each`` of its bodies does by itself.

    ``only`` (bodies,) takes some of the bodies alone, as if nothing stood before or behind them.
    """
    azimuths, outline, coefficients = each.azimuths, each.outline, each.coefficients
    suction, solidity = each.suction, each.solidity
    angles = np.radians(azimuths)
    bodies = structure.bodies
    hooks = [part.hangs_at for part in structure.design.parts]
    if only is not None:
        outline = plane.kept(np.broadcast_to(only[:, None], outline.shape), outline)
        suction = suction.of(only)
    else:
        only = np.ones(len(bodies), dtype=bool)
    unhidden = hiding.visible(outline, each.hiding, only)
    visible, whole = measure(unhidden), measure(outline)
    sheltered = np.ones(visible.area.shape)
    if sheltering:
        sheltered = shelter(bodies, outline, unhidden, solidity, downwind_axes(angles))
    kept = each.standing * sheltered
    below, above, along, arm, up = _forces(bodies, coefficients, visible, whole, angles, hooks)
    names, case, shift = _sign_cases(bodies, coefficients, angles)
    return Exposed(
        azimuths=azimuths,
        wind=downwind_axes(angles),
        below=below * kept,
        above=above * kept,
        limit=np.array([c.limit for c in coefficients]),
        kinds=tuple(c.kind for c in coefficients),
        along=along,
        arm=arm,
        up=up,
        rise=np.array(
            [
                c.sign.rise if c.sign and hooks[body.part] is None else 0.0
                for body, c in zip(bodies, coefficients, strict=True)
            ]
        ),
        cases=names,
        case=case,
        shift=shift,
        suction=suction,
        outline=outline,
        solidity=solidity,
        breadth=breadth(outline),
        pressure_height=_pressure_heights(bodies, coefficients, visible),
        coefficient=_greater(coefficients),
        height=structure.height,
        area=visible.area,
        visible=unhidden,
        sheltered=sheltered,
    )


def _greater(coefficients: Sequence[Coefficient]) -> Array:
    """Return the greater (bodies, D) of each body's own force coefficients."""
    return np.array([np.maximum(c.below, c.above) for c in coefficients])


def _kept(coefficients: Sequence[Coefficient], standing: Array) -> Array:
    """Return the share (bodies, D) of each level force that is left: edges stay whole."""
    edges = np.array([c.edges for c in coefficients])
    return edges + standing * (1.0 - edges)


def _coefficients(
    structure: Structure, angles: Array, surfaces: Sequence[str | None], method: Method
) -> list[Coefficient]:
    bodies = structure.bodies
    return [
        method.coefficient(body, top, angles, surfaces[body.part] or "rough", board)
        for body, top, board in zip(bodies, tops(bodies).tolist(), boards(bodies), strict=True)
    ]


def _forces(
    bodies: Sequence[Body],
    coefficients: Sequence[Coefficient],
    visible: Faces,
    whole: Faces,
    angles: Array,
    hooks: Sequence[float | None],
) -> tuple[Array, Array, Array, Array, Array]:
    """Return below, above (bodies, D), along (bodies, D, 2), arm and height (bodies, D).

    What swings from a hook pulls at the hook's height.
    """
    wind = downwind_axes(angles)
    below = np.array([c.below for c in coefficients]) * visible.area
    above = np.array([c.above for c in coefficients]) * visible.area
    along = np.broadcast_to(wind, (len(bodies), *wind.shape)).copy()
    arm, up = -visible.side, visible.up.copy()
    for i, body in enumerate(bodies):
        if hooks[body.part] is not None:
            up[i] = hooks[body.part]
        wheel = body.shape.wheel
        if wheel is not None:
            seen = visible.area[i] / np.where(whole.area[i] > 0.0, whole.area[i], 1.0)
            axle = _axle(body, wheel, wind)
            off = np.clip((axle * wind).sum(axis=1), 0.0, 1.0)
            below[i] = above[i] = _thrust(wheel, seen) * off**2
            along[i] = axle
            arm[i] = body.origin[0] * axle[:, 1] - body.origin[1] * axle[:, 0]
            up[i] = body.origin[2]
    return below, above, along, arm, up


def _thrust(wheel: Rotor, seen: Array) -> Array:
    """Return thrust coefficient times disc (D,) in m2, face on; ``seen`` is the share not covered.

    Only locked blades are covered by what stands before them; a spinning wheel takes its disc.
    """
    filled = wheel.blade_area / wheel.disc_area
    locked = rotor.locked(filled) * seen
    return wheel.disc_area * (
        np.maximum(locked, rotor.disc_coefficient()) if wheel.spins else locked
    )


def _axle(body: Body, wheel: Rotor, wind: Array) -> Array:
    """Return the unit vectors (D, 2) along the axle in which the wind pushes."""
    if wheel.yaws or wheel.facing is None:
        return wind
    front = body.bearing(np.pi / 2.0 - wheel.facing)
    return np.where((wind @ front < 0.0)[:, None], -front, front)


def _sign_cases(
    bodies: Sequence[Body], coefficients: Sequence[Coefficient], angles: Array
) -> tuple[tuple[str, ...], Array, Array]:
    """Return case names, force multipliers and turning arms (bodies, S, D)."""
    boards = [c.sign for c in coefficients]
    names = ["A"]
    if any(boards):
        names += ["B left", "B right"]
    if any(sign and sign.edge for sign in boards):
        names += ["C left", "C right"]
    case = np.ones((len(bodies), len(names), len(angles)))
    shift = np.zeros(case.shape)
    across = lateral_axes(angles)
    for i, (body, sign) in enumerate(zip(bodies, boards, strict=True)):
        if sign is None:
            continue
        side = across @ body.bearing(0.0)
        for j, name in enumerate(names[1:], start=1):
            ends = sign.off if name.startswith("B") else sign.edge
            if ends is not None:
                at = np.where((side > 0.0) == name.endswith("left"), 0, 1)
                factor, along = np.array(ends).T
                case[i, j] = factor[at]
                shift[i, j] = -along[at] * side
    return tuple(names), case, shift


def _pressure_heights(
    bodies: Sequence[Body], coefficients: Sequence[Coefficient], visible: Faces
) -> Array:
    """Return the height (bodies,) of each body's pressure, its centroid unless said."""
    return np.array(
        [
            c.pressure_at
            if c.pressure_at is not None
            else body.origin[2]
            if body.shape.wheel is not None
            else float(up.max())
            for body, c, up in zip(bodies, coefficients, visible.up, strict=True)
        ]
    )
