"""Wind as books print it: each value from printed inputs, in the printed unit."""

from collections.abc import Callable, Mapping
from math import pi, radians, sqrt

from ...loads.asce7 import velocity_pressure as asce7
from ...loads.coefficients import force_coefficients, shielding, signs
from ...loads.en1991 import (
    basic_velocity,
    boards,
    edged_sections,
    peak_pressure,
    roofs,
    round_sections,
    slenderness,
)
from ...loads.wind import how_often
from ...loads.wind.dynamic_pressure import dynamic_pressure
from ...units import FOOT, INCH, KMH, MPH, POUND_FORCE

_MEMBERS = {
    "flat": ("flat", False),
    "small round": ("round", False),
    "large round": ("round", True),
}


def _solid_sign(B_over_s: float, s_over_h: float) -> float:
    return float(signs.solid_sign(B_over_s, s_over_h))


def _flat_sided(section: str, h_over_D: float) -> float:
    sides = {
        "square face": force_coefficients.square_face,
        "square diagonal": force_coefficients.square_diagonal,
        "hexagon or octagon": force_coefficients.hexagon_or_octagon,
    }
    return float(sides[section](h_over_D))


def _round(surface: str, wind: str, h_over_D: float) -> float:
    return float(force_coefficients.round_section(h_over_D, surface, wind == "strong"))


def _open_sign(members: str, eps: float) -> float:
    kind, above = _MEMBERS[members]
    return float(signs.open_sign(eps, 0.0, kind, above)) / eps


def _kz(edition: str, exposure: str, height_ft: float) -> float:
    return float(asce7.exposure_coefficient(height_ft * FOOT, exposure, edition))


def _kz_metric(edition: str, exposure: str, height_m: float) -> float:
    return float(asce7.exposure_coefficient(height_m, exposure, edition))


def _shielding(eps: float, gap_over_width: float) -> float:
    return float(shielding.shielding(eps, gap_over_width))


def _map_speed(V50_mph: float, years: float) -> float:
    return V50_mph * float(how_often.speed_ratio(years))


def _pressure(speed_m_s: float, density: float) -> float:
    return float(dynamic_pressure(speed_m_s, density))


def _drag(speed_km_h: float, density: float, C: float, area_m2: float) -> float:
    return float(dynamic_pressure(speed_km_h * KMH, density)) * C * area_m2


def _drag_moment(
    speed_km_h: float, density: float, C: float, across_m: float, height_m: float
) -> float:
    force = _drag(speed_km_h, density, C, across_m * height_m)
    return force * height_m / 2.0


def _on_pole(speed_mph: float, bottom_in: float, top_in: float, length_ft: float) -> float:
    """Return lbf on a round pole whose girths are given, each its diameter times pi."""
    across = 0.5 * (bottom_in + top_in) / pi * INCH
    return float(dynamic_pressure(speed_mph * MPH)) * across * length_ft * FOOT / POUND_FORCE


def _on_wires(speed_mph: float, wires: float, across_in: float, span_ft: float) -> float:
    area = wires * across_in * INCH * span_ft * FOOT
    return float(dynamic_pressure(speed_mph * MPH)) * area / POUND_FORCE


def _terminal_speed(mass_kg: float, g: float, C: float, area_m2: float, density: float) -> float:
    return sqrt(mass_kg * g / (C * area_m2) / float(dynamic_pressure(1.0, density)))


def _k_r(terrain: str) -> float:
    return float(peak_pressure.terrain_factor(terrain))


def _c_r(terrain: str, height_m: float, k_r: float = 0.0) -> float:
    """Return c_r; by a source's own rounded ``k_r`` where it goes on with that."""
    found = float(peak_pressure.roughness_factor(height_m, terrain))
    return found * k_r / _k_r(terrain) if k_r else found


def _turbulence(terrain: str, height_m: float) -> float:
    return float(peak_pressure.turbulence_intensity(height_m, terrain))


def _v_m(terrain: str, height_m: float, v_b: float, c_r: float) -> float:
    """Return the mean wind by a source's own rounded ``c_r``."""
    found = float(peak_pressure.mean_speed(v_b, height_m, terrain))
    return found * c_r / _c_r(terrain, height_m)


