"""Which coefficient of EN 1991-1-4 each body takes in each direction.

The standard gives forces on A_ref = l b with b the width of the section itself: a square's side, a
polygon's circumscribed circle, in every direction. So P, the coefficient times that width, is what
is read here, and the coefficient on the outline that the wind sees is P over the outline's width.
"""

from math import cos, pi
from typing import cast

import numpy as np

from ... import references
from ...design.outlines import downwind_axes
from ...design.placing import Body
from ...design.shapes.forms import Bars, Globe, Leaf, Mote, Prism, Ridge, Slab, Wheel
from ...design.shapes.plans import Plan, Rectangle, Regular
from ...units.arrays import Array
from ...units.frozen import ByValue, replace
from ..coefficients import rotor
from ..coefficients.boards import StandingBoard, lone_board
from ..coefficients.shape_coefficients import (
    Coefficient,
    SignCases,
    in_each_bar,
    off_the_middle,
    stands_plumb,
)
from ..wind.dynamic_pressure import dynamic_pressure
from . import boards, edged_sections, round_sections
from .peak_pressure import recommended_air_density
from .round_sections import reynolds_number, surface_roughness
from .slenderness import effective_slenderness, end_effect_factor

LATTICE_TO = 0.6
"""Solidity up to which the lattice's figure is read; from 0.8 on it is a wall with openings."""


class Blown(ByValue, frozen=True):
    """The wind at the piece's top for Reynolds numbers: peak and mean speed in m/s."""

    peak: float
    mean: float


def body_coefficient(
    body: Body,
    stack_top: float,
    azimuths: Array,
    surface: str,
    blown: Blown,
    board: StandingBoard | None = None,
) -> Coefficient:
    """Return the coefficient of a body for winds from the azimuths (D,), rad, and its height z_e.

    ``stack_top`` above ground in m is the length l of lambda, with b the body's own width at
    mid-height. Rectangles, gables and vaults by d/b on each face, P between them by the squares of
    sine and cosine (judgement: the standard has the faces only; a square takes the same in every
    direction); polygons and cylinders by Reynolds number; three sides as a square, as tilted boxes
    and sticks are; standing panels as signboards, walls or lattices; wheels as by ASCE 7, since the
    standard has none. Source: EN 1991-1-4:2005 7.4 and 7.6 to 7.11.
    """
    found = _coefficient(body, stack_top, azimuths, surface, blown, board)
    if found.pressure_at is not None or body.shape.wheel is not None:
        return found
    middle = isinstance(body.shape.form, Globe)
    return replace(found, pressure_at=(body.bottom + body.top) / 2.0 if middle else body.top)


def _coefficient(
    body: Body,
    stack_top: float,
    azimuths: Array,
    surface: str,
    blown: Blown,
    board: StandingBoard | None,
) -> Coefficient:
    own = body.own_wind(downwind_axes(azimuths))
    bearing = np.arctan2(-own[:, 1], -own[:, 0])
    ones = np.ones(len(azimuths))
    match body.shape.form:
        case Leaf():
            return _standing_board(board or cast(StandingBoard, lone_board(body)), own)
        case Wheel(wheel):
            blades = ones * rotor.blade_coefficient(wheel.blade_area / wheel.disc_area)
            return Coefficient(blades, blades, ones * wheel.solidity, "wheel")
        case Globe(across):
            ball = ones * round_sections.sphere(max(body.bottom, 0.0), across)
            return Coefficient(ball, ball, ones, "ball")
        case Ridge(length, width):
            return _rectangle(length, width, stack_top, bearing)
        case Bars() as bars:
            plumb = stands_plumb(body, bars)
            found = _section(bars.plan, plumb, stack_top, bearing, surface, blown)
            return in_each_bar(body, bars, found, azimuths)
        case Slab(plan=plan) | Prism(plan):
            return _section(plan, body.upright, stack_top, bearing, surface, blown)
        case Mote():
            return Coefficient(ones * 0.0, ones * 0.0, ones, "none")


def _section(
    plan: Plan, plumb: bool, stack_top: float, bearing: Array, surface: str, blown: Blown
) -> Coefficient:
    """Take a body by its section; a rectangle that leans as a square's face."""
    match plan:
        case Regular(sides, across):
            return _regular(sides, across, stack_top, bearing, surface, blown)
        case Rectangle(length, width) if plumb:
            return _rectangle(length, width, stack_top, bearing)
        case Rectangle():
            return _face_only(plan.least_width, stack_top, np.ones(len(bearing)))


def _ended(length: float, breadth: float, kind: str = "edged") -> float:
    """Return psi_lambda of a solid body ``length`` l long and ``breadth`` b across, in m."""
    return float(end_effect_factor(effective_slenderness(length, breadth, kind)))


def _face_only(least_width: float, length: float, ones: Array) -> Coefficient:
    face = ones * edged_sections.rectangle(1.0, 1.0) * _ended(length, least_width)
    return Coefficient(face, face, ones, "square")


