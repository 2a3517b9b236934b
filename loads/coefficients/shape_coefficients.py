"""Which published coefficient each body takes in each direction."""

from math import inf, pi
from typing import cast

import numpy as np

from ...design import plane
from ...design.outlines import downwind_axes, outlines
from ...design.placing import Body
from ...design.shapes.forms import Bars, Globe, Leaf, Mote, Prism, Ridge, Slab, Wheel
from ...design.shapes.plans import Plan, Rectangle, Regular
from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue, replace
from . import force_coefficients as cf
from . import rotor, signs
from .boards import StandingBoard, lone_board

_PLUMB = 0.94
"""Rise over length from which a stick is a post, with face and diagonal (20 degrees off plumb)."""


Ends = tuple[tuple[float, float], tuple[float, float]]
"""Of two ends of a board, the force on it over that of Case A, and the resultant's shift in m."""


class SignCases(ByValue, frozen=True):
    """Cases A, B and C of a solid sign, relative to Case A.

    ``rise`` of the resultant above the board's middle in m. ``off`` is Case B and ``edge`` Case C,
    None where B/s is below 2: first with the resultant toward, or the windward edge at, the end of
    the board's own axis, then the other; the shift is along that axis.
    """

    rise: float
    off: Ends
    edge: Ends | None = None


class Coefficient(ByIdentity, frozen=True):
    """Force coefficient of one body on its own outline, by direction.

    ``below`` and ``above`` (D,) hold at pressures up to and beyond ``limit`` (Pa, on the velocity
    pressure without directionality), which is infinite for all but round sections. ``solidity``
    (D,) is what fraction of the outline is solid. ``kind`` names the row of directionality.
    ``face`` is a board's coefficient broadside, ``share`` (D,) what its edges take of the force.
    ``pressure_at`` in m above ground is where its pressure is taken, None for the middle of what
    the wind sees of it.
    """

    below: Array
    above: Array
    solidity: Array
    kind: str
    limit: float = inf
    sign: SignCases | None = None
    face: float = 0.0
    share: Array | None = None
    pressure_at: float | None = None

    @property
    def edges(self) -> Array:
        """Return the share (D,) of the force that edges take; 0 where that is not told apart."""
        return np.zeros(len(self.below)) if self.share is None else self.share


def shape_coefficient(
    body: Body,
    stack_top: float,
    azimuths: Array,
    surface: str = "rough",
    board: StandingBoard | None = None,
) -> Coefficient:
    """Return the coefficient of a body for winds from the azimuths (D,), rad.

    ``stack_top`` is the height above ground of the top of its stack in m: the h of h/D, with D the
    body's own least width at mid-height (ASCE/SEI 7 Fig. 29.4-1). Squares and rectangles go from
    face to diagonal; hexagon, octagon and round take one coefficient on the projected area; three
    and five sides as a square's face, seven as a hexagon, nine and more as an octagon; standing
    panels as signs (Fig. 29.3-1), lattices as open signs (Fig. 29.4-2). ``board`` is what a panel
    or cut-out makes with what abuts it, itself alone by default.
    """
    wind = downwind_axes(azimuths)
    own = body.own_wind(wind)
    bearing = np.arctan2(-own[:, 1], -own[:, 0])
    ones = np.ones(len(azimuths))
    match body.shape.form:
        case Leaf():
            return _standing_board(board or cast(StandingBoard, lone_board(body)), own)
        case Wheel(wheel):
            blades = ones * rotor.blade_coefficient(wheel.blade_area / wheel.disc_area)
            return Coefficient(blades, blades, ones * wheel.solidity, "wheel")
        case Globe():
            ball = ones * cf.ball()
            return Coefficient(ball, ball, ones, "ball")
        case Ridge(length, _, run, is_round):
            kind = "vault" if is_round else "gable"
            return _face_only(min(length, run), stack_top, ones, kind)
        case Slab() as slab:
            found = _section(slab.plan, body.upright, stack_top, bearing, surface)
            return _lying_board(slab, found, stack_top, own)
        case Bars() as bars:
            found = _section(bars.plan, stands_plumb(body, bars), stack_top, bearing, surface)
            return in_each_bar(body, bars, found, azimuths)
        case Prism(plan):
            return _section(plan, body.upright, stack_top, bearing, surface)
        case Mote():
            return Coefficient(ones * 0.0, ones * 0.0, ones, "none")


def stands_plumb(body: Body, bars: Bars) -> bool:
    """Return whether a straight piece is a post, with face and diagonal."""
    return len(bars.axes) == 1 and bool(abs(bars.axes[0] @ body.rotation[2]) >= _PLUMB)


def in_each_bar(body: Body, bars: Bars, found: Coefficient, azimuths: Array) -> Coefficient:
    """Return the coefficient on the outline of pieces of which none shelters another.

    Each takes the force of its own outline: what they show singly over what they show together
    (judgement: what stands behind is shielded in truth, by how much depends on the gap).
    """
    if len(bars.axes) == 1:
        return found
    singly = bars.shown(body.own_wind(downwind_axes(azimuths)))
    together = plane.area(outlines([body], azimuths)[0])
    more = np.maximum(singly / np.maximum(together, 1e-12), 1.0)
    return replace(found, below=found.below * more, above=found.above * more)


def _section(plan: Plan, plumb: bool, h: float, bearing: Array, surface: str) -> Coefficient:
    """Take a body by its section; a rectangle that leans as a square's face."""
    match plan:
        case Regular(sides, across):
            return _regular(sides, across, h, bearing, surface)
        case Rectangle(length, width) if plumb:
            return _rectangle(length, width, h, bearing)
        case Rectangle():
            return _face_only(plan.least_width, h, np.ones(len(bearing)), "square")


