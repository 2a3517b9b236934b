"""Every wind relation gives for an array what it gives for each of its values."""

import numpy as np
import pytest

from yardfast.loads.asce7 import gust_effect
from yardfast.loads.asce7 import velocity_pressure as asce7
from yardfast.loads.coefficients import force_coefficients, rotor, shielding, signs
from yardfast.loads.en1991 import (
    basic_velocity,
    boards,
    edged_sections,
    peak_pressure,
    roofs,
    round_sections,
    slenderness,
)
from yardfast.loads.wind import dynamic_pressure as gust
from yardfast.loads.wind import how_often

N = 1000
draw = np.random.default_rng(7).uniform
flags = np.random.default_rng(8).random(N) < 0.5

RELATIONS = {
    "velocity pressure": (
        asce7.asce7_velocity_pressure,
        draw(0, 80, N),
        draw(0.5, 1.2, N),
        draw(1, 2, N),
        draw(0.8, 1, N),
        draw(0.8, 1, N),
    ),
    "exposure coefficient": (lambda z: asce7.exposure_coefficient(z, "C", "7-16"), draw(0, 30, N)),
    "elevation factor": (asce7.elevation_factor, draw(-100, 3000, N)),
    "dynamic pressure": (gust.dynamic_pressure, draw(0, 80, N), draw(1, 1.3, N)),
    "forecast to object": (
        gust.forecast_to_object,
        draw(0, 80, N),
        draw(0.5, 1.2, N),
        draw(1, 2, N),
    ),
    "rigid gust factor": (
        lambda h, B: gust_effect.rigid_gust_factor(h, B, "B"),
        draw(0.1, 40, N),
        draw(0.1, 20, N),
    ),
    "gust factor used": (
        lambda h, B: gust_effect.gust_factor_used(h, B, "D"),
        draw(0.1, 40, N),
        draw(0.1, 20, N),
    ),
    "square face": (force_coefficients.square_face, draw(0, 40, N)),
    "square diagonal": (force_coefficients.square_diagonal, draw(0, 40, N)),
    "hexagon or octagon": (force_coefficients.hexagon_or_octagon, draw(0, 40, N)),
    "round section": (
        lambda x, above: force_coefficients.round_section(x, "smooth", above),
        draw(0, 40, N),
        flags,
    ),
    "round limit pressure": (force_coefficients.round_limit_pressure, draw(0.01, 2, N)),
    "between face and diagonal": (
        force_coefficients.between_face_and_diagonal,
        draw(0.1, 2, N),
        draw(0.1, 2, N),
        draw(0, 0.7, N),
        draw(0.7, 0.9, N),
    ),
    "peak velocity pressure": (
        lambda v, z, c: peak_pressure.peak_velocity_pressure(v, z, "II", c),
        draw(0, 80, N),
        draw(0, 200, N),
        draw(1, 2, N),
    ),
    "probability factor": (basic_velocity.probability_factor, draw(0.001, 0.6, N)),
    "yearly probability": (basic_velocity.yearly_probability, draw(0.6, 1.3, N)),
    "rectangle": (edged_sections.rectangle, draw(0.01, 2, N), draw(0.01, 2, N)),
    "polygon": (lambda Re: edged_sections.polygon_force_coefficient(8, Re), draw(1e5, 5e5, N)),
    "cylinder": (round_sections.cylinder, draw(1e4, 1e7, N), draw(1e-6, 0.05, N)),
    "drop ends": (round_sections.drop_ends, draw(1e-6, 0.05, N)),
    "sphere": (round_sections.sphere, draw(0, 2, N), draw(0.1, 2, N)),
    "effective slenderness": (
        slenderness.effective_slenderness,
        draw(0.1, 60, N),
        draw(0.01, 4, N),
    ),
    "end effect factor": (slenderness.end_effect_factor, draw(0.5, 90, N), draw(0, 1, N)),
    "wall, mean": (lambda *x: boards.wall(*x)[0], draw(0.1, 30, N), draw(0.1, 3, N)),
    "wall, shift": (lambda *x: boards.wall(*x)[1], draw(0.1, 30, N), draw(0.1, 3, N)),
    "plane lattice": (boards.plane_lattice, draw(0, 1, N), draw(1, 3, N), draw(0.1, 1, N)),
    "canopy, up": (lambda *x: roofs.canopy("monopitch", *x)[1], draw(0, 1, N), draw(0, 1, N)),
    "flat roof": (lambda a: roofs.flat_roof_suction("F", a), draw(0.1, 20, N)),
    "solid sign": (signs.solid_sign, draw(0.01, 60, N), draw(0.01, 1, N)),
    "case B": (signs.case_b_eccentricity, draw(0, 3, N)),
    "case C, mean": (lambda *x: signs.case_c(*x)[0], draw(1, 60, N), draw(0.01, 1, N)),
    "case C, eccentricity": (lambda *x: signs.case_c(*x)[1], draw(1, 60, N), draw(0.01, 1, N)),
    "resultant rise": (signs.resultant_rise, np.where(flags, 1.0, 0.5), draw(0, 3, N)),
    "openings factor": (signs.openings_factor, draw(0, 1, N)),
    "open sign, flat": (signs.open_sign, draw(0, 1, N), draw(1.3, 1.95, N)),
    "open sign, round": (
        lambda eps, solid, above: signs.open_sign(eps, solid, "round", above),
        draw(0, 1, N),
        draw(1.3, 1.95, N),
        flags,
    ),
    "locked wheel": (rotor.locked, draw(0, 1.3, N)),
    "spinning wheel": (rotor.spinning, draw(0, 1.3, N)),
    "blades of a wheel": (rotor.blade_coefficient, draw(0, 1.3, N)),
    "shielding": (shielding.shielding, draw(0, 1, N), draw(0, 8, N)),
    "speed ratio": (how_often.speed_ratio, draw(1, 3000, N)),
    "return period": (how_often.return_period_of_ratio, draw(0.3, 1.5, N)),
    "fifty-year speed": (how_often.fifty_year_speed, draw(30, 60, N), draw(1, 3000, N)),
}


@pytest.mark.parametrize("name", RELATIONS)
def test_array_equals_loop_over_its_values(name):
    relation, *arguments = RELATIONS[name]
    at_once = relation(*arguments)
    one_by_one = [float(relation(*values)) for values in zip(*arguments, strict=True)]
    assert at_once.shape == (N,)
    one_rounding = float(np.finfo(float).eps)  # of 1, from which some of them subtract
    np.testing.assert_allclose(at_once, one_by_one, rtol=1e-13, atol=one_rounding, equal_nan=True)


@pytest.mark.parametrize("name", [name for name in RELATIONS if len(RELATIONS[name]) > 2])
def test_arguments_broadcast_as_gusts_by_directions(name):
    relation, first, second, *others = RELATIONS[name]
    result = relation(first[:5, None], second[None, :7], *(other[:7] for other in others))
    assert result.shape == (5, 7)
    expected = relation(first[3], second[4], *(other[4] for other in others))
    np.testing.assert_allclose(result[3, 4], expected, rtol=1e-13)