def _rectangle(length: float, width: float, stack: float, bearing: Array) -> Coefficient:
    """Return P over the outline's width: from x on the face ``width`` wide, from y the other."""
    from_x = float(edged_sections.rectangle(length, width)) * _ended(stack, width) * width
    from_y = float(edged_sections.rectangle(width, length)) * _ended(stack, length) * length
    across, along = np.abs(np.sin(bearing)), np.abs(np.cos(bearing))
    value = (from_x * along**2 + from_y * across**2) / (width * along + length * across)
    return Coefficient(value, value, np.ones(len(bearing)), "square")


def _regular(
    sides: int, across: float, length: float, bearing: Array, surface: str, blown: Blown
) -> Coefficient:
    ones = np.ones(len(bearing))
    if sides == 0:
        return _round(across, length, ones, surface, blown)
    if sides == 4:
        return _rectangle(across, across, length, bearing)
    if sides == 3:
        return _face_only(across, length, ones)
    corners = across / cos(pi / sides)
    Re = reynolds_number(corners, blown.mean)
    P = (
        float(edged_sections.polygon_force_coefficient(sides, Re))
        * _ended(length, corners)
        * corners
    )
    value = P / (across * _width(sides, bearing))
    kind = {6: "hexagonal", 8: "octagonal"}.get(sides, f"{sides} sides")
    return Coefficient(value, value, ones, kind)


def _width(sides: int, bearing: Array) -> Array:
    """Return the width (D,) that winds from bearings see of a regular polygon, 1 across flats."""
    corners = (2.0 * np.arange(sides) + 1.0) * pi / sides
    reach = 0.5 / cos(pi / sides) * np.sin(corners[:, None] - bearing)
    return reach.max(axis=0) - reach.min(axis=0)


def _round(across: float, length: float, ones: Array, surface: str, blown: Blown) -> Coefficient:
    """1.2 up to the pressure where the fall of the figure ends, the rough branch beyond.

    The fall itself lies beneath 1.2, so this is never less than the figure; the rough branch is
    taken at the site's own wind, or where it begins if that is faster.
    """
    k_over_b = _roughness(surface) / across
    ended = _ended(length, across, "round")
    end = float(round_sections.drop_ends(k_over_b))
    faster = max(end, float(reynolds_number(across, blown.peak)))
    slow = float(round_sections.cylinder(1.0e4, k_over_b))
    fast = float(round_sections.rough_cylinder(faster, k_over_b))
    speed = end / float(reynolds_number(across, 1.0))
    limit = float(dynamic_pressure(speed, recommended_air_density()))
    return Coefficient(ones * slow * ended, ones * fast * ended, ones, "round", limit)


def _roughness(surface: str) -> float:
    row = references.table("wind/en1991_surfaces").one("surface", surface)
    return surface_roughness(row["like"])


def _standing_board(board: StandingBoard, own: Array) -> Coefficient:
    """Broadside as a signboard, wall or lattice on its gross area, its edges as rectangles.

    What fills the space beneath it leaves that much less of a gap.
    """
    gap = board.bottom - board.filled
    open_ = board.solidity < 1.0
    solidity = board.solidity if open_ else board.share
    broadside, eccentricity = _broadside(board, gap, solidity)
    if board.climbers:
        broadside, eccentricity = max((broadside, eccentricity), _broadside(board, gap, 1.0))
    broadside /= board.share
    face = board.area * np.abs(own[:, 1])
    sides = board.thickness * board.height * np.abs(own[:, 0])
    upper = board.thickness * board.width * np.abs(own[:, 2])
    edge = float(edged_sections.rectangle(board.width, board.thickness))
    edge *= _ended(board.height, board.thickness)
    value = (broadside * face + edge * (sides + upper)) / (face + sides + upper)
    seen = (board.solidity * face + sides + upper) / (face + sides + upper)
    return Coefficient(
        value,
        value,
        seen,
        "lattice" if open_ else "sign",
        sign=SignCases(0.0, off_the_middle(board, eccentricity)),
        face=broadside,
        pressure_at=board.bottom + board.height / 2.0,
    )


def _broadside(board: StandingBoard, gap: float, solidity: float) -> tuple[float, float]:
    """Return the coefficient on the gross area, and how far off the middle it acts over the width.

    From solidity 0.8 on a signboard or wall, linear to its row at 0.8; up to 0.6 a lattice; linear
    between, where the standard has nothing (judgement).
    """
    least = _least_wall()
    long, short = max(board.width, board.height), min(board.width, board.height)
    off = float(boards.signboard_eccentricity(1.0))
    if solidity >= least:
        open_ = float(boards.wall(board.width, board.height, least)[0])
        if boards.is_signboard(gap, board.height, board.width):
            solid = boards.signboard()
        else:
            mean, shift = boards.wall(board.width, board.height)
            solid, off = float(mean), float(shift)
        return open_ + (solid - open_) * (solidity - least) / (1.0 - least), off
    lattice = float(boards.plane_lattice(min(solidity, LATTICE_TO), long, short))
    if solidity <= LATTICE_TO:
        return lattice, off
    open_ = float(boards.wall(board.width, board.height, least)[0])
    return lattice + (open_ - lattice) * (solidity - LATTICE_TO) / (least - LATTICE_TO), off


def _least_wall() -> float:
    return float(references.table("wind/en1991_walls").one("case", "any")["solidity"])
