"""What holds a piece as books print it: each value from printed inputs, in the printed unit."""

from collections.abc import Callable, Mapping
from math import cos, pi, radians, sin

import numpy as np

from ...design.model import Design, Part, Place
from ...design.shapes.boxes import Box
from ...design.shapes.weight import Weight
from ...design.structure import build_structure
from ...loads.wind.site import Site
from ...materials import grounds
from ...units import FOOT, POUND, POUND_FORCE, PSF
from ..anchoring import anchor_group, guys
from ..anchoring.capacity import ballast, buried_weight, embedment, screw_anchors
from ..stability.standing import Standing

_PCF = POUND_FORCE / FOOT**3
_CONCRETE = 150.0
"""What the sheets that weigh concrete take, in pcf; ours holds things down with less."""


def _push_that_slides(weight_lb: float, mu: float, degrees_down: float = 0.0) -> float:
    """Return the push at which sliding begins, where ballast lacking grows straight with it."""
    angle = radians(degrees_down)
    pushes = np.array([10.0, 20.0]) * weight_lb
    lacking = ballast.sliding_ballast(pushes * cos(angle), weight_lb + pushes * sin(angle), mu, 1.0)
    slope = float(lacking[1] - lacking[0]) / float(pushes[1] - pushes[0])
    return float(pushes[0]) - float(lacking[0]) / slope


def _wall_hold(
    wall_ft: str,
    footing_ft: str,
    density_pcf: float,
    load_kip: float,
    push_kip: float = 0.0,
    push_ft: float = 0.0,
) -> float:
    """Return the moment in kip ft that a wall on a footing holds, or its factor over a push."""
    wall, footing = _block(wall_ft), _block(footing_ft)
    density = density_pcf * POUND / FOOT**3
    parts = (
        Part("footing", footing, density=density),
        Part("wall", wall, Place(on="footing"), density=density),
        Part("load", Weight(), Place(on="wall"), mass=1000.0 * load_kip * POUND),
    )
    site = Site(method="gust", wind=20.0, ground="paving")
    structure = build_structure(Design("printed", "imperial", parts, tables={Site: site}))
    standing = Standing(structure, grounds.find_ground("paving"), 0.0)
    along = int(np.argmax(standing.normals[:, 0]))
    hold = float(standing.hold("typical", standing.reach)[along]) / (1000.0 * POUND_FORCE * FOOT)
    return hold / (push_kip * push_ft) if push_kip else hold


def _block(sizes_ft: str) -> Box:
    length, width, height = (float(size) * FOOT for size in sizes_ft.split(" x "))
    return Box(length, width, height)


def _footing_depth(load_lb: float, height_ft: float, S1_psf: float, width_ft: float) -> float:
    depth = embedment.depth_under_pressure(
        load_lb * POUND_FORCE, height_ft * FOOT, S1_psf * PSF, width_ft * FOOT
    )
    return float(depth) / FOOT


def _footing_weight(across_ft: float, depth_ft: float) -> float:
    volume = pi / 4.0 * (across_ft * FOOT) ** 2 * depth_ft * FOOT
    weight = float(buried_weight.concrete_weight(volume)) / POUND_FORCE
    ours = float(buried_weight.concrete_weight(FOOT**3)) / POUND_FORCE
    return weight * _CONCRETE / ours


def _flotation(gallons: float, ft3_a_gallon: float, weight_lb: float, water_pcf: float) -> float:
    volume = gallons * ft3_a_gallon * FOOT**3
    pull = buried_weight.flotation(volume, weight_lb * POUND_FORCE, water_pcf * _PCF)
    return float(pull) / POUND_FORCE


def _sunk_concrete(pull_lb: float, concrete_pcf: float, water_pcf: float) -> float:
    volume = buried_weight.sinking_volume(
        pull_lb * POUND_FORCE, concrete_pcf * _PCF, water_pcf * _PCF
    )
    return float(volume) / FOOT**3


def _three_guys(top_ft: str, pegs_ft: str, up_lb: float, guy: float) -> float:
    top = np.array([float(x) for x in top_ft.split()])
    pegs = np.array([[float(x) for x in peg.split()] for peg in pegs_ft.split(", ")])
    return float(guys.three_guys(pegs - top, [0.0, up_lb, 0.0])[int(guy) - 1])


def _leg_pull(moment_kN_m: float, spacing_m: float) -> float:
    return float(anchor_group.anchor_tensions(moment_kN_m, [spacing_m, 0.0])[0])


def _leg_ballast(moment_kN_m: float, dead_kN: float, spacing_m: float, helping: float) -> float:
    return float(ballast.least_ballast(moment_kN_m, dead_kN * spacing_m, spacing_m, helping))


def _plate_in_sand(depth_mm: float, across_mm: float, Ku_tan_phi: float, s: float) -> float:
    H, B = depth_mm / 1000.0, across_mm / 1000.0
    return float(screw_anchors.sand_factor(H, B, B, Ku_tan_phi, s))


GROUND_VALUES: Mapping[str, Callable[..., float]] = {
    "push that slides it": _push_that_slides,
    "wall on a footing": _wall_hold,
    "depth of a round footing": _footing_depth,
    "weight of a round footing": _footing_weight,
    "flotation": _flotation,
    "concrete that sinks it": _sunk_concrete,
    "three guys": _three_guys,
    "pull in a leg": _leg_pull,
    "ballast at a leg": _leg_ballast,
    "plate in sand Nq": _plate_in_sand,
}
"""By the name that a row of ``verified/ground`` bears."""
