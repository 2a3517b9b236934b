"""Standing boards between their posts or on their foot, and the panels of many-sided shells."""

from math import hypot, pi, tan

import numpy as np

from ..design.placing import Body
from ..design.shapes.bodies import Shell
from ..design.shapes.flat import Panel
from ..design.structure import Structure
from ..design.touching import GAP
from ..loads.combinations import Factors
from ..loads.lids import is_closed_above
from ..materials import sheets
from ..materials.sheets import Sheet
from .bending import cantilever_deflection, overhang_moment, span_deflection, span_moment
from .judging import Check, judged
from .local_wind import LocalWind, panel_coefficient
from .member_check import Member, NotJudged
from .member_strength import sheet_bending, sheet_stiffness
from .uprights import Mask, section_of

SOURCE = "statics: strips between supports"


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
    sheet = None if part.material is None else sheets.find(part.material, board.thickness)
    if sheet is None:
        return NotJudged(part.name, "no material" if part.material is None else "no values")
    pressure = float(local.standing[i])
    posts = _posts_along(structure, body, near[i])
    if posts.size:
        moment, bends = _between_posts(board, posts, pressure, sheet)
        level = True
    elif _stands_alone(structure, body, near[i]):
        moment = float(overhang_moment(pressure * board.width, board.height))
        stiffness = sheet_stiffness(sheet, across=board.width > board.height) * board.width
        push = pressure * board.width * board.height
        bends = float(cantilever_deflection(push, board.height / 2.0, board.height, stiffness))
        level = False
    else:
        return NotJudged(part.name, "held otherwise")
    breadth, span_side = (board.height, board.width) if level else (board.width, board.height)
    across = breadth > span_side
    capacity = float(sheet_bending(sheet, breadth, basis, across)) * breadth
    check = _check(part.name, factors, moment, capacity, sheet)
    role = "board between posts" if level else "board on its foot"
    return Member(part.name, check, role, "bending", 1, bends, sheet)


def check_shell(
    structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> Member | NotJudged | None:
    """Return the bending of one panel of a many-sided shell; None for any other body.

    Its strips span level from seam to seam, as wide as the widest end; suction outward governs.
    """
    body = structure.bodies[i]
    shell, part = body.shape, structure.design.parts[body.part]
    if not isinstance(shell, Shell) or shell.sides == 0:
        return None
    if part.material is None:
        return NotJudged(part.name, "no material")
    sheet = sheets.find(part.material, shell.wall)
    if sheet is None:
        return NotJudged(part.name, "no values")
    pressure = panel_pressure(structure, i, local)
    width = max(shell.bottom, shell.top) * tan(pi / shell.sides)
    slope = hypot(shell.height, (shell.bottom - shell.top) / 2.0)
    across = slope >= width
    moment = float(span_moment(pressure * slope, width))
    capacity = float(sheet_bending(sheet, slope, basis, across)) * slope
    stiffness = sheet_stiffness(sheet, across) * slope
    bends = float(span_deflection(pressure * slope, width, stiffness))
    check = _check(part.name, factors, moment, capacity, sheet)
    return Member(part.name, check, "wall panel", "bending", shell.sides, bends, sheet)


def panel_pressure(structure: Structure, i: int, local: LocalWind) -> float:
    """Return the greatest unfactored pressure in Pa on one panel of a body: suction outward."""
    coefficient = panel_coefficient("outward")
    if not is_closed_above(structure, i):
        coefficient += panel_coefficient("within an open body")
    return max(coefficient * float(local.velocity[i]), local.least)


def _check(name: str, factors: Factors, moment: float, capacity: float, sheet: Sheet) -> Check:
    demand = float(factors.wind * moment)
    utilization, passes = judged(demand, capacity)
    return Check(
        name=f"member: {name}",
        demand=demand,
        capacity=capacity,
        unit="N*m",
        utilization=utilization,
        passes=passes,
        source=f"{SOURCE}; {sheet.source}",
        weighing="typical",
        dead=0.0,
        wind=factors.wind,
    )


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
    board: Panel, posts: np.ndarray, pressure: float, sheet: Sheet
) -> tuple[float, float]:
    """Return the greatest moment in N m over its whole height, and how far it bends in m."""
    load = pressure * board.height
    half = board.width / 2.0
    inside = np.clip(posts, -half, half)
    beyond = max(float(inside[0] + half), float(half - inside[-1]))
    widest = float(np.diff(inside).max()) if len(inside) > 1 else 0.0
    moment = max(float(span_moment(load, widest)), float(overhang_moment(load, beyond)))
    stiffness = sheet_stiffness(sheet, across=board.height > board.width) * board.height
    bends = (
        [float(cantilever_deflection(load * beyond, beyond / 2.0, beyond, stiffness))]
        if beyond
        else []
    )
    bends += [float(span_deflection(load, widest, stiffness))] if widest else []
    return moment, max(bends, default=0.0)


def _stands_alone(structure: Structure, body: Body, near: Mask) -> bool:
    """Return whether a board touches nothing but what it stands on."""
    others = [b for b, touches in zip(structure.bodies, near, strict=True) if touches]
    return all(other.top <= body.bottom + GAP for other in others)
