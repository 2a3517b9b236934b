"""The seams of each many-sided shell: shear flow, panel pull, and fasteners spaced along them."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import pi, tan

import numpy as np

from ..design import plane
from ..design.placing import Body
from ..design.shapes.bodies import Shell
from ..design.shapes.plans import area_factor
from ..design.structure import Structure
from ..loads.actions import Actions
from ..loads.combinations import Factors
from ..loads.exposed import Exposed
from ..loads.uplift import Uplift
from ..materials import fasteners
from ..materials import find as find_material
from . import adjustments
from .boards import panel_pressure
from .combined import USE
from .dowel_bearing import dowel_bearing
from .lateral import LEAST_PENETRATION, TIP, main_bearing_length, single_shear
from .local_wind import LocalWind
from .member_strength import STRENGTH
from .seams import edge_pull, polygon_first_moment, polygon_inertia, shear_flow, twist_flow
from .uprights import Mask
from .withdrawal import holding_length, pull_through, withdrawal

CLEAT = "spruce-pine-fir"
"""The lumber of the corner cleat that a seam is fastened into: a light, common one (judgement)."""

FASTENERS = ("6d common nail", "8d common nail", "#8 wood screw 2 in")
"""What a spacing is told for."""


@dataclass(frozen=True)
class Spacing:
    """A fastener and the greatest spacing in m at which it holds a seam; None where it does not."""

    fastener: str
    spacing: float | None


@dataclass(frozen=True)
class Seams:
    """The seams of one shell under the factored wind: ``flow`` along and ``pull`` across, in N/m.

    ``shear`` in N and ``torque`` in N m are those of the section with the greatest flow, ``level``
    its height in m. ``count`` seams; ``spacings`` hold through the panel into a corner cleat.
    """

    part: str
    count: int
    shear: float
    torque: float
    level: float
    flow: float
    pull: float
    spacings: tuple[Spacing, ...]


def seamed_parts(structure: Structure) -> tuple[str, ...]:
    """Return the parts that have seams: upright many-sided shells."""
    names = [structure.design.parts[body.part].name for body in structure.bodies if _seamed(body)]
    return tuple(dict.fromkeys(names))


def seams_of(
    structure: Structure,
    exposed: Exposed,
    local: LocalWind,
    actions_of: Callable[[Exposed], Actions],
    factors: Factors,
    basis: str,
) -> tuple[Seams, ...]:
    """Return the seams of every many-sided shell, of like copies the one that is loaded most.

    ``actions_of`` turns what bodies offer the wind into its actions (Q, D, C). Both ends are tried;
    what the lean of a taper's walls takes off the shear is not counted.
    """
    found: dict[str, Seams] = {}
    for i, body in enumerate(structure.bodies):
        part = structure.design.parts[body.part]
        shell = body.shape
        if not isinstance(shell, Shell) or not _seamed(body):
            continue
        own = _own_wind(exposed, _goes_along(structure, body.part))
        above = _own_wind(exposed, _goes_along(structure, body.part, itself=False))
        ends = [
            _flow(shell, shell.bottom, body.bottom, actions_of(own), body.origin, factors),
            _flow(shell, shell.top, body.top, actions_of(above), body.origin, factors),
        ]
        flow, shear, torque, level = max(ends)
        width = max(shell.bottom, shell.top) * tan(pi / shell.sides)
        pull = float(edge_pull(factors.wind * panel_pressure(structure, i, local), width))
        spacings = tuple(
            _spacing(name, part.material, shell.wall, flow, pull, basis) for name in FASTENERS
        )
        one = Seams(part.name, shell.sides, shear, torque, level, flow, pull, spacings)
        if part.name not in found or one.flow > found[part.name].flow:
            found[part.name] = one
    return tuple(found.values())


def _seamed(body: Body) -> bool:
    return isinstance(body.shape, Shell) and body.shape.sides > 0 and body.upright


def _goes_along(structure: Structure, part: int, itself: bool = True) -> Mask:
    """Return the bodies (bodies,) that a part carries by the file's own word, and it too."""
    parts = structure.design.parts
    index = {each.name: i for i, each in enumerate(parts)}

    def carried(i: int) -> bool:
        reference = parts[i].place.reference
        return reference is not None and (index[reference] == part or carried(index[reference]))

    return np.array(
        [(itself and body.part == part) or carried(body.part) for body in structure.bodies]
    )


