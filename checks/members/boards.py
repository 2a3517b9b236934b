"""Standing boards between their posts or on their foot, and the panels of many-sided shells."""

from math import hypot, pi, tan

import numpy as np

from ...design.placing import Body
from ...design.shapes.bodies import Shell
from ...design.shapes.flat import Panel
from ...design.structure import Structure
from ...design.touching import GAP
from ...loads.combinations import Factors
from ...loads.lids import is_closed_above
from ..local_wind import LocalWind, panel_coefficient
from .bending import overhang_deflection, overhang_moment, span_deflection, span_moment
from .member_check import Member, NotJudged
from .strips import check_strip, strip_of, stuff_of
from .uprights import Mask, section_of


def check_board(
    structure: Structure, i: int, near: Mask, local: LocalWind, factors: Factors, basis: str
) -> Member | NotJudged | None:
    """Return the bending of a standing board; None for any other body.

    Between the posts that it touches it spans level, its ends beyond them standing out; without
    posts it stands on its lower edge. Its face grain is taken along its longer side.
    """
    body = structure.bodies[i]
    board, part = body.shape, structure.design.parts[body.part]
    if not isinstance(board, Panel) or not body.upright:
        return None
    if board.solidity < 1.0:
        return NotJudged(part.name, "lattice")
    stuff = stuff_of(part, board.thickness)
    if isinstance(stuff, NotJudged):
        return stuff
    pressure = float(local.standing[i])
    posts = _posts_along(structure, body, near[i])
    if not posts.size and not _stands_alone(structure, body, near[i]):
        return NotJudged(part.name, "held otherwise")
    level = bool(posts.size)
    breadth, span_side = (board.height, board.width) if level else (board.width, board.height)
    strip = strip_of(stuff, board.thickness, breadth, breadth > span_side, basis)
    if strip is None:
        return NotJudged(part.name, "across grain")
    if level:
        moment, shear, bends = _between_posts(board, posts, pressure, float(strip.stiffness))
    else:
        shear = pressure * board.width * board.height
        moment = float(overhang_moment(pressure * board.width, board.height))
        bends = float(overhang_deflection(pressure * board.width, board.height, strip.stiffness))
    check, governs = check_strip(
        part.name, strip, factors.wind * moment, factors.wind * shear, factors, stuff
    )
    role = "board between posts" if level else "board on its foot"
    return Member(part.name, check, role, governs, 1, bends, stuff)


def check_shell(
    structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> Member | NotJudged | None:
    """Return the bending of one panel of a many-sided shell; None for any other body.

    Its strips span level from seam to seam, as wide as the widest end; suction outward governs.
    """
    body = structure.bodies[i]
    shell, part = body.shape, structure.design.parts[body.part]
    if not isinstance(shell, Shell):
        return None
    if shell.sides == 0:
        return NotJudged(part.name, "curved")
    stuff = stuff_of(part, shell.wall)
    if isinstance(stuff, NotJudged):
        return stuff
    pressure = panel_pressure(structure, i, local)
    width = max(shell.bottom, shell.top) * tan(pi / shell.sides)
    slope = hypot(shell.height, (shell.bottom - shell.top) / 2.0)
    strip = strip_of(stuff, shell.wall, slope, slope >= width, basis)
    if strip is None:
        return NotJudged(part.name, "across grain")
    load = pressure * slope
    moment = factors.wind * float(span_moment(load, width))
    shear = factors.wind * load * width / 2.0
    check, governs = check_strip(part.name, strip, moment, shear, factors, stuff)
    bends = float(span_deflection(load, width, strip.stiffness))
    return Member(part.name, check, "wall panel", governs, shell.sides, bends, stuff)


def panel_pressure(structure: Structure, i: int, local: LocalWind) -> float:
    """Return the greatest unfactored pressure in Pa on one panel of a body: suction outward."""
    coefficient = panel_coefficient("outward")
    if not is_closed_above(structure, i):
        coefficient += panel_coefficient("within an open body")
    return max(coefficient * float(local.velocity[i]), local.least)


def _posts_along(structure: Structure, body: Body, near: Mask) -> np.ndarray:
    """Return where along a board (k,), in m from its middle, the posts stand that it touches."""
    along = body.bearing(0.0)
    found = [
        float((0.5 * (other.extent[0] + other.extent[1])[:2] - body.origin[:2]) @ along)
        for other, touches in zip(structure.bodies, near, strict=True)
        if touches and section_of(other) is not None
    ]
    return np.array(sorted(found))


def _between_posts(
    board: Panel, posts: np.ndarray, pressure: float, stiffness: float
) -> tuple[float, float, float]:
    """Return the greatest moment in N m over its whole height, shear in N, and bending in m."""
    load = pressure * board.height
    half = board.width / 2.0
    inside = np.clip(posts, -half, half)
    beyond = max(float(inside[0] + half), float(half - inside[-1]))
    widest = float(np.diff(inside).max()) if len(inside) > 1 else 0.0
    moment = max(float(span_moment(load, widest)), float(overhang_moment(load, beyond)))
    shear = load * beyond
    if widest:
        share = 0.5 if len(inside) < 3 else 0.625
        shear = max(shear, load * (share * widest + beyond**2 / (2.0 * widest)))
    bends = [float(overhang_deflection(load, beyond, stiffness))] if beyond else []
    bends += [float(span_deflection(load, widest, stiffness))] if widest else []
    return moment, shear, max(bends, default=0.0)


def _stands_alone(structure: Structure, body: Body, near: Mask) -> bool:
    """Return whether a board touches nothing but what it stands on."""
    others = [b for b, touches in zip(structure.bodies, near, strict=True) if touches]
    return all(other.top <= body.bottom + GAP for other in others)