def _lying_board(plate: Slab, found: Coefficient, h: float, own: Array) -> Coefficient:
    """Tell apart what a plate's edges and its face take; ``own`` (D, 3) is the wind in its axes."""
    match plate.plan:
        case Regular(_, across):
            edges = across * np.hypot(own[:, 0], own[:, 1])
        case Rectangle(length, width):
            edges = width * np.abs(own[:, 0]) + length * np.abs(own[:, 1])
    edges = plate.thickness * edges
    face = plate.plan.area * np.abs(own[:, 2])
    broadside = float(cf.square_face(h / plate.plan.least_width))
    return replace(found, face=broadside, share=edges / np.maximum(edges + face, 1e-12))


def _face_only(least_width: float, h: float, ones: Array, kind: str) -> Coefficient:
    face = ones * cf.square_face(h / least_width)
    return Coefficient(face, face, ones, kind)


def _regular(sides: int, across: float, h: float, bearing: Array, surface: str) -> Coefficient:
    ones = np.ones(len(bearing))
    slender = h / across
    if sides == 0:
        return Coefficient(
            ones * cf.round_section(slender, surface, False),
            ones * cf.round_section(slender, surface, True),
            ones,
            "round",
            float(cf.round_limit_pressure(across)),
        )
    if sides == 4:
        return _rectangle(across, across, h, bearing)
    if sides in (3, 5):
        face = ones * cf.square_face(slender)
        return Coefficient(face, face, ones, f"{sides} sides")
    many = ones * cf.hexagon_or_octagon(slender)
    kind = {6: "hexagonal", 8: "octagonal"}.get(sides, f"{sides} sides")
    return Coefficient(many, many, ones, kind)


def _rectangle(length: float, width: float, h: float, bearing: Array) -> Coefficient:
    """Face, diagonal and between: P = Cf A per height goes by sin2 of the angle off the face."""
    slender = h / min(length, width)
    face, diagonal = cf.square_face(slender), cf.square_diagonal(slender)
    corner = float(np.arctan2(width, length))
    off_x = np.abs((bearing + pi / 2.0) % pi - pi / 2.0)
    off_y = pi / 2.0 - off_x
    p_diagonal = diagonal * 2.0 * length * width / np.hypot(length, width)
    from_x = cf.between_face_and_diagonal(face * width, p_diagonal, off_x, corner)
    from_y = cf.between_face_and_diagonal(face * length, p_diagonal, off_y, pi / 2.0 - corner)
    product = np.where(off_x <= corner, from_x, from_y)
    own = width * np.cos(off_x) + length * np.sin(off_x)
    value = product / own
    return Coefficient(value, value, np.ones(len(bearing)), "square")


def _standing_board(board: StandingBoard, own: Array) -> Coefficient:
    """Broadside as a sign or open sign on its gross area, its edges as a rectangle's face.

    s/h is 1 where all beneath it is filled (a wall). Openings between boards that abut lessen the
    force by ``openings_factor``. ``own`` (D, 3) is the wind in the board's axes: what it meets of
    face, side and upper edge.
    """
    ratio = board.width / board.height
    clearance = min((board.height + board.filled) / board.top, 1.0)
    solid = float(signs.solid_sign(ratio, clearance))
    open_ = board.solidity < 1.0
    broadside = float(signs.open_sign(board.solidity, solid)) if open_ else solid
    if board.climbers:
        broadside = max(broadside, solid)
    broadside *= float(signs.openings_factor(board.share)) / board.share
    edge = float(cf.square_face(board.top / board.thickness))
    face = board.area * np.abs(own[:, 1])
    edges = board.thickness * (board.height * np.abs(own[:, 0]) + board.width * np.abs(own[:, 2]))
    value = (broadside * face + edge * edges) / (face + edges)
    solidity = (board.solidity * face + edges) / (face + edges)
    rise = float(signs.resultant_rise(clearance, board.top))
    off = off_the_middle(board, float(signs.case_b_eccentricity(1.0)))
    at_edge = _windward_edge(board, ratio, clearance, solid) if ratio >= 2.0 else None
    kind = "lattice" if open_ else "sign"
    share = edge * edges / np.maximum(broadside * face + edge * edges, 1e-12)
    return Coefficient(
        value,
        value,
        solidity,
        kind,
        sign=SignCases(rise, off, at_edge),
        face=broadside,
        share=share,
        pressure_at=board.top,
    )


def off_the_middle(board: StandingBoard, eccentricity: float) -> Ends:
    """Return Case B: the resultant of the whole ``eccentricity`` times its width off its middle.

    On boards that together make the whole it is even pressure and what grows evenly from end to
    end, so that each takes its own share: 1 + 12 e x/B at x from the middle.
    """
    grows = 12.0 * eccentricity / board.width
    far, near = (_nonzero(1.0 + way * grows * board.offset) for way in (1.0, -1.0))
    shift = grows * board.own**2 / 12.0
    return (far, shift / far), (near, -shift / near)


def _windward_edge(board: StandingBoard, ratio: float, clearance: float, solid: float) -> Ends:
    """Return Case C of one of the boards that together make the whole."""
    ends: list[tuple[float, float]] = []
    for way in (1.0, -1.0):
        middle = 0.5 - way * board.offset / board.width
        half = 0.5 * board.own / board.width
        start, end = max(middle - half, 0.0), min(middle + half, 1.0)
        mean, shift = signs.case_c(ratio, clearance, start, end)
        ends.append((float(mean) / solid, way * float(shift) * board.width))
    return ends[0], ends[1]


def _nonzero(factor: float) -> float:
    return factor if abs(factor) > 1.0e-9 else 1.0e-9