def _own_wind(exposed: Exposed, goes: Mask) -> Exposed:
    """Return what some bodies take of the wind, each as much as in the whole.

    Their silhouette, for the least wind of a standard, is theirs alone.
    """
    return replace(
        exposed,
        outline=plane.kept(np.broadcast_to(goes[:, None], exposed.outline.shape), exposed.outline),
        below=exposed.below * goes[:, None],
        above=exposed.above * goes[:, None],
        suction=Uplift(
            exposed.suction.area * goes[:, None], exposed.suction.moment * goes[:, None, None]
        ),
    )


def _flow(
    shell: Shell, across: float, level: float, actions: Actions, axis: np.ndarray, factors: Factors
) -> tuple[float, float, float, float]:
    """Return the greatest flow in N/m at one end, its shear in N, torque in N m, and the level."""
    apothem = (across - shell.wall_in_plan) / 2.0
    if apothem <= 0.0:
        return 0.0, 0.0, 0.0, level
    inertia = polygon_inertia(shell.sides, apothem, shell.wall_in_plan)
    Q = polygon_first_moment(shell.sides, apothem, shell.wall_in_plan)
    force = actions.force
    shear = factors.wind * np.hypot(force[..., 0], force[..., 1])
    turning = actions.twist - axis[0] * force[..., 1] + axis[1] * force[..., 0]
    torque = factors.wind * np.abs(turning)
    flow = shear_flow(shear, Q, inertia) + twist_flow(torque, area_factor(shell.sides) * apothem**2)
    at = np.unravel_index(int(flow.argmax()), flow.shape)
    return float(flow[at]), float(shear[at]), float(torque[at]), level


def _spacing(
    name: str, material: str | None, wall: float, flow: float, pull: float, basis: str
) -> Spacing:
    """Return how far apart a fastener may stand along a seam, through the panel into a cleat.

    Outdoors: smooth nails in wood that gets wet and dries keep a quarter of their hold.
    """
    one = fasteners.find(name)
    panel = None if material is None else find_material(material).specific_gravity
    cleat = find_material(CLEAT).specific_gravity
    length = one.need("length")
    p = length - wall
    if panel is None or cleat is None or p < LEAST_PENETRATION * one.diameter:
        return Spacing(name, None)
    kind = one.withdrawal_kind or ""
    tip = TIP * one.diameter
    limits = single_shear(
        one.yielding_diameter,
        wall,
        main_bearing_length(p, tip),
        dowel_bearing(panel, one.yielding_diameter),
        dowel_bearing(cleat, one.yielding_diameter),
        one.need("bending_yield"),
        pi / 2.0,
        one.diameter,
    )
    duration = (
        adjustments.load_and_resistance()
        if basis == STRENGTH
        else adjustments.load_duration("wind or earthquake")
    )
    held = holding_length(p, one.thread_length if one.thread_length is not None else np.inf)
    wet_kind = "screw" if one.kind.endswith("screw") else kind
    drawn = withdrawal(kind, one.diameter, cleat) * held
    drawn = drawn * adjustments.wet_service("withdrawal", wet_kind, made_wet=False, used_wet=True)
    head = pull_through(one.need("head_diameter"), wall, panel)
    head = head * adjustments.wet_service("pull-through", "any", made_wet=False, used_wet=True)
    size = "under 1/4 in" if one.diameter < 0.00635 else "1/4 in and over"
    side = limits.value * adjustments.wet_service("lateral", size, made_wet=False, used_wet=True)
    used = USE[one.kind](pull, flow, duration * np.minimum(drawn, head), duration * side)
    return Spacing(name, float(1.0 / used) if used > 0.0 else None)