def _c_e(terrain: str, height_m: float, c_r: float = 0.0) -> float:
    found = float(peak_pressure.exposure_factor(height_m, terrain))
    return found * (c_r / _c_r(terrain, height_m)) ** 2 if c_r else found


def _q_p(terrain: str, height_m: float, v_b: float, c_e: float = 0.0) -> float:
    found = float(peak_pressure.peak_velocity_pressure(v_b, height_m, terrain))
    return found * c_e / _c_e(terrain, height_m) if c_e else found


def _signboard_pressure(terrain: str, height_m: float, v_b: float) -> float:
    return boards.signboard() * _q_p(terrain, height_m, v_b)


def _signboard_force(q_p_Pa: float, width_m: float, height_m: float) -> float:
    return boards.signboard() * q_p_Pa * width_m * height_m


def _signboard_eccentricity(width_m: float) -> float:
    return float(boards.signboard_eccentricity(width_m))


def _c_prob(probability: float) -> float:
    return float(basic_velocity.probability_factor(probability))


def _q_p_rare(terrain: str, height_m: float, v_b0: float, probability: float) -> float:
    v_b = basic_velocity.basic_velocity(v_b0, probability=_c_prob(probability))
    return float(peak_pressure.peak_velocity_pressure(v_b, height_m, terrain))


def _cylinder(q_p_Pa: float, across_m: float, surface: str) -> float:
    Re = round_sections.reynolds_number(across_m, peak_pressure.gust_of_pressure(q_p_Pa))
    k = round_sections.surface_roughness(surface)
    return float(round_sections.cylinder(Re, k / across_m))


def _roughness_mm(surface: str) -> float:
    return 1000.0 * float(round_sections.surface_roughness(surface))


def _rectangle(d_over_b: float) -> float:
    return float(edged_sections.rectangle(d_over_b, 1.0))


def _polygon(sides: float, Re: float) -> float:
    return float(edged_sections.polygon_force_coefficient(int(sides), Re))


def _slenderness(length_m: float, breadth_m: float, kind: str = "edged") -> float:
    return float(slenderness.effective_slenderness(length_m, breadth_m, kind))


def _end_effect(lam: float) -> float:
    return float(slenderness.end_effect_factor(lam))


def _wall(l_over_h: float, zone: str) -> float:
    return float(boards.wall_coefficients(l_over_h)["ABCD".index(zone)])


def _canopy(kind: str, degrees: float, way: str, blockage: float) -> float:
    down, up = roofs.canopy(kind, radians(degrees), blockage)
    return float(down if way == "down" else up)


def _flat_roof(zone: str, area_m2: float) -> float:
    return float(roofs.flat_roof_suction(zone, area_m2))


WIND_VALUES: Mapping[str, Callable[..., float]] = {
    "solid sign Cf": _solid_sign,
    "open sign Cf": _open_sign,
    "flat-sided section Cf": _flat_sided,
    "round section Cf": _round,
    "Kz": _kz,
    "Kz, metric": _kz_metric,
    "shielding": _shielding,
    "speed of a return period": _map_speed,
    "dynamic pressure": _pressure,
    "drag": _drag,
    "moment of drag": _drag_moment,
    "wind on a tapered pole": _on_pole,
    "wind on wires": _on_wires,
    "terminal speed": _terminal_speed,
    "k_r": _k_r,
    "c_r": _c_r,
    "I_v": _turbulence,
    "v_m": _v_m,
    "c_e": _c_e,
    "q_p": _q_p,
    "q_p of a rarer wind": _q_p_rare,
    "pressure on a signboard": _signboard_pressure,
    "force on a signboard": _signboard_force,
    "eccentricity of a signboard": _signboard_eccentricity,
    "c_prob": _c_prob,
    "cylinder c_f,0": _cylinder,
    "roughness": _roughness_mm,
    "rectangle c_f,0": _rectangle,
    "polygon c_f,0": _polygon,
    "effective slenderness": _slenderness,
    "end-effect factor": _end_effect,
    "free-standing wall c_p": _wall,
    "canopy c_f": _canopy,
    "flat roof c_pe": _flat_roof,
}
"""By the name that a row of ``verified/wind`` bears."""
